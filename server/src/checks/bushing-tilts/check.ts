import { check, timesOf } from '../check.ts';

export default check({
  id: 'bushing-tilts',
  title: 'Bent shafts stand askew in their bushings',
  summary: 'The guide shafts bend so much that they go through their bushings at a larger angle than those bear.',
  place: 'guides.shaft-diameter',
  figure: 'guides.bushing-angle-use',
  bad: 'above',
  limits: [{ at: 1, severity: 'warning', basis: 'common practice' }],
  because: ['guides.bearing', 'guides.unsupported-length', 'guides.carriage-spacing', 'axis.moved-mass'],
  message: ({ show, worst, certain, choice }) =>
    `Shafts bend so much that they ${certain ? 'stand' : 'may stand'} ${show('guides.bushing-angle', 'high')} askew in their bushings, ${timesOf(worst)} what those bear: the ends dig in and wear. Take thicker or shorter shafts${choice('guides.bearing') === 'ball-bushing' ? ', or self-aligning bushings' : ''}.`,
});
