import { check, type Facts } from '../check.ts';
import { catcherWords, holdingCure, resistingWords, runsUp, severityWithCatcher, transmission, transmissionPlace, worstVerdict } from '../unpowered.ts';

/** What lets it drop: how far the friction of the thread falls short, or that the drive has none. */
function why(facts: Facts): string {
  if (transmission(facts) !== 'screw') return `a ${transmission(facts)} always runs back`;
  if (facts.choice('screw.thread') === 'ball') return 'a ball screw always runs back';
  // Friction at rest is larger than moving friction: where only that holds, the load waits for a knock.
  const waits = (facts.bounds('screw.self-locking-factor-at-rest')?.low ?? 0) >= 1;
  return `${waits ? 'a knock starts it, for ' : ''}its thread needs friction ${facts.show('screw.run-down-friction', 'high')} to hold and may have ${facts.show('nut.friction', 'low')}`;
}

export default check({
  id: 'drops-unpowered',
  title: 'Axis drops with power off',
  summary: 'At the lowest believable friction nothing holds the load when the motor has no current.',
  place: transmissionPlace,
  concernsPeople: true,
  cautions: ['gravity-load', 'pinch-point'],
  basis: 'follows from the mechanics',
  figure: 'drive.holding-verdict',
  sources: [{ title: 'Budynas and Nisbett, Shigley’s Mechanical Engineering Design', where: 'section 8-2, self-locking condition' }],
  because: ['nut.friction', 'screw.lead', 'axis.travel', 'motor.detent-torque', 'brake.holding-torque', 'brake.holding-force', 'guides.friction-force'],
  judge: (facts) => {
    if (worstVerdict(facts) !== 'drops') return undefined;
    const severity = severityWithCatcher(facts, facts.choice('axis.people-below') === 'guarded' ? 'warning' : 'error');
    return { severity, certain: (facts.bounds('drive.holding-verdict')?.nominal ?? 0) < 0.5 };
  },
  message: (facts) => {
    const verb = `${facts.certain ? '' : 'may '}${runsUp(facts) ? 'run up' : 'drop'}`;
    const does = facts.certain ? verb.replace(/^(run|drop)/, '$1s') : verb;
    const end = runsUp(facts) ? 'arrives' : 'lands';
    const speed = facts.bounds('drive.fall-speed') ? ` at ${facts.show('drive.fall-speed', 'high')}` : '';
    const fall = facts.bounds('drive.drop-energy') ? ` It ${end}${speed} with ${facts.show('drive.drop-energy', 'high')} after ${facts.show('axis.travel')}.` : '';
    return `Axis ${does} with power off: ${why(facts)}.${fall}${catcherWords(facts) || resistingWords(facts)} ${holdingCure(facts)}`;
  },
});
