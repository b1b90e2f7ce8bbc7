/** Pulleys and the path of an open toothed belt round two of them. Lengths are those of the pitch line, where the cord runs. */
import { signChange } from './bisection.ts';
import { requireNotNegative, requirePositive } from './require-argument.ts';

/**
 * Diameter of the circle on which the cord of a belt runs round its pulley.
 *
 * Formula: d = p z/π.
 *
 * @param pitch - p of the teeth, m, above 0
 * @param teeth - z of the pulley, above 0
 * @returns pitch diameter in m, larger than the pulley itself
 * @throws RangeError for values that are not positive
 *
 * Source: definition of the pitch diameter (ISO 5288, from memory).
 * Checked against: test/published/belts.test.ts, hand calculation.
 */
export function pulleyPitchDiameter(pitch: number, teeth: number): number {
  requirePositive('pitch', pitch);
  requirePositive('teeth', teeth);
  return (pitch * teeth) / Math.PI;
}

/**
 * Diameter over the tips of a pulley's teeth.
 *
 * Formula: d_o = d - 2u.
 *
 * @param pitchDiameter - d, m, above 0
 * @param pitchLineDifferential - u, how far the cord runs above the tips, m, zero or above, below d/2
 * @returns outside diameter in m
 * @throws RangeError outside the stated domains
 *
 * Source: ISO 5294 (form as remembered).
 * Checked against: test/published/belts.test.ts.
 */
export function pulleyOutsideDiameter(pitchDiameter: number, pitchLineDifferential: number): number {
  requirePositive('pitchDiameter', pitchDiameter);
  requireNotNegative('pitchLineDifferential', pitchLineDifferential);
  if (2 * pitchLineDifferential >= pitchDiameter) throw new RangeError('pulleyOutsideDiameter: the cord cannot run farther out than the radius');
  return pitchDiameter - 2 * pitchLineDifferential;
}

export interface OpenBelt {
  /** Whole length of the loop, m. */
  readonly length: number;
  /** Angle over which the belt lies on the first pulley, rad. */
  readonly firstWrap: number;
  /** On the second one, rad; both together make a full turn. */
  readonly secondWrap: number;
  /** Length of each of the two straight runs, m. */
  readonly run: number;
}

/**
 * Path of an open (not crossed) belt round two pulleys, exact.
 *
 * Formula: sin b = (D2 - D1)/(2C); run C cos b; wraps π - 2b and π + 2b; length 2C cos b + π/2 (D1 + D2) + b (D2 - D1).
 *
 * @param centerDistance - C between the axes, m, above (D1 + D2)/2 so that the pulleys do not overlap
 * @param firstDiameter - D1, pitch diameter, m, above 0
 * @param secondDiameter - D2, pitch diameter, m, above 0; may be the smaller one
 * @returns length, wraps and straight run
 * @throws RangeError outside the stated domains
 *
 * Source: plane geometry; Khurmi and Gupta, A Textbook of Machine Design, length of an open belt drive (there as a series), from memory.
 * Checked against: Wentzell, Machine Design, example 14.2 (test/published/belts.test.ts); convex hull of two circles (test/independent/belts.test.ts).
 */
export function openBelt(centerDistance: number, firstDiameter: number, secondDiameter: number): OpenBelt {
  requirePositive('centerDistance', centerDistance);
  requirePositive('firstDiameter', firstDiameter);
  requirePositive('secondDiameter', secondDiameter);
  if (centerDistance < (firstDiameter + secondDiameter) / 2) throw new RangeError('openBelt: the pulleys overlap');
  const slope = Math.asin((secondDiameter - firstDiameter) / (2 * centerDistance));
  const run = centerDistance * Math.cos(slope);
  return {
    length: 2 * run + (Math.PI / 2) * (firstDiameter + secondDiameter) + slope * (secondDiameter - firstDiameter),
    firstWrap: Math.PI - 2 * slope,
    secondWrap: Math.PI + 2 * slope,
    run,
  };
}

/**
 * Distance between the axes for a belt of given length.
 *
 * Formula: {@link openBelt} solved for C by halving; the length grows with C all the way.
 *
 * @param length - of the loop, m
 * @param firstDiameter - D1, m, above 0
 * @param secondDiameter - D2, m, above 0
 * @returns C in m, or `too short` when the belt does not even go round both pulleys touching each other
 * @throws RangeError for values that are not positive
 *
 * Source: plane geometry.
 * Checked against: Wentzell, Machine Design, example 14.2 (test/published/belts.test.ts).
 */
export function centerDistanceForLength(length: number, firstDiameter: number, secondDiameter: number): number | 'too short' {
  requirePositive('length', length);
  const least = (firstDiameter + secondDiameter) / 2;
  if (openBelt(least, firstDiameter, secondDiameter).length > length) return 'too short';
  return signChange((distance) => openBelt(distance, firstDiameter, secondDiameter).length - length, least, length);
}

/**
 * How many teeth of a pulley carry at once.
 *
 * Formula: z_m = z θ/(2π), not rounded.
 *
 * @param teeth - z of the pulley, above 0
 * @param wrap - θ, rad, zero or above
 * @returns teeth in mesh; handbooks round down, see `meshFactor` in belt-strength.ts
 * @throws RangeError outside the stated domains
 *
 * Source: definition.
 * Checked against: hand calculation (test/mechanics/belt-geometry.test.ts).
 */
export function teethInMesh(teeth: number, wrap: number): number {
  requirePositive('teeth', teeth);
  requireNotNegative('wrap', wrap);
  return (teeth * wrap) / (2 * Math.PI);
}
