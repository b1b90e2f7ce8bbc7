import { fallbacks } from '../input.ts';
import { between } from '../values.ts';

export default fallbacks(
  { input: 'brake.holding-torque', symbol: 'T_b' },
  {
    input: 'brake.at',
    // At the screw it counts once, at the motor by the ratio: the smaller of the two for every ordinary reduction.
    handbook: () => ({ value: { type: 'choice', text: 'screw' }, source: 'taken to sit on the screw, the cautious side, since nothing else is written' }),
  },
  { input: 'counterbalance.force', symbol: 'F_c,m' },
  {
    input: 'counterbalance.carried-force',
    title: 'Force of the counterbalance over the travel',
    symbol: 'F_c',
    quantity: 'force',
    compose: (read) => {
      const force = read.number('counterbalance.force');
      const origin = read.origin('counterbalance.force');
      if (!force || !origin) return undefined;
      // A spring pulls less where it is shorter: over the travel its force runs through a range, whose ends both have to do.
      const half = ((read.number('counterbalance.rate')?.high ?? 0) * (read.number('axis.travel')?.high ?? 0)) / 2;
      return { value: { type: 'number', ...between(force.low - half, force.nominal, force.high + half), unit: 'N' }, origin };
    },
  },
  { input: 'counterbalance.mass', symbol: 'm_c' },
  { input: 'axis.travel', symbol: 'h' },
);
