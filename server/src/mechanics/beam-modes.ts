/** First frequency of a beam that carries a mass, by Rayleigh. */
import { requireNotNegative, requirePositive } from './require-argument.ts';

export type LoadedBeam = 'one end clamped, mass at the free end' | 'both ends supported, mass in the middle' | 'both ends clamped, mass in the middle';

const SHAPES: Readonly<Record<LoadedBeam, { readonly stiffness: number; readonly share: number }>> = {
  'one end clamped, mass at the free end': { stiffness: 3, share: 33 / 140 },
  'both ends supported, mass in the middle': { stiffness: 48, share: 17 / 35 },
  'both ends clamped, mass in the middle': { stiffness: 192, share: 13 / 35 },
};

/**
 * Angular frequency of a beam with a mass.
 *
 * Formula: ω = √(c E I/L³/(M + β m)), c = 3, 48, 192, β = 33/140, 17/35, 13/35.
 *
 * @param beam - how it is held and where the mass stands
 * @param bendingStiffness - E I, N·m², above 0
 * @param length - L, m, above 0
 * @param mass - M, kg, zero or above
 * @param beamMass - m of the whole beam, kg, zero or above; one of both above 0
 * @returns rad/s; never below the true one, by at most 1.5 % (a bare cantilever), less the heavier the mass
 * @throws RangeError outside the stated domains
 *
 * Source: Rayleigh's quotient with the static shape; Rao, Mechanical Vibrations, chapter 2 (from memory).
 * Checked against: printed examples (test/published/frame.test.ts); the frame solver (test/mechanics/frame-modes.test.ts).
 */
export function loadedBeamFrequency(beam: LoadedBeam, bendingStiffness: number, length: number, mass: number, beamMass: number): number {
  requirePositive('bendingStiffness', bendingStiffness);
  requirePositive('length', length);
  requireNotNegative('mass', mass);
  requireNotNegative('beamMass', beamMass);
  requirePositive('mass and beamMass together', mass + beamMass);
  const { stiffness, share } = SHAPES[beam];
  return Math.sqrt((stiffness * bendingStiffness) / length ** 3 / (mass + share * beamMass));
}

/**
 * Angular frequency from the sag under the own weight.
 *
 * Formula: ω = √(g/δ); exact for one mass on a spring.
 *
 * @param sag - δ, m, above 0
 * @param gravity - g, m/s², above 0
 * @returns rad/s
 * @throws RangeError outside the stated domains
 *
 * Source: Meriam and Kraige, Dynamics, sample problem 8/1.
 * Checked against: test/published/frame.test.ts.
 */
export function frequencyFromSag(sag: number, gravity: number): number {
  requirePositive('sag', sag);
  requirePositive('gravity', gravity);
  return Math.sqrt(gravity / sag);
}

/**
 * Frequency from which on a sudden acceleration swings a mass no farther than allowed.
 *
 * Formula: ω = √(2 a/x): a step of acceleration overshoots to twice a/ω².
 *
 * @param acceleration - a, m/s², above 0
 * @param allowed - x, m, above 0
 * @returns rad/s
 * @throws RangeError outside the stated domains
 *
 * Source: answer of a mass on a spring to a step, as `mostRinging`.
 * Checked against: by hand (test/mechanics/frame-modes.test.ts).
 */
export function frequencyForSwing(acceleration: number, allowed: number): number {
  requirePositive('acceleration', acceleration);
  requirePositive('allowed', allowed);
  return Math.sqrt((2 * acceleration) / allowed);
}
