import { check, timesOf } from '../check.ts';

export default check({
  id: 'reduction-overloaded',
  title: 'Reduction carries too much torque',
  summary: 'The torque at the screw is above what a stage of the reduction may carry.',
  place: 'drive.reduction-torque-limit',
  figure: 'drive.reduction-torque-use',
  bad: 'above',
  limits: [{ at: 1, severity: 'error', basis: 'follows from the mechanics', source: { title: 'the rating of the stage' } }],
  because: ['axis.moved-mass', 'screw.lead', 'motion.acceleration'],
  message: ({ show, worst, certain }) =>
    `Reduction passes ${show('screw.lifting-torque', 'high')} to each screw, ${timesOf(worst)} its rated ${show('drive.reduction-torque-limit', 'low')} there: teeth ${certain ? 'wear or jump' : 'may wear or jump'}. Take a larger stage, a smaller lead or a gentler ramp.`,
});
