import { commissioning } from '../commissioning.ts';

export default commissioning({
  id: 'jump-speed',
  title: 'Speed jump at corners and reversals',
  order: 22,
  shows: ['axis.start-speed'],
  end: 'low',
  note: () => 'at most',
  caution: 'A rough estimate. Stay well below it where something hangs from the axis or can topple.',
});
