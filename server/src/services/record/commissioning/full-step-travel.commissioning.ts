import { commissioning } from '../commissioning.ts';

export default commissioning({
  id: 'full-step-travel',
  title: 'Travel of a full step',
  order: 13,
  shows: ['axis.full-step-travel'],
  digits: 6,
  caution: 'A motor that lost its place is off by whole multiples of four of them: measure for that before a setting is blamed.',
});
