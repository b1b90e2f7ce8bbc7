import { check } from '../check.ts';

/** Force above which a moving axis is named as a pinch point, N. */
const CLAMPING_FORCE = 150;

export default check({
  id: 'pinch-point',
  title: 'Pinch point',
  summary: 'The axis can push hard enough to hurt a trapped hand.',
  place: 'axis',
  figure: 'drive.push-force',
  bad: 'above',
  limits: [{ at: CLAMPING_FORCE, severity: 'information', basis: 'our threshold', source: { title: 'about the clamping force that powered doors may not exceed (EN 12453)', weak: true } }],
  concernsPeople: true,
  cautions: ['pinch-point'],
  when: ({ choice }) => choice('axis.people-below') !== 'guarded',
  because: ['motor.holding-torque', 'drive.current-setting', 'screw.lead'],
  message: ({ show }) =>
    `Axis can push with up to ${show('drive.push-force', 'high')}: enough to hurt a hand between moving and fixed parts. Guard the reach as the local machinery code requires, and write people-below: guarded.`,
});
