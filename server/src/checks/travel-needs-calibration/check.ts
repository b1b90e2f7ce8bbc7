import { check, timesOf } from '../check.ts';
import { lostMotionIsTheCause, partsOfError } from '../position-errors.ts';

const LEAD = 'screw.lead-deviation';

export default check({
  id: 'travel-needs-calibration',
  title: 'Travel has to be calibrated',
  summary: 'By its grade the lead of the screw may be off by more than the accuracy wanted; a measurement of the travel takes the constant part out.',
  place: 'axis.accuracy',
  figure: 'drive.position-error-use',
  bad: 'above',
  limits: [{ at: 1, severity: 'information', basis: 'follows from the mechanics', source: { title: 'worst case: errors added; grades by ISO 3408-3 or common practice', weak: true } }],
  // Where calibration is not enough, that finding stands instead.
  // Belts and racks have findings of their own, with their own parts of the error.
  when: (facts) => facts.choice('drive.transmission') === 'screw' && (facts.bounds('drive.position-error-calibrated-use')?.high ?? 0) <= 1 && !lostMotionIsTheCause(facts, LEAD),
  because: ['screw.grade', 'axis.travel', 'axis.accuracy'],
  message: (facts) =>
    `Position may be off by ${facts.show('drive.position-error', 'high', 'axis.accuracy')} over the travel until it is calibrated: ${timesOf(facts.worst)} the accuracy wanted (${partsOfError(facts, LEAD)}). Measure it and correct the steps per millimetre, or take a better grade.`,
});
