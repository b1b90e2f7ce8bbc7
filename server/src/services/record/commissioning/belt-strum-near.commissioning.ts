import { commissioning } from '../commissioning.ts';

export default commissioning({
  id: 'belt-strum-near',
  title: 'Strum of the belt, carriage at the near end',
  order: 41,
  shows: ['belt.strum-frequency-near'],
  caution: 'Pluck the long stretch with the power off. Wide or short stretches sound higher than the formula says: check by a gauge where it matters.',
  hazards: ['stored-energy'],
});
