import { check, percent } from '../check.ts';

export default check({
  id: 'motor-past-its-corner',
  title: 'Motor runs past its corner speed',
  summary: 'Beyond the corner speed the supply no longer pushes the set current, and torque falls as 1/speed.',
  place: 'motion.speed',
  figure: 'motor.corner-use',
  bad: 'above',
  limits: [
    { at: 2, severity: 'warning', basis: 'our threshold' },
    { at: 1, severity: 'information', basis: 'follows from the mechanics' },
  ],
  // Given points say what the motor does there.
  when: ({ bounds }) => bounds('motor.curve-end') === undefined,
  because: ['supply.voltage', 'motor.inductance', 'drive.current-setting', 'screw.lead'],
  message: ({ show, worst }) =>
    `Motor turns at ${show('motor.speed', 'high')}, ${percent(worst)} of its corner speed of ${show('motor.corner-speed', 'low')}: torque is down to about ${percent(1 / worst)} there. A higher supply voltage, a larger lead or a slower axis keeps it below.`,
});
