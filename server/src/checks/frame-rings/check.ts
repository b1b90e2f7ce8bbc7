import { check } from '../check.ts';
import { RINGING_LIMITS, ringText, tolerancesText } from '../frame-words.ts';

export default check({
  id: 'frame-rings',
  title: 'Frame rings over the tolerance',
  summary: 'After a jerk the tool swings against the work by more than the tolerance or by much of it.',
  subject: 'machine',
  place: 'frame',
  figure: 'frame.ringing-use',
  bad: 'above',
  limits: RINGING_LIMITS,
  because: ['frame.acceleration', 'frame.moving-mass', 'frame.tolerance', 'frame.joint'],
  message: (judged) =>
    `Frame lets the tool ring by ${ringText(judged, 'frame.ringing')} ${judged.note('frame.ringing') ?? ''} after a jerk, ${tolerancesText(judged, 'frame.ringing-use', judged.worst)} the tolerance: moves leave waves. Add a diagonal there, take stiffer joints, or accelerate less.`,
});
