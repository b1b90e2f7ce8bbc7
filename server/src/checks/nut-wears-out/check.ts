import { check, timesOf } from '../check.ts';

export default check({
  id: 'nut-wears-out',
  title: 'Nut wears beyond the accuracy within a year',
  summary: 'The play that a year of wear adds is larger than the accuracy wanted.',
  place: 'nut.material',
  figure: 'nut.play-growth',
  bad: 'above',
  limits: [{ at: 'axis.accuracy', severity: 'warning', basis: 'book', source: { title: 'The Tribology Handbook', where: 'section A5 (wear law); specific wear from memory', weak: true } }],
  when: (facts) => ['plain', 'adjustable'].includes(facts.choice('nut.design') ?? 'plain'),
  because: ['nut.specific-wear', 'motion.distance-per-year', 'axis.accuracy', 'nut.length'],
  message: ({ show, worst, limit, certain }) =>
    `Nut ${certain ? 'gains' : 'may gain'} ${show('nut.play-growth', 'high', 'axis.accuracy')} of play in a year, ${timesOf(worst / limit)} the ${show('axis.accuracy', 'low')} wanted: positions drift and reversals lose motion. Plan to replace it, or take a longer nut, grease, or a harder material.`,
});
