import { commissioning } from '../commissioning.ts';

export default commissioning({
  id: 'counts-per-length',
  title: 'Encoder counts per length',
  order: 12,
  shows: ['axis.counts-per-length'],
  digits: 6,
  caution: 'Turn the shaft one turn by hand with the power off and compare the count before the loop is closed: a wrong sign runs away.',
  hazards: ['pinch-point'],
});
