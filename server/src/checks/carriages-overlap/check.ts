import { check } from '../check.ts';

export default check({
  id: 'carriages-overlap',
  title: 'Carriages overlap on their rail',
  summary: 'The carriages on a rail are longer than their distance, so that they do not fit beside each other.',
  place: 'guides.carriage-spacing',
  figure: 'guides.carriage-gap',
  bad: 'below',
  limits: [{ at: 0, severity: 'error', basis: 'follows from the mechanics', source: { title: 'geometry' } }],
  milder: ({ isDefault }) => isDefault('guides.carriage-length'),
  because: ['guides.carriage-length', 'guides.carriages'],
  message: ({ show, certain, bounds }) =>
    `${bounds('guides.carriages')?.nominal ?? 2} carriages up to ${show('guides.carriage-length', 'high')} long ${certain ? 'do' : 'may'} not fit on ${show('guides.carriage-spacing', 'low')} from middle to middle of the outer ones: they would stand in each other. Set them farther apart or take shorter ones.`,
});
