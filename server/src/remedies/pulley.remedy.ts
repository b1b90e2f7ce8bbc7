import { beltProfile } from '../catalogue/belt-profiles.ts';
import type { Evaluation } from '../figures/evaluation.ts';
import { changeOf, costOfChange, entryDial, solvedProposal, turned, type Dial } from './entry-proposals.ts';
import { choice, number, remedy, type Proposal, type RemedyContext } from './remedy.ts';
import { isWritten, moreOrLess } from './what-moves.ts';

/** Teeth with which pulleys are usually sold; common practice, no published source. */
const TEETH = [10, 12, 14, 15, 16, 18, 20, 22, 24, 25, 26, 28, 30, 32, 36, 40, 44, 48, 50, 60, 72, 80, 96];

/** No more than this many times as large: beyond, it is another drive. */
const LARGEST = 2.5;

/** The first of some numbers of teeth that passes. */
function otherTeeth(context: RemedyContext, counts: readonly number[], say: (teeth: number, present: number) => Pick<Proposal, 'what' | 'price' | 'result'>): readonly Proposal[] {
  const present = context.before.bounds('pulley.teeth')?.nominal;
  if (present === undefined || present <= 0) return [];
  const found = context.first(counts, (teeth) => ({ 'pulley.teeth': number(teeth) }));
  const change = found === undefined ? undefined : changeOf(context, 'pulley.teeth', String(found));
  return found === undefined || !change ? [] : [{ changes: [change], cost: 2.5 + costOfChange(present, found), ...say(found, present) }];
}

const presentTeeth = (context: RemedyContext): number => context.before.bounds('pulley.teeth')?.nominal ?? 0;

/** A larger pulley asks for more torque in the same ratio. */
const more = (teeth: number, present: number): string => `${moreOrLess(teeth / present)} torque`;

/** Half of the belt's width, and a little room, is the least that lies between its middle and the face of the motor. */
function closest(context: RemedyContext): number | undefined {
  const width = context.before.bounds('belt.width')?.nominal ?? context.before.bounds('pinion.face-width')?.nominal;
  return width === undefined ? undefined : width / 2 + 1e-3;
}

/** What a bored-to-fit pulley, a belt with fuller teeth, ground idlers and belts cut from one roll reach; common practice, no published source. */
const TRUER: readonly { readonly input: string; readonly towards: number; readonly words: (written: string) => string }[] = [
  { input: 'pulley.eccentricity', towards: 5e-6, words: (written) => `a pulley true to ${written}` },
  { input: 'belt.backlash', towards: 0.02e-3, words: (written) => `a belt with ${written} of play` },
  { input: 'idlers.eccentricity', towards: 5e-6, words: (written) => `idlers true to ${written}` },
  { input: 'belt.length-tolerance', towards: 1e-4, words: (written) => `belts true in length to ${written}` },
];

/** Farther round a belt is hardly led. */
const MOST_WRAP = (220 * Math.PI) / 180;

const meshed = (after: Evaluation): string | undefined => {
  const teeth = after.bounds('pulley.teeth-in-mesh')?.low;
  return teeth === undefined ? undefined : `${Number(teeth.toPrecision(2))} teeth in mesh`;
};

export default [
  remedy({
    id: 'larger-pulley',
    summary: 'Takes a driving pulley with more teeth, which bends the belt less, holds it better, and turns more slowly.',
    cost: 2.5,
    cures: ['belt-teeth-few', 'belt-teeth-overloaded', 'pulley-too-small', 'motor-too-fast-for-its-maker', 'motor-past-its-corner', 'motor-too-fast-to-estimate', 'motor-beyond-its-points', 'step-rate-too-high', 'motor-cannot-lift', 'motor-margin-thin', 'belt-error-over-accuracy', 'crossed-belts-diagonal-too-fast'],
    propose: (context) => {
      const present = presentTeeth(context);
      const inMesh = context.finding.check === 'belt-teeth-few' ? { result: meshed } : {};
      return otherTeeth(context, TEETH.filter((teeth) => teeth > present && teeth <= LARGEST * present), (teeth) => ({ what: `Take a larger pulley of ${teeth} teeth`, price: more(teeth, present), ...inMesh }));
    },
  }),
  remedy({
    id: 'more-wrap',
    summary: 'Leads the belt farther round the driving pulley, so that enough teeth are in mesh.',
    cost: 2,
    cures: ['belt-teeth-few', 'belt-teeth-overloaded'],
    propose: (context) => {
      const wrap = context.before.bounds('pulley.wrap')?.nominal;
      // Where it follows from the path of a plain loop there is no idler to lead it farther.
      if (wrap === undefined || wrap >= MOST_WRAP || (!isWritten(context, 'pulley.wrap') && context.before.choice('belt.arrangement') === 'loop')) return [];
      const inMesh = context.finding.check === 'belt-teeth-few' ? { result: meshed } : {};
      return solvedProposal(context, { input: 'pulley.wrap', towards: MOST_WRAP, say: (written) => `Lead the belt ${written} round the pulley`, cost: 2 }).map((proposal) => ({ ...proposal, ...inMesh }));
    },
  }),
  remedy({
    id: 'smaller-pulley',
    summary: 'Takes a driving pulley with fewer teeth, no fewer than the belt lasts on: less torque, finer steps, less give of the motor.',
    cost: 2.5,
    cures: [
      'motor-cannot-lift', 'motor-margin-thin', 'inertia-ratio-high', 'rest-current-too-low', 'resolution-not-real', 'motor-error-over-accuracy', 'drive-gives-too-much', 'counts-too-coarse', 'reduction-error-over-accuracy',
      'reduction-overloaded', 'motor-rms-torque-high', 'motor-peak-torque-exceeded', 'amplifier-current-short', 'resonance-low', 'coupling-overloaded', 'crossed-belts-diagonal-stalls', 'motor-overruns-going-down', 'layer-height-off-full-steps', 'motor-winding-too-hot', 'motor-case-hot',
    ],
    propose: (context) => {
      const present = presentTeeth(context);
      const least = beltProfile(context.before.choice('belt.profile') ?? '')?.teeth.recommended ?? present;
      return otherTeeth(context, TEETH.filter((teeth) => teeth < present && teeth >= least).reverse(), (teeth) => ({ what: `Take a smaller pulley of ${teeth} teeth`, price: `motor ${Math.round((present / teeth - 1) * 100)} % faster` }));
    },
  }),
  remedy({
    id: 'larger-idler',
    summary: 'Takes idlers large enough for the belt.',
    cost: 2,
    cures: ['idler-too-small'],
    propose: (context) => {
      const teeth = context.before.bounds('idlers.teeth')?.nominal;
      if (teeth !== undefined && isWritten(context, 'idlers.teeth')) {
        const found = context.first(TEETH.filter((count) => count > teeth && count <= 4 * teeth), (count) => ({ 'idlers.teeth': number(count) }));
        const change = found === undefined ? undefined : changeOf(context, 'idlers.teeth', String(found));
        return change ? [{ changes: [change], what: `Take larger idlers of ${found ?? ''} teeth` }] : [];
      }
      const diameter = context.before.bounds('idlers.diameter')?.nominal;
      return diameter === undefined ? [] : solvedProposal(context, { input: 'idlers.diameter', towards: 4 * diameter, say: (written) => `Take larger idlers of ${written}`, coarse: true });
    },
  }),
  remedy({
    id: 'teeth-over-the-idlers',
    summary: 'Leads the belt so that its teeth run on the idlers, and not its back.',
    cost: 3,
    cures: ['idler-too-small'],
    propose: (context) => {
      const [side, face] = [changeOf(context, 'idlers.side', 'teeth'), isWritten(context, 'idlers.face') ? changeOf(context, 'idlers.face', 'toothed') : undefined];
      if (context.before.choice('idlers.side') !== 'back' || !side || !context.passes(context.tryWith({ 'idlers.side': choice('teeth') }))) return [];
      return [{ changes: [side, ...(face ? [face] : [])], what: 'Lead the belt with its teeth over the idlers' }];
    },
  }),
  remedy({
    id: 'pulley-closer-to-the-motor',
    summary: 'Sets the pulley closer to the face of the motor, as far as the width of the belt leaves room.',
    cost: 1.5,
    cures: ['motor-shaft-bent-by-belt'],
    propose: (context) => {
      const [input, name] = context.before.choice('drive.transmission') === 'rack' ? ['pinion.overhang', 'pinion'] as const : ['pulley.overhang', 'pulley'] as const;
      const [present, least] = [context.before.bounds(input)?.nominal, closest(context)];
      return present === undefined || least === undefined || least >= present ? [] : turned(context, [entryDial(context, { input, towards: least, say: (written) => `Set the ${name} within ${written} of the motor`, cost: 1.5 })]);
    },
  }),
  remedy({
    id: 'outer-bearing',
    summary: 'Carries the shaft of pulley or pinion in a bearing of its own on the outer side.',
    cost: 3,
    cures: ['motor-shaft-bent-by-belt'],
    propose: (context) => {
      const change = changeOf(context, 'drive.shaft-support', 'outboard');
      if (!change || context.before.choice('drive.shaft-support') === 'outboard') return [];
      return [{ changes: [change], what: 'Carry the shaft in an outer bearing too', result: () => 'the motor shaft is spared the pull' }];
    },
  }),
  remedy({
    id: 'truer-pulley',
    summary: 'Takes pulley and idlers that run truer, and a belt with less play.',
    cost: 2,
    cures: ['belt-error-over-accuracy', 'gantry-skews'],
    propose: (context) => {
      const dials = TRUER.map(({ input, towards, words }, index) => {
        const present = context.before.bounds(input)?.nominal;
        const say = (first: boolean) => (written: string) => `${first ? 'Take ' : ''}${words(written)}`;
        const dial = (first: boolean): Dial | undefined => (present === undefined || present <= towards ? undefined : entryDial(context, { input, towards, say: say(first), coarse: true, cost: 1.5 + index / 10 }));
        return { first: dial(true), further: dial(false) };
      });
      const [pulley, play, idlers, tolerance] = dials;
      if (context.finding.check === 'gantry-skews') return tolerance?.first ? turned(context, [tolerance.first]) : [];
      for (const set of [[pulley?.first], [play?.first], [pulley?.first, play?.further], [pulley?.first, idlers?.further, play?.further]]) {
        const found = set.every((dial) => dial !== undefined) ? turned(context, set) : [];
        if (found.length > 0) return found;
      }
      return [];
    },
  }),
  remedy({
    id: 'room-between-the-pulleys',
    summary: 'Gives the carriage the room that its travel needs between the pulleys: farther apart, or a shorter travel.',
    cost: 2,
    cures: ['belt-too-short-for-travel'],
    propose: (context) => {
      const anchored = context.before.choice('belt.arrangement') === 'anchored-ends';
      const solved = (input: string, times: number, say: (written: string) => string, cost: number): readonly Proposal[] => {
        const present = context.before.bounds(input)?.nominal;
        return present === undefined ? [] : solvedProposal(context, { input, towards: times * present, say, cost });
      };
      return [
        // Where the length of the belt is written, the distance follows from it, or would contradict it.
        ...(isWritten(context, 'belt.path-length') ? [] : solved('belt.center-distance', 3, (written) => `Set the ${anchored ? 'anchors' : 'pulleys'} ${written} apart`, 2)),
        ...(isWritten(context, 'belt.center-distance') ? [] : solved('belt.path-length', 3, (written) => `Take a longer belt of ${written}`, 2)),
        ...solved('axis.travel', 0.2, (written) => `Shorten the travel to ${written}`, 2.5),
        ...solved('belt.nearest-distance', 0.2, (written) => `Let the carriage come within ${written} of the ${anchored ? 'anchor' : 'pulley'}`, 2.5),
      ];
    },
  }),
];
