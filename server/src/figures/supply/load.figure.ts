import { figure } from '../figure.ts';

const balance = { title: 'sum of the currents' } as const;
/** Only of the supply itself: a drive or heated part that it feeds sees its voltage, and nothing of what else hangs on it. */
const ofItself = { 'supply.summed': ['yes'] } as const;

export default [
  figure({
    id: 'supply.load-current',
    title: 'Current of everything on the supply',
    symbol: 'I_Σ',
    quantity: 'current',
    meaning: 'Current that the supply is asked for when all its axes speed up at full speed and all its heated parts heat at once. Electronics, fans and lamps come on top.',
    needs: {},
    optional: { axes: 'supply.axes-current', heaters: 'supply.heaters-current' },
    onlyWhere: ofItself,
    compute: ({ axes = 0, heaters = 0 }) => axes + heaters,
    formula: 'I_Σ = I_a + I_h',
    sources: [balance],
    rank: 2,
  }),
  figure({
    id: 'supply.use',
    title: 'Use of the supply',
    symbol: 'I_Σ/I_V',
    quantity: 'ratio',
    unit: '%',
    meaning: 'Current of everything on the supply over the largest continuous current that it gives.',
    needs: { load: 'supply.load-current', limit: 'supply.current' },
    onlyWhere: ofItself,
    compute: ({ load, limit }) => load / limit,
    formula: 'I_Σ / I_V',
    sources: [balance],
    rank: 2,
  }),
  figure({
    id: 'supply.heating-use',
    title: 'Use of the supply by heating',
    symbol: 'I_h/I_V',
    quantity: 'ratio',
    unit: '%',
    meaning: 'Current of the heated parts alone, which lasts for minutes, over the largest continuous current of the supply.',
    needs: { load: 'supply.heaters-current', limit: 'supply.current' },
    onlyWhere: ofItself,
    compute: ({ load, limit }) => load / limit,
    formula: 'I_h / I_V',
    sources: [balance],
    rank: 3,
  }),
];
