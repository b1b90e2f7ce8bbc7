import { check, timesOf } from '../check.ts';
import { lostMotionIsTheCause, partsOfError } from '../position-errors.ts';

const LEAD = 'screw.lead-deviation-calibrated';

export default check({
  id: 'position-error-over-accuracy',
  title: 'Position error exceeds the accuracy wanted',
  summary: 'Even with the travel calibrated, lead error, growth by warming and lost motion together exceed the accuracy wanted.',
  place: 'axis.accuracy',
  figure: 'drive.position-error-calibrated-use',
  bad: 'above',
  limits: [{ at: 1, severity: 'warning', basis: 'follows from the mechanics', source: { title: 'worst case: errors added; grades by ISO 3408-3 or common practice', weak: true } }],
  when: (facts) => !lostMotionIsTheCause(facts, LEAD),
  // A grade that is only assumed is asked for.
  milder: ({ isDefault }) => isDefault('screw.grade'),
  because: ['screw.grade', 'nut.backlash', 'conditions.machine-temperature', 'axis.travel'],
  message: (facts) =>
    `Position ${facts.certain ? 'is' : 'may be'} off by ${facts.show('drive.position-error-calibrated', 'high', 'axis.accuracy')} even when calibrated: ${timesOf(facts.worst)} the accuracy wanted (${partsOfError(facts, LEAD)}). Take a better grade${
      facts.bounds('nut.lost-motion') ? ' or a nut without play' : ''
    }${facts.isDefault('screw.grade') ? '; a rolled screw is assumed' : ''}.`,
});
