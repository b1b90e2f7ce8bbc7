import { commissioning } from '../commissioning.ts';

export default commissioning({
  id: 'belt-tension',
  title: 'Belt tension at rest',
  order: 40,
  shows: ['belt.tension'],
  note: (view) => (view.bounds('belt.tension-needed') === undefined ? undefined : `${view.show('belt.tension-needed', 'high')} are needed at worst`),
  caution: 'Tighten with the power off and the load held mechanically.',
  hazards: ['stored-energy', 'pinch-point'],
});
