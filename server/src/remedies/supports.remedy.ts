import type { Evaluation } from '../figures/evaluation.ts';
import { showValue } from '../checks/judge.ts';
import { changeOf, chosenProposal, solvedProposal } from './entry-proposals.ts';
import { choice, remedy, type Proposal, type RemedyContext } from './remedy.ts';

/** Ends that hold better than the present ones, the simplest change first. */
const better: Readonly<Record<string, readonly string[]>> = {
  'supported-free': ['supported-supported', 'fixed-free', 'fixed-supported'],
  'fixed-free': ['fixed-supported'],
  'supported-supported': ['fixed-supported'],
};

const endWords: Readonly<Record<string, string>> = {
  'supported-supported': 'Support the far end',
  'fixed-free': 'Hold the motor end in two spaced bearings',
  'fixed-supported': 'Hold the motor end stiffly, support the far end',
};

/** For findings about how the ends are held: what their whirl speed is used up to. */
const whirlLeft = (after: Evaluation): string => {
  const use = after.bounds('screw.whirl-use');
  return use ? `${showValue('screw.whirl-use', after, 'high')} of the whirl speed` : 'bearings keep it in line';
};

/** What takes the thrust from now on: `85 N in the bearings`. */
const thrustTaken = (after: Evaluation): string => (after.bounds('drive.largest-load') ? `${showValue('drive.largest-load', after, 'high')} kept from coupling and motor` : 'kept from coupling and motor');

function hang(context: RemedyContext): readonly Proposal[] {
  if (context.before.choice('drive.motor-position') === 'above' || (context.before.bounds('axis.inclination')?.nominal ?? 0) <= 0) return [];
  const change = changeOf(context, 'drive.motor-position', 'above');
  const after = context.tryWith({ 'drive.motor-position': choice('above') });
  if (!change || !context.passes(after)) return [];
  return [{ changes: [change], what: 'Hang the screw from motor and thrust bearing at the top', result: () => 'in tension it cannot buckle' }];
}

/** Checks whose figure goes away with the thrust bearing: what the bearing takes is told instead. */
const aboutThrust = new Set(['thrust-through-coupling', 'motor-shaft-overloaded', 'coupling-carries-the-load']);

export default [
  remedy({
    id: 'support-the-far-end',
    summary: 'Holds the ends of the screw better: a bearing at the far end, or a stiff bearing pair at the motor.',
    cost: 2.5,
    cures: ['screw-whirls', 'screw-buckles', 'free-end-swings', 'screw-held-by-nut-alone', 'run-out-reaches-load'],
    propose: (context) => {
      const present = context.before.choice('screw.end-supports') ?? 'supported-supported';
      const say = (text: string): string => (present === 'fixed-free' ? 'Support the far end' : (endWords[text] ?? 'Hold the ends better'));
      const candidates = better[present] ?? [];
      const noEnd = { result: (after: Evaluation) => (after.bounds('screw.tip-run-out') ? undefined : 'no free end left to swing') };
      if (context.finding.check === 'free-end-swings') return chosenProposal(context, 'screw.end-supports', candidates, say).map((proposal) => ({ ...proposal, ...noEnd }));
      if (context.finding.check !== 'screw-held-by-nut-alone') return chosenProposal(context, 'screw.end-supports', candidates, say);
      return candidates.flatMap((ends) => chosenProposal(context, 'screw.end-supports', [ends], say)).map((proposal) => ({ ...proposal, result: whirlLeft }));
    },
  }),
  remedy({
    id: 'shorten-the-free-length',
    summary: 'Moves the supports of the screw as far together as the travel and the nut allow, or shortens the travel where that is not enough.',
    cost: 3,
    cures: ['screw-whirls', 'screw-buckles', 'free-end-swings', 'screw-held-at-both-ends', 'run-out-reaches-load'],
    propose: (context) => {
      const travel = context.before.bounds('axis.travel')?.high;
      const nut = context.before.bounds('nut.length')?.nominal ?? 0;
      const present = context.before.bounds('screw.unsupported-length')?.nominal;
      const shortest = travel === undefined ? undefined : travel + nut;
      if (shortest === undefined || present === undefined || shortest >= present) return [];
      return solvedProposal(context, { input: 'screw.unsupported-length', towards: shortest, say: (written) => `Shorten the free length to ${written}`, cost: 3 });
    },
  }),
  remedy({
    id: 'room-for-the-travel',
    summary: 'Gives the nut the room that its travel needs: a longer free length, less travel, or a shorter nut.',
    cost: 2,
    cures: ['screw-too-short-for-travel'],
    propose: (context) => {
      const { before } = context;
      const [free, travel, nut] = ['screw.unsupported-length', 'axis.travel', 'nut.length'].map((input) => before.bounds(input)?.nominal);
      return [
        ...(free === undefined ? [] : solvedProposal(context, { input: 'screw.unsupported-length', towards: 3 * free, say: (written) => `Leave ${written} of the screw free`, cost: 2 })),
        ...(travel === undefined ? [] : solvedProposal(context, { input: 'axis.travel', towards: 0.2 * travel, say: (written) => `Shorten the travel to ${written}`, cost: 2.5 })),
        ...(nut === undefined ? [] : solvedProposal(context, { input: 'nut.length', towards: 0.3 * nut, say: (written) => `Take a shorter nut of ${written}`, cost: 3 })),
      ];
    },
  }),
  remedy({ id: 'hang-the-screw', summary: 'Puts motor and thrust bearing at the top, so that the load pulls on the screw.', cost: 4, cures: ['screw-buckles'], propose: hang }),
  remedy({
    id: 'let-the-far-end-float',
    summary: 'Lets the far end of the screw slide in its bearing, so that it can grow.',
    cost: 2.5,
    cures: ['screw-held-at-both-ends'],
    propose: (context) => {
      const ends = changeOf(context, 'screw.end-supports', 'fixed-supported');
      const thrust = changeOf(context, 'screw.thrust-end', 'motor');
      const fixed = context.before.choice('screw.end-supports') === 'fixed-fixed';
      const both = context.before.choice('screw.thrust-end') === 'both';
      const floats = both && thrust ? [{ changes: [thrust], what: 'Let the far end float', result: grows }] : [];
      return fixed && ends ? [...floats, { changes: [ends, ...(both && thrust ? [thrust] : [])], what: 'Support the far end by a sliding bearing', result: grows }] : floats;
    },
  }),
  remedy({
    id: 'fit-a-thrust-bearing',
    summary: 'Lets angular-contact bearings take the axial load.',
    cost: 3,
    cures: ['thrust-through-coupling', 'motor-shaft-overloaded', 'coupling-carries-the-load', 'thrust-face-takes-torque', 'motor-cannot-lift', 'motor-margin-thin', 'coupling-overloaded', 'screw-inefficient', 'resolution-not-real', 'motor-error-over-accuracy'],
    propose: (context) => {
      if (context.before.choice('thrust-bearing.design') === 'angular-contact') return [];
      const change = changeOf(context, 'thrust-bearing.design', 'angular-contact');
      if (!change || !context.passes(context.tryWith({ 'thrust-bearing.design': choice('angular-contact') }))) return [];
      return [{ changes: [change], what: 'Take the thrust in angular-contact bearings', ...(aboutThrust.has(context.finding.check) ? { result: thrustTaken } : {}) }];
    },
  }),
  remedy({
    id: 'decouple-the-nut',
    summary: 'Lets the nut float sideways, so that run-out of the screw does not reach the load.',
    cost: 2.5,
    cures: ['run-out-reaches-load'],
    propose: (context) => chosenProposal(context, 'nut.mounting', ['decoupled'], () => 'Let the nut float sideways, tied only along the screw'),
  }),
];

/** How far the far end may now move. */
function grows(after: Evaluation): string {
  const growth = after.bounds('screw.thermal-growth')?.high;
  return growth === undefined ? 'it can grow freely' : `${Number((growth * 1000).toPrecision(2))} mm to grow freely`;
}
