import { check, sideBySide, timesOf } from '../check.ts';

export default check({
  id: 'motor-cannot-lift',
  title: 'Motor stalls in the move',
  summary: 'The torque demanded while speeding up is more than the motor has at that speed.',
  place: 'motion.speed',
  figure: 'motor.torque-margin',
  bad: 'below',
  limits: [{ at: 1, severity: 'error', basis: 'follows from the mechanics' }],
  because: ['axis.moved-mass', 'motor.holding-torque', 'drive.current-setting', 'supply.voltage'],
  message: ({ show, bounds, worst, limit, certain }) => {
    const [asked, has] = sideBySide(bounds('motor.lifting-torque')?.high ?? 0, bounds('motor.available-torque')?.low ?? 0, 'torque');
    const compared = worst > 0 ? `${timesOf(limit / worst)} the ${has} that it has there` : 'where it has none left';
    return `Motor ${certain ? 'stalls' : 'may stall'} in the move: it is asked for ${asked} at ${show('motor.speed', 'high')}, ${compared}, and loses its place. Slow down, ease the ramp, or take a stronger motor or a reduction.`;
  },
});
