import { check, timesOf } from '../check.ts';
import { materialInWords } from '../materials-in-words.ts';

export default check({
  id: 'nut-overheats',
  title: 'Nut takes more pressure times speed than it can shed',
  summary: 'Pressure times sliding speed, averaged over the duty, is above what the nut material stands for long.',
  place: 'nut.material',
  figure: 'nut.heat-use',
  bad: 'above',
  limits: [
    { at: 2, severity: 'error', basis: 'our threshold' },
    { at: 1, severity: 'warning', basis: 'book', source: { title: 'The Tribology Handbook', where: 'section A5; Mott, Table 16-1', weak: true } },
  ],
  because: ['nut.heat-limit', 'motion.speed', 'motion.duty', 'nut.length'],
  message: ({ show, worst, bounds, certain, choice }) =>
    `Nut ${certain ? 'overheats' : 'may overheat'}: pressure times speed reaches ${show('nut.pressure-velocity', 'high')}${bounds('motion.duty') ? '' : ' (moving all the time assumed)'}, ${timesOf(worst)} what ${materialInWords(choice('nut.material'))} stands for long. It softens or wears fast. Longer nut, slower, or a ball screw.`,
});
