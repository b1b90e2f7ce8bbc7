import { check, percent } from '../check.ts';

export default check({
  id: 'coupling-overloaded',
  title: 'Coupling carries too much torque',
  summary: 'The torque while speeding up is above what the coupling may carry.',
  place: 'coupling.torque-rating',
  figure: 'coupling.torque-use',
  bad: 'above',
  limits: [{ at: 1, severity: 'error', basis: 'follows from the mechanics', source: { title: 'the rating of the coupling' } }],
  because: ['axis.moved-mass', 'screw.lead', 'motion.acceleration', 'coupling.form'],
  message: ({ show, worst, isDefault }) =>
    `Coupling passes ${show('coupling.torque', 'high')}, ${percent(worst)} of ${isDefault('coupling.torque-rating') ? `what a weak one of its form carries (${show('coupling.torque-rating', 'low')})` : `its rated ${show('coupling.torque-rating', 'low')}`}: it slips or tears. Take a larger coupling, a smaller lead or a gentler ramp.`,
});
