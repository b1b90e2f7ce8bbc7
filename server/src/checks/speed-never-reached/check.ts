import { check } from '../check.ts';

export default check({
  id: 'speed-never-reached',
  title: 'Speed is never reached',
  summary: 'The travel is too short to reach the speed at the given acceleration.',
  place: 'motion.speed',
  figure: 'axis.share-at-speed',
  basis: 'follows from the mechanics',
  sources: [{ title: 'uniformly accelerated motion' }],
  judge: ({ bounds }) => (bounds('axis.share-at-speed')?.nominal === 0 ? 'information' : undefined),
  because: ['motion.acceleration', 'axis.travel'],
  message: ({ show }) =>
    `Speed of ${show('motion.speed')} is never reached: at ${show('motion.acceleration')} one ramp takes ${show('axis.distance-to-speed', 'nominal', 'axis.travel')}, more than half of the ${show('axis.travel')} of travel. A move takes ${show('axis.move-time')} whatever the speed; raise the acceleration to use it.`,
});
