import { check, type Facts } from '../check.ts';

/** Play that would matter, closed by the weight in every normal move. */
function closed(facts: Facts): boolean {
  const [limit, play, accuracy, acceleration] = ['nut.gravity-preload-limit', 'nut.backlash', 'axis.accuracy', 'motion.acceleration'].map((id) => facts.bounds(id));
  return limit !== undefined && play !== undefined && accuracy !== undefined && play.high > accuracy.low && limit.low > 0 && (acceleration?.high ?? 0) <= limit.low;
}

export default check({
  id: 'weight-closes-play',
  title: 'Weight keeps the play of the nut closed',
  summary: 'Play in the nut would exceed the accuracy wanted, but the weight keeps one flank pressed.',
  place: 'nut.backlash',
  figure: 'nut.gravity-preload-limit',
  basis: 'follows from the mechanics',
  sources: [{ title: 'Newton’s law of the hanging mass' }],
  because: ['axis.accuracy', 'nut.backlash', 'motion.acceleration'],
  judge: (facts) => (closed(facts) ? 'hint' : undefined),
  message: ({ show }) =>
    `Weight keeps the nut's play of ${show('nut.backlash', 'high')} closed: it costs no accuracy up to ${show('nut.gravity-preload-limit', 'low', 'motion.acceleration')} of downward acceleration. It opens if the tool lifts the axis, the guides stick, or a counterbalance is added.`,
});
