import { check } from '../check.ts';

export default check({
  id: 'free-end-swings',
  title: 'Free end of the screw swings',
  summary: 'The free end of the screw swings out at top speed.',
  place: 'screw.end-supports',
  figure: 'screw.tip-run-out',
  bad: 'above',
  limits: [{ at: 0.25e-3, severity: 'information', basis: 'our threshold' }],
  // A screw near its whirl speed has its finding; how far it swings then is beyond this reckoning.
  when: ({ bounds }) => (bounds('screw.whirl-use')?.high ?? 0) <= (bounds('screw.whirl-share')?.nominal ?? 0),
  because: ['screw.run-out', 'motion.speed', 'screw.unsupported-length'],
  message: ({ show }) =>
    `Free end of the screw swings out by ${show('screw.tip-run-out', 'high')} at top speed: it shakes the axis and can touch what is near. Give it a floating bearing, or take a straighter screw.`,
});
