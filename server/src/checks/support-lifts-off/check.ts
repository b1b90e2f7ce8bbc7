import { check } from '../check.ts';
import { caseIn, ownerIn } from '../support-words.ts';

export default check({
  id: 'support-lifts-off',
  title: 'A support lifts off',
  summary: 'With masses at their worst places and in motion, a support that merely pushes, or a nut with play, would have to pull.',
  place: 'supports',
  figure: 'supports.lift-off-load',
  bad: 'below',
  limits: [{ at: 0, severity: 'error', basis: 'follows from the mechanics', source: { title: 'statics' } }],
  because: ['axis.mass-places', 'axis.support-joints', 'motion.acceleration'],
  message: ({ show, note, certain }) =>
    `Load lies outside the supports: ${ownerIn(note('supports.lift-off-load'))} ${certain ? 'has' : 'may have'} to pull with ${show('supports.lift-off-load', 'low').replace('-', '')}${caseIn(note('supports.lift-off-load'))}. It lifts off or takes up its play, and the part tips. Move supports or masses.`,
});
