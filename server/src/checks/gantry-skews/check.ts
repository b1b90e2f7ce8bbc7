import { check, timesOf } from '../check.ts';

export default check({
  id: 'gantry-skews',
  title: 'Gantry stands askew',
  summary: 'The two drives of the gantry give and travel so unequally that one end is ahead of the other by more than the accuracy wanted.',
  place: 'drive.unit-spacing',
  figure: 'drive.skew-use',
  bad: 'above',
  limits: [{ at: 1, severity: 'warning', basis: 'follows from the mechanics', source: { title: 'both ends at their worst, guides that let the gantry turn' } }],
  // Tolerances that are only assumed are asked for.
  milder: ({ isDefault, choice }) => isDefault(choice('drive.transmission') === 'belt' ? 'belt.length-tolerance' : choice('drive.transmission') === 'rack' ? 'rack.pitch-error' : 'screw.grade'),
  because: ['drive.carries', 'motion.acceleration', 'belt.length-tolerance', 'axis.accuracy'],
  message: ({ show, bounds, worst, certain }) => {
    const load = bounds('drive.skew-from-load')?.high ?? 0;
    const pitch = bounds('drive.skew-from-pitch')?.high ?? 0;
    const cause = load >= pitch ? `${show('drive.skew-from-load', 'high')} of it while speeding up with the carriage at one side` : `${show('drive.skew-from-pitch', 'high')} of it since the two drives are not exactly alike`;
    const cure = load >= pitch ? 'Ease the ramp or stiffen the drives' : 'Take drives of a closer tolerance, or calibrate each on its own';
    return `Gantry ${certain ? 'stands' : 'may stand'} askew by ${show('drive.skew', 'high', 'axis.accuracy')}, ${timesOf(worst)} the accuracy wanted, ${cause}: it is not square, and its guides rub. ${cure}.`;
  },
});
