import { entryDial, inOwnUnit, solvedProposal, turned, valueOf, type Dial } from './entry-proposals.ts';
import { writtenValue } from './nice-values.ts';
import { rampDial, speedDial } from './move-dials.ts';
import { number, remedy, type Inputs, type Proposal, type RemedyContext } from './remedy.ts';

const SLOWEST = 0.05;

const partnerDial = (context: RemedyContext, input: string): Dial | undefined =>
  entryDial(context, { input, towards: SLOWEST * (context.before.bounds(input)?.nominal ?? 0), say: (written) => `the other one to ${written}`, cost: 0 });

const speeds = (context: RemedyContext): readonly (Dial | undefined)[] => [speedDial(context), partnerDial(context, 'partner-motion.speed')];
const ramps = (context: RemedyContext): readonly (Dial | undefined)[] => [rampDial(context), partnerDial(context, 'partner-motion.acceleration')];

/** What is written of both belts, set to one value. */
interface Pair {
  readonly list: 'layout.path-tensions' | 'layout.path-lengths';
  readonly of: readonly [string, string];
  readonly quantity: 'force' | 'length';
  readonly say: (text: string) => string;
}
const TENSIONS: Pair = { list: 'layout.path-tensions', of: ['layout.first-path-tension', 'layout.second-path-tension'], quantity: 'force', say: (text) => `Set both belts to ${text}` };
const LENGTHS: Pair = { list: 'layout.path-lengths', of: ['layout.first-path-length', 'layout.second-path-length'], quantity: 'length', say: (text) => `Lead both belts alike over ${text}` };

interface Equal {
  readonly inputs: Inputs;
  readonly proposal: Proposal;
}

/** Both belts alike, at their mean. */
function equal(context: RemedyContext, { list, of, quantity, say }: Pair): Equal | undefined {
  const [first, second] = of.map((input) => context.before.bounds(input)?.nominal);
  const place = context.place(list);
  if (first === undefined || second === undefined || !place) return undefined;
  const unit = inOwnUnit(context, of[0], first, 'up')?.replace(/^[\d.]+ ?/, '');
  const text = writtenValue((first + second) / 2, quantity, unit, 'up');
  const value = text === undefined ? undefined : valueOf(of[0], text);
  return text === undefined || value === undefined ? undefined : { inputs: { [of[0]]: number(value), [of[1]]: number(value) }, proposal: { changes: [{ place, value: [text, text] }], what: say(text) } };
}

export default [
  remedy({
    id: 'equal-belts',
    summary: 'Sets both crossed belts to one tension, leads them over paths of one length, or both.',
    cost: 1,
    cures: ['belt-paths-unequal'],
    propose: (context) => {
      const [tensions, lengths] = [equal(context, TENSIONS), equal(context, LENGTHS)];
      const square = { result: () => 'the gantry stays square' };
      if (tensions && context.passes(context.tryWith(tensions.inputs))) return [{ ...tensions.proposal, ...square, cost: 1 }];
      if (lengths && context.passes(context.tryWith(lengths.inputs))) return [{ ...lengths.proposal, cost: 3, result: () => 'pulling along one axis does not push the other' }];
      if (!tensions || !lengths) return [];
      return [{ changes: [...tensions.proposal.changes, ...lengths.proposal.changes], what: `${lengths.proposal.what} and set both to ${String(tensions.proposal.what).replace(/^Set both belts to /, '')}`, ...square, cost: 3.5 }];
    },
  }),
  remedy({
    id: 'slower-diagonal',
    summary: 'Slows both axes by the same share, eases the ramps of both, or does both, until one motor alone can do the diagonal.',
    cost: 1,
    cures: ['crossed-belts-diagonal-stalls', 'crossed-belts-diagonal-too-fast'],
    propose: (context) => [
      ...turned(context, speeds(context)),
      ...(context.finding.check === 'crossed-belts-diagonal-too-fast' ? [] : turned(context, ramps(context))),
    ],
  }),
  remedy({
    id: 'gentler-diagonal',
    summary: 'Slows both axes and eases the ramps of both.',
    cost: 2,
    lastResort: true,
    cures: ['crossed-belts-diagonal-stalls'],
    propose: (context) => turned(context, [...speeds(context), ...ramps(context)]),
  }),
  remedy({
    id: 'wider-gantry',
    summary: 'Sets the two drives of the gantry farther apart, so that the load stands less to one side.',
    cost: 4.5,
    cures: ['gantry-skews'],
    propose: (context) => {
      const spacing = context.before.bounds('drive.unit-spacing')?.nominal;
      return spacing === undefined ? [] : solvedProposal(context, { input: 'drive.unit-spacing', towards: 2 * spacing, say: (written) => `Set the two drives ${written} apart` });
    },
  }),
];
