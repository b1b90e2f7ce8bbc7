/** What the cord and the teeth of a belt may carry. */
import { requireNotNegative, requirePositive } from './require-argument.ts';

/** Total strain up to which a belt may be pulled: the ratio of allowable tension to specific stiffness in four data pages of steel-cord belts, all 0.40 %. */
export const STRAIN_ALLOWED = 0.004;

/** Share of the breaking force that a belt may be pulled with: allowable over breaking in the same pages, 1/3.6 to 1/4.2. */
export const BREAKING_SHARE_ALLOWED = 0.25;

/** Teeth in mesh from which on a belt carries all that its width allows. */
export const FULL_MESH = 6;

/**
 * Strain of a belt under tension.
 *
 * Formula: ε = T/c.
 *
 * @param tension - T, N, zero or above
 * @param specificStiffness - c, N, above 0
 * @returns dimensionless
 * @throws RangeError outside the stated domains
 *
 * Source: definition of the specific stiffness.
 * Checked against: hand calculation (test/mechanics/belt-strength.test.ts).
 */
export function beltStrain(tension: number, specificStiffness: number): number {
  requireNotNegative('tension', tension);
  requirePositive('specificStiffness', specificStiffness);
  return tension / specificStiffness;
}

export interface TensionLimits {
  /** Given by the maker, N; it then decides alone. */
  readonly written?: number | undefined;
  /** c, N. */
  readonly specificStiffness?: number | undefined;
  /** N. */
  readonly breakingForce?: number | undefined;
}

/**
 * Tension that a belt may see at most in normal work.
 *
 * Formula: the limit given for it; else the lesser of 0.4 % · c and a quarter of its breaking force.
 *
 * @param limits - what is known, each above 0
 * @returns N and which of them decides; undefined when nothing is known
 * @throws RangeError for values that are not positive
 *
 * Source: four data pages of steel-cord belts (pitch 3 and 5 mm), read; carried over to other cords by us.
 * Checked against: those pages (test/published/belts.test.ts).
 */
export function tensionAllowed({ written, specificStiffness, breakingForce }: TensionLimits): { readonly value: number; readonly by: 'written' | 'strain' | 'breaking' } | undefined {
  if (written !== undefined) {
    requirePositive('written limit', written);
    return { value: written, by: 'written' };
  }
  if (specificStiffness !== undefined) requirePositive('specificStiffness', specificStiffness);
  if (breakingForce !== undefined) requirePositive('breakingForce', breakingForce);
  const byStrain = specificStiffness === undefined ? Infinity : STRAIN_ALLOWED * specificStiffness;
  const byBreaking = breakingForce === undefined ? Infinity : BREAKING_SHARE_ALLOWED * breakingForce;
  if (byStrain === Infinity && byBreaking === Infinity) return undefined;
  return byStrain <= byBreaking ? { value: byStrain, by: 'strain' } : { value: byBreaking, by: 'breaking' };
}

/**
 * What is left of a belt's capacity when few teeth are in mesh.
 *
 * Formula: 1 from six whole teeth on, 0.2 less for each tooth that is missing, none below two.
 *
 * @param teeth - in mesh, zero or above; a tooth that is only partly in counts for nothing
 * @returns 0 to 1
 * @throws RangeError for a negative number
 *
 * Source: application note on tooth engagement, read; the same rule stands in handbooks of the trade.
 * Checked against: the note's table (test/published/belts.test.ts).
 */
export function meshFactor(teeth: number): number {
  requireNotNegative('teeth', teeth);
  // A full turn of wrap and its halves must not lose a tooth to rounding.
  const whole = Math.floor(teeth + 1e-9);
  return Math.min(1, Math.max(0, 1 - 0.2 * (FULL_MESH - whole)));
}

/**
 * Force that the teeth in mesh can pass on together.
 *
 * Formula: F = f b z; below six teeth f b · 6 times {@link meshFactor}; never more than `mostCounted` teeth.
 *
 * @param specificLoad - f, N for one tooth and a metre of width, above 0, at the speed in question
 * @param width - b, m, above 0
 * @param teeth - in mesh, zero or above
 * @param mostCounted - teeth beyond which the load no longer spreads: 12 for polyurethane by the metre, 6 for a joined one and for rubber
 * @returns N
 * @throws RangeError outside the stated domains
 *
 * Source: data pages of steel-cord belts, read (F = f z b, z up to 6 or 12); below six teeth the stricter rule for missing teeth is taken instead of z/6.
 * Checked against: hand calculation (test/mechanics/belt-strength.test.ts).
 */
export function toothCapacity(specificLoad: number, width: number, teeth: number, mostCounted: number): number {
  requirePositive('specificLoad', specificLoad);
  requirePositive('width', width);
  requireNotNegative('teeth', teeth);
  requirePositive('mostCounted', mostCounted);
  const whole = Math.floor(teeth + 1e-9);
  const counted = whole >= FULL_MESH ? Math.min(whole, mostCounted) : FULL_MESH * meshFactor(teeth);
  return specificLoad * width * counted;
}

/**
 * Bending stress in a cord (or band) that runs round a pulley: why a pulley must not be too small.
 *
 * Formula: σ = E t/D, taking D as the diameter of the middle of the cord.
 *
 * @param modulus - E, Pa, above 0
 * @param thickness - t of the band, or of one wire of the cord, m, above 0
 * @param diameter - D, m, above 0
 * @returns Pa
 * @throws RangeError for values that are not positive
 *
 * Source: Popov, Engineering Mechanics of Solids, example 10.1.
 * Checked against: that example (test/published/belts.test.ts).
 */
export function cordBendingStress(modulus: number, thickness: number, diameter: number): number {
  requirePositive('modulus', modulus);
  requirePositive('thickness', thickness);
  requirePositive('diameter', diameter);
  return (modulus * thickness) / diameter;
}

/**
 * Largest ratio of tensions that friction alone can hold over a wrap: a flat belt, a smooth idler, a cord on a drum.
 *
 * Formula: T1/T2 = e^(µ θ).
 *
 * @param friction - µ, zero or above
 * @param wrap - θ, rad, zero or above
 * @returns ratio, 1 or above; teeth do not need it
 * @throws RangeError for negative values
 *
 * Source: Euler and Eytelwein; Meriam and Kraige, Engineering Mechanics: Statics, flexible belts (from memory).
 * Checked against: numerical integration (test/independent/belts.test.ts), Meriam and Kraige (test/published/belts.test.ts).
 */
export function capstanRatio(friction: number, wrap: number): number {
  requireNotNegative('friction', friction);
  requireNotNegative('wrap', wrap);
  return Math.exp(friction * wrap);
}

/**
 * Radial force that a motor's shaft bears at another distance from the face than the one for which it is given.
 *
 * Formula: F = F_l x_l/x, the same moment about the face; at most 2.5 times F_l.
 *
 * @param limit - F_l, N, above 0
 * @param limitDistance - x_l from the mounting face, m, above 0
 * @param distance - x, where the force acts, m, above 0
 * @returns N
 * @throws RangeError for values that are not positive
 *
 * Source: lever of an overhung shaft, common practice. A trade table for a 42 mm frame (35, 44, 58 and 85 N at 24, 19, 14 and 9 mm, from memory) follows it within 10 %.
 * Checked against: test/mechanics/belt-strength.test.ts.
 */
export function radialLimitAt(limit: number, limitDistance: number, distance: number): number {
  requirePositive('limit', limit);
  requirePositive('limitDistance', limitDistance);
  requirePositive('distance', distance);
  return limit * Math.min(limitDistance / distance, MOST_CREDIT);
}

/** Close to the face the bearing decides and no longer the lever. */
const MOST_CREDIT = 2.5;
