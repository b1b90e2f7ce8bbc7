import { check } from '../check.ts';

export default check({
  id: 'resolution-not-real',
  title: 'Resolution is not real',
  summary: 'The smallest move that is wanted is smaller than what friction and steps let happen.',
  place: 'axis.resolution',
  figure: 'axis.smallest-real-move',
  bad: 'above',
  limits: [{ at: 'axis.resolution', severity: 'warning', basis: 'follows from the mechanics', source: { title: 'sinusoidal static torque curve (Acarnley, Stepping Motors)', where: 'chapter 3' } }],
  because: ['controller.microsteps', 'guides.friction-force', 'nut.friction', 'screw.lead', 'pulley.teeth'],
  message: ({ show, bounds, certain }) =>
    (bounds('motor.microsteps-before-moving')?.high ?? 1) <= 1
      ? `Smallest move is one microstep, ${show('axis.microstep-travel', 'nominal', 'axis.resolution')}, more than the ${show('axis.resolution', 'low')} wanted: finer moves cannot be commanded. Take more microsteps or a finer lead.`
      : `Smallest real move ${certain ? 'is' : 'may be'} ${show('axis.smallest-real-move', 'high', 'axis.resolution')}, more than the ${show('axis.resolution', 'low')} wanted: microsteps of ${show('axis.microstep-travel', 'nominal', 'axis.resolution')} have less torque behind them than friction takes. Take a finer lead or less friction.`,
});
