import { changeOf, solvedProposal } from './entry-proposals.ts';
import { number, remedy } from './remedy.ts';

/** Usual extra-low supply voltages, in V; common practice, no published source. */
const VOLTAGES = [12, 24, 36, 48];

export default [
  remedy({
    id: 'larger-supply',
    summary: 'Takes a supply that gives the current that is asked of it.',
    cost: 3,
    cures: ['supply-current-exceeded', 'supply-overloaded'],
    propose: (context) => {
      const present = context.before.bounds('supply.current')?.nominal;
      return present === undefined ? [] : solvedProposal(context, { input: 'supply.current', towards: 20 * present, say: (written) => `Take a supply of ${written}`, coarse: true });
    },
  }),
  remedy({
    id: 'more-capacitance',
    summary: 'Puts more capacitance on the supply, to take up the energy of braking.',
    cost: 3,
    cures: ['supply-voltage-rises'],
    propose: (context) => {
      const present = context.before.bounds('supply.capacitance')?.nominal;
      return present === undefined ? [] : solvedProposal(context, { input: 'supply.capacitance', towards: 100 * present, say: (written) => `Put ${written} on the supply`, coarse: true, price: 'stored energy' });
    },
  }),
  remedy({
    id: 'higher-supply-voltage',
    summary: 'Feeds the motor from the next usual extra-low voltage that is enough.',
    cost: 3.5,
    cures: ['motor-past-its-corner', 'motor-cannot-lift', 'motor-margin-thin', 'supply-cannot-push-current', 'motor-overruns-going-down', 'supply-current-exceeded', 'motor-beyond-its-points'],
    propose: (context) => {
      const present = context.before.bounds('supply.voltage')?.nominal;
      if (present === undefined || context.before.choice('supply.kind') === 'mains') return [];
      const found = context.first(VOLTAGES.filter((volts) => volts > present + 0.5), (volts) => ({ 'supply.voltage': number(volts) }));
      const change = found === undefined ? undefined : changeOf(context, 'supply.voltage', `${found} V`);
      return change ? [{ changes: [change], what: `Feed it with ${found} V`, price: 'if all on it stands that' }] : [];
    },
  }),
];
