import { check } from '../check.ts';
import { RINGING_LIMITS, ringText, tolerancesText } from '../frame-words.ts';

export default check({
  id: 'gantry-rings',
  title: 'Gantry beam rings over the tolerance',
  summary: 'After a jerk the gantry beam swings sideways by more than the tolerance or by much of it.',
  subject: 'machine',
  place: 'frame-gantry',
  figure: 'frame-gantry.ringing-use',
  bad: 'above',
  limits: RINGING_LIMITS,
  because: ['frame.acceleration', 'frame.tolerance', 'frame-gantry.span', 'frame-gantry.carried-mass'],
  message: (judged) =>
    `Gantry beam rings sideways by ${ringText(judged, 'frame-gantry.ringing')} after a jerk, ${tolerancesText(judged, 'frame-gantry.ringing-use', judged.worst)} the tolerance: moves leave waves. Take a wider section, clamp its ends, or accelerate less.`,
});
