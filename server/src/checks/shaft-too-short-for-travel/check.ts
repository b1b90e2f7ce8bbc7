import { check } from '../check.ts';

export default check({
  id: 'shaft-too-short-for-travel',
  title: 'Guide shafts are too short for the travel',
  summary: 'Travel and guided length together are longer than what lies free between the holders of the guide shafts.',
  place: 'guides.unsupported-length',
  figure: 'guides.shaft-length-needed',
  bad: 'above',
  limits: [{ at: 'guides.unsupported-length', severity: 'error', basis: 'follows from the mechanics', source: { title: 'geometry' } }],
  milder: ({ isDefault }) => isDefault('guides.guided-length'),
  because: ['axis.travel', 'guides.guided-length', 'guides.carriage-spacing'],
  message: ({ show, certain }) =>
    `Travel and slider need ${show('guides.shaft-length-needed', 'high', 'guides.unsupported-length')} of free shaft, and ${show('guides.unsupported-length', 'low')} lies between the holders: the slider ${certain ? 'hits' : 'may hit'} a holder before the end of its travel. Take longer shafts or less travel.`,
});
