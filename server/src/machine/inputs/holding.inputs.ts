import { fallbacks } from '../input.ts';

export default fallbacks(
  { input: 'brake.holding-torque', symbol: 'T_b' },
  {
    input: 'brake.at',
    // At the screw it counts once, at the motor by the ratio: the smaller of the two for every ordinary reduction.
    handbook: () => ({ value: { type: 'choice', text: 'screw' }, source: 'taken to sit on the screw, the cautious side, since nothing else is written' }),
  },
  { input: 'counterbalance.force', symbol: 'F_c' },
  { input: 'counterbalance.mass', symbol: 'm_c' },
  { input: 'axis.travel', symbol: 'h' },
);
