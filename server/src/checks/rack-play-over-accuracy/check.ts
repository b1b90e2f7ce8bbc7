import { check, timesOf } from '../check.ts';

export default check({
  id: 'rack-play-over-accuracy',
  title: 'Play of rack and pinion exceeds the accuracy wanted',
  summary: 'Play between the teeth and in the reduction, and give of the drive, lose more travel on reversal than the axis may be off.',
  place: 'rack.backlash',
  figure: 'rack.lost-motion',
  bad: 'above',
  limits: [{ at: 'axis.accuracy', severity: 'warning', basis: 'follows from the mechanics' }],
  because: ['rack.backlash', 'drive.reduction-backlash', 'pinion.eccentricity', 'axis.accuracy'],
  message: ({ show, bounds, worst, limit, certain }) => {
    const sprung = (bounds('rack.preload')?.low ?? 0) > 0;
    const cure = sprung ? 'Take a reduction with less play or a smaller pinion' : 'Spring the pinion into the rack, take a reduction with less play';
    return `Axis ${certain ? 'loses' : 'may lose'} ${show('rack.lost-motion', 'high', 'axis.accuracy')} on reversal, ${timesOf(worst / limit)} the ${show('axis.accuracy', 'low')} wanted: circles get flats, edges step. ${cure}, or approach from one side.`;
  },
});
