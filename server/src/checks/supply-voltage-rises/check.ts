import { check, timesOf } from '../check.ts';

export default check({
  id: 'supply-voltage-rises',
  title: 'Lowering drives the supply voltage up',
  summary: 'Energy returned on the way down lifts the supply above what its drives stand.',
  place: 'drive.supply',
  figure: 'drive.bus-voltage-use',
  bad: 'above',
  limits: [
    { at: 1, severity: 'error', basis: 'follows from the mechanics', source: { title: 'energy of a capacitor' } },
    { at: 0.9, severity: 'warning', basis: 'our threshold' },
  ],
  because: ['supply.capacitance', 'supply.voltage-limit', 'axis.moved-mass', 'motion.speed'],
  message: ({ show, worst, severity, certain }) =>
    `Lowering ${certain ? 'lifts' : 'may lift'} the supply to ${show('drive.bus-voltage', 'high')}, ${timesOf(worst)} the ${show('supply.voltage-limit', 'low')} that its drives stand, by ${show('drive.returned-energy', 'high')} returned: ${severity === 'error' ? 'they fail' : 'little is left'}. Add a clamp or capacitance, lower slowly, or take a thread that locks.`,
});
