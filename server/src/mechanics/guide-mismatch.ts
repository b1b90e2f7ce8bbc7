/** Rails that are not parallel or not at one height: what the carriages pay for it. */
import { requireFinite, requireNotNegative, requirePositive, requireWhole } from './require-argument.ts';

/**
 * Force that rails out of line press on the carriages, when nothing floats.
 *
 * Formula: F = delta/sum(1/k_i).
 *
 * @param mismatch - delta, how far the two sides want to be apart from where they are: misalignment, or growth of a part against the frame, m; the size counts
 * @param stiffnesses - of everything in the chain, N/m, each above 0, `Infinity` allowed: carriages of one side, carriages of the other, shafts, frame
 * @returns N between both sides; divide by the carriages of one side for each
 * @throws RangeError when all are rigid, or outside the stated domains
 *
 * Source: springs in series.
 * Checked against: test/mechanics/guide-mismatch.test.ts.
 */
export function mismatchForce(mismatch: number, stiffnesses: readonly number[]): number {
  requireFinite('mismatch', mismatch);
  let give = 0;
  for (const stiffness of stiffnesses) {
    if (!(stiffness > 0)) throw new RangeError(`stiffness must be greater than zero, got ${stiffness}`);
    give += 1 / stiffness;
  }
  requirePositive('give of the chain', give);
  return Math.abs(mismatch) / give;
}

/**
 * What a mismatch adds to the force of the drive.
 *
 * Formula: F = 2 mu N n: both sides rub, each with n carriages under N.
 *
 * @param forcePerCarriage - N, N, 0 or above
 * @param carriagesPerSide - n, 1 or more
 * @param friction - mu, 0 or above
 * @returns N
 * @throws RangeError outside the stated domains
 *
 * Source: Coulomb friction.
 * Checked against: test/mechanics/guide-mismatch.test.ts.
 */
export function mismatchDrag(forcePerCarriage: number, carriagesPerSide: number, friction: number): number {
  requireNotNegative('forcePerCarriage', forcePerCarriage);
  requireWhole('carriagesPerSide', carriagesPerSide, 1);
  requireNotNegative('friction', friction);
  return 2 * friction * forcePerCarriage * carriagesPerSide;
}

/**
 * Load on each carriage of four when one of them stands too high.
 *
 * Formula: a rigid table on four like springs k carries the fault d as a twist: each gets ±k d/4, alternating round the table.
 *
 * @param height - d, m; the size counts
 * @param stiffness - k of one carriage with its rail, away from the rail, N/m, above 0
 * @returns N, to add to two carriages and take from the other two
 * @throws RangeError outside the stated domains
 *
 * Source: least energy of four springs under a rigid plane.
 * Checked against: `supportReactions` (test/mechanics/guide-mismatch.test.ts).
 */
export function twistForce(height: number, stiffness: number): number {
  requireFinite('height', height);
  requirePositive('stiffness', stiffness);
  return (stiffness * Math.abs(height)) / 4;
}

/**
 * Height difference between two rails that their makers permit.
 *
 * Formula: S = b f; f = 0.0012 without and 0.00035 with preload at sizes 15 to 25, 0.00025 and 0.00015 for narrow miniature rails, 0.00013 and 0.00008 for wide ones.
 *
 * @param railSpacing - b, m, above 0
 * @param factor - f, above 0
 * @returns m
 * @throws RangeError outside the stated domains
 *
 * Source: rail makers' mounting tables.
 * Checked against: test/published/guide-life.test.ts (miniature guide, 120 mm apart: 0.018 mm).
 */
export function permittedHeightDifference(railSpacing: number, factor: number): number {
  requirePositive('railSpacing', railSpacing);
  requirePositive('factor', factor);
  return railSpacing * factor;
}
