import { check } from '../check.ts';

export default check({
  id: 'bushing-wears-out',
  title: 'Plain bushings wear out too early',
  summary: 'The plain bushings wear by the depth that is allowed before they have run as far as wanted.',
  place: 'guides.life',
  figure: 'guides.bushing-life',
  bad: 'below',
  limits: [{ at: 'guides.life', severity: 'warning', basis: 'book', source: { title: 'The Tribology Handbook', where: 'section A5 (wear law); specific wear from memory', weak: true } }],
  because: ['guides.specific-wear', 'guides.wear-allowed', 'guides.bearing', 'guides.carriage-length'],
  message: ({ show, certain }) =>
    `Bushings ${certain ? 'are' : 'may be'} worn by ${show('guides.wear-allowed', 'low')} after ${show('guides.bushing-life', 'low', 'guides.life')}, where ${show('guides.life')} is wanted: the slider gets play and tilts. Plan to exchange them, or take longer ones, a thicker shaft or ball bushings.`,
});
