import { check, timesOf } from '../check.ts';

export default check({
  id: 'bushing-overheats',
  title: 'Plain bushings take more pressure times speed than they can shed',
  summary: 'Pressure times speed of the plain bushings, or their speed alone, is above what such a bearing bears for long.',
  place: 'guides',
  figure: 'guides.bushing-heat-use',
  bad: 'above',
  limits: [
    { at: 2, severity: 'error', basis: 'our threshold' },
    { at: 1, severity: 'warning', basis: 'book', source: { title: 'Mott, Machine Elements in Mechanical Design', where: 'Table 16-1, second-hand; wide ranges from memory', weak: true } },
  ],
  because: ['guides.heat-limit', 'motion.speed', 'motion.duty', 'guides.carriage-length'],
  message: ({ show, worst, certain, bounds, note }) => {
    const what = note('guides.bushing-heat-use') === undefined
      ? `pressure times speed reaches ${show('guides.bushing-pressure-velocity', 'high')}${bounds('motion.duty') ? '' : ' (moving all the time assumed)'}`
      : `they slide at ${show('motion.speed', 'high')}`;
    return `Bushings ${certain ? 'overheat' : 'may overheat'}: ${what}, ${timesOf(worst)} what such a bearing bears for long. It softens or wears fast. Slow the axis, or take longer bushings, a thicker shaft or ball bushings.`;
  },
});
