import { check, percent } from '../check.ts';

export default check({
  id: 'nut-overpressed-at-rest',
  title: 'Nut is pressed beyond its material',
  summary: 'The thread pressure is above what the nut material bears even at rest.',
  place: 'nut.length',
  figure: 'nut.pressure',
  bad: 'above',
  limits: [{ at: 'nut.standing-pressure-limit', severity: 'error', basis: 'book', source: { title: 'Budynas and Nisbett', where: 'Table 8-4 (metals); The Tribology Handbook, section A5 (plastics)', weak: true } }],
  because: ['nut.length', 'nut.material', 'axis.moved-mass'],
  message: ({ show, worst, limit }) =>
    `Nut thread pressure reaches ${show('nut.pressure', 'high')}, ${percent(worst / limit)} of the ${show('nut.standing-pressure-limit', 'low')} that ${show('nut.material')} bears at rest: the thread creeps or shears. Take a longer or larger nut, or more drives.`,
});
