import { requireNotNegative, requirePositive } from './require-argument.ts';

/**
 * Critical speed of a light shaft that carries one heavy disc, from how far the disc's weight bends it.
 *
 * Formula: omega = sqrt(g/delta) = sqrt(k/m).
 *
 * @param lateralStiffness - k of the shaft at the disc, N/m, above 0
 * @param mass - m of the disc, kg, above 0
 * @returns angular speed in rad/s; the shaft's own mass is left out, see {@link dunkerley}
 * @throws RangeError for values that are not positive
 *
 * Source: Den Hartog, Mechanical Vibrations, chapter 6 (from memory).
 * Checked against: test/published/whirl.test.ts, Sarkar, Theory of Machines, illustration 13.
 */
export function whirlOfDisc(lateralStiffness: number, mass: number): number {
  requirePositive('lateralStiffness', lateralStiffness);
  requirePositive('mass', mass);
  return Math.sqrt(lateralStiffness / mass);
}

/**
 * A low estimate of the critical speed of a shaft with several masses, from the speed each would give alone.
 *
 * Formula: 1/omega² = sum of 1/omega_i².
 *
 * @param speeds - omega_i of each mass alone on the shaft, and of the bare shaft, rad/s, each above 0; at least one
 * @returns angular speed in rad/s, never above the exact value
 * @throws RangeError for an empty list or speeds that are not positive
 *
 * Source: Dunkerley, Philosophical Transactions of the Royal Society A 185 (1894) (from memory).
 * Checked against: test/published/whirl.test.ts, Sarkar, Theory of Machines, illustration 11.
 */
export function dunkerley(speeds: readonly number[]): number {
  if (speeds.length === 0) throw new RangeError('dunkerley: at least one speed is needed');
  let sum = 0;
  for (const speed of speeds) {
    requirePositive('speeds', speed);
    sum += 1 / speed ** 2;
  }
  return 1 / Math.sqrt(sum);
}

/**
 * The band of speeds around the critical one in which an unbalanced disc bends its shaft further than allowed.
 *
 * Formula: |y| = e/|(omega_1/omega)² - 1| = y_max; omega_1/sqrt(1 ± e/y_max) are the ends.
 *
 * @param criticalSpeed - omega_1, rad/s, above 0
 * @param eccentricity - e of the disc's centre of mass, m, zero or above
 * @param allowedBow - y_max, m, above 0
 * @returns low and high end in rad/s; `high` is `Infinity` when the bow stays too large at any higher speed (e at or above y_max)
 * @throws RangeError outside the stated domains
 *
 * Source: Den Hartog, Mechanical Vibrations, chapter 6 (from memory).
 * Checked against: test/published/whirl.test.ts, Sarkar, Theory of Machines, illustration 13.
 */
export function unsafeSpeedBand(criticalSpeed: number, eccentricity: number, allowedBow: number): { readonly low: number; readonly high: number } {
  requirePositive('criticalSpeed', criticalSpeed);
  requireNotNegative('eccentricity', eccentricity);
  requirePositive('allowedBow', allowedBow);
  const share = eccentricity / allowedBow;
  return {
    low: criticalSpeed / Math.sqrt(1 + share),
    high: share < 1 ? criticalSpeed / Math.sqrt(1 - share) : Infinity,
  };
}
