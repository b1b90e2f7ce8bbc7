import { check, percent } from '../check.ts';
import { ownerIn } from '../support-words.ts';

export default check({
  id: 'support-share-small',
  title: 'A support carries next to nothing',
  summary: 'One support carries less than a tenth of the weight, so that a small shift lifts it.',
  place: 'supports',
  figure: 'supports.share-least',
  bad: 'below',
  limits: [{ at: 0.1, severity: 'warning', basis: 'common practice', source: { title: 'rule of thumb for three-point supports, no published source' } }],
  // Below nothing it lifts off, which another finding says; of many supports none has a tenth.
  when: ({ bounds }) => (bounds('supports.reaction-least')?.low ?? 0) >= -1e-6 && (bounds('supports.carriers')?.nominal ?? 0) <= 4,
  because: ['axis.mass-places', 'axis.support-joints'],
  message: ({ note, worst, certain }) =>
    `${ownerIn(note('supports.share-least')).replace(/^./, (first) => first.toUpperCase())} ${certain ? 'carries' : 'may carry'} only ${percent(worst)} of the weight, where a tenth is the least that is usual: a load that shifts a little lifts it. Move supports or masses so that all carry.`,
});
