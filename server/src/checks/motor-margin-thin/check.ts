import { check } from '../check.ts';
import { multipleBeside } from '../multiples.ts';

export default check({
  id: 'motor-margin-thin',
  title: 'Thin torque margin',
  summary: 'The motor has less than one and a half times the torque that the move asks for.',
  place: 'motion.speed',
  figure: 'motor.torque-margin',
  bad: 'below',
  limits: [{ at: 1.5, severity: 'warning', basis: 'common practice', source: { title: 'margin for stepping motors without position feedback; makers recommend 50 %', weak: true } }],
  // Below 1 the motor stalls, and that finding says so.
  when: ({ bounds }) => (bounds('motor.torque-margin')?.low ?? 0) >= 1,
  because: ['axis.moved-mass', 'motor.holding-torque', 'drive.current-setting', 'supply.voltage'],
  message: ({ show, bounds, worst, limit, certain }) =>
    `Motor ${certain ? 'has' : 'may have only'} ${multipleBeside(worst, limit)} the torque asked for (${show('motor.lifting-torque', 'high')} at ${show('motor.speed', 'high')}), less than the usual 1.5×: a tight spot may cost steps. ${
      bounds('axis.honest-speed') ? `Up to ${show('axis.honest-speed', 'low', 'motion.speed')} it has 1.5×; or ease the ramp.` : 'It lacks 1.5× even at rest: take a stronger motor, a reduction or a smaller lead.'
    }`,
});
