import { check, timesOf } from '../check.ts';

export default check({
  id: 'motor-error-over-accuracy',
  title: 'Motor alone uses up the accuracy',
  summary: 'Dead band and step error of the motor are larger than the accuracy wanted.',
  place: 'axis.accuracy',
  figure: 'axis.motor-position-use',
  bad: 'above',
  limits: [
    { at: 3, severity: 'error', basis: 'our threshold' },
    { at: 1, severity: 'warning', basis: 'follows from the mechanics' },
  ],
  because: ['screw.lead', 'pulley.teeth', 'guides.friction-force', 'nut.friction', 'motor.step-error'],
  message: ({ show, worst, certain }) =>
    `Motor alone ${certain ? 'uses' : 'may use'} ${timesOf(worst)} the accuracy: it rests within ${show('axis.motor-position-error', 'high', 'axis.accuracy')} of ${show('axis.accuracy', 'low')} wanted, dead band ${show('axis.dead-band', 'high', 'axis.accuracy')} from friction, the rest step error. Take a finer lead, less friction or more torque.`,
});
