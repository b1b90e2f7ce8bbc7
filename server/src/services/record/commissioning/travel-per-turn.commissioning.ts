import { commissioning } from '../commissioning.ts';

export default commissioning({
  id: 'travel-per-turn',
  title: 'Travel per turn of the motor',
  order: 10,
  shows: ['axis.travel-per-turn'],
  digits: 6,
  caution: 'From nominal sizes. Command a long move, measure it, and correct the setting by what you find.',
});
