import { check } from '../check.ts';
import { transmission, transmissionPlace, worstVerdict } from '../unpowered.ts';

export default check({
  id: 'held-by-friction-alone',
  title: 'Axis is held by friction alone',
  summary: 'Thread or guides hold the load with power off, with reserve, and nothing else does.',
  place: transmissionPlace,
  concernsPeople: true,
  cautions: ['gravity-load'],
  basis: 'common practice',
  figure: 'screw.self-locking-factor',
  sources: [{ title: 'common practice, no published source: no sliding thread is a safety device' }],
  because: ['nut.friction', 'screw.lead', 'guides.friction-force'],
  judge: (facts) => {
    const load = facts.bounds('drive.gravity-load');
    // A full balance leaves nothing for friction to hold.
    if (!load || (load.low === 0 && load.high === 0)) return undefined;
    if (worstVerdict(facts) !== 'holds' || facts.choice('axis.catcher') === 'latch') return undefined;
    return (facts.bounds('drive.brake-factor')?.low ?? 0) >= 1.5 ? undefined : 'information';
  },
  message: (facts) => {
    const { show, bounds } = facts;
    if (transmission(facts) !== 'screw') {
      return `Guide friction alone holds this axis with power off, half of it at ${Number((bounds('drive.holding-factor')?.low ?? 0).toPrecision(3))} times the load. Vibration or oil can take it away: support the load before working beneath it.`;
    }
    return `Thread friction alone holds this axis with power off, ${Number((bounds('screw.self-locking-factor')?.low ?? 0).toPrecision(3))} times at friction ${show('nut.friction', 'low')}. Vibration or oil can take it away: support the load before working beneath it.`;
  },
});
