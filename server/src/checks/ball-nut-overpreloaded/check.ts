import { check, percent } from '../check.ts';

export default check({
  id: 'ball-nut-overpreloaded',
  title: 'Ball nut preloaded too hard',
  summary: 'The preload exceeds a tenth of the dynamic rating.',
  place: 'nut.preload',
  figure: 'nut.preload-use',
  bad: 'above',
  limits: [{ at: 0.1, severity: 'warning', basis: 'common practice' }],
  because: ['nut.preload', 'nut.dynamic-rating'],
  message: ({ show, worst }) =>
    `Preload of ${show('nut.preload', 'high')} is ${percent(worst)} of the dynamic rating, where 10 % is the most usual: the nut drags, heats and tires early. Lower the preload, or take the next size.`,
});
