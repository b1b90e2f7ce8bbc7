import { check, type Facts } from '../check.ts';

/** From this wrap on only a larger pulley helps, rad. */
const WRAPPED_WELL = 3;

/** A pulley below the least of its profile has a finding of its own, and the same cure, where the belt lies round half of it. */
const isPulleysFault = ({ bounds }: Facts): boolean => (bounds('pulley.teeth-over-least')?.low ?? 1) < 1 && (bounds('pulley.wrap')?.low ?? 0) >= WRAPPED_WELL;

export default check({
  id: 'belt-teeth-few',
  title: 'Too few teeth in mesh',
  summary: 'Fewer than six teeth of the driving pulley lie in the belt.',
  place: 'pulley.teeth',
  figure: 'pulley.teeth-in-mesh',
  bad: 'below',
  limits: [
    { at: 3, severity: 'error', basis: 'our threshold' },
    { at: 6, severity: 'warning', basis: 'common practice', source: { title: 'application note on tooth engagement, read', where: 'a fifth of the capacity for each tooth missing from six' } },
  ],
  when: (facts) => !isPulleysFault(facts),
  because: ['pulley.teeth', 'pulley.wrap', 'belt.center-distance'],
  message: ({ show, severity }) =>
    `Only ${show('pulley.teeth-in-mesh', 'low')} teeth of the pulley ${severity === 'information' ? 'may be' : 'are'} in mesh, where six carry fully: the belt keeps ${show('belt.mesh-factor', 'low')} of its capacity and may jump. Lead it farther round the pulley, or take one with more teeth.`,
});
