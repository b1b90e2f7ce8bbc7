import { changeOf, chosenProposal } from './entry-proposals.ts';
import { gentlerMove } from './frame-acceleration.ts';
import { bestDiagonals, changesFor, designOf, inputsWith, openDiagonals, type Diagonal } from './frame-diagonals.ts';
import { largerProfile } from './larger-profile.ts';
import { choice, remedy, type Proposal, type RemedyContext } from './remedy.ts';

/** Diagonals alone where they do, else together with stiffer joints, which may be needed where no diagonal fits. */
function diagonals(context: RemedyContext): readonly Proposal[] {
  const present = context.before.choice('frame.joint');
  for (const joint of [present, ...stifferThan(present)]) {
    const isNew = joint !== undefined && joint !== present;
    const design = designOf(isNew ? context.tryWith({ 'frame.joint': choice(joint) }) : context.before);
    const found = design && context.first(bestDiagonals(design, openDiagonals(design, context)), (added) => inputsWith(design, added));
    const added = found && changesFor(design, found, context);
    const change = isNew ? changeOf(context, 'frame.joint', joint) : undefined;
    if (!found || !added || (isNew && !change)) continue;
    const what = inWords(found, design.names);
    const orders = isNew ? `${what} and ${lowerFirst(JOINT_ORDERS[joint] ?? '')}` : what;
    return [{ changes: change ? [...added, change] : added, what: orders, cost: 1.5 + found.length / 2 + (isNew ? 1 : 0) }];
  }
  return [];
}

/** `Add a diagonal from back left to top left`; of several, where they meet if that is in one or two points. */
function inWords(added: readonly Diagonal[], names: readonly string[]): string {
  const [first] = added;
  if (added.length === 1 && first) return `Add a diagonal from ${names[first.from]} to ${names[first.to]}`;
  const meet = [added.map(({ to }) => to), added.map(({ from }) => from)].map((ends) => [...new Set(ends)]).find((ends) => ends.length <= 2);
  return `Add ${added.length} diagonals${meet ? ` to ${meet.map((index) => names[index]).join(' and ')}` : ''}`;
}

const lowerFirst = (text: string): string => text.charAt(0).toLowerCase() + text.slice(1);

/** Joints that hold better than the present one, the gentlest change first. */
const STIFFER: Readonly<Record<string, readonly string[]>> = {
  '': ['corner-bracket-both-sides', 'corner-plate'],
  pinned: ['corner-bracket', 'corner-bracket-both-sides', 'corner-plate'],
  'inner-bracket': ['corner-bracket', 'corner-bracket-both-sides', 'corner-plate'],
  'corner-bracket': ['corner-bracket-both-sides', 'corner-plate'],
  'end-screw': ['corner-bracket-both-sides', 'corner-plate'],
  'corner-cube': ['corner-bracket-both-sides', 'corner-plate'],
  'corner-bracket-both-sides': ['corner-plate'],
};

const JOINT_ORDERS: Readonly<Record<string, string>> = {
  'corner-bracket': 'Put brackets on the corners',
  'corner-bracket-both-sides': 'Put brackets on both sides of the corners',
  'corner-plate': 'Screw plates over the corners',
};

const stifferThan = (present: string | undefined): readonly string[] => STIFFER[present ?? ''] ?? [];

const stifferJoints = (context: RemedyContext): readonly Proposal[] =>
  chosenProposal(context, 'frame.joint', stifferThan(context.before.choice('frame.joint')), (text) => JOINT_ORDERS[text] ?? 'Stiffen the joints');

export default [
  remedy({ id: 'slower-for-the-frame', summary: 'Slows the acceleration that shakes the frame.', cost: 1, cures: ['frame-rings', 'gantry-rings'], propose: (context) => gentlerMove(context, 'frame.acceleration') }),
  remedy({ id: 'slower-for-the-box', summary: 'Slows the acceleration that shakes the box.', cost: 1, cures: ['frame-box-rings'], propose: (context) => gentlerMove(context, 'frame-box.acceleration') }),
  remedy({ id: 'add-a-diagonal', summary: 'Adds the diagonals that raise the lowest frequency of the frame most.', cost: 2, cures: ['frame-rings', 'frame-unbraced-direction', 'frame-is-loose'], propose: diagonals }),
  remedy({ id: 'stiffer-frame-joints', summary: 'Joins the members of the frame by stiffer joints.', cost: 2, cures: ['frame-rings', 'frame-unbraced-direction', 'frame-is-loose'], propose: stifferJoints }),
  remedy({ id: 'larger-frame-profile', summary: 'Builds the frame of a larger profile.', cost: 5, cures: ['frame-rings', 'frame-unbraced-direction'], propose: (context) => largerProfile(context, 'frame.profile', (title) => `Build the frame of ${title}`) }),
];
