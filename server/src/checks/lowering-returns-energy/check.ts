import { check } from '../check.ts';

/** What drives and controller on a supply take at idle in any case, W: so much may come back without lifting the voltage. */
const IDLE_POWER = 10;

export default check({
  id: 'lowering-returns-energy',
  title: 'Lowering returns energy to the supply',
  summary: 'The load drives the motor on the way down by more than its windings burn, and nothing is known of what takes it up.',
  place: 'drive.supply',
  figure: 'drive.returned-power',
  bad: 'above',
  limits: [{ at: IDLE_POWER, severity: 'information', basis: 'our threshold' }],
  when: ({ bounds }) => bounds('drive.bus-voltage-use') === undefined,
  because: ['axis.moved-mass', 'motion.speed', 'screw.lead', 'pulley.teeth', 'pinion.teeth'],
  message: ({ show, certain }) =>
    `Lowering at ${show('motion.speed')} ${certain ? 'returns' : 'may return'} ${show('drive.returned-power', 'high')} to the supply: its voltage rises unless something takes that up. Give capacitance and voltage-limit of the supply to see how far.`,
});
