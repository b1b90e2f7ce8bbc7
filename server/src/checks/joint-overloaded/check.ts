import { check, percent } from '../check.ts';
import { caseIn, ownerIn } from '../support-words.ts';

export default check({
  id: 'joint-overloaded',
  title: 'Joint carries more than it may',
  summary: 'The load in use, growth and misalignment press a support with more than the load limit written for it.',
  place: 'supports',
  figure: 'supports.load-use',
  bad: 'above',
  limits: [{ at: 1, severity: 'error', basis: 'common practice', source: { title: 'the limit written in the description' } }],
  because: ['axis.support-joints', 'axis.mass-places', 'motion.acceleration'],
  message: ({ note, worst, certain }) =>
    `Joint at ${ownerIn(note('supports.load-use'))} ${certain ? 'carries' : 'may carry'} ${percent(worst)} of its load limit${caseIn(note('supports.load-use'))}: it wears out or breaks. Share the load more evenly, remove what jams, or take a stronger joint.`,
});
