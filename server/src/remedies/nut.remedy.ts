import { changeOf, chosenProposal, resultText, solvedProposal } from './entry-proposals.ts';
import { writtenValue } from './nice-values.ts';
import { choice, number, remedy, type Proposal, type RemedyContext } from './remedy.ts';

/** Thread beyond this many diameters carries next to nothing: the first turns take the load (Budynas and Nisbett, section 8-2). */
const LONGEST_NUT = 3;

function lengthen(context: RemedyContext): readonly Proposal[] {
  const diameter = context.before.bounds('screw.major-diameter')?.nominal;
  if (diameter === undefined || context.before.choice('screw.thread') === 'ball') return [];
  return solvedProposal(context, { input: 'nut.length', towards: LONGEST_NUT * diameter, say: (written) => `Lengthen the nut's thread to ${written}`, coarse: true });
}

const metals = ['bronze', 'brass'];

/** A material that bears more, greased. */
function material(context: RemedyContext): readonly Proposal[] {
  const present = context.before.choice('nut.material');
  if (present === undefined || context.before.choice('screw.thread') === 'ball') return [];
  const found = context.first(metals.filter((metal) => metal !== present), (metal) => ({ 'nut.material': choice(metal), 'nut.lubrication': choice('grease') }));
  if (found === undefined) return [];
  const changes = [changeOf(context, 'nut.material', found), changeOf(context, 'nut.lubrication', 'grease')].filter((change) => change !== undefined);
  return [{ changes, title: (after) => `Take a greased nut of ${found}${resultText(context, after)}` }];
}

/** A nut in two halves pushed apart by a spring, with enough force to keep both flanks closed. */
function spring(context: RemedyContext): readonly Proposal[] {
  if (context.before.choice('screw.thread') === 'ball' || context.before.choice('nut.design') === 'spring-loaded') return [];
  const reversal = Math.max(context.before.bounds('nut.reversal-force')?.high ?? 0, 5);
  const written = writtenValue(1.5 * reversal, 'force', 'N', 'up', true);
  const change = changeOf(context, 'nut.design', 'spring-loaded');
  const preload = written === undefined ? undefined : changeOf(context, 'nut.preload', written);
  if (!change || !preload) return [];
  // A play that was written belonged to the nut without spring.
  const backlash = context.before.input('nut.backlash');
  const old = backlash.state === 'known' && backlash.origin.from === 'here' ? [{ place: backlash.origin.place, value: null }] : [];
  return [{ changes: [change, preload, ...old], title: (after) => `Take a spring-loaded nut with ${written} of preload${resultText(context, after)}` }];
}

export default [
  remedy({ id: 'longer-nut', summary: 'Lengthens the thread of the nut, up to three diameters.', cures: ['nut-overpressed-at-rest', 'nut-overpressed-in-motion', 'nut-overheats', 'nut-wears-out'], propose: lengthen }),
  remedy({ id: 'stronger-nut-material', summary: 'Takes a greased metal nut.', cures: ['nut-overpressed-at-rest', 'nut-overpressed-in-motion', 'nut-overheats', 'nut-wears-out', 'drive-gives-too-much'], propose: material }),
  remedy({ id: 'spring-loaded-nut', summary: 'Takes the play out of the nut with a spring.', cures: ['nut-play-too-large', 'position-error-over-accuracy'], propose: spring }),
  remedy({
    id: 'raise-the-preload',
    summary: 'Raises the preload of the nut until it stays closed.',
    cures: ['nut-spring-too-weak', 'ball-nut-goes-slack', 'nut-play-too-large'],
    propose: (context) => {
      const preload = context.before.bounds('nut.preload')?.nominal;
      return preload === undefined ? [] : solvedProposal(context, { input: 'nut.preload', towards: 30 * preload, say: (written) => `Raise the preload to ${written}` });
    },
  }),
  remedy({
    id: 'lower-the-preload',
    summary: 'Lowers the preload of the nut until it drags or wears no more than is usual.',
    cures: ['ball-nut-overpreloaded', 'nut-preload-drags', 'motor-margin-thin', 'motor-cannot-lift', 'ball-nut-life-short'],
    propose: (context) => {
      const preload = context.before.bounds('nut.preload')?.nominal;
      return preload === undefined ? [] : solvedProposal(context, { input: 'nut.preload', towards: 0.02 * preload, say: (written) => `Lower the preload to ${written}` });
    },
  }),
  remedy({
    id: 'move-less',
    summary: 'Lowers the share of time in motion.',
    cures: ['nut-overheats'],
    propose: (context) => {
      const duty = context.before.bounds('motion.duty')?.nominal;
      return duty === undefined ? [] : solvedProposal(context, { input: 'motion.duty', towards: 0.02 * duty, say: (written) => `Move no more than ${written} of the time` });
    },
  }),
  remedy({
    id: 'share-among-more-units',
    summary: 'Shares the load among more screws.',
    cures: ['nut-overpressed-at-rest', 'nut-overpressed-in-motion', 'screw-buckles', 'ball-nut-dents', 'ball-nut-life-short', 'motor-cannot-lift', 'motor-margin-thin', 'screw-overstressed'],
    propose: (context) => {
      const units = context.before.bounds('drive.units')?.nominal ?? 1;
      const found = context.first([units + 1, units + 2].filter((count) => count <= 4), (count) => ({ 'drive.units': number(count) }));
      const change = found === undefined ? undefined : changeOf(context, 'drive.units', String(found));
      return change ? [{ changes: [change], title: (after) => `Share the load among ${found} screws${resultText(context, after)}` }] : [];
    },
  }),
  remedy({
    id: 'better-accuracy-grade',
    summary: 'Takes a screw of the next better accuracy grade that is enough.',
    cures: ['position-error-over-accuracy'],
    propose: (context) => {
      const grades = context.before.choice('screw.thread') === 'ball' ? ['T10', 'T7', 'P5', 'P3', 'P1'] : ['rolled', 'whirled', 'ground'];
      const present = grades.indexOf(context.before.choice('screw.grade') ?? grades[0] ?? '');
      return chosenProposal(context, 'screw.grade', grades.slice(present + 1), (grade) => `Take a screw of grade ${grade}`);
    },
  }),
];
