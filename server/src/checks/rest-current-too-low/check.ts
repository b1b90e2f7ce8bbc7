import { check } from '../check.ts';
import { multipleBeside } from '../multiples.ts';

export default check({
  id: 'rest-current-too-low',
  title: 'Rest current hardly holds the load',
  summary: 'With the current lowered at rest, the motor has too little torque for the load that hangs on it.',
  place: 'drive.rest-current',
  figure: 'motor.rest-factor',
  bad: 'below',
  limits: [
    { at: 1.5, severity: 'error', basis: 'common practice', source: { title: 'reserve of a holding motor', weak: true } },
    { at: 2, severity: 'warning', basis: 'common practice', source: { title: 'reserve of a holding motor', weak: true } },
  ],
  concernsPeople: true,
  cautions: ['gravity-load'],
  because: ['axis.moved-mass', 'motor.holding-torque', 'drive.current-setting', 'screw.lead'],
  message: ({ show, worst, limit }) =>
    `Motor at rest has ${show('motor.rest-torque', 'low')}, ${multipleBeside(worst, limit)} what the load asks for (${show('motor.holding-torque-needed', 'high')}): a knock can make it fall with power on. Raise the rest current, or hold the load by a brake or a locking thread.`,
});
