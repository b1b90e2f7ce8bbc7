import { pointOfRow } from '../../machine/frame-members.ts';
import { figure, unable } from '../figure.ts';

const linear = { title: 'linear expansion, Δh = α h Δϑ' } as const;
const warm = { expansion: 'frame.expansion', machine: 'conditions.machine-temperature', ambient: 'conditions.ambient-temperature' } as const;

const common = {
  id: 'frame.height-growth',
  title: 'Growth of the frame in height',
  symbol: 'Δh',
  quantity: 'length',
  meaning: 'How much higher the frame is at machine temperature than at ambient temperature: by that a lift that is set cold is off warm.',
  formula: 'Δh = α_f h (ϑ_m − ϑ_a)',
  sources: [linear],
  rank: 3,
} as const;

export default [
  figure({
    ...common,
    onlyWhere: { 'frame.built': ['members'] },
    needs: warm,
    tables: { points: 'frame.point-places' },
    compute: ({ expansion, machine, ambient, points }) => {
      const heights = (points ?? []).map((row) => pointOfRow(row).at[2]);
      return heights.length > 0 ? expansion * (Math.max(...heights) - Math.min(...heights)) * Math.abs(machine - ambient) : unable('not every point can be read');
    },
  }),
  figure({
    ...common,
    onlyWith: ['frame-box'],
    needs: { ...warm, height: 'frame-box.height' },
    compute: ({ expansion, machine, ambient, height }) => expansion * height * Math.abs(machine - ambient),
  }),
  figure({
    id: 'frame.height-growth-use',
    title: 'Growth of the frame over the accuracy',
    symbol: 'u_h',
    quantity: 'ratio',
    unit: '%',
    meaning: 'Growth of the frame in height over the accuracy of the upright axes.',
    onlyWith: ['frame'],
    needs: { growth: 'frame.height-growth', tolerance: 'frame.height-tolerance' },
    compute: ({ growth, tolerance }) => (tolerance > 0 ? growth / tolerance : unable('the accuracy must be above zero')),
    formula: 'u_h = Δh/z_tol',
    sources: [{ title: 'follows from both' }],
    rank: 3,
  }),
];
