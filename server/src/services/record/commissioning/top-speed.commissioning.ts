import { commissioning } from '../commissioning.ts';

export default commissioning({
  id: 'top-speed',
  title: 'Highest speed to set',
  order: 20,
  shows: ['axis.speed-limit'],
  end: 'low',
  caution: 'Begin at half of it and raise it while you watch. Hands clear, and the stop button within reach.',
  hazards: ['pinch-point'],
});
