import { check } from '../check.ts';

export default check({
  id: 'ramp-looks-slipped',
  title: 'Acceleration looks too small',
  summary: 'The axis takes seconds to reach its speed: often a slip in the unit of the acceleration.',
  place: 'motion.acceleration',
  figure: 'axis.ramp-time',
  bad: 'above',
  limits: [{ at: 2, severity: 'information', basis: 'our threshold', source: { title: 'ramps of screw axes take hundredths to tenths of a second; common practice, no published source' } }],
  because: ['motion.speed'],
  message: ({ show }) =>
    `Axis takes ${show('axis.ramp-time')} to reach ${show('motion.speed')} at ${show('motion.acceleration')}: is the acceleration meant in another unit, in g perhaps? Torque and time rest on it.`,
});
