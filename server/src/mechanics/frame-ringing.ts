/** How far a frame swings when an acceleration begins or ends at once. */
import { requireNotNegative, requirePositive } from './require-argument.ts';

/**
 * Largest swing of an undamped frame after the jerk with which an acceleration begins or ends.
 *
 * Formula: x = 2 m a/k: it swings about its steady lean m a/k by as much again; where the swings of beginning and end meet, that much is left.
 *
 * @param mass - m that is accelerated, kg, zero or above
 * @param acceleration - a, m/s², zero or above
 * @param stiffness - k of the frame where the mass pushes, N/m, above 0
 * @returns m; what a gentle ramp or damping leaves is less
 * @throws RangeError outside the stated domains
 *
 * Source: answer of a spring and mass to a step of force, Rao, Mechanical Vibrations, chapter 4 (from memory).
 * Checked against: integration in time (test/mechanics/frame-ringing.test.ts).
 */
export function frameJerkRinging(mass: number, acceleration: number, stiffness: number): number {
  requireNotNegative('mass', mass);
  requireNotNegative('acceleration', acceleration);
  requirePositive('stiffness', stiffness);
  return (2 * mass * acceleration) / stiffness;
}
