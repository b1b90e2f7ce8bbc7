import { check, percent } from '../check.ts';

export default check({
  id: 'guide-sags',
  title: 'Guide shafts sag',
  summary: 'The guide shafts bend under the carriage by so much, and differently over the travel, that it uses up the accuracy wanted.',
  place: 'guides.shaft-diameter',
  figure: 'guides.sag-use',
  bad: 'above',
  limits: [
    { at: 1, severity: 'warning', basis: 'follows from the mechanics', source: { title: 'beam between its supports' } },
    { at: 1 / 3, severity: 'information', basis: 'our threshold', source: { title: 'a third leaves room for the other errors' } },
  ],
  because: ['guides.unsupported-length', 'guides.shaft-ends', 'axis.moved-mass', 'axis.accuracy'],
  message: ({ show, worst, certain, bounds }) => {
    // The worst end may reach beyond the accuracy where the nominal sag does not.
    const upTo = !certain || (worst > 1 && (bounds('guides.sag-use')?.nominal ?? worst) <= 1) ? 'up to ' : '';
    return `Guide shafts sag ${upTo}${show('guides.sag-variation', 'high', 'axis.accuracy')} more in one place of the travel than in another: ${percent(worst)} of the accuracy wanted. Take thicker or shorter shafts, clamp their ends, or support them along their length.`;
  },
});
