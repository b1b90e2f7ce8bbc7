import { check, timesOf, type Facts } from '../check.ts';

const RINGING = 'axis.ringing-use';
const PERIODS = 'axis.ramp-periods';

/** One period; rounding is no breach. */
const WHOLE = 1 - 1e-9;

const isKnown = ({ bounds }: Facts): boolean => bounds(RINGING) !== undefined;

function cure({ bounds, show }: Facts): string {
  return `${bounds('motion.jerk') ? 'Lower' : 'Limit'} the jerk to ${show('axis.quiet-jerk', 'low')}, ease the ramp, or stiffen the drive`;
}

export default check({
  id: 'resonance-low',
  title: 'Axis rings after each ramp',
  summary: 'The lowest resonance is so low that the ramp excites it: the axis swings by more than the accuracy wanted, or the ramp is shorter than one period.',
  place: ({ bounds }) => (bounds('motion.jerk') ? 'motion.jerk' : 'motion.acceleration'),
  figure: 'axis.resonance',
  basis: 'follows from the mechanics',
  sources: [
    { title: 'a mass on a spring after a pulse; Chopra, Dynamics of Structures', where: 'chapter 4', weak: true },
    { title: 'a ramp of one period or more is common practice, no published source' },
  ],
  because: ['motion.jerk', 'belt.specific-stiffness', 'axis.moved-mass', 'axis.accuracy'],
  judge: ({ bounds }) => {
    const ringing = bounds(RINGING);
    // Where the accuracy is said, it decides: a blow that moves nothing to speak of does no harm.
    if (ringing) return ringing.high > 1 ? { severity: ringing.nominal > 1 ? 'warning' : 'information', certain: ringing.nominal > 1 } : undefined;
    const periods = bounds(PERIODS);
    if (!periods || periods.low >= WHOLE) return undefined;
    return periods.nominal < WHOLE ? 'information' : { severity: 'hint', certain: false };
  },
  message: (facts) => {
    const { bounds, show, certain } = facts;
    if (isKnown(facts)) {
      return `Axis ${certain ? 'swings' : 'may swing'} by ${show('axis.ringing-amplitude', 'high')} after a ramp, ${timesOf(bounds(RINGING)?.high ?? 0)} the accuracy wanted, at ${show('axis.resonance', 'low')}: edges get echoes. ${cure(facts)}.`;
    }
    const what = bounds('motion.jerk') ? 'rise of the acceleration' : 'ramp';
    return `Axis ${certain ? 'swings' : 'may swing'} at ${show('axis.resonance', 'low')}, and the ${what} lasts ${(bounds(PERIODS)?.low ?? 0).toPrecision(2)} of its periods: each is a blow (${show('axis.ringing-amplitude', 'high')}). ${cure(facts)}.`;
  },
});
