import { check, percent } from '../check.ts';

export default check({
  id: 'nut-overpressed-in-motion',
  title: 'Nut is pressed too hard for its speed',
  summary: 'The thread pressure is above what the nut material bears at this sliding speed.',
  place: 'nut.length',
  figure: 'nut.pressure',
  bad: 'above',
  limits: [{ at: 'nut.moving-pressure-limit', severity: 'warning', basis: 'book', source: { title: 'Budynas and Nisbett', where: 'Table 8-4', weak: true } }],
  because: ['nut.length', 'nut.material', 'motion.speed'],
  message: ({ show, worst, limit }) =>
    `Nut thread pressure reaches ${show('nut.pressure', 'high')}, ${percent(worst / limit)} of the ${show('nut.moving-pressure-limit')} that ${show('nut.material')} bears while sliding at ${show('nut.sliding-speed', 'high')}: it wears fast. Take a longer nut, a larger screw, or less speed.`,
});
