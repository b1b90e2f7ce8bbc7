/** What keeps a part on guides and joints from being levelled by lifts, by name. */
import { holdInWords } from './constraint-names.ts';
import { RANK_TOLERANCE, scaledRows, type ConstraintScale } from './constraint-rank.ts';
import { commonSpan, reducedRows, spanOf, type Row6 } from './linear-span.ts';
import { times3, type Vector3 } from './vector3.ts';
import type { Wrench } from './constraint-wrenches.ts';

/** A motion of levelling that is held. */
export interface LevellingHold {
  /** "tilt about X". */
  readonly held: string;
  /** Each of them holds it alone; or all of them only together. */
  readonly owners: readonly string[];
  readonly together: boolean;
}

export interface LevellingHolds {
  /** How many of the three motions of levelling are held: height and two tilts, 0 to 3. */
  readonly count: number;
  readonly holds: readonly LevellingHold[];
}

/** The force upwards and the couples about both level axes: what three lifts command. Rows of a scaled wrench, about the centre. */
const COMMANDED: readonly Row6[] = [2, 3, 4].map((index) => [0, 1, 2, 3, 4, 5].map((column) => (column === index ? 1 : 0)));

function subsets<T>(list: readonly T[], size: number): T[][] {
  if (size === 0) return [[]];
  return list.flatMap((item, i) => subsets(list.slice(i + 1), size - 1).map((rest) => [item, ...rest]));
}

/** Up to so many owners pairs and threes of them are tried. */
const FEW = 8;

/**
 * Which motions of levelling all that is not a lift holds, and who.
 *
 * Formula: lifts that move one by one command height and both tilts. A part follows them when no combination of the other wrenches is made of an
 * upright force and level couples alone: dim(span W ∩ span{f_z, m_x, m_y}) = 0. What the part does besides, such as a shift that goes with a tilt, is free to follow.
 *
 * @param wrenches - of everything between part and frame but the upright forces of the lifts
 * @param scale - as for the count of constraints; its centre decides only how a height that is held is called
 * @param tolerance - as for the count
 * @returns count, and for each owner that holds one alone what that is; then those that hold one only together
 *
 * Source: a body can make a motion when every wrench on it does no work on it (Ball, A Treatise on the Theory of Screws); ours for levelling.
 * Checked against: test/mechanics/levelling-freedom.test.ts, hand counts, and motions of points tried one by one.
 */
export function heldAgainstLevelling(wrenches: readonly Wrench[], scale: ConstraintScale, tolerance: number = RANK_TOLERANCE): LevellingHolds {
  const inCommon = (own: readonly Wrench[]): readonly Row6[] => commonSpan(scaledRows(own, scale), COMMANDED, tolerance);
  const all = inCommon(wrenches);
  if (all.length === 0) return { count: 0, holds: [] };
  const owners = [...new Set(wrenches.map(({ owner }) => owner))];
  const of = (names: readonly string[]): readonly Wrench[] => wrenches.filter(({ owner }) => names.includes(owner));
  const found: Row6[] = [];
  const isNew = (row: Row6): boolean => spanOf([...found, row], tolerance).rank > found.length;
  const alone = new Map<string, string[]>();
  for (const owner of owners) {
    for (const row of named(inCommon(of([owner])))) {
      const held = wordsOf(row, scale);
      alone.set(held, [...(alone.get(held) ?? []), owner]);
      if (isNew(row)) found.push(row);
    }
  }
  const holds: LevellingHold[] = [...alone].map(([held, who]) => ({ held, owners: [...new Set(who)], together: false }));
  const groups = owners.length <= FEW ? [2, 3].flatMap((size) => subsets(owners, size)) : [];
  for (const group of [...groups, owners]) {
    if (found.length === all.length) break;
    for (const row of named(inCommon(of(group)))) {
      if (!isNew(row)) continue;
      found.push(row);
      holds.push({ held: wordsOf(row, scale), owners: fewest(row, group, (names) => scaledRows(of(names), scale), tolerance), together: true });
    }
  }
  return { count: all.length, holds };
}

/** Forces are cleared first, so that pure couples stand apart. */
const named = (rows: readonly Row6[]): readonly Row6[] => reducedRows(rows, [0, 1, 2, 3, 4, 5]);

/** Owners none of which can be left out. */
function fewest(row: Row6, owners: readonly string[], rowsOf: (names: readonly string[]) => readonly Row6[], tolerance: number): readonly string[] {
  let kept = owners;
  for (const owner of [...owners].reverse()) {
    const others = kept.filter((one) => one !== owner);
    if (commonSpan([row], rowsOf(others), tolerance).length === 1) kept = others;
  }
  return kept;
}

function wordsOf([, , fz = 0, mx = 0, my = 0]: Row6, scale: ConstraintScale): string {
  const force: Vector3 = [0, 0, fz];
  return holdInWords({ force, moment: times3(scale.length, [mx, my, 0]) }, scale);
}
