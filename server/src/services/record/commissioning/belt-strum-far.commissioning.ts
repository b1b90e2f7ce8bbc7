import { commissioning } from '../commissioning.ts';

export default commissioning({
  id: 'belt-strum-far',
  title: 'Strum of the belt, carriage at the far end',
  order: 42,
  shows: ['belt.strum-frequency-far'],
  caution: 'As at the near end. The two together tell a wrong length from a wrong tension.',
  hazards: ['stored-energy'],
});
