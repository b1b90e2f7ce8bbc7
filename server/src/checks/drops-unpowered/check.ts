import { check, type Facts } from '../check.ts';
import { resistingWords, severityWithCatcher, worstVerdict } from '../unpowered.ts';

/** `friction 0.1 of the 0.353 that would hold`, or what a ball screw is. */
function why(facts: Facts): string {
  if (facts.choice('screw.thread') === 'ball') return 'a ball screw always runs back';
  return `thread friction ${facts.show('nut.friction', 'low')} of the ${facts.show('screw.run-down-friction')} that would hold`;
}

export default check({
  id: 'drops-unpowered',
  title: 'Axis drops with power off',
  summary: 'At the lowest believable friction nothing holds the load when the motor has no current.',
  place: 'screw.size',
  concernsPeople: true,
  cautions: ['gravity-load', 'pinch-point'],
  basis: 'follows from the mechanics',
  figure: 'drive.holding-verdict',
  sources: [{ title: 'Budynas and Nisbett, Shigley’s Mechanical Engineering Design', where: 'section 8-2, self-locking condition' }],
  because: ['nut.friction', 'screw.lead', 'axis.travel', 'motor.detent-torque'],
  judge: (facts) => {
    if (worstVerdict(facts) !== 'drops') return undefined;
    return severityWithCatcher(facts, facts.choice('axis.people-below') === 'guarded' ? 'warning' : 'error');
  },
  message: (facts) => {
    const certain = (facts.bounds('drive.holding-verdict')?.nominal ?? 0) < 0.5;
    const speed = facts.bounds('drive.fall-speed') ? `, ${facts.show('drive.fall-speed', 'high')} at the bottom` : '';
    const finer = facts.choice('screw.thread') === 'ball' ? '' : ', or take a finer lead';
    // A counterbalance that is stronger than the weight takes the axis up instead.
    const [surely, perhaps] = (facts.bounds('drive.gravity-load')?.nominal ?? 0) < 0 ? ['runs up', 'may run up'] : ['drops', 'may drop'];
    return `Axis ${certain ? surely : perhaps} with power off: ${why(facts)}; ${facts.show('drive.drop-energy', 'high')} over ${facts.show('axis.travel')}${speed}.${resistingWords(facts)} Fit a brake or counterbalance${finer}.`;
  },
});
