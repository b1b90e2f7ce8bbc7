import { check, timesOf } from '../check.ts';

export default check({
  id: 'coupling-overloaded',
  title: 'Coupling carries too much torque',
  summary: 'The torque while speeding up is above what the coupling may carry.',
  place: 'coupling.torque-rating',
  figure: 'coupling.torque-use',
  bad: 'above',
  limits: [{ at: 1, severity: 'error', basis: 'follows from the mechanics', source: { title: 'the rating of the coupling' } }],
  // What is usual for the form spans a factor of ten: asked, not asserted.
  milder: ({ isDefault }) => isDefault('coupling.torque-rating'),
  because: ['axis.moved-mass', 'screw.lead', 'motion.acceleration', 'coupling.form'],
  message: ({ show, worst, isDefault, certain }) =>
    `Coupling passes ${show('coupling.torque', 'high', 'coupling.torque-rating')}, ${timesOf(worst)} ${isDefault('coupling.torque-rating') ? `what a weak one of its form carries (${show('coupling.torque-rating', 'low')})` : `its rated ${show('coupling.torque-rating', 'low')}`}: it ${
      certain && !isDefault('coupling.torque-rating') ? 'slips or tears' : 'may slip or tear'
    }. ${isDefault('coupling.torque-rating') ? 'Write its torque-rating; a' : 'A'} larger coupling, a smaller lead or a gentler ramp help.`,
});
