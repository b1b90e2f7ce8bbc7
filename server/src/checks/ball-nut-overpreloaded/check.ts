import { check, timesOf } from '../check.ts';

export default check({
  id: 'ball-nut-overpreloaded',
  title: 'Ball nut preloaded too hard',
  summary: 'The preload exceeds a tenth of the dynamic rating.',
  place: 'nut.preload',
  figure: 'nut.preload-use',
  bad: 'above',
  limits: [{ at: 0.1, severity: 'warning', basis: 'common practice' }],
  // A preload that is merely assumed cannot be too much.
  when: ({ isDefault }) => !isDefault('nut.preload'),
  because: ['nut.preload', 'nut.dynamic-rating'],
  message: ({ show, worst, certain }) =>
    `Preload of ${show('nut.preload', 'high')} ${certain ? 'is' : 'may be'} ${timesOf(worst)} the dynamic rating, where 10 % is the most usual: the nut drags, heats and tires early. Lower the preload, or take the next size.`,
});
