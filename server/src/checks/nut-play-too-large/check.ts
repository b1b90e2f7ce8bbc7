import { check, percent } from '../check.ts';

export default check({
  id: 'nut-play-too-large',
  title: 'Lost motion exceeds the accuracy wanted',
  summary: 'Play of the nut and give of the drive lose more travel on reversal than the axis may be off.',
  place: 'nut.backlash',
  figure: 'nut.lost-motion',
  bad: 'above',
  limits: [{ at: 'axis.accuracy', severity: 'warning', basis: 'follows from the mechanics' }],
  because: ['nut.backlash', 'axis.accuracy', 'nut.design', 'guides.friction-force'],
  message: ({ show, worst, limit, certain }) =>
    `Axis ${certain ? 'loses' : 'may lose'} ${show('nut.lost-motion', 'high')} on reversal, ${percent(worst / limit)} of the ${show('axis.accuracy')} wanted: circles get flats, edges step. Take a sprung or preloaded nut, or approach from one side.`,
});
