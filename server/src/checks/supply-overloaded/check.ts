import { check, timesOf, type Facts } from '../check.ts';

/** Share of the supply from which little is left for electronics, fans and lamps. */
const NEAR_ALL = 0.8;

const consumers = ({ bounds }: Facts): number => bounds('supply.consumers')?.nominal ?? 0;

/** One axis that asks for more than all of it has its own finding. */
const isToldByTheAxis = ({ bounds }: Facts): boolean => (bounds('supply.largest-axis-current')?.nominal ?? 0) > (bounds('supply.current')?.nominal ?? Infinity);

export default check({
  id: 'supply-overloaded',
  title: 'Supply overloaded',
  summary: 'All axes and heated parts on a supply together ask for more than it gives.',
  subject: 'supply',
  place: 'supply.current',
  figure: 'supply.use',
  basis: 'follows from the mechanics',
  sources: [{ title: 'sum of the currents; that the axes rarely all speed up at once is why they count as a warning only' }],
  because: ['supply.heaters-current', 'supply.axes-current'],
  when: (facts) => consumers(facts) > 1 || facts.bounds('supply.heaters-current') !== undefined,
  judge: (facts) => {
    const [use, heating] = [facts.bounds('supply.use'), facts.bounds('supply.heating-use')];
    if (!use) return undefined;
    if (heating && heating.nominal > 1) return 'error';
    if (isToldByTheAxis(facts)) return undefined;
    if (heating && heating.high > 1) return { severity: 'warning', certain: false };
    if (use.nominal > 1) return 'warning';
    return use.high > 1 || use.nominal > NEAR_ALL ? { severity: 'information', certain: use.high <= 1 } : undefined;
  },
  message: ({ show, bounds, certain }) => {
    const [use, heating] = [bounds('supply.use'), bounds('supply.heating-use')];
    const size = 'Take a larger supply, or a second one.';
    if (heating && heating.high > 1) {
      return `Heating ${certain ? 'takes' : 'may take'} ${show('supply.heaters-current', 'high')}, ${timesOf(heating.high)} what the supply gives: it shuts down or burns out. ${size}`;
    }
    const worst = use?.high ?? 0;
    const what = `Axes${heating ? ' and heating' : ''} together ${certain ? 'take' : 'may take'} ${show('supply.load-current', 'high')}, ${timesOf(worst)} what the supply gives`;
    return `${what}: ${worst > 1 ? 'its voltage sags when all act at once' : 'little is left for electronics and fans'}. ${size}`;
  },
});
