/** How many freedoms joints leave, and how often they hold the same thing. */
import { reducedRows, spanOf, type Row6 } from './linear-span.ts';
import { requirePositive } from './require-argument.ts';
import { cross3, length3, minus3, plus3, times3, type Vector3 } from './vector3.ts';
import type { Wrench } from './constraint-wrenches.ts';

/**
 * Share of the largest singular value below which a direction counts as not held.
 * Above the rounding of written positions (a micrometre in a metre), below any alignment that can be built.
 */
export const RANK_TOLERANCE = 1e-6;

/** A small motion: turn, and slide of the centre. */
export interface Twist {
  /** rad per unit of motion. */
  readonly turn: Vector3;
  /** m per unit of motion, of the centre of the joints. */
  readonly slide: Vector3;
}

export interface ConstraintCount {
  readonly wrenches: number;
  readonly rank: number;
  /** What is left free; `6 − rank` motions, turns first. */
  readonly free: readonly Twist[];
  /** wrenches − rank. */
  readonly redundant: number;
  /** The same without what is held only softly. */
  readonly redundantStiff: number;
  /** Smallest singular value that counts over the largest, 0 to 1; 1 for no wrench. */
  readonly conditioning: number;
  /** The motion that is held least; undefined for no wrench. */
  readonly weakest: Twist | undefined;
  readonly scale: ConstraintScale;
}

/** Moments are divided by a length, about a centre, so that they compare with forces. */
export interface ConstraintScale {
  readonly centre: Vector3;
  /** m. */
  readonly length: number;
}

/**
 * Centre of the places, and their root-mean-square distance from it; 0.1 m when they all coincide.
 *
 * @param places - of all joints, m
 */
export function scaleOf(places: readonly Vector3[]): ConstraintScale {
  if (places.length === 0) return { centre: [0, 0, 0], length: 0.1 };
  const centre = times3(1 / places.length, places.reduce<Vector3>(plus3, [0, 0, 0]));
  const length = Math.sqrt(places.reduce((sum, place) => sum + length3(minus3(place, centre)) ** 2, 0) / places.length);
  return { centre, length: length > 1e-6 ? length : 0.1 };
}

/** A wrench as six numbers without unit: force, then moment about the centre over the length. */
export function scaledRow({ force, moment }: Pick<Wrench, 'force' | 'moment'>, scale: ConstraintScale, couple: boolean): Row6 {
  // A unit couple counts as a unit force at the length, so that neither weighs more.
  const about = minus3(moment, cross3(scale.centre, force));
  return [...force, ...(couple ? moment : times3(1 / scale.length, about))];
}

/** All wrenches scaled. */
export const scaledRows = (wrenches: readonly Wrench[], scale: ConstraintScale): Row6[] => wrenches.map((one) => scaledRow(one, scale, one.holds === 'couple'));

/** Six numbers of a motion (slide, turn times length) as a twist; the longer of turn times length and slide is one length. */
export function twistOf(row: Row6, scale: ConstraintScale): Twist {
  const [sx = 0, sy = 0, sz = 0, tx = 0, ty = 0, tz = 0] = row;
  return { slide: times3(scale.length, [sx, sy, sz]), turn: [tx, ty, tz] };
}

/**
 * Rank, freedoms and redundancies of wrenches on one rigid body.
 *
 * Formula: freedoms = 6 − rank W, redundant = rows − rank W; W scaled by a characteristic length; rank by singular values.
 *
 * @param wrenches - of all joints that count
 * @param scale - centre and length; the result of the count does not hang on it, the conditioning does
 * @param tolerance - see `RANK_TOLERANCE`, above 0
 * @returns counts, motions left, conditioning
 * @throws RangeError outside the stated domains
 *
 * Source: Blanding, Exact Constraint; Hale, Principles and Techniques for Designing Precision Machines (from memory).
 * Checked against: hand counts (test/mechanics/constraint-counts.test.ts); exact elimination and distances (test/independent/constraint-rank.test.ts).
 */
export function countConstraints(wrenches: readonly Wrench[], scale: ConstraintScale, tolerance: number = RANK_TOLERANCE): ConstraintCount {
  requirePositive('length of the scale', scale.length);
  requirePositive('tolerance', tolerance);
  const span = spanOf(scaledRows(wrenches, scale), tolerance);
  const stiff = wrenches.filter((one) => !one.soft);
  const { rank, singularValues } = span;
  const weakest = span.basis[rank - 1];
  return {
    wrenches: wrenches.length,
    rank,
    // Turns are cleared first: the motions after them are pure slides.
    free: reducedRows(span.rest, [3, 4, 5, 0, 1, 2]).map((row) => twistOf(row, scale)),
    redundant: wrenches.length - rank,
    redundantStiff: stiff.length - spanOf(scaledRows(stiff, scale), tolerance).rank,
    conditioning: rank === 0 ? 1 : (singularValues[rank - 1] as number) / (singularValues[0] as number),
    weakest: weakest === undefined ? undefined : twistOf(weakest, scale),
    scale,
  };
}
