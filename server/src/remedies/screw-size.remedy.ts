import { isCommonBallScrew, nextPreferredDiameter, nextPreferredLead } from '../catalogue/ball-screws.ts';
import { STANDARD_THREADS } from '../catalogue/trapezoidal-threads.ts';
import { allChanges, changeOf, costOfChange, solvedProposal } from './entry-proposals.ts';
import { choice, number, remedy, type Change, type Proposal, type RemedyContext } from './remedy.ts';

export interface Size {
  readonly designation: string;
  readonly diameter: number;
  readonly lead: number;
  readonly preferred: boolean;
}

const trapezoidal: readonly Size[] = STANDARD_THREADS.map(({ designation, majorDiameter, lead, preferred }) => ({ designation, diameter: majorDiameter, lead, preferred }));

/** Sizes usually sold, by diameter, then lead; put together on first use. */
let ball: readonly Size[] | undefined;

function ballSizes(): readonly Size[] {
  ball ??= rowOf(nextPreferredDiameter).flatMap((diameter) =>
    rowOf(nextPreferredLead).filter((lead) => isCommonBallScrew(diameter, lead)).map((lead) => ({ designation: ballDesignation(diameter, lead), diameter, lead, preferred: true })),
  );
  return ball;
}

function rowOf(next: (after: number) => number | undefined): readonly number[] {
  const row: number[] = [];
  for (let value = next(0); value !== undefined; value = next(value)) row.push(value);
  return row;
}

const ballDesignation = (diameter: number, lead: number): string => `${String(Math.round(diameter * 1000)).padStart(2, '0')}${String(Math.round(lead * 1000)).padStart(2, '0')}`;

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
  return { diameter, lead, sizes: before.choice('screw.thread') === 'ball' ? ballSizes() : trapezoidal };
}

const near = (a: number, b: number): boolean => Math.abs(a - b) < 1e-6;

/** Writes a size for the screw, and for a nut that names its thread; undefined where it has no place. */
export function sizeChanges(context: RemedyContext, designation: string): readonly Change[] | undefined {
  const named = context.before.choice('nut.size') !== undefined;
  return allChanges([changeOf(context, 'screw.size', designation), ...(named ? [changeOf(context, 'nut.size', designation)] : [])]);
}

/** Standard sizes with a larger lead, of the same diameter or the next, the nearest first. */
export function coarserSizes(context: RemedyContext): readonly Size[] {
  const present = presentScrew(context);
  if (!present) return [];
  return present.sizes
    .filter((size) => size.lead > present.lead + 1e-6 && size.diameter >= present.diameter - 1e-6 && size.diameter <= LARGEST * present.diameter)
    .sort((a, b) => byDiameter(a, b) || a.lead - b.lead);
}

/** The first size that passes. */
function firstThatPasses(context: RemedyContext, { diameter, lead }: Present, sizes: readonly Size[], what: string): readonly Proposal[] {
  const found = context.first(sizes, (size) => ({ 'screw.size': choice(size.designation) }));
  const changes = found && sizeChanges(context, found.designation);
  if (!found || !changes) return [];
  return [{ changes, what: `${what} ${found.designation}`, cost: 3 + costOfChange(diameter, found.diameter) + costOfChange(lead, found.lead) }];
}

const byDiameter = (a: Size, b: Size): number => a.diameter - b.diameter || Number(b.preferred) - Number(a.preferred);

function thicker(context: RemedyContext): readonly Proposal[] {
  const present = presentScrew(context);
  if (!present) {
    const diameter = context.before.bounds('screw.major-diameter')?.nominal;
    return diameter === undefined ? [] : solvedProposal(context, { input: 'screw.major-diameter', towards: LARGEST * diameter, say: (written) => `Take a thicker screw of ${written}`, coarse: true, cost: 3 });
  }
  const sizes = present.sizes.filter((size) => size.diameter > present.diameter + 1e-6 && size.diameter <= LARGEST * present.diameter).sort(byDiameter);
  const sameLead = firstThatPasses(context, present, sizes.filter((size) => near(size.lead, present.lead)), 'Take a thicker screw');
  if (sameLead.length > 0) return sameLead;
  // Other leads within a factor of two: beyond, it would be another drive.
  return firstThatPasses(context, present, sizes.filter((size) => size.lead <= 2 * present.lead && size.lead >= present.lead / 2), 'Take a thicker screw');
}

function finer(context: RemedyContext): readonly Proposal[] {
  const present = presentScrew(context);
  if (!present) return otherStarts(context, (starts, now) => starts < now, 'Take a screw with a finer lead:');
  const sizes = present.sizes
    .filter((size) => size.lead < present.lead - 1e-6 && size.diameter >= present.diameter - 1e-6 && size.diameter <= LARGEST * present.diameter)
    .sort((a, b) => byDiameter(a, b) || b.lead - a.lead);
  return firstThatPasses(context, present, sizes, 'Take the finer lead of');
}

function coarser(context: RemedyContext): readonly Proposal[] {
  const present = presentScrew(context);
  if (!present) return otherStarts(context, (starts, now) => starts > now, 'Take a screw with a larger lead:');
  return firstThatPasses(context, present, coarserSizes(context), 'Take the larger lead of');
}

/** Another number of starts, for a thread that is given by its dimensions. */
function otherStarts(context: RemedyContext, fits: (starts: number, now: number) => boolean, what: string): readonly Proposal[] {
  const now = context.before.bounds('screw.starts')?.nominal;
  if (now === undefined || context.before.choice('screw.thread') === 'ball') return [];
  const counts = [1, 2, 3, 4, 5, 6].filter((starts) => fits(starts, now)).sort((a, b) => Math.abs(a - now) - Math.abs(b - now));
  const found = context.first(counts, (starts) => ({ 'screw.starts': number(starts) }));
  const change = found === undefined ? undefined : changeOf(context, 'screw.starts', String(found));
  return change && found !== undefined ? [{ changes: [change], what: `${what} ${found} ${found === 1 ? 'start' : 'starts'}`, cost: 3 + costOfChange(now, found) }] : [];
}

export default [
  remedy({
    id: 'thicker-screw',
    summary: 'Takes the next standard size that is thicker, with the same lead where there is one.',
    cost: 3,
    cures: [
      'screw-whirls', 'screw-buckles', 'screw-overstressed', 'nut-overpressed-at-rest', 'nut-overpressed-in-motion', 'nut-overheats', 'nut-wears-out', 'ball-nut-dents',
      'ball-nut-life-short', 'drive-gives-too-much', 'position-error-over-accuracy', 'free-end-swings', 'run-out-reaches-load', 'ball-nut-overpreloaded', 'nut-play-too-large',
      'screw-held-at-both-ends', 'drive-resonates-with-steps',
    ],
    propose: thicker,
  }),
  remedy({
    id: 'finer-lead',
    summary: 'Takes the standard size with the coarsest lead that is fine enough, of the same diameter or the next.',
    cost: 3,
    cures: [
      'drops-unpowered', 'may-creep-unpowered', 'motor-cannot-lift', 'motor-margin-thin', 'motor-overruns-going-down', 'layer-height-off-full-steps', 'motor-error-over-accuracy', 'inertia-ratio-high',
      'resolution-not-real', 'levelling-too-coarse', 'levelling-lost-unpowered', 'coupling-overloaded', 'rest-current-too-low', 'drive-gives-too-much', 'supply-voltage-rises', 'lowering-returns-energy', 'reduction-overloaded', 'nut-play-too-large',
      'position-error-over-accuracy',
    ],
    propose: finer,
  }),
  remedy({
    id: 'coarser-lead',
    summary: 'Takes a standard size with a larger lead, so that the screw turns more slowly.',
    cost: 3,
    cures: [
      'screw-whirls', 'screw-too-fast-for-its-maker', 'ball-nut-too-fast', 'nut-overheats', 'motor-past-its-corner', 'motor-too-fast-to-estimate', 'motor-beyond-its-points', 'step-rate-too-high', 'screw-inefficient',
      'motor-cannot-lift', 'motor-margin-thin', 'inertia-ratio-high', 'nut-overpressed-in-motion', 'ball-nut-life-short', 'supply-current-exceeded', 'free-end-swings',
    ],
    propose: coarser,
  }),
];
