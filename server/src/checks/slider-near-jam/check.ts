import { check, percent } from '../check.ts';

export default check({
  id: 'slider-near-jam',
  title: 'Slider is near to jamming',
  summary: 'The drive pulls farther beside the guide than half of the offset at which friction locks the slider.',
  place: 'guides.drive-offset',
  figure: 'guides.jamming-ratio',
  bad: 'above',
  limits: [{ at: 0.5, severity: 'warning', basis: 'common practice' }],
  // Beyond that it jams, which has a finding of its own.
  when: ({ bounds }) => (bounds('guides.jamming-ratio')?.high ?? 0) <= 1,
  because: ['guides.guided-length', 'guides.friction', 'guides.bearing'],
  message: ({ show, worst, certain }) =>
    `Drive pulls ${show('guides.drive-offset', 'high')} beside the guide, ${certain ? '' : 'at worst '}${percent(worst)} of the offset at which friction locks it, where 50 % is usual: a dry spot may jam it. ${show('guides.guided-length-needed', 'high')} of guided length would do.`,
});
