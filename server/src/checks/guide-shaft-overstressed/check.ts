import { check, percent } from '../check.ts';

export default check({
  id: 'guide-shaft-overstressed',
  title: 'Guide shafts are bent too hard',
  summary: 'The bending stress in the guide shafts is near or above the strength of their core, so that they may stay bent.',
  place: 'guides.shaft-diameter',
  figure: 'guides.shaft-stress-use',
  bad: 'above',
  limits: [
    { at: 1, severity: 'error', basis: 'follows from the mechanics', source: { title: 'yield strength of the core' } },
    { at: 0.5, severity: 'warning', basis: 'book', source: { title: "Budynas and Nisbett, Shigley's Mechanical Engineering Design", where: 'factor 2 against yield, section 1-10', weak: true } },
  ],
  because: ['guides.unsupported-length', 'axis.moved-mass', 'guides.shaft-material', 'guides.shaft-ends'],
  message: ({ show, worst, certain }) =>
    `Guide shafts are bent to ${show('guides.shaft-stress', 'high')}, ${certain ? '' : 'up to '}${percent(worst)} of the strength of their core: ${worst > 1 ? 'they stay bent' : 'a knock leaves them bent'}. Take thicker or shorter shafts, or support them along their length.`,
});
