/** Who holds what another joint holds already, by name. */
import { pseudoInverse, Matrix } from 'ml-matrix';
import { holdInWords, isCouple, listInWords } from './constraint-names.ts';
import { RANK_TOLERANCE, scaledRows, type ConstraintScale } from './constraint-rank.ts';
import { commonSpan, reducedRows, spanOf, type Row6 } from './linear-span.ts';
import { length3, times3, type Vector3 } from './vector3.ts';
import type { Wrench } from './constraint-wrenches.ts';

/** One redundant constraint: forces and couples of several owners that cancel each other whatever their size. */
export interface Conflict {
  /** The owner that comes later and repeats. */
  readonly later: string;
  /** Those before it that hold the same together: as few as possible. */
  readonly earlier: readonly string[];
  /** What is held twice, in words: "tilt about Y". */
  readonly held: string;
  /** Owners on either side of the conflict; each side holds it alone. */
  readonly sides: readonly [readonly string[], readonly string[]];
  /** Force and moment about the centre that each owner adds; they sum to zero. None when joints of one owner repeat each other. */
  readonly parts: readonly Part[];
  /** Held only softly by one of them. */
  readonly soft: boolean;
}

/** Force without unit and moment in m about the centre: only their proportions count. */
interface Part {
  readonly owner: string;
  readonly force: Vector3;
  readonly moment: Vector3;
}

interface Owner {
  readonly name: string;
  readonly rows: readonly Row6[];
  readonly stiffRows: readonly Row6[];
}

function subsets<T>(list: readonly T[], size: number): T[][] {
  if (size === 0) return [[]];
  return list.flatMap((item, i) => subsets(list.slice(i + 1), size - 1).map((rest) => [item, ...rest]));
}

/**
 * Every redundant constraint with the owners in conflict.
 *
 * Formula: the wrenches of an owner that those before it span too, taken first from one of them, then from two, then three (of up to eight), then from all with those left out that can be.
 * Each is a row of the left null space of W: contributions that sum to zero. A pure couple among them says which tilt is held twice.
 *
 * @param wrenches - rows of `wrenchesOf`; the order of their owners decides who repeats
 * @param scale - as for the count
 * @param tolerance - as for the count
 * @returns as many as the count has redundant constraints; several joints of one owner may be in conflict among themselves
 *
 * Source: left null space of the wrench matrix, in a basis with few owners per row; ours.
 * Checked against: hand counts (test/mechanics/constraint-conflicts.test.ts).
 */
export function conflictsOf(wrenches: readonly Wrench[], scale: ConstraintScale, tolerance: number = RANK_TOLERANCE): Conflict[] {
  const before: Owner[] = [];
  return [...new Set(wrenches.map((one) => one.owner))].flatMap((name) => {
    const own = wrenches.filter((one) => one.owner === name);
    const owner: Owner = { name, rows: scaledRows(own, scale), stiffRows: scaledRows(own.filter((one) => !one.soft), scale) };
    const found = [...within(owner, own, scale, tolerance), ...against(owner, before, scale, tolerance)];
    before.push(owner);
    return found;
  });
}

/** Rows of one owner that repeat each other. */
function within(owner: Owner, own: readonly Wrench[], scale: ConstraintScale, tolerance: number): Conflict[] {
  const kept: Row6[] = [];
  return owner.rows.flatMap((row, i) => {
    if (spanOf([...kept, row], tolerance).rank > kept.length) {
      kept.push(row);
      return [];
    }
    const wrench = unscaled(row, scale);
    return [{ later: owner.name, earlier: [owner.name], held: holdInWords(wrench, scale), sides: [[owner.name], [owner.name]] as const, parts: [], soft: (own[i] as Wrench).soft }];
  });
}

/** Up to so many owners all pairs and threes of them are tried. */
const FEW = 8;

/** What an owner repeats of those before it. */
function against(owner: Owner, before: readonly Owner[], scale: ConstraintScale, tolerance: number): Conflict[] {
  const inCommon = (group: readonly Owner[]): readonly Row6[] => commonSpan(owner.rows, group.flatMap((one) => one.rows), tolerance);
  const wanted = inCommon(before).length;
  const found: { row: Row6; from: readonly Owner[] }[] = [];
  const isNew = (row: Row6): boolean => spanOf([...found.map((one) => one.row), row], tolerance).rank > found.length;
  const sizes = before.length <= FEW ? [1, 2, 3] : [1];
  for (const group of sizes.flatMap((size) => subsets(before, size))) {
    if (found.length === wanted) break;
    // Forces are cleared first, so that pure couples stand apart.
    for (const row of reducedRows(inCommon(group), [0, 1, 2, 3, 4, 5])) if (isNew(row)) found.push({ row, from: group });
  }
  if (found.length < wanted) {
    for (const row of reducedRows(inCommon(before), [0, 1, 2, 3, 4, 5])) if (isNew(row)) found.push({ row, from: fewest(row, before, tolerance) });
  }
  return found.map(({ row, from }) => conflict(owner, row, from, scale, tolerance));
}

/** Owners that make up a wrench together, none of which can be left out; the later ones are left out first. */
function fewest(row: Row6, owners: readonly Owner[], tolerance: number): readonly Owner[] {
  let kept = owners;
  for (const owner of [...owners].reverse()) {
    const others = kept.filter((one) => one !== owner);
    if (commonSpan([row], others.flatMap((one) => one.rows), tolerance).length === 1) kept = others;
  }
  return kept;
}

function conflict(owner: Owner, row: Row6, from: readonly Owner[], scale: ConstraintScale, tolerance: number): Conflict {
  const all = from.flatMap((one) => one.rows.map((values) => ({ name: one.name, values })));
  // Least squares of smallest norm: how the earlier owners make up the same wrench.
  const weights = pseudoInverse(new Matrix(all.map(({ values }) => [...values])).transpose()).mmul(Matrix.columnVector([...row])).to1DArray();
  const repeated: Part = { owner: owner.name, ...unscaled(row.map((value) => -value), scale) };
  const parts = [repeated];
  for (const one of from) {
    const sum = [0, 1, 2, 3, 4, 5].map((j) => all.reduce((total, { name, values }, i) => (name === one.name ? total + (weights[i] as number) * (values[j] as number) : total), 0));
    if (Math.hypot(...sum) > 1e-6) parts.push({ owner: one.name, ...unscaled(sum.map((value) => (Math.abs(value) < 1e-9 ? 0 : value)), scale) });
  }
  const earlier = parts.slice(1).map((part) => part.owner);
  const stiff = [owner, ...from].map((one) => one.stiffRows);
  const held = commonSpan(stiff[0] ?? [], stiff.slice(1).flat(), tolerance);
  const soft = spanOf([...held, row], tolerance).rank > held.length;
  // Two owners, or one of several that passes on a couple alone: then that couple is what the others hold together.
  const couple = parts.length > 2 ? parts.find((part) => isCouple(part, scale)) : undefined;
  const alone = couple ?? repeated;
  return {
    later: owner.name,
    earlier,
    held: holdInWords(alone, scale),
    sides: [[alone.owner], parts.filter((part) => part !== alone).map((part) => part.owner)],
    parts,
    soft,
  };
}

function unscaled(row: Row6, scale: ConstraintScale): { force: Vector3; moment: Vector3 } {
  const [fx = 0, fy = 0, fz = 0, mx = 0, my = 0, mz = 0] = row;
  const force: Vector3 = [fx, fy, fz];
  const moment = times3(scale.length, [mx, my, mz]);
  // The moment that a thread passes on with its force is that of its pitch: beside the force it names nothing.
  return length3(force) < 1e-7 ? { force: [0, 0, 0], moment } : { force, moment };
}

/** A conflict as a sentence without full stop: "rail A and screw 1 both fix tilt about Y". */
export function conflictInWords({ later, earlier, held, sides: [one, other], parts }: Pick<Conflict, 'later' | 'earlier' | 'held' | 'sides' | 'parts'>): string {
  if (parts.length === 0) return `${later} fixes ${held} twice`;
  if (earlier.length === 1) return `${listInWords([...earlier, later])} both fix ${held}`;
  const inOrder = [...earlier, later].filter((name) => other.includes(name));
  if (inOrder.length > earlier.length - 1 && one[0] !== later) return `${listInWords(one)} fixes ${held}, which ${listInWords(inOrder)} fix together`;
  return `${listInWords([...earlier, later])} together fix ${held} once too often`;
}

/** One thing that several owners hold, each of them alone. */
export interface SharedHold {
  /** "tilt about Y". */
  readonly held: string;
  readonly owners: readonly string[];
  /** How many of them are too many. */
  readonly tooMany: number;
}

/**
 * Conflicts of one owner against one other, gathered by what they hold: for many joints that all do the same.
 *
 * @param conflicts - of `conflictsOf`
 * @returns those gathered, and those between more than two owners or within one as they are
 */
export function gatherConflicts(conflicts: readonly Conflict[]): { readonly shared: readonly SharedHold[]; readonly others: readonly Conflict[] } {
  const simple = (one: Conflict): boolean => one.parts.length > 0 && one.earlier.length === 1;
  const pairs = conflicts.filter(simple);
  const shared = [...new Set(pairs.map((one) => one.held))].map((held): SharedHold => {
    const same = pairs.filter((one) => one.held === held);
    return { held, owners: [...new Set(same.flatMap((one) => [...one.earlier, one.later]))], tooMany: same.length };
  });
  return { shared, others: conflicts.filter((one) => !simple(one)) };
}
