import { changeOf, costOfChange, solvedProposal } from './entry-proposals.ts';
import { writtenValue } from './nice-values.ts';
import { choice, number, remedy, type Change, type Proposal, type RemedyContext } from './remedy.ts';
import { isCrossed, transmissionOf, UNITS } from './what-moves.ts';

/** Thread beyond this many diameters carries next to nothing: the first turns take the load (Budynas and Nisbett, section 8-2). */
export const LONGEST_NUT = 3;

export const isBall = (context: RemedyContext): boolean => context.before.choice('screw.thread') === 'ball';

function lengthen(context: RemedyContext): readonly Proposal[] {
  const diameter = context.before.bounds('screw.major-diameter')?.nominal;
  const present = context.before.bounds('nut.length')?.nominal;
  if (diameter === undefined || present === undefined || present >= LONGEST_NUT * diameter || isBall(context)) return [];
  return solvedProposal(context, { input: 'nut.length', towards: LONGEST_NUT * diameter, say: (written) => `Lengthen the nut's thread to ${written}`, coarse: true });
}

const metals = ['bronze', 'brass'];

/** A material that bears more, greased. */
function material(context: RemedyContext): readonly Proposal[] {
  const present = context.before.choice('nut.material');
  if (present === undefined || isBall(context)) return [];
  const found = context.first(metals.filter((metal) => metal !== present), (metal) => ({ 'nut.material': choice(metal), 'nut.lubrication': choice('grease') }));
  if (found === undefined) return [];
  const changes = [changeOf(context, 'nut.material', found), changeOf(context, 'nut.lubrication', 'grease')].filter((change) => change !== undefined);
  return [{ changes, what: `Take a greased nut of ${found}` }];
}

/** What was written of the nut before and would belie the new one. */
export function withoutOldPlay(context: RemedyContext): readonly Change[] {
  return ['nut.backlash', 'nut.stiffness'].flatMap((input) => {
    const { before } = context;
    const found = before.input(input);
    return found.state === 'known' && (found.origin.from === 'here' || found.origin.from === 'part') ? [{ place: found.origin.place, value: null }] : [];
  });
}

/** A nut in two halves pushed apart by a spring, with enough force to keep both flanks closed. */
export function sprungNut(context: RemedyContext): { readonly changes: readonly Change[]; readonly preload: string; readonly newtons: number } | undefined {
  if (isBall(context) || context.before.choice('nut.design') === 'spring-loaded') return undefined;
  const newtons = 1.5 * Math.max(context.before.bounds('nut.reversal-force')?.high ?? 0, 5);
  const preload = writtenValue(newtons, 'force', 'N', 'up', true);
  const change = changeOf(context, 'nut.design', 'spring-loaded');
  const force = preload === undefined ? undefined : changeOf(context, 'nut.preload', preload);
  return change && force && preload !== undefined ? { changes: [change, force, ...withoutOldPlay(context)], preload, newtons } : undefined;
}

function nutWithoutPlay(context: RemedyContext): readonly Proposal[] {
  if (isBall(context)) {
    const change = changeOf(context, 'nut.design', 'preloaded-ball');
    return change && context.before.choice('nut.design') !== 'preloaded-ball' ? [{ changes: [change, ...withoutOldPlay(context)], what: 'Take a preloaded ball nut', price: 'more drag' }] : [];
  }
  const sprung = sprungNut(context);
  return sprung ? [{ changes: sprung.changes, what: `Take a spring-loaded nut with ${sprung.preload} of preload`, price: 'more drag' }] : [];
}

export default [
  remedy({ id: 'longer-nut', summary: 'Lengthens the thread of the nut, up to three diameters.', cost: 2.5, cures: ['nut-overpressed-at-rest', 'nut-overpressed-in-motion', 'nut-overheats', 'nut-wears-out'], propose: lengthen }),
  remedy({ id: 'stronger-nut-material', summary: 'Takes a greased metal nut.', cost: 2.5, cures: ['nut-overpressed-at-rest', 'nut-overpressed-in-motion', 'nut-overheats', 'nut-wears-out', 'drive-gives-too-much'], propose: material }),
  remedy({
    id: 'grease-the-nut',
    summary: 'Greases a nut that runs dry.',
    cost: 1.5,
    cures: [
      'nut-overheats', 'nut-wears-out', 'motor-cannot-lift', 'motor-margin-thin', 'screw-inefficient', 'resolution-not-real', 'motor-error-over-accuracy', 'nut-preload-drags',
      'coupling-overloaded', 'rest-current-too-low',
    ],
    propose: (context) => {
      const change = changeOf(context, 'nut.lubrication', 'grease');
      if (isBall(context) || !change || context.before.choice('nut.lubrication') === 'grease' || !context.passes(context.tryWith({ 'nut.lubrication': choice('grease') }))) return [];
      return [{ changes: [change], what: 'Grease the nut' }];
    },
  }),
  remedy({ id: 'nut-without-play', summary: 'Takes the play out of the nut: with a spring, or by preload between balls.', cost: 2.5, cures: ['nut-play-too-large', 'weight-closes-play'], propose: nutWithoutPlay }),
  remedy({
    id: 'adjust-the-nut',
    summary: 'Takes a nut that is set to a small play by hand.',
    cost: 2.5,
    cures: ['nut-play-too-large'],
    propose: (context) => {
      const change = changeOf(context, 'nut.design', 'adjustable');
      return change && !isBall(context) && context.before.choice('nut.design') === 'plain' ? [{ changes: [change, ...withoutOldPlay(context)], what: 'Take an adjustable nut', price: 'to be reset as it wears' }] : [];
    },
  }),
  remedy({
    id: 'raise-the-preload',
    summary: 'Raises the preload of the nut until it stays closed.',
    cost: 2,
    cures: ['nut-spring-too-weak', 'ball-nut-goes-slack', 'nut-play-too-large'],
    propose: (context) => {
      const preload = context.before.bounds('nut.preload')?.nominal;
      return preload === undefined ? [] : solvedProposal(context, { input: 'nut.preload', towards: 30 * preload, say: (written) => `Raise the preload to ${written}`, price: 'more drag' });
    },
  }),
  remedy({
    id: 'lower-the-preload',
    summary: 'Lowers the preload of the nut until it drags or wears no more than is usual.',
    cost: 2,
    cures: ['ball-nut-overpreloaded', 'nut-preload-drags', 'motor-margin-thin', 'motor-cannot-lift', 'ball-nut-life-short', 'resolution-not-real', 'motor-error-over-accuracy'],
    propose: (context) => {
      const preload = context.before.bounds('nut.preload')?.nominal;
      return preload === undefined ? [] : solvedProposal(context, { input: 'nut.preload', towards: 0.02 * preload, say: (written) => `Lower the preload to ${written}` });
    },
  }),
  remedy({
    id: 'ball-nut-of-higher-rating',
    summary: 'Takes a ball nut with more turns of balls, or one whose return stands more speed, for the same screw.',
    cost: 3,
    cures: ['ball-nut-life-short', 'ball-nut-dents', 'ball-nut-overpreloaded', 'ball-nut-too-fast'],
    propose: (context) => {
      const rated = (input: string, words: string): readonly Proposal[] => {
        const present = context.before.bounds(input)?.nominal;
        // Twice the rating is about as far as more turns of balls on the same screw go.
        const most = present === undefined ? undefined : input === 'nut.speed-value' ? FASTEST_RETURN : 2 * present;
        return present === undefined || most === undefined || most <= present ? [] : solvedProposal(context, { input, towards: most, say: (written) => `Take a ball nut of ${written} ${words}`, coarse: true });
      };
      switch (context.finding.check) {
        case 'ball-nut-dents':
          return rated('nut.static-rating', 'static rating');
        case 'ball-nut-too-fast':
          return rated('nut.speed-value', 'speed value');
        default:
          return rated('nut.dynamic-rating', 'dynamic rating');
      }
    },
  }),
  remedy({
    id: 'share-among-more-units',
    summary: 'Shares the load among more screws, belts or racks.',
    cost: 5,
    cures: [
      'nut-overpressed-at-rest', 'nut-overpressed-in-motion', 'nut-overheats', 'nut-wears-out', 'screw-buckles', 'ball-nut-dents', 'ball-nut-life-short', 'motor-cannot-lift', 'motor-margin-thin',
      'coupling-overloaded', 'rest-current-too-low', 'drive-gives-too-much', 'inertia-ratio-high', 'thrust-bearing-overloaded', 'belt-overtensioned', 'belt-teeth-overloaded',
      'rack-tooth-overstressed', 'broken-belt-drops',
    ],
    propose: (context) => {
      const units = context.before.bounds('drive.units')?.nominal ?? 1;
      // Crossed belts are two, a gantry has its two sides, and nuts with places would each need one more place.
      if (isCrossed(context) || context.before.choice('drive.sharing') !== 'equal') return [];
      const found = context.first([units + 1, units + 2].filter((count) => count <= 4), (count) => ({ 'drive.units': number(count) }));
      const change = found === undefined ? undefined : changeOf(context, 'drive.units', String(found));
      return change && found !== undefined ? [{ changes: [change], what: `Share the load among ${found} ${UNITS[transmissionOf(context)]}`, cost: 5 + costOfChange(units, found) }] : [];
    },
  }),
];

/** 150 000 mm·rpm in m·rad/s, the most that returns through end caps stand; common practice, from memory. */
const FASTEST_RETURN = (150 * 2 * Math.PI) / 60;
