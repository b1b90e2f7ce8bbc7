import { check, percent, sideBySide, timesOf } from '../check.ts';
import { hasFeedback, namesItsOwnLimit } from '../motor-kinds.ts';

export default check({
  id: 'motor-cannot-lift',
  title: 'Motor stalls in the move',
  summary: 'The torque demanded while speeding up is more than the motor has at that speed.',
  place: 'motion.speed',
  figure: 'motor.torque-margin',
  bad: 'below',
  limits: [{ at: 1, severity: 'error', basis: 'follows from the mechanics' }],
  // A motor or an amplifier that is asked for more than its own limit has a finding that says so.
  when: ({ bounds }) => !namesItsOwnLimit(bounds),
  because: ['axis.moved-mass', 'motor.holding-torque', 'drive.current-setting', 'supply.voltage'],
  message: ({ show, bounds, choice, worst, limit, certain }) => {
    const fate = hasFeedback(choice) ? 'falls behind until it stops with an error' : 'loses its place';
    const cure = 'Slow down, ease the ramp, or take a stronger motor or a reduction.';
    const stalls = `Motor ${certain ? 'stalls' : 'may stall'} in the move`;
    // With a limit of jerk full speed and full acceleration do not come together.
    if (bounds('motion.jerk') && worst > 0) return `${stalls}: at the worst instant of the ramp it has ${percent(worst / limit)} of the torque asked for, and ${fate}. ${cure}`;
    const [asked, has] = sideBySide(bounds('motor.lifting-torque')?.high ?? 0, bounds('motor.available-torque')?.low ?? 0, 'torque');
    const compared = worst > 0 ? `${timesOf(limit / worst)} the ${has} that it has there` : 'where it has none left';
    return `${stalls}: it is asked for ${asked} at ${show('motor.speed', 'high')}, ${compared}, and ${fate}. ${cure}`;
  },
});
