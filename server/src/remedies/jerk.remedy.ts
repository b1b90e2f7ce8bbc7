import { changeOf, inOwnUnit, solvedProposal, turned, valueOf, type Dial } from './entry-proposals.ts';
import { number, remedy, type RemedyContext } from './remedy.ts';

/** Gentler than this part of the jerk whose rise lasts one swing is no cure but another machine. */
const GENTLEST = 0.03;

/** A limit of jerk, from next to none down to a gentle one. */
function jerkDial(context: RemedyContext): Dial | undefined {
  const quiet = context.before.bounds('axis.quiet-jerk')?.low;
  const written = context.before.bounds('motion.jerk')?.nominal;
  if (quiet === undefined || quiet <= 0) return undefined;
  const [from, to] = [Math.min(written ?? Infinity, 4 * quiet), GENTLEST * quiet];
  if (to >= from) return undefined;
  const at = (share: number): number => from * (to / from) ** share;
  return {
    inputs: (share) => ({ 'motion.jerk': number(at(share)) }),
    write: (share) => {
      const text = inOwnUnit(context, 'motion.jerk', at(share), 'down');
      const change = text === undefined ? undefined : changeOf(context, 'motion.jerk', text);
      const value = text === undefined ? undefined : valueOf('motion.jerk', text);
      return change && text !== undefined && value !== undefined ? { inputs: { 'motion.jerk': number(value) }, changes: [change], what: `Limit the jerk to ${text}`, cost: 1, price: 'longer ramps' } : undefined;
    },
  };
}

export default [
  remedy({
    id: 'limit-the-jerk',
    summary: 'Limits the jerk so far that the ramps do not set the axis swinging.',
    cost: 1,
    cures: ['resonance-low'],
    propose: (context) => turned(context, [jerkDial(context)]),
  }),
  remedy({
    id: 'raise-the-jerk',
    summary: 'Raises the limit of jerk until the acceleration that is set is reached.',
    cost: 1,
    cures: ['jerk-never-reaches-acceleration'],
    propose: (context) => {
      const jerk = context.before.bounds('motion.jerk')?.nominal;
      return jerk === undefined ? [] : solvedProposal(context, { input: 'motion.jerk', towards: 100 * jerk, say: (written) => `Raise the jerk to ${written}`, cost: 1 });
    },
  }),
  remedy({
    id: 'set-the-acceleration-reached',
    summary: 'Sets the acceleration to what the limit of jerk lets it reach: the move stays as it is.',
    cost: 1.25,
    cures: ['jerk-never-reaches-acceleration'],
    propose: (context) => {
      const acceleration = context.before.bounds('motion.acceleration')?.nominal;
      return acceleration === undefined ? [] : solvedProposal(context, { input: 'motion.acceleration', towards: 0.02 * acceleration, say: (written) => `Set the acceleration to ${written}` });
    },
  }),
];
