import { check } from '../check.ts';
import { worstVerdict } from '../unpowered.ts';

export default check({
  id: 'held-by-friction-alone',
  title: 'Axis is held by thread friction alone',
  summary: 'The thread holds the load with power off, with reserve, and nothing else does.',
  place: 'screw.size',
  concernsPeople: true,
  cautions: ['gravity-load'],
  basis: 'common practice',
  figure: 'screw.self-locking-factor',
  sources: [{ title: 'common practice, no published source: no sliding thread is a safety device' }],
  because: ['nut.friction', 'screw.lead'],
  judge: (facts) => {
    if (worstVerdict(facts) !== 'holds' || facts.choice('axis.catcher') === 'latch') return undefined;
    return (facts.bounds('drive.brake-factor')?.low ?? 0) >= 1.5 ? undefined : 'information';
  },
  message: ({ show, bounds }) =>
    `Thread friction alone holds this axis with power off, ${Number((bounds('screw.self-locking-factor')?.low ?? 0).toPrecision(3))} times at friction ${show('nut.friction', 'low')}. Vibration or oil can take it away: support the load before working beneath it.`,
});
