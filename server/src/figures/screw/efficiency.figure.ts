import { forwardEfficiency, reverseEfficiency } from '../../mechanics/power-screw.ts';
import { figure } from '../figure.ts';
import { bearingNeeds, contactNeeds, contactWithBearing, threadContact } from './contact.ts';

const source = { title: 'Budynas and Nisbett, Shigley’s Mechanical Engineering Design', where: 'section 8-2, equation (8-4)' } as const;

export default [
  figure({
    id: 'screw.efficiency',
    title: 'Efficiency of the thread',
    symbol: 'η',
    quantity: 'ratio',
    unit: '%',
    meaning: 'Share of the work put into the screw that lifts the load, thread alone.',
    needs: contactNeeds,
    compute: (values) => forwardEfficiency(threadContact(values)),
    formula: 'η = tan λ / tan(λ + φ′), φ′ = atan µ′',
    sources: [source],
    rank: 2,
  }),
  figure({
    id: 'screw.efficiency-with-bearing',
    title: 'Efficiency with the thrust bearing',
    symbol: 'η_t',
    quantity: 'ratio',
    unit: '%',
    meaning: 'Share of the work put into the screw that lifts the load, friction of the thrust bearing included.',
    needs: { ...contactNeeds, ...bearingNeeds },
    compute: (values) => forwardEfficiency(contactWithBearing(values)),
    formula: 'η_t = tan λ / (tan(λ + φ′) + µ_c d_c/d₂)',
    sources: [source],
    rank: 2,
  }),
  figure({
    id: 'screw.reverse-efficiency',
    title: 'Efficiency backwards, thread alone',
    symbol: 'η_r',
    quantity: 'ratio',
    unit: '%',
    meaning: 'Share of a sinking load’s work that reaches the shaft. Nothing or less: the thread holds.',
    needs: contactNeeds,
    compute: (values) => reverseEfficiency(threadContact(values)),
    formula: 'η_r = tan(λ − φ′) / tan λ',
    sources: [{ title: 'follows from the lowering torque', where: source.title }],
    rank: 2,
    inWords: ({ low, nominal, high }) => {
      const word = (share: number): string => (share <= 0 ? 'locks' : `${Number((share * 100).toPrecision(2))} %`);
      return word(low) === word(high) ? word(nominal) : `${word(nominal)} (${word(low)} to ${word(high)})`;
    },
  }),
];
