import { figure } from '../figure.ts';

export default [
  figure({
    id: 'thrust-bearing.use',
    title: 'Use of the thrust bearing',
    symbol: 'F_max/F_b',
    quantity: 'ratio',
    unit: '%',
    meaning: 'Largest axial load over what the thrust bearing may carry.',
    needs: { load: 'drive.largest-load', limit: 'thrust-bearing.load-limit' },
    compute: ({ load, limit }) => load / limit,
    formula: 'F_max / F_b',
    sources: [{ title: 'definition' }],
    rank: 3,
  }),
  figure({
    id: 'drive.thrust-on-motor',
    title: 'Thrust on the motor',
    symbol: 'F_m',
    quantity: 'force',
    unit: 'N',
    meaning: 'Axial load that passes through the coupling into the motor, since no thrust bearing takes it.',
    needs: { rest: 'drive.gravity-load' },
    optional: { largest: 'drive.largest-load' },
    onlyWhere: { 'thrust-bearing.design': ['none'] },
    compute: ({ rest, largest }) => (largest === undefined ? { value: Math.abs(rest), note: 'the load at rest only, since the motion is not known here' } : largest),
    formula: 'F_m = F_max, or F₀ where no motion is described',
    sources: [{ title: 'statics' }],
    rank: 3,
  }),
];
