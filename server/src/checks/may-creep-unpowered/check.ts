import { check, timesOf, type Facts } from '../check.ts';
import { catcherWords, holdingCure, resisting, severityWithCatcher, transmission, transmissionPlace, worstVerdict } from '../unpowered.ts';

/** A factor below a limit as text, cut and not rounded, so that it never reads as the limit. */
const below = (factor: number): string => `${Math.floor(factor * 100) / 100}×`;

/** What holds at the worst end, and why it is not enough. */
function why(facts: Facts): string {
  if (transmission(facts) !== 'screw') return whyWithoutThread(facts);
  const thread = facts.bounds('screw.self-locking-factor')?.low ?? 0;
  if (thread >= 1) {
    return `Axis may creep with power off: at friction ${facts.show('nut.friction', 'low')} the thread holds ${below(thread)}, short of the 1.5× that vibration asks for.`;
  }
  if ((facts.bounds('drive.reduction-reverse-efficiency')?.high ?? 1) <= 0) {
    return 'Axis may creep with power off: the screw runs back, and only the reduction locks. Vibration or oil can unlock it as they do a thread.';
  }
  const { driving, collar, detent, brake } = resisting(facts);
  if (driving > 0 && brake >= driving) return `Axis may creep with power off: the brake holds ${below(facts.bounds('drive.brake-factor')?.low ?? 0)} the load without friction, short of 1.5×.`;
  if (driving > 0 && collar >= driving) return 'Axis may drop with power off: the thread runs down, and only the plain thrust face holds. A rolling thrust bearing in its place would let it fall.';
  if (driving > 0 && detent >= driving) return `Axis may sink with power off: the thread runs down, and only the detent holds it, at ${timesOf(detent / driving)} the load's torque. A detent is no brake: a knock frees it.`;
  return 'Axis may sink with power off: thrust face, detent and brake hold it only together, and none of them is made for it alone.';
}

/** The same for a belt or a rack, which has nothing that locks. */
function whyWithoutThread(facts: Facts): string {
  const runsBack = `the ${transmission(facts)} runs back`;
  const { driving, detent, brake, guides } = resisting(facts);
  if (brake >= driving) return `Axis may creep with power off: the brake holds ${below(facts.bounds('drive.brake-factor')?.low ?? 0)} the load, short of 1.5×.`;
  if ((facts.bounds('drive.reduction-reverse-efficiency')?.high ?? 1) <= 0) return `Axis may creep with power off: ${runsBack}, and only the reduction locks. Vibration or oil can unlock it.`;
  if (detent >= driving) return `Axis may sink with power off: ${runsBack}, and only the detent holds it, at ${timesOf(detent / driving)} the load. A detent is no brake: a knock frees it.`;
  if (guides >= driving) return `Axis may sink with power off: ${runsBack}, and only guide friction holds it, half of it at ${timesOf(guides / driving)} the load.`;
  return `Axis may sink with power off: ${runsBack}, and brake, detent and guide friction hold it only together. None of them is made for it alone.`;
}

export default check({
  id: 'may-creep-unpowered',
  title: 'Axis may creep with power off',
  summary: 'The load is held, but by something that vibration, oil or a new part can take away.',
  place: transmissionPlace,
  concernsPeople: true,
  cautions: ['gravity-load'],
  basis: 'common practice',
  figure: 'drive.holding-factor',
  sources: [
    { title: 'Budynas and Nisbett, Shigley’s Mechanical Engineering Design', where: 'section 8-2, self-locking condition' },
    { title: 'the factor 1.5 is common practice, no published source' },
  ],
  because: ['nut.friction', 'screw.lead', 'thrust-bearing.design', 'motor.detent-torque', 'brake.holding-torque', 'brake.holding-force', 'guides.friction-force'],
  judge: (facts) => {
    if (worstVerdict(facts) !== 'may-creep') return undefined;
    const severity = severityWithCatcher(facts, facts.choice('axis.people-below') === 'guarded' ? 'information' : 'warning');
    return { severity, certain: (facts.bounds('drive.holding-verdict')?.nominal ?? 0) < 1.5 };
  },
  message: (facts) => `${why(facts)}${catcherWords(facts)} ${holdingCure(facts)}`,
});
