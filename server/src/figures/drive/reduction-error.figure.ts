import { figure, unable } from '../figure.ts';

const onlyWhere = { 'drive.has-reduction': ['yes'] } as const;

export default [
  figure({
    id: 'drive.reduction-travel-error',
    onlyWhere,
    title: 'Error of the reduction along the axis',
    symbol: 'e_i',
    quantity: 'length',
    meaning: 'How far the axis strays to either side by the error of the reduction. What a stage does wrong is divided by the ratios behind it.',
    needs: { error: 'drive.reduction-error', travel: 'drive.travel-per-shaft-turn' },
    compute: ({ error, travel }) => (error * travel) / (2 * Math.PI),
    formula: 'e_i = ε_i p_w / 2π',
    sources: [{ title: 'kinematics' }],
    rank: 3,
  }),
  figure({
    id: 'drive.reduction-error-use',
    onlyWhere,
    title: 'Error of the reduction over the accuracy wanted',
    symbol: 'e_i/ε',
    quantity: 'ratio',
    unit: '%',
    meaning: 'Error of the reduction along the axis over the accuracy wanted.',
    needs: { error: 'drive.reduction-travel-error', accuracy: 'axis.accuracy' },
    compute: ({ error, accuracy }) => (accuracy > 0 ? error / accuracy : unable('the accuracy wanted is 0')),
    formula: 'e_i / ε',
    sources: [{ title: 'definition' }],
    rank: 3,
  }),
];
