import { changeOf, chosenProposal, resultText, solvedProposal } from './entry-proposals.ts';
import { choice, remedy, type Proposal, type RemedyContext } from './remedy.ts';

/** Ends that hold better than the present ones, the simplest change first. */
const better: Readonly<Record<string, readonly string[]>> = {
  'supported-free': ['supported-supported', 'fixed-supported'],
  'fixed-free': ['fixed-supported'],
  'supported-supported': ['fixed-supported'],
};

const endWords: Readonly<Record<string, string>> = {
  'supported-supported': 'Support the far end',
  'fixed-supported': 'Hold the motor end stiffly, support the far end',
};

function hang(context: RemedyContext): readonly Proposal[] {
  const position = context.before.choice('drive.motor-position');
  if (position === 'above' || context.before.choice('axis.direction') !== 'vertical') return [];
  const change = changeOf(context, 'drive.motor-position', 'above');
  const after = context.tryWith({ 'drive.motor-position': choice('above') });
  if (!change || !context.passes(after)) return [];
  return [{ changes: [change], title: () => 'Hang the screw from a motor and thrust bearing at the top: in tension it cannot buckle' }];
}

export default [
  remedy({
    id: 'support-the-far-end',
    summary: 'Holds the ends of the screw better: a bearing at the far end, or a stiff bearing pair at the motor.',
    cures: ['screw-whirls', 'screw-buckles', 'free-end-swings', 'screw-held-by-nut-alone', 'run-out-reaches-load'],
    propose: (context) => {
      const present = context.before.choice('screw.end-supports') ?? 'supported-supported';
      const say = (text: string): string => (present === 'fixed-free' ? 'Support the far end' : (endWords[text] ?? 'Hold the ends better'));
      return chosenProposal(context, 'screw.end-supports', better[present] ?? [], say);
    },
  }),
  remedy({
    id: 'shorten-the-free-length',
    summary: 'Moves the supports of the screw as far together as the travel and the nut allow.',
    cures: ['screw-whirls', 'screw-buckles', 'free-end-swings'],
    propose: (context) => {
      const travel = context.before.bounds('axis.travel')?.high;
      const nut = context.before.bounds('nut.length')?.nominal ?? 0;
      const present = context.before.bounds('screw.unsupported-length')?.nominal;
      const shortest = travel === undefined ? undefined : travel + nut;
      if (shortest === undefined || present === undefined || shortest >= present) return [];
      return solvedProposal(context, { input: 'screw.unsupported-length', towards: shortest, say: (written) => `Shorten the free length to ${written}` });
    },
  }),
  remedy({ id: 'hang-the-screw', summary: 'Puts motor and thrust bearing at the top, so that the load pulls on the screw.', cures: ['screw-buckles'], propose: hang }),
  remedy({
    id: 'let-the-far-end-float',
    summary: 'Lets the far end of the screw slide in its bearing, so that it can grow.',
    cures: ['screw-held-at-both-ends', 'position-error-over-accuracy'],
    propose: (context) => {
      const ends = changeOf(context, 'screw.end-supports', 'fixed-supported');
      const thrust = changeOf(context, 'screw.thrust-end', 'motor');
      const fixed = context.before.choice('screw.end-supports') === 'fixed-fixed';
      const both = context.before.choice('screw.thrust-end') === 'both';
      const changes = [...(fixed && ends ? [ends] : []), ...(both && thrust ? [thrust] : [])];
      return changes.length === 0 ? [] : [{ changes, title: (after) => `Let the far end float, so that the screw can grow${resultText(context, after)}` }];
    },
  }),
  remedy({
    id: 'fit-a-thrust-bearing',
    summary: 'Lets angular-contact bearings take the axial load.',
    cures: ['thrust-through-coupling', 'motor-shaft-overloaded', 'coupling-carries-the-load', 'thrust-face-takes-torque', 'drive-gives-too-much', 'position-error-over-accuracy', 'motor-cannot-lift', 'motor-margin-thin'],
    propose: (context) => {
      const present = context.before.choice('thrust-bearing.design');
      if (present === 'angular-contact') return [];
      const change = changeOf(context, 'thrust-bearing.design', 'angular-contact');
      return change ? [{ changes: [change], title: (after) => `Take the thrust in angular-contact bearings${resultText(context, after)}` }] : [];
    },
  }),
  remedy({
    id: 'decouple-the-nut',
    summary: 'Lets the nut float sideways, so that run-out of the screw does not reach the load.',
    cures: ['run-out-reaches-load'],
    propose: (context) => chosenProposal(context, 'nut.mounting', ['decoupled'], () => 'Let the nut float sideways, tied only along the screw'),
  }),
];
