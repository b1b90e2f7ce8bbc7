import { check, percent } from '../check.ts';

export default check({
  id: 'frame-walks',
  title: 'Machine walks',
  summary: 'Accelerating the moving mass makes the feet slide.',
  subject: 'machine',
  place: 'frame-box.acceleration',
  figure: 'frame-box.walking-use',
  bad: 'above',
  limits: [
    { at: 1, severity: 'warning', basis: 'follows from the mechanics', source: { title: 'dry friction' } },
    { at: 0.7, severity: 'information', basis: 'our threshold', source: { title: 'leaves room for what shakes along' } },
  ],
  because: ['frame-box.moving-mass', 'frame-box.mass', 'frame-box.foot-friction'],
  message: ({ worst, show }) =>
    `Acceleration of ${show('frame-box.acceleration', 'high')} is ${percent(worst)} of the ${show('frame-box.walking-acceleration', 'low')} at which the feet slide and the machine wanders. Slow the acceleration, take rubber feet, add weight, or fasten the machine.`,
});
