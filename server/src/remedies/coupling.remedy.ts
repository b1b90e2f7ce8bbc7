import { changeOf, inOwnUnit, solvedProposal } from './entry-proposals.ts';
import { choice, remedy, type Change, type Proposal, type RemedyContext } from './remedy.ts';

/** Bores the coupling to what it holds: the motor's shaft, and the end of the screw, turned down where it is not yet. */
function boreToFit(context: RemedyContext): readonly Proposal[] {
  const { before } = context;
  const bores = before.subject.placeOf('coupling', 'bores');
  if (!bores) return [];
  const bore = (index: string, text: string): Change => ({ place: { uri: bores.uri, path: [...bores.path, index] }, value: text });
  const shaft = before.bounds('motor.shaft-diameter');
  const onMotor = shaft && misfits(before.bounds('coupling.motor-bore-play'), true) ? inOwnUnit(context, 'coupling.motor-bore', shaft.nominal, 'up') : undefined;
  const end = misfits(before.bounds('coupling.screw-bore-play'), false) ? screwEnd(context) : undefined;
  const changes = [...(onMotor === undefined ? [] : [bore('0', onMotor)]), ...(end === undefined ? [] : [bore('1', end.text), ...end.changes])];
  const sizes = [onMotor, end?.text].filter((text) => text !== undefined);
  if (sizes.length === 0) return [];
  const turned = end && end.changes.length > 0 ? ', the end of the screw turned to match' : '';
  return [{ changes, what: `Bore the coupling to ${sizes.join(' and ')}${turned}`, result: () => 'it fits both shafts' }];
}

/** The diameter on which the coupling sits at the screw: its turned end, or one turned clear of the thread. */
function screwEnd(context: RemedyContext): { readonly text: string; readonly changes: readonly Change[] } | undefined {
  const journal = context.before.bounds('screw.journal-diameter')?.nominal;
  const root = context.before.bounds('screw.root-diameter')?.low;
  const present = context.before.input('screw.journal-diameter').state === 'known';
  const diameter = journal ?? (root === undefined ? undefined : Math.floor(root * 2000) / 2000);
  const text = diameter === undefined ? undefined : inOwnUnit(context, 'coupling.screw-bore', diameter, 'down');
  const change = text === undefined ? undefined : changeOf(context, 'screw.journal-diameter', text);
  return text === undefined || !change ? undefined : { text, changes: present ? [] : [change] };
}

/** On the motor's side a bore must be that of the shaft; the end of a screw can be turned down to a smaller one. */
const misfits = (play: { readonly low: number; readonly high: number } | undefined, exactly: boolean): boolean => play !== undefined && (play.low > 1e-6 || (exactly && play.high < -1e-6));

/** Forms that take more torque or misalignment, the gentlest change first. */
const FORMS = ['jaw', 'bellows', 'disc', 'oldham', 'rigid'];

export default [
  remedy({ id: 'bore-the-coupling-to-fit', summary: 'Bores the coupling to the shafts that it joins.', cost: 2, cures: ['coupling-bore-mismatch'], propose: boreToFit }),
  remedy({
    id: 'turn-the-end-down',
    summary: 'Turns the end of the screw down, clear of the thread, and bores the coupling to match.',
    cost: 2,
    cures: ['threaded-end-in-plain-bore'],
    propose: (context) => {
      const bores = context.before.subject.placeOf('coupling', 'bores');
      const end = screwEnd(context);
      if (!bores || !end) return [];
      return [{ changes: [...end.changes, { place: { uri: bores.uri, path: [...bores.path, '1'] }, value: end.text }], what: `Turn the end of the screw down to ${end.text}, coupling bored to match`, result: () => 'it is centred' }];
    },
  }),
  remedy({
    id: 'larger-coupling',
    summary: 'Takes a coupling whose rating carries the torque.',
    cost: 2,
    cures: ['coupling-overloaded'],
    propose: (context) => {
      const present = context.before.bounds('coupling.torque-rating');
      return present === undefined ? [] : solvedProposal(context, { input: 'coupling.torque-rating', towards: 50 * present.nominal, say: (written) => `Take a coupling rated for ${written}`, coarse: true, cost: 2 });
    },
  }),
  remedy({
    id: 'other-coupling-form',
    summary: 'Takes a coupling of another form, which carries more, gives less, or takes more misalignment.',
    cost: 2.5,
    cures: ['coupling-overloaded', 'coupling-misaligned', 'drive-gives-too-much'],
    propose: (context) => {
      const present = context.before.choice('coupling.form');
      if (present === undefined) return [];
      return FORMS.filter((form) => form !== present && context.passes(context.tryWith({ 'coupling.form': choice(form) }))).flatMap((form) => {
        const change = changeOf(context, 'coupling.form', form);
        return change ? [{ changes: [change], what: `Take a ${form} coupling` }] : [];
      });
    },
  }),
  remedy({
    id: 'align-the-shafts',
    summary: 'Aligns the two shafts until the coupling takes what is left.',
    cost: 1.5,
    cures: ['coupling-misaligned'],
    propose: (context) => [
      ...solvedProposal(context, { input: 'coupling.parallel-offset', towards: 0, say: (written) => `Align the shafts to an offset of ${written}` }),
      ...solvedProposal(context, { input: 'coupling.angular-offset', towards: 0, say: (written) => `Align the shafts to an angle of ${written}` }),
    ],
  }),
];
