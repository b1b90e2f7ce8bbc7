import { figure, unable } from '../figure.ts';

const worst = { title: 'worst case: errors added, not averaged' } as const;

export default [
  figure({
    id: 'rack.tooth-error',
    title: 'Error of the teeth over the travel',
    symbol: 'e_t',
    quantity: 'length',
    meaning: 'How far the axis may be off by the pitch of the rack, the run-out of the pinion and the error of the reduction together, each at its full size.',
    needs: { pitch: 'rack.pitch-error', eccentricity: 'pinion.eccentricity-error' },
    optional: { reduction: 'drive.reduction-travel-error' },
    compute: ({ pitch, eccentricity, reduction }) => pitch + eccentricity + (reduction ?? 0),
    formula: 'e_t = e_z + e_x + e_i',
    sources: [worst],
    rank: 2,
  }),
  figure({
    id: 'rack.tooth-error-use',
    title: 'Error of the teeth over the accuracy wanted',
    symbol: 'e_t/ε',
    quantity: 'ratio',
    unit: '%',
    meaning: 'Error of rack, pinion and reduction over the accuracy wanted.',
    needs: { error: 'rack.tooth-error', accuracy: 'axis.accuracy' },
    compute: ({ error, accuracy }) => (accuracy > 0 ? error / accuracy : unable('the accuracy wanted is 0')),
    formula: 'e_t / ε',
    sources: [{ title: 'definition' }],
    rank: 3,
  }),
  figure({
    id: 'drive.position-error',
    onlyWhere: { 'drive.transmission': ['rack'] },
    title: 'Position error over the travel',
    symbol: 'e_Σ',
    quantity: 'length',
    meaning: 'Error of the teeth and lost motion on reversal together, each at its full size.',
    needs: { teeth: 'rack.tooth-error' },
    optional: { lost: 'rack.lost-motion' },
    compute: ({ teeth, lost }) => teeth + (lost ?? 0),
    formula: 'e_Σ = e_t + Δ_r',
    sources: [worst],
    rank: 2,
  }),
];
