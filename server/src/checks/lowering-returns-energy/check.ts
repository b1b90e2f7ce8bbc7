import { check } from '../check.ts';

export default check({
  id: 'lowering-returns-energy',
  title: 'Lowering returns energy to the supply',
  summary: 'The load drives the motor on the way down by more than its windings burn, and nothing is known of what takes it up.',
  place: 'drive.supply',
  figure: 'drive.returned-power',
  bad: 'above',
  limits: [{ at: 0, severity: 'information', basis: 'follows from the mechanics' }],
  when: ({ bounds }) => bounds('drive.bus-voltage-use') === undefined,
  because: ['axis.moved-mass', 'motion.speed', 'screw.lead'],
  message: ({ show }) =>
    `Lowering at ${show('motion.speed')} returns up to ${show('drive.returned-power', 'high')} to the supply, since the load drives the motor: voltage rises unless something takes it up. Give capacitance and voltage-limit of the supply to see how far.`,
});
