import { check, factor } from '../check.ts';
import { railsPress } from '../rails-press.ts';

export default check({
  id: 'guide-static-safety-low',
  title: 'Guides are pressed too hard',
  summary: 'The static rating of carriages or ball bushings is not far enough above their greatest load, and the balls may dent the races.',
  place: 'guides',
  figure: 'guides.static-safety',
  bad: 'below',
  limits: [
    { at: 1, severity: 'error', basis: 'standard', source: { title: 'ISO 14728-2, as quoted in the trade', weak: true } },
    { at: 2, severity: 'warning', basis: 'common practice', source: { title: 'tables of rail makers: 2 without and 5 with shock', weak: true } },
  ],
  // One cause, one finding: rails-out-of-line names it.
  when: (facts) => !railsPress(facts),
  because: ['guides.static-rating', 'guides.size', 'axis.moved-mass', 'guides.drive-offset'],
  message: ({ show, worst, certain, isDefault }) =>
    `Carriages carry ${show('guides.equivalent-load', 'high')}, moments counted: static safety ${certain ? '' : 'may be only '}${factor(worst)}${isDefault('guides.static-rating') ? ' by a usual rating' : ''}, where 2 is usual; balls ${worst < 1 ? '' : 'may '}dent the races. Take a larger size or set carriages farther apart.`,
});
