import { check, timesOf } from '../check.ts';
import { motorIsTold } from '../thrust.ts';

export default check({
  id: 'motor-shaft-overloaded',
  title: 'Load rests on the motor bearings',
  summary: 'Without a thrust bearing the axial load passes into the motor, which bears little.',
  place: 'motor.axial-load-limit',
  figure: 'motor.shaft-axial-use',
  bad: 'above',
  limits: [{ at: 1, severity: 'warning', basis: 'common practice', source: { title: 'axial load limit of the motor; usual values by size from memory', weak: true } }],
  when: motorIsTold,
  because: ['thrust-bearing.design', 'axis.moved-mass', 'motor.frame', 'motor.axial-load-limit'],
  message: ({ show, worst, certain, isDefault }) =>
    `Motor bearings take up to ${show('drive.thrust-on-motor', 'high', 'motor.axial-load-limit')}, ${timesOf(worst)} the ${show('motor.axial-load-limit', 'low')} that ${
      isDefault('motor.axial-load-limit') ? 'the weakest of this size bear' : 'they bear'
    }: they ${certain ? 'wear' : 'may wear'} and the shaft shifts. Give the screw a thrust bearing.`,
});
