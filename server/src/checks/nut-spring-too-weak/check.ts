import { check, percent } from '../check.ts';

export default check({
  id: 'nut-spring-too-weak',
  title: 'Sprung nut opens on reversal',
  summary: 'The spring of the nut is weaker than the force that pulls its halves apart.',
  place: 'nut.preload',
  figure: 'nut.spring-reserve',
  bad: 'below',
  limits: [{ at: 1.2, severity: 'warning', basis: 'common practice' }],
  because: ['nut.preload', 'motion.acceleration', 'axis.process-force', 'guides.friction-force'],
  message: ({ show, worst }) =>
    `Nut spring of ${show('nut.preload', 'low')} is ${percent(worst)} of the ${show('nut.reversal-force', 'high')} that pulls the nut open on reversal; 120 % is wanted: play comes back under load. Stronger spring, less acceleration, or lighter cuts.`,
});
