import { commissioning } from '../commissioning.ts';

export default commissioning({
  id: 'current-limit',
  title: 'Current limit of the amplifier',
  order: 32,
  when: (view) => view.choice('motor.kind') !== 'stepper',
  shows: ['drive.current-limit'],
  note: (view) => (view.bounds('motor.demanded-current') === undefined ? undefined : `the hardest move asks for ${view.show('motor.demanded-current', 'high')}`),
  caution: 'Begin with a low limit and short moves, until direction and feedback are proven.',
  hazards: ['pinch-point'],
});
