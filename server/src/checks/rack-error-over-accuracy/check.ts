import { check, timesOf } from '../check.ts';

export default check({
  id: 'rack-error-over-accuracy',
  title: 'Error of rack and pinion exceeds the accuracy wanted',
  summary: 'Pitch of the rack, run-out of the pinion and error of the reduction together exceed the accuracy wanted.',
  place: 'axis.accuracy',
  figure: 'rack.tooth-error-use',
  bad: 'above',
  limits: [{ at: 1, severity: 'warning', basis: 'follows from the mechanics', source: { title: 'worst case: errors added, not averaged' } }],
  // A pitch that is only assumed is asked for.
  milder: ({ isDefault }) => isDefault('rack.pitch-error'),
  because: ['rack.pitch-error', 'pinion.eccentricity', 'drive.reduction-error', 'axis.accuracy'],
  message: ({ show, bounds, worst, certain }) => {
    const reduction = bounds('drive.reduction-travel-error') ? `, reduction ${show('drive.reduction-travel-error', 'high', 'axis.accuracy')}` : '';
    return `Axis ${certain ? 'is' : 'may be'} off by ${show('rack.tooth-error', 'high', 'axis.accuracy')}, ${timesOf(worst)} the accuracy wanted (rack ${show('rack.pitch-error', 'high', 'axis.accuracy')}, pinion ${show('pinion.eccentricity-error', 'high', 'axis.accuracy')}${reduction}). Take a better grade, or correct it by measurement.`;
  },
});
