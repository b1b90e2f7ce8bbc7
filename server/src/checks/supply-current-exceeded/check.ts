import { check, percent } from '../check.ts';

export default check({
  id: 'supply-current-exceeded',
  title: 'Supply too small for this axis',
  summary: 'The motors of one axis alone take more than their supply gives.',
  place: 'drive.supply',
  figure: 'drive.supply-use',
  bad: 'above',
  limits: [
    { at: 1, severity: 'error', basis: 'follows from the mechanics' },
    { at: 0.8, severity: 'warning', basis: 'our threshold' },
  ],
  because: ['supply.current', 'supply.voltage', 'drive.current-setting', 'axis.moved-mass'],
  message: ({ show, worst }) =>
    `Axis takes up to ${show('drive.supply-current', 'high')} from its supply while speeding up, ${percent(worst)} of the ${show('supply.current', 'low')} it gives, other loads not counted: the voltage sags and torque with it. Take a larger supply or a gentler move.`,
});
