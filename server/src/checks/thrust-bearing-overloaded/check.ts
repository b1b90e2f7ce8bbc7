import { check, timesOf } from '../check.ts';

export default check({
  id: 'thrust-bearing-overloaded',
  title: 'Thrust bearing overloaded',
  summary: 'The largest axial load exceeds what the thrust bearing may carry.',
  place: 'thrust-bearing.load-limit',
  figure: 'thrust-bearing.use',
  bad: 'above',
  limits: [{ at: 1, severity: 'error', basis: 'common practice', source: { title: 'the limit written in the description' } }],
  because: ['thrust-bearing.load-limit', 'axis.moved-mass', 'motion.acceleration'],
  message: ({ show, worst, certain }) =>
    `Thrust bearing carries up to ${show('drive.largest-load', 'high', 'thrust-bearing.load-limit')}, ${timesOf(worst)} the ${show('thrust-bearing.load-limit', 'low')} allowed for it: it ${certain ? 'dents and fails' : 'may dent and fail'}. Take a larger bearing, or share the load between more screws.`,
});
