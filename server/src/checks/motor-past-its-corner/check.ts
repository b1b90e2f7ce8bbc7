import { check, percent, timesOf } from '../check.ts';
import { moreTravel } from '../unpowered.ts';

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
  // Given points say what the motor does there; and where torque is short, the finding about the torque says so.
  when: ({ bounds }) => bounds('motor.curve-end') === undefined && (bounds('motor.torque-margin')?.low ?? Infinity) >= (bounds('motor.margin-wanted')?.nominal ?? 1.5),
  // With the margin kept it is worth knowing, and no fault.
  milder: ({ bounds }) => bounds('motor.torque-margin') !== undefined,
  because: ['supply.voltage', 'motor.inductance', 'drive.current-setting', 'screw.lead', 'pulley.teeth', 'pinion.teeth'],
  message: (facts) =>
    `Motor ${facts.certain ? 'turns' : 'may turn'} at ${timesOf(facts.worst)} its corner speed (${facts.show('motor.speed', 'high')}, corner ${facts.show('motor.corner-speed', 'low')}): torque is down to about ${percent(1 / facts.worst)} there. A higher supply voltage, ${moreTravel(facts)} or a slower axis keeps it below.`,
});
