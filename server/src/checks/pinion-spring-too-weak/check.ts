import { check, timesOf } from '../check.ts';

export default check({
  id: 'pinion-spring-too-weak',
  title: 'Spring of the pinion is too weak',
  summary: 'At the hardest moment of a move the flanks push the sprung pinion out of the rack.',
  place: 'rack.preload',
  figure: 'rack.preload-reserve',
  bad: 'below',
  limits: [{ at: 1, severity: 'warning', basis: 'follows from the mechanics' }],
  because: ['rack.pressure-angle', 'axis.process-force', 'motion.acceleration', 'axis.moved-mass'],
  message: ({ show, worst, certain }) =>
    `Spring presses the pinion in with ${show('rack.preload', 'low')}, ${timesOf(worst)} the ${show('rack.separating-force', 'high', 'rack.preload')} with which the flanks ${certain ? 'push' : 'may push'} it out: play opens and teeth can jump. Take a stronger spring, or lock the pinion in its place.`,
});
