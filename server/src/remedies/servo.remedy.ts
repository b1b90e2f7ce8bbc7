import { changeOf, solvedProposal } from './entry-proposals.ts';
import { number, remedy } from './remedy.ts';

/** Counts in a turn, all edges counted, of encoders that are usually sold; common practice, no published source. */
const COUNTS = [400, 800, 1000, 1600, 2000, 2400, 4000, 4096, 8000, 8192, 10_000, 16_384, 20_000, 40_000, 65_536, 131_072];

export default [
  remedy({
    id: 'amplifier-of-more-current',
    summary: 'Takes an amplifier that gives the current that the move asks for.',
    cost: 3,
    cures: ['amplifier-current-short', 'motor-cannot-lift', 'motor-margin-thin'],
    propose: (context) => {
      const present = context.before.bounds('drive.current-limit')?.nominal;
      return present === undefined ? [] : solvedProposal(context, { input: 'drive.current-limit', towards: 10 * present, say: (written) => `Take an amplifier of ${written}`, coarse: true });
    },
  }),
  remedy({
    id: 'finer-encoder',
    summary: 'Takes an encoder with more counts in a turn.',
    cost: 3,
    cures: ['counts-too-coarse', 'resolution-not-real'],
    propose: (context) => {
      const present = context.before.bounds('motor.encoder-counts')?.nominal;
      if (present === undefined) return [];
      const found = context.first(COUNTS.filter((counts) => counts > present), (counts) => ({ 'motor.encoder-counts': number(counts) }));
      const change = found === undefined ? undefined : changeOf(context, 'motor.encoder-counts', String(found));
      return change && found !== undefined ? [{ changes: [change], what: `Take an encoder of ${found} counts a turn` }] : [];
    },
  }),
];
