import { check, timesOf } from '../check.ts';

export default check({
  id: 'motor-beyond-its-points',
  title: 'Motor turns faster than its torque curve reaches',
  summary: 'The given points of torque end below the speed of the move; nothing is known beyond.',
  place: 'motion.speed',
  figure: 'motor.speed',
  bad: 'above',
  limits: [{ at: 'motor.curve-end', severity: 'warning', basis: 'follows from the mechanics' }],
  because: ['motor.torque-points-voltage', 'supply.voltage'],
  message: ({ show, worst, limit }) =>
    `Motor turns at ${show('motor.speed', 'high')}, ${timesOf(worst / limit)} where the given torque curve ends (${show('motor.curve-end', 'low')} at this supply): its torque there is unknown. Add points up to this speed, or slow the axis.`,
});
