import { check, quantityText } from '../check.ts';

export default check({
  id: 'belt-too-short-for-travel',
  title: 'Travel does not fit between the pulleys',
  summary: 'At the far end of the travel the carriage would stand beyond the far idler or anchor.',
  place: 'belt.center-distance',
  figure: 'belt.room-left',
  bad: 'below',
  limits: [{ at: 0, severity: 'error', basis: 'follows from the mechanics', source: { title: 'geometry' } }],
  because: ['belt.center-distance', 'belt.nearest-distance', 'axis.travel'],
  message: ({ show, worst, certain, choice }) =>
    `Carriage ${certain ? 'reaches' : 'may reach'} ${quantityText(-worst, 'length', 'mm')} beyond the ${choice('belt.arrangement') === 'anchored-ends' ? 'far anchor' : 'far idler'}: ${show('belt.nearest-distance')} and ${show('axis.travel')} of travel do not fit into ${show('belt.center-distance')}. Set that one farther out, or shorten the travel.`,
});
