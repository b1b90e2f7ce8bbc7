import { check, percent } from '../check.ts';

export default check({
  id: 'motor-cannot-lift',
  title: 'Motor stalls in the move',
  summary: 'The torque demanded while speeding up is more than the motor has at that speed.',
  place: 'motion.speed',
  figure: 'motor.torque-margin',
  bad: 'below',
  limits: [{ at: 1, severity: 'error', basis: 'follows from the mechanics' }],
  because: ['axis.moved-mass', 'motor.holding-torque', 'drive.current-setting', 'supply.voltage'],
  message: ({ show, worst, limit }) =>
    `Motor is asked for ${show('motor.lifting-torque', 'high')} at ${show('motor.speed', 'high')}, ${percent(limit / worst)} of what it has there (${show('motor.available-torque', 'low')}): it stalls and loses its place. Slow down, ease the ramp, or take a stronger motor or a reduction.`,
});
