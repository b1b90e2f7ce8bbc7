import { check } from '../check.ts';

/** Bore and thread of the same size, within what a bore for a thread differs. */
const SAME_SIZE = 0.3e-3;
/** Above this the wobble of a badly centred end shows. */
const FAST = (300 * 2 * Math.PI) / 60;

export default check({
  id: 'threaded-end-in-plain-bore',
  title: 'Threaded end in a plain bore',
  summary: 'The coupling grips the thread of the screw instead of a turned end.',
  place: 'coupling.bores',
  figure: 'screw.turning-speed',
  basis: 'common practice',
  sources: [{ title: 'common practice', where: 'no published source; 300 rpm is our threshold' }],
  because: ['screw.major-diameter', 'motion.speed'],
  when: ({ choice, isPresent }) => isPresent('coupling') && choice('screw.thread') !== 'ball',
  judge: ({ bounds }) => {
    const bore = bounds('coupling.screw-bore')?.nominal;
    const crest = bounds('screw.major-diameter')?.nominal;
    if (bore === undefined || crest === undefined || bounds('screw.journal-diameter') || Math.abs(bore - crest) > SAME_SIZE) return undefined;
    return (bounds('screw.turning-speed')?.high ?? 0) > FAST ? 'warning' : 'information';
  },
  message: ({ show }) =>
    `Coupling grips the thread of the screw in a plain bore of ${show('coupling.screw-bore')}: thread crests do not centre it, and the screw wobbles once each turn at ${show('screw.turning-speed', 'high')}. Turn the end down and write its journal diameter.`,
});
