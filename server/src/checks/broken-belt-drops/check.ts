import { check, type Facts } from '../check.ts';
import { catcherWords, runsUp, severityWithCatcher } from '../unpowered.ts';

/** Energy below which a fall hurts nobody, J. */
const NEGLIGIBLE = 0.5;

/** Why nothing holds: what would have, and is cut off from the load. */
function why(facts: Facts): string {
  const at = facts.choice('brake.at');
  if (facts.choice('layout.role') !== undefined) return 'two crossed belts hold it only together';
  if ((facts.bounds('drive.units')?.nominal ?? 1) > 1 && facts.bounds('belt.pull-after-break')) return `the others would bear ${facts.show('belt.pull-after-break', 'high')} and may break at ${facts.show('belt.breaking-force', 'low')}`;
  if (facts.isPresent('brake') && at === 'rail') return 'the brake on its rail is too weak';
  return facts.isPresent('brake') ? `its brake sits at the ${at === 'motor' ? 'motor' : 'shaft'} and holds nothing then` : 'motor and reduction hold nothing then';
}

export default check({
  id: 'broken-belt-drops',
  title: 'Axis falls when its belt breaks',
  summary: 'A hanging axis has nothing behind its belt that holds it: no second belt, no brake on the rail, no balance, no catcher.',
  place: 'belt.profile',
  concernsPeople: true,
  cautions: ['gravity-load', 'pinch-point'],
  basis: 'follows from the mechanics',
  figure: 'drive.broken-belt-verdict',
  sources: [{ title: 'statics; below 0.5 J a fall counts as negligible: our threshold', weak: true }],
  because: ['axis.moved-mass', 'axis.travel', 'brake.at', 'counterbalance.force'],
  judge: (facts) => {
    const verdict = facts.bounds('drive.broken-belt-verdict');
    if (!verdict || verdict.low >= 0.5) return undefined;
    const isNegligible = (facts.bounds('drive.broken-belt-energy')?.high ?? Infinity) < NEGLIGIBLE;
    const severity = severityWithCatcher(facts, isNegligible ? 'information' : facts.choice('axis.people-below') === 'guarded' ? 'warning' : 'error');
    return { severity, certain: verdict.nominal < 0.5 };
  },
  message: (facts) => {
    const up = runsUp(facts);
    const speed = facts.bounds('drive.broken-belt-speed') ? ` at ${facts.show('drive.broken-belt-speed', 'high')}` : '';
    const fall = facts.bounds('drive.broken-belt-energy') ? ` It ${up ? 'arrives' : 'lands'}${speed} with ${facts.show('drive.broken-belt-energy', 'high')}.` : '';
    return `Axis ${facts.certain ? '' : 'may '}${up ? 'run' : 'fall'}${facts.certain ? 's' : ''}${up ? ' up' : ''} if its belt breaks: ${why(facts)}.${fall}${catcherWords(facts)} Fit a second belt, a brake on the rail that closes by itself, or a catcher.`;
  },
});
