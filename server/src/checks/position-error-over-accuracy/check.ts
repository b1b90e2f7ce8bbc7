import { check, percent } from '../check.ts';

export default check({
  id: 'position-error-over-accuracy',
  title: 'Position error exceeds the accuracy wanted',
  summary: 'Lead error, growth by warming and lost motion together exceed the accuracy wanted.',
  place: 'axis.accuracy',
  figure: 'drive.position-error-use',
  bad: 'above',
  limits: [{ at: 1, severity: 'warning', basis: 'follows from the mechanics', source: { title: 'worst case: errors added; grades by ISO 3408-3 or common practice', weak: true } }],
  because: ['screw.grade', 'nut.backlash', 'conditions.machine-temperature', 'axis.travel'],
  message: ({ show, worst, bounds }) => {
    const parts = [`lead ${show('screw.lead-deviation', 'high')}`];
    if (bounds('screw.thermal-growth')) parts.push(`warming ${show('screw.thermal-growth', 'high')}`);
    if (bounds('nut.lost-motion')) parts.push(`lost motion ${show('nut.lost-motion', 'high')}`);
    return `Position may be off by ${show('drive.position-error', 'high')} over the travel, ${percent(worst)} of the accuracy wanted (${parts.join(', ')}). Take a better grade, a nut without play, or measure and calibrate the travel.`;
  },
});
