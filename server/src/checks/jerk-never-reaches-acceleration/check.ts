import { check, percent } from '../check.ts';

export default check({
  id: 'jerk-never-reaches-acceleration',
  title: 'Acceleration is never reached',
  summary: 'The limit of jerk takes the acceleration back before it has reached what is set.',
  place: 'motion.jerk',
  figure: 'axis.peak-acceleration-use',
  basis: 'follows from the mechanics',
  sources: [{ title: 'a ramp that raises its acceleration to a and lowers it again covers a speed of a²/j' }],
  judge: ({ bounds }) => ((bounds('axis.peak-acceleration-use')?.nominal ?? 1) < 1 ? 'information' : undefined),
  because: ['motion.acceleration', 'motion.speed'],
  message: ({ show, bounds }) =>
    `Acceleration gets to ${show('axis.peak-acceleration', 'nominal', 'motion.acceleration')}, ${percent(bounds('axis.peak-acceleration-use')?.nominal ?? 0)} of the ${show('motion.acceleration')} set: the limit of jerk takes it back first. A ramp takes ${show('axis.ramp-time')} whatever the acceleration; raise the jerk to use it.`,
});
