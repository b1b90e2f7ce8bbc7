import { check } from '../check.ts';
import { ownerIn } from '../support-words.ts';

export default check({
  id: 'support-lifts-off',
  title: 'A support lifts off',
  summary: 'The centre of gravity lies outside the supports, so that one of them would have to pull.',
  place: 'supports',
  figure: 'supports.reaction-least',
  bad: 'below',
  limits: [{ at: 0, severity: 'error', basis: 'follows from the mechanics', source: { title: 'statics' } }],
  because: ['axis.mass-places', 'axis.support-joints'],
  message: ({ show, note, certain }) =>
    `Weight lies outside the supports: ${ownerIn(note('supports.reaction-least'))} ${certain ? 'has' : 'may have'} to pull with ${show('supports.reaction-least', 'low').replace('-', '')}. It lifts off or takes up the play of its nut, and the part tips. Move supports or masses.`,
});
