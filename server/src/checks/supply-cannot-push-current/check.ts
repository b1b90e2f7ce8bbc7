import { check, timesOf } from '../check.ts';

export default check({
  id: 'supply-cannot-push-current',
  title: 'Supply cannot push the set current',
  summary: 'The resistance of the winding alone takes more than the supply voltage at the set current.',
  place: 'drive.current-setting',
  figure: 'motor.resistive-use',
  bad: 'above',
  limits: [{ at: 1, severity: 'error', basis: 'follows from the mechanics', source: { title: "Ohm's law" } }],
  because: ['supply.voltage', 'motor.resistance', 'drive.current-setting-as'],
  message: ({ show, worst }) =>
    `Set current of ${show('motor.peak-current', 'high')} peak takes ${timesOf(worst)} the ${show('supply.voltage', 'low')} supply across ${show('motor.resistance', 'high')} at rest: it is never reached, and torque is missing. Take a higher voltage or a winding of lower resistance.`,
});
