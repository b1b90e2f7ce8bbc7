import { check, timesOf } from '../check.ts';

export default check({
  id: 'nut-spring-too-weak',
  title: 'Sprung nut opens on reversal',
  summary: 'The spring of the nut is weaker than the force that pulls its halves apart.',
  place: 'nut.preload',
  figure: 'nut.spring-reserve',
  bad: 'below',
  limits: [{ at: 1.2, severity: 'warning', basis: 'common practice' }],
  because: ['nut.preload', 'motion.acceleration', 'axis.process-force', 'guides.friction-force'],
  message: ({ show, worst, certain }) =>
    `Nut ${certain ? 'opens' : 'may open'} on reversal: its spring of ${show('nut.preload', 'low')} is ${timesOf(worst)} the ${show('nut.reversal-force', 'high', 'nut.preload')} that pulls it apart, and 120 % is wanted, or play comes back. Stronger spring, less acceleration, or lighter cuts.`,
});
