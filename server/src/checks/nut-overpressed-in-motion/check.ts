import { check, timesOf, type Facts } from '../check.ts';
import { materialInWords } from '../materials-in-words.ts';

/** 0 where the nut's heat is told as an error, 1 as a warning, 2 as an information; 3 where it is not told. */
function heatIsTold({ bounds }: Facts): number {
  const use = bounds('nut.heat-use');
  if (!use || use.high <= 1) return 3;
  if (use.nominal > 2) return 0;
  return use.nominal > 1 || use.high > 2 ? 1 : 2;
}

/** Whether a graver finding on the same flanks stands: pressed too hard even at rest, or too hot. A longer nut cures all of them. */
function isToldOtherwise(facts: Facts): boolean {
  const [pressure, standing, moving] = [facts.bounds('nut.pressure'), facts.bounds('nut.standing-pressure-limit'), facts.bounds('nut.moving-pressure-limit')];
  if (!pressure || !moving) return false;
  if (standing && pressure.high > standing.low) return true;
  return heatIsTold(facts) <= (pressure.nominal > moving.nominal ? 1 : 2);
}

export default check({
  id: 'nut-overpressed-in-motion',
  title: 'Nut is pressed too hard for its speed',
  summary: 'The thread pressure is above what the nut material bears at this sliding speed.',
  place: 'nut.length',
  figure: 'nut.pressure',
  bad: 'above',
  limits: [{ at: 'nut.moving-pressure-limit', severity: 'warning', basis: 'book', source: { title: 'Budynas and Nisbett', where: 'Table 8-4', weak: true } }],
  when: (facts) => !isToldOtherwise(facts),
  because: ['nut.length', 'nut.material', 'motion.speed'],
  message: ({ show, worst, limit, certain, choice }) =>
    `Nut ${certain ? 'wears' : 'may wear'} fast: its thread pressure reaches ${show('nut.pressure', 'high')}, ${timesOf(worst / limit)} the ${show('nut.moving-pressure-limit', 'low')} that ${materialInWords(choice('nut.material'))} bears while sliding at ${show('nut.sliding-speed', 'high')}. Take a longer nut, a larger screw, or less speed.`,
});
