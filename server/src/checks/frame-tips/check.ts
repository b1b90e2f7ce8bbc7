import { check, percent } from '../check.ts';

export default check({
  id: 'frame-tips',
  title: 'Machine tips',
  summary: 'Accelerating the moving mass lifts a foot of the machine.',
  subject: 'machine',
  place: 'frame-box.acceleration',
  figure: 'frame-box.tipping-use',
  bad: 'above',
  concernsPeople: true,
  limits: [
    { at: 1, severity: 'warning', basis: 'follows from the mechanics', source: { title: 'balance of moments about an edge of the feet' } },
    { at: 0.7, severity: 'information', basis: 'our threshold', source: { title: 'leaves room for what rocks along' } },
  ],
  because: ['frame-box.moving-mass', 'frame-box.mass', 'frame-box.moving-height'],
  message: ({ worst, show }) =>
    `Acceleration of ${show('frame-box.acceleration', 'high')} is ${percent(worst)} of the ${show('frame-box.tipping-acceleration', 'low')} at which a foot lifts and the machine may fall. Slow the acceleration, set the feet farther apart, move the mass lower, or fasten the machine.`,
});
