import { check } from '../check.ts';
import { railsPress } from '../rails-press.ts';

export default check({
  id: 'guide-life-short',
  title: 'Guides do not last as long as wanted',
  summary: 'The rating life of carriages or ball bushings is shorter than the travel that they shall last.',
  place: 'guides.life',
  figure: 'guides.life-travel',
  bad: 'below',
  limits: [{ at: 'guides.life', severity: 'warning', basis: 'standard', source: { title: 'ISO 14728-1, as quoted in the trade', weak: true } }],
  // One cause, one finding: rails-out-of-line names it.
  when: (facts) => !railsPress(facts),
  because: ['guides.dynamic-rating', 'guides.size', 'axis.moved-mass', 'guides.drive-offset'],
  message: ({ show, certain, isDefault }) =>
    `Guides ${certain ? 'last' : 'may last only'} ${show('guides.life-travel', 'low')}, where ${show('guides.life')} is wanted${isDefault('guides.dynamic-rating') ? ', by a usual rating' : ''}: balls and races pit early. Take a larger size, set carriages farther apart, or move the drive nearer.`,
});
