import { BALL_SCREW_SIZES } from '../catalogue/ball-screws.ts';
import { STANDARD_THREADS } from '../catalogue/trapezoidal-threads.ts';
import { changeOf, resultText } from './entry-proposals.ts';
import { choice, remedy, type Proposal, type RemedyContext } from './remedy.ts';

interface Size {
  readonly designation: string;
  readonly majorDiameter: number;
  readonly lead: number;
  readonly preferred: boolean;
}

const ballDesignation = (diameter: number, lead: number): string => `${Math.round(diameter * 1000)}${String(Math.round(lead * 1000)).padStart(2, '0')}`;

const trapezoidal: readonly Size[] = STANDARD_THREADS.map(({ designation, majorDiameter, lead, preferred }) => ({ designation, majorDiameter, lead, preferred }));
const ball: readonly Size[] = BALL_SCREW_SIZES.map(({ nominalDiameter, lead }) => ({ designation: ballDesignation(nominalDiameter, lead), majorDiameter: nominalDiameter, lead, preferred: true }));

/** No more than this many times the present diameter: beyond, it is another machine. */
const LARGEST = 2.6;

interface Present {
  readonly diameter: number;
  readonly lead: number;
  readonly sizes: readonly Size[];
}

/** The present screw and the standard sizes of its kind; undefined where the screw is not named by a standard size. */
function presentScrew(context: RemedyContext): Present | undefined {
  const { before } = context;
  const diameter = before.bounds('screw.major-diameter')?.nominal;
  const lead = before.bounds('screw.lead')?.nominal;
  if (before.choice('screw.size') === undefined || diameter === undefined || lead === undefined) return undefined;
  return { diameter, lead, sizes: before.choice('screw.thread') === 'ball' ? ball : trapezoidal };
}

const near = (a: number, b: number): boolean => Math.abs(a - b) < 1e-6;

function firstThatPasses(context: RemedyContext, sizes: readonly Size[], say: (size: Size) => string): readonly Proposal[] {
  const found = context.first(sizes, (size) => ({ 'screw.size': choice(size.designation) }));
  const change = found && changeOf(context, 'screw.size', found.designation);
  return found && change ? [{ changes: [change], title: (after) => `${say(found)}${resultText(context, after)}` }] : [];
}

const byDiameter = (a: Size, b: Size): number => a.majorDiameter - b.majorDiameter || Number(b.preferred) - Number(a.preferred);

export default [
  remedy({
    id: 'thicker-screw',
    summary: 'Takes the next standard size that is thicker, with the same lead where there is one.',
    cures: [
      'screw-whirls', 'screw-buckles', 'screw-overstressed', 'nut-overpressed-at-rest', 'nut-overpressed-in-motion', 'nut-overheats', 'nut-wears-out', 'ball-nut-dents',
      'ball-nut-life-short', 'drive-gives-too-much', 'position-error-over-accuracy', 'free-end-swings', 'run-out-reaches-load', 'ball-nut-overpreloaded',
    ],
    propose: (context) => {
      const present = presentScrew(context);
      if (!present) return [];
      const thicker = present.sizes.filter((size) => size.majorDiameter > present.diameter + 1e-6 && size.majorDiameter <= LARGEST * present.diameter).sort(byDiameter);
      const sameLead = firstThatPasses(context, thicker.filter((size) => near(size.lead, present.lead)), (size) => `Take a thicker screw ${size.designation}`);
      return sameLead.length > 0 ? sameLead : firstThatPasses(context, thicker, (size) => `Take a thicker screw ${size.designation}`);
    },
  }),
  remedy({
    id: 'finer-lead',
    summary: 'Takes the standard size with the coarsest lead that is fine enough, of the same diameter or the next.',
    cures: ['drops-unpowered', 'may-creep-unpowered', 'held-by-friction-alone', 'motor-cannot-lift', 'motor-margin-thin', 'motor-overruns-going-down', 'layer-height-off-full-steps', 'motor-error-over-accuracy', 'inertia-ratio-high', 'resolution-not-real', 'coupling-overloaded'],
    propose: (context) => {
      const present = presentScrew(context);
      if (!present) return [];
      const finer = present.sizes
        .filter((size) => size.lead < present.lead - 1e-6 && size.majorDiameter >= present.diameter - 1e-6 && size.majorDiameter <= LARGEST * present.diameter)
        .sort((a, b) => byDiameter(a, b) || b.lead - a.lead);
      return firstThatPasses(context, finer, (size) => `Take a screw with a finer lead, ${size.designation}`);
    },
  }),
  remedy({
    id: 'coarser-lead',
    summary: 'Takes a standard size with a larger lead, so that the screw turns more slowly.',
    cures: ['screw-whirls', 'screw-too-fast-for-its-maker', 'ball-nut-too-fast', 'nut-overheats', 'motor-past-its-corner', 'motor-too-fast-to-estimate', 'motor-beyond-its-points', 'step-rate-too-high', 'screw-inefficient'],
    propose: (context) => {
      const present = presentScrew(context);
      if (!present) return [];
      const coarser = present.sizes.filter((size) => size.lead > present.lead + 1e-6 && near(size.majorDiameter, present.diameter)).sort((a, b) => a.lead - b.lead);
      return firstThatPasses(context, coarser, (size) => `Take a screw with a larger lead, ${size.designation}`);
    },
  }),
];
