import { commissioning } from '../commissioning.ts';

export default commissioning({
  id: 'levelling-order',
  title: 'Lifts in the order of levelling',
  order: 50,
  shows: (view) => {
    const lifts = view.list('levelling', 'lifts');
    return lifts === undefined || lifts.length === 0 ? undefined : lifts.map((lift, index) => `${index + 1}. ${lift}`).join(', ');
  },
  note: (view) => (view.bounds('levelling.step') === undefined ? undefined : `steps of ${view.show('levelling.step')}`),
  caution: 'Move each lift a little at a time and go round more than once; a part that is held firmly at three places bends when one is lifted far.',
  hazards: ['pinch-point'],
});
