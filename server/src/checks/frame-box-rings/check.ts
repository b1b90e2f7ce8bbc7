import { check } from '../check.ts';
import { RINGING_LIMITS, ringText, tolerancesText } from '../frame-words.ts';

export default check({
  id: 'frame-box-rings',
  title: 'Box frame rings over the tolerance',
  summary: 'After a jerk the top of the box swings by more than the tolerance or by much of it.',
  subject: 'machine',
  place: 'frame-box',
  figure: 'frame-box.ringing-use',
  bad: 'above',
  limits: RINGING_LIMITS,
  because: ['frame-box.acceleration', 'frame-box.moving-mass', 'frame.tolerance', 'frame-box.joint-stiffness'],
  message: (judged) =>
    `Box lets its top ring by ${ringText(judged, 'frame-box.ringing')} ${judged.note('frame-box.ringing') ?? ''} after a jerk, ${tolerancesText(judged, 'frame-box.ringing-use', judged.worst)} the tolerance: moves leave waves. Brace it there by a panel or diagonals, or accelerate less.`,
});
