import { check, percent } from '../check.ts';
import { caseIn, ownerIn } from '../support-words.ts';

export default check({
  id: 'support-share-small',
  title: 'A support carries next to nothing',
  summary: 'A support that merely pushes, or a nut with play, carries less than a tenth of the load at the worst, so that a small shift lifts it.',
  place: 'supports',
  figure: 'supports.lift-off-share',
  bad: 'below',
  limits: [{ at: 0.1, severity: 'warning', basis: 'common practice', source: { title: 'rule of thumb for three-point supports, no published source' } }],
  // Below nothing it lifts off, which another finding says; of many supports none has a tenth.
  when: ({ bounds }) => (bounds('supports.lift-off-load')?.low ?? 0) >= -1e-6 && (bounds('supports.carriers')?.nominal ?? 0) <= 4,
  because: ['axis.mass-places', 'axis.support-joints', 'motion.acceleration'],
  message: ({ note, worst, certain }) =>
    `${ownerIn(note('supports.lift-off-share')).replace(/^./, (first) => first.toUpperCase())} ${certain ? 'carries' : 'may carry'} only ${percent(worst)} of the weight${caseIn(note('supports.lift-off-share'))}, where a tenth is the least that is usual: a small shift lifts it. Move supports or masses so that all carry.`,
});
