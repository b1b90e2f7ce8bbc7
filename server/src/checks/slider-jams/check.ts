import { check, timesOf } from '../check.ts';

export default check({
  id: 'slider-jams',
  title: 'Slider jams',
  summary: 'The drive pulls so far beside the guide, for the friction and the guided length, that friction locks the slider.',
  place: 'guides.drive-offset',
  figure: 'guides.jamming-ratio',
  bad: 'above',
  limits: [{ at: 1, severity: 'error', basis: 'book', source: { title: 'Beer and Johnston, Vector Mechanics for Engineers', where: 'sample problem 8.3' } }],
  because: ['guides.guided-length', 'guides.friction', 'guides.bearing'],
  message: ({ show, worst, certain }) =>
    `Slider ${certain ? 'jams' : 'may jam'}: its drive pulls ${show('guides.drive-offset', 'high')} beside the guide, ${timesOf(worst)} the offset at which friction locks ${show('guides.guided-length', 'low')} of guide. Lengthen the guide, move the drive, or lower the friction.`,
});
