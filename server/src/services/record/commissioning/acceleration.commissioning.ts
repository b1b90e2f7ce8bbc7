import { factor } from '../../../checks/check.ts';
import { commissioning } from '../commissioning.ts';

export default commissioning({
  id: 'acceleration',
  title: 'Acceleration to set',
  order: 21,
  shows: ['axis.peak-acceleration', 'motion.acceleration'],
  note: (view) => {
    const margin = view.bounds('motor.torque-margin');
    return margin === undefined ? 'as described' : `as described; at worst the motor gives ${factor(margin.low)} the torque asked for`;
  },
  caution: 'Begin at half of it. Run the longest move with the heaviest load several times, and check that the axis comes back to its place.',
});
