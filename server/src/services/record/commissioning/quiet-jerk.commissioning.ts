import { commissioning } from '../commissioning.ts';

export default commissioning({
  id: 'quiet-jerk',
  title: 'Jerk at which the axis rings little',
  order: 23,
  shows: ['axis.quiet-jerk'],
  end: 'low',
  caution: 'Rests on an estimate of the stiffness: listen and measure, then adjust.',
});
