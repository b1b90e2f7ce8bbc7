/** Forces with which joints fight each other when the parts grow or do not fit. */
import { Matrix, pseudoInverse } from 'ml-matrix';
import { RANK_TOLERANCE, scaledRow, scaledRows, type ConstraintScale } from './constraint-rank.ts';
import { product, spanOf, type Row6 } from './linear-span.ts';
import { requireFinite, requireNotNegative, requirePositive } from './require-argument.ts';
import { cross3, dot3, times3, type Vector3 } from './vector3.ts';
import type { Wrench } from './constraint-wrenches.ts';

/** Stiffness with which a joint and what it stands on resist. */
export interface JointStiffness {
  /** N/m, above 0. */
  readonly force: number;
  /** N·m/rad, above 0. */
  readonly couple: number;
}

/**
 * Misfit along each wrench when the carried part grows against the frame.
 *
 * Formula: δ = ε (p − c) · n for forces, 0 for couples; the fixed point c drops out.
 *
 * @param wrenches - of the layout
 * @param strain - ε = α₁ ΔT₁ − α₂ ΔT₂ of the part over the frame, without unit; negative when the frame grows more
 * @returns m for each force and thread, 0 for each couple
 * @throws RangeError when the strain is no number
 *
 * Source: even growth of a plate; follows from the definition of the coefficient of expansion.
 * Checked against: two rails on a plate, by hand (test/mechanics/constraint-jam.test.ts).
 */
export function growthMisfits(wrenches: readonly Wrench[], strain: number): number[] {
  requireFinite('strain', strain);
  return wrenches.map((one) => (one.holds === 'couple' ? 0 : strain * dot3(one.at, one.direction)));
}

/**
 * Forces and couples that joints exert on the carried part because it does not fit.
 *
 * Formula: the part settles where the forces balance: u = (Wᵀ K W)⁺ Wᵀ K δ, f = K (W u − δ). The same as N (Nᵀ K⁻¹ N)⁻¹ Nᵀ δ with the left null space N: only the misfit along redundancies counts.
 *
 * @param wrenches - of the layout; what is free takes no part
 * @param misfits - how much farther the part wants to be than the joint lets it, along each wrench: m, rad for couples
 * @param stiffness - of each wrench's joint, in the same order
 * @param scale - as for the count
 * @param tolerance - as for the count
 * @returns f by wrench: N, N·m for couples; a positive misfit of a wrench pushes back, with a negative force. All zero for an exactly constrained layout
 * @throws RangeError for a stiffness of zero or below
 *
 * Source: least elastic energy; springs in parallel on a rigid body.
 * Checked against: by hand and by the null space (test/mechanics/constraint-jam.test.ts).
 */
export function jamForces(wrenches: readonly Wrench[], misfits: readonly number[], stiffness: readonly JointStiffness[], scale: ConstraintScale, tolerance: number = RANK_TOLERANCE): number[] {
  return settled(wrenches, misfits, stiffness, scale, tolerance).forces;
}

/** Where a part settles that does not fit: what its joints exert on it, and how it moves. */
interface Settled {
  readonly forces: number[];
  /** Motion by which the part gives way, as a row of the scale: it moves by its negative. */
  readonly motion: Row6;
}

function settled(wrenches: readonly Wrench[], misfits: readonly number[], stiffness: readonly JointStiffness[], scale: ConstraintScale, tolerance: number): Settled {
  if (wrenches.length === 0) return { forces: [], motion: [0, 0, 0, 0, 0, 0] };
  if (misfits.length !== wrenches.length || stiffness.length !== wrenches.length) throw new RangeError('jam forces need one misfit and one stiffness for each wrench');
  // Couples are counted at the length of the scale: rad times length, N·m over length.
  const couple = (index: number): boolean => (wrenches[index] as Wrench).holds === 'couple';
  const k = stiffness.map((one, i) => {
    requirePositive('force stiffness', one.force);
    requirePositive('couple stiffness', one.couple);
    return couple(i) ? one.couple / scale.length ** 2 : one.force;
  });
  const delta = misfits.map((value, i) => (couple(i) ? value * scale.length : value));
  const weighted = k.map((value) => Math.sqrt(value));
  // Only motions that count as held: one that is held by rounding alone would let the part slip out of every misfit.
  const unweighted = scaledRows(wrenches, scale);
  const held = spanOf(unweighted, tolerance).basis;
  // Square roots of the stiffness on both sides, so that the pseudo-inverse weighs by energy.
  const rows = new Matrix(unweighted.map((row, i) => held.map((direction) => product(row, direction) * (weighted[i] as number))));
  const right = Matrix.columnVector(delta.map((value, i) => value * (weighted[i] as number)));
  const place = pseudoInverse(rows).mmul(right);
  const left = rows.mmul(place).sub(right).to1DArray();
  const shares = place.to1DArray();
  return {
    forces: left.map((value, i) => value * (weighted[i] as number) * (couple(i) ? scale.length : 1)),
    motion: [0, 1, 2, 3, 4, 5].map((j) => held.reduce((sum, direction, i) => sum + (shares[i] as number) * (direction[j] as number), 0)),
  };
}

/**
 * How far a place of the part that does not fit slides against the frame, along a direction that no joint holds there.
 *
 * Formula: s = δ(p, t) − (t; p × t) · u, with the u of `jamForces`; for growth δ = ε p · t, for joints out of their place 0.
 * An exactly constrained part turns and shifts until every joint fits; the point that stays where it was, the thermal centre, follows from that by itself.
 *
 * @param wrenches - of the layout
 * @param misfits - as for `jamForces`
 * @param stiffness - as for `jamForces`; without effect on an exactly constrained layout
 * @param places - place (m) and unit direction t, and the misfit δ of the part itself there (m)
 * @param scale - as for the count
 * @param tolerance - as for the count
 * @returns m for each place, with the sense of its direction
 * @throws RangeError as `jamForces`
 *
 * Source: as `jamForces`; rigid motion of a body, s + ω × p.
 * Checked against: a plate on a fixed point, a slot and a flat, by hand (test/mechanics/constraint-jam.test.ts).
 */
export function slideAt(
  wrenches: readonly Wrench[], misfits: readonly number[], stiffness: readonly JointStiffness[], places: readonly { readonly at: Vector3; readonly along: Vector3; readonly misfit: number }[],
  scale: ConstraintScale, tolerance: number = RANK_TOLERANCE,
): number[] {
  const { motion } = settled(wrenches, misfits, stiffness, scale, tolerance);
  return places.map(({ at, along, misfit }) => misfit - product(scaledRow({ force: along, moment: cross3(at, along) }, scale, false), motion));
}

/** Force and couple that one joint takes on. */
export interface JointLoad {
  readonly joint: number;
  readonly owner: string;
  /** On the carried part, N. */
  readonly force: Vector3;
  /** On the carried part at the joint, N·m; the small moment of a thread is left out. */
  readonly couple: Vector3;
}

/** Wrench forces gathered by joint. */
export function jointLoads(wrenches: readonly Wrench[], forces: readonly number[]): JointLoad[] {
  return [...new Set(wrenches.map((one) => one.joint))].map((joint) => {
    const sum = (kind: (one: Wrench) => boolean): Vector3 => wrenches.reduce<Vector3>((total, one, i) => {
      if (one.joint !== joint || !kind(one)) return total;
      const part = times3(forces[i] as number, one.direction);
      return [total[0] + part[0], total[1] + part[1], total[2] + part[2]];
    }, [0, 0, 0]);
    return { joint, owner: (wrenches.find((one) => one.joint === joint) as Wrench).owner, force: sum((one) => one.holds !== 'couple'), couple: sum((one) => one.holds === 'couple') };
  });
}

/**
 * Drag along a guide from a side force and a couple that jam it.
 *
 * Formula: R = µ (|F| + 2 |M|/s); a couple is two opposite forces at the ends of the bearing length.
 *
 * @param friction - µ, zero or above
 * @param sideForce - |F|, N, zero or above
 * @param couple - |M|, N·m, zero or above
 * @param bearingLength - s, m, above 0
 * @returns N
 * @throws RangeError outside the stated domains
 *
 * Source: dry friction on both ends of a slider; follows from the definition.
 * Checked against: by hand (test/mechanics/constraint-jam.test.ts).
 */
export function jamDrag(friction: number, sideForce: number, couple: number, bearingLength: number): number {
  requireNotNegative('friction', friction);
  requireNotNegative('sideForce', sideForce);
  requireNotNegative('couple', couple);
  requirePositive('bearingLength', bearingLength);
  return friction * (sideForce + (2 * couple) / bearingLength);
}
