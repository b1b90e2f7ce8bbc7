import { check, timesOf } from '../check.ts';
import { materialInWords } from '../materials-in-words.ts';

export default check({
  id: 'nut-overpressed-at-rest',
  title: 'Nut is pressed beyond its material',
  summary: 'The thread pressure is above what the nut material bears even at rest.',
  place: 'nut.length',
  figure: 'nut.pressure',
  bad: 'above',
  limits: [{ at: 'nut.standing-pressure-limit', severity: 'error', basis: 'book', source: { title: 'Budynas and Nisbett', where: 'Table 8-4 (metals); The Tribology Handbook, section A5 (plastics)', weak: true } }],
  because: ['nut.length', 'nut.material', 'axis.moved-mass'],
  message: ({ show, worst, limit, certain, choice }) =>
    `Nut thread ${certain ? 'creeps or shears' : 'may creep or shear'}: its pressure reaches ${show('nut.pressure', 'high')}, ${timesOf(worst / limit)} the ${show('nut.standing-pressure-limit', 'low')} that ${materialInWords(choice('nut.material'))} bears at rest. Take a longer or larger nut, or more drives.`,
});
