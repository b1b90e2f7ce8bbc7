import { commissioning } from '../commissioning.ts';

export default commissioning({
  id: 'steps-per-length',
  title: 'Steps per millimetre',
  order: 11,
  shows: ['axis.steps-per-length'],
  digits: 6,
  caution: 'Holds for the microsteps written in the description. Change both together, and home the axis again afterwards.',
});
