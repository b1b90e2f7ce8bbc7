import { check } from '../check.ts';

export default check({
  id: 'ball-nut-life-short',
  title: 'Ball nut wears out too early',
  summary: 'The rating life of the ball nut is below the life wanted.',
  place: 'nut.dynamic-rating',
  figure: 'nut.life-hours',
  bad: 'below',
  limits: [{ at: 'axis.life', severity: 'warning', basis: 'standard', source: { title: 'ISO 3408-5:2006', where: 'rating life, as quoted', weak: true } }],
  because: ['axis.life', 'nut.dynamic-rating', 'screw.lead', 'axis.moved-mass'],
  message: ({ show, certain }) =>
    `Ball nut ${certain ? 'lives' : 'may live only'} ${show('nut.life-hours', 'low')} in motion under ${show('nut.mean-load', 'high')}, where ${show('axis.life', 'high')} are wanted: its balls and races pit. Take the next size, a larger lead, or a nut with a higher rating.`,
});
