import { check } from '../check.ts';

export default check({
  id: 'thrust-through-coupling',
  title: 'Thrust passes into the motor',
  summary: 'No thrust bearing takes the axial load: it passes through the coupling into the motor.',
  place: 'thrust-bearing.design',
  figure: 'drive.thrust-on-motor',
  bad: 'above',
  limits: [{ at: 0, severity: 'warning', basis: 'common practice' }],
  because: ['axis.moved-mass', 'coupling.form'],
  message: ({ show, isDefault }) =>
    `${isDefault('thrust-bearing.design') ? 'No thrust bearing is described' : 'There is no thrust bearing'}: up to ${show('drive.thrust-on-motor', 'high')} pass through the coupling into the motor, whose bearings are not made for it, and the coupling gives along the axis. Add a thrust bearing.`,
});
