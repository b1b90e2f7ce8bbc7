import { check, factor, percent } from '../check.ts';

export default check({
  id: 'torque-points-doubtful',
  title: 'Torque points and winding data disagree',
  summary: 'The given points of torque lie far from what holding torque, current, inductance and voltage let expect.',
  place: 'motor.torque-points',
  figure: 'motor.points-over-estimate',
  basis: 'our threshold',
  sources: [{ title: 'simulated motors without losses reach up to 1.6 times the estimate; losses take at most about half', weak: true }],
  judge: ({ bounds }) => {
    const share = bounds('motor.points-over-estimate');
    return share && (share.nominal < 0.5 || share.nominal > 1.7) ? 'warning' : undefined;
  },
  because: ['motor.torque-points-voltage', 'motor.holding-torque', 'motor.inductance', 'supply.voltage'],
  message: ({ bounds, show }) => {
    const share = bounds('motor.points-over-estimate')?.nominal ?? Number.NaN;
    const relation = share < 1 ? percent(share) : factor(share);
    return `Given torque at ${show('motor.speed')} is ${relation} of the ${show('motor.estimated-torque')} that the winding data let expect: one of the two is off. Look for a slip in units, in the current, or in the voltage of the points.`;
  },
});
