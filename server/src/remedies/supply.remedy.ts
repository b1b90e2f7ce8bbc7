import { solvedProposal } from './entry-proposals.ts';
import { remedy } from './remedy.ts';

export default [
  remedy({
    id: 'larger-supply',
    summary: 'Takes a supply that gives the current that all drives on it ask for.',
    cures: ['supply-current-exceeded'],
    propose: (context) => {
      const present = context.before.bounds('supply.current')?.nominal;
      return present === undefined ? [] : solvedProposal(context, { input: 'supply.current', towards: 20 * present, say: (written) => `Take a supply of ${written}`, coarse: true });
    },
  }),
  remedy({
    id: 'more-capacitance',
    summary: 'Puts more capacitance on the supply, to take up the energy of braking (stored energy).',
    cures: ['supply-voltage-rises'],
    propose: (context) => {
      const present = context.before.bounds('supply.capacitance')?.nominal;
      return present === undefined ? [] : solvedProposal(context, { input: 'supply.capacitance', towards: 100 * present, say: (written) => `Put ${written} on the supply (stored energy)`, coarse: true });
    },
  }),
];
