import { check, percent } from '../check.ts';

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
  message: ({ show, worst, bounds }) =>
    `Nut reaches ${percent(worst)} of the pressure times speed that ${show('nut.material')} stands for long (${show('nut.pressure-velocity', 'high')}${bounds('motion.duty') ? '' : ', moving all the time assumed'}): it softens or wears fast. Longer nut, slower, or a ball screw.`,
});
