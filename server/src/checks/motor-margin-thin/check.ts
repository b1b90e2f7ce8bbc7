import { check } from '../check.ts';
import { hasFeedback } from '../motor-kinds.ts';
import { multipleBeside } from '../multiples.ts';

export default check({
  id: 'motor-margin-thin',
  title: 'Thin torque margin',
  summary: 'The motor has less than the usual margin of torque over what the move asks for.',
  place: 'motion.speed',
  figure: 'motor.torque-margin',
  bad: 'below',
  limits: [
    {
      at: 'motor.margin-wanted', severity: 'warning', basis: 'common practice',
      source: { title: '1.5 for stepping motors without position feedback, of which makers recommend 50 %; 1.15 with it; 1.1 for DC and brushless motors', weak: true },
    },
  ],
  // Below 1 the motor stalls, and that finding says so.
  when: ({ bounds }) => (bounds('motor.torque-margin')?.low ?? 0) >= 1,
  because: ['axis.moved-mass', 'motor.holding-torque', 'drive.current-setting', 'supply.voltage'],
  message: ({ show, bounds, choice, worst, limit, certain }) => {
    const usual = `${Number(limit.toPrecision(3))}×`;
    const asked = bounds('motion.jerk') ? 'at the worst instant of the ramp' : `(${show('motor.lifting-torque', 'high')} at ${show('motor.speed', 'high')})`;
    const risk = hasFeedback(choice) ? 'a tight spot may make it fall behind' : 'a tight spot may cost steps';
    const honest = bounds('axis.honest-speed') ? `Up to ${show('axis.honest-speed', 'low', 'motion.speed')} it has ${usual}; or ease the ramp.` : `It lacks ${usual} even at rest: take a stronger motor, a reduction or a smaller lead.`;
    return `Motor ${certain ? 'has' : 'may have only'} ${multipleBeside(worst, limit)} the torque asked for ${asked}, less than the usual ${usual}: ${risk}. ${honest}`;
  },
});
