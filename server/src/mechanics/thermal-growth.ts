import { requireNotNegative, requirePositive } from './require-argument.ts';

/**
 * Free growth of a bar.
 *
 * Formula: dL = alpha L dT.
 *
 * @param expansion - alpha, 1/K
 * @param length - L, m, zero or above
 * @param temperatureRise - dT, K; negative for cooling
 * @returns growth in m, with the sign of the rise
 * @throws RangeError when the length is negative
 *
 * Source: definition of the coefficient of linear expansion.
 * Checked against: test/mechanics/screw-axis.test.ts.
 */
export function thermalGrowth(expansion: number, length: number, temperatureRise: number): number {
  requireNotNegative('length', length);
  return expansion * length * temperatureRise;
}

/**
 * How much more a screw grows than the frame between its bearings.
 *
 * Formula: dL = L (alpha_s dT_s - alpha_f dT_f).
 *
 * @param length - L between the bearings, m, zero or above
 * @param screw - expansion (1/K) and temperature rise (K) since assembly
 * @param frame - the same of what holds the bearings apart
 * @returns m; positive when the screw is the longer one, which presses a screw held at both ends; negative stretches it
 * @throws RangeError when the length is negative
 *
 * Source: {@link thermalGrowth} twice.
 * Checked against: test/mechanics/screw-axis.test.ts.
 */
export function growthAgainstFrame(length: number, screw: Warming, frame: Warming): number {
  return thermalGrowth(screw.expansion, length, screw.temperatureRise) - thermalGrowth(frame.expansion, length, frame.temperatureRise);
}

export interface Warming {
  /** 1/K. */
  readonly expansion: number;
  /** K, since assembly. */
  readonly temperatureRise: number;
}

/**
 * Force in a bar whose growth is blocked by ends that give a little.
 *
 * Formula: F = (dL - give)/(L/(E A) + 1/k_e), none while the give is not used up.
 *
 * @param growth - dL that the bar would have if free, m; negative when it shrinks
 * @param length - L, m, above 0
 * @param tensionStiffness - E A, N, above 0
 * @param give - free movement of the ends before they hold, m, zero or above (default 0)
 * @param endStiffness - k_e of both ends in series, N/m, above 0; `Infinity` (default) for rigid ones
 * @returns compression in N; negative for tension
 * @throws RangeError outside the stated domains
 *
 * Source: Sarkar, Strength of Materials, problem 3.16 (give); springs in series, by hand.
 * Checked against: test/mechanics/screw-axis.test.ts; test/published/column-buckling.test.ts, Sarkar, problem 3.16.
 */
export function blockedGrowthForce(growth: number, length: number, tensionStiffness: number, give = 0, endStiffness = Infinity): number {
  requirePositive('length', length);
  requirePositive('tensionStiffness', tensionStiffness);
  requireNotNegative('give', give);
  if (!(endStiffness > 0)) throw new RangeError(`endStiffness must be greater than zero, got ${endStiffness}`);
  const blocked = Math.max(0, Math.abs(growth) - give);
  return (Math.sign(growth) * blocked) / (length / tensionStiffness + 1 / endStiffness);
}

/**
 * Pull with which a screw held at both ends must be stretched at assembly to stay straight up to a temperature rise.
 *
 * Formula: F = E A alpha dT.
 *
 * @param tensionStiffness - E A, N, above 0
 * @param expansion - alpha, 1/K, above 0
 * @param temperatureRise - dT of the screw over its frame, K, zero or above; 2 to 3 K is common practice, above 5 K bearings suffer
 * @returns tension in N, which both thrust bearings must carry
 * @throws RangeError outside the stated domains
 *
 * Source: {@link blockedGrowthForce} with rigid ends.
 * Checked against: test/mechanics/screw-axis.test.ts.
 */
export function pretension(tensionStiffness: number, expansion: number, temperatureRise: number): number {
  requirePositive('tensionStiffness', tensionStiffness);
  requirePositive('expansion', expansion);
  requireNotNegative('temperatureRise', temperatureRise);
  return tensionStiffness * expansion * temperatureRise;
}
