import { check, percent } from '../check.ts';

export default check({
  id: 'drive-gives-too-much',
  title: 'Drive gives under changing load',
  summary: 'Friction, work and inertia push the load off its place by more than a third of the accuracy wanted.',
  place: 'axis.accuracy',
  figure: 'drive.deflection-use',
  bad: 'above',
  limits: [{ at: 1 / 3, severity: 'warning', basis: 'common practice' }],
  because: ['nut.stiffness', 'thrust-bearing.stiffness', 'screw.root-diameter', 'motor.holding-torque'],
  message: ({ show, worst }) =>
    `Drive gives ${show('drive.deflection', 'high')} under the changing load, ${percent(worst)} of the accuracy wanted, where a third is usual: the axis is off while it moves or works. Stiffen its softest link: ${show('drive.axial-stiffness', 'low')} in all.`,
});
