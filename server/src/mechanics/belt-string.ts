/** A span of belt as a string: the tension is set by the note that it gives. */
import { requireNotNegative, requirePositive } from './require-argument.ts';

/**
 * Lowest frequency at which a plucked span swings.
 *
 * Formula: f = 1/(2L) sqrt(T/m').
 *
 * @param length - L between the points where the span is held, m, above 0
 * @param tension - T, N, zero or above
 * @param massPerLength - m', kg/m, above 0
 * @returns Hz; a real belt has some bending stiffness and sounds higher, see {@link isStringLike}
 * @throws RangeError outside the stated domains
 *
 * Source: vibrating string, Rao, Mechanical Vibrations, chapter 8 (from memory).
 * Checked against: eigenvalues of a string of masses (test/independent/belts.test.ts), the reference dossier's 30 N, 150 mm, 8.3 g/m: 200 Hz (test/published/belts.test.ts).
 */
export function stringFrequency(length: number, tension: number, massPerLength: number): number {
  requirePositive('length', length);
  requireNotNegative('tension', tension);
  requirePositive('massPerLength', massPerLength);
  return Math.sqrt(tension / massPerLength) / (2 * length);
}

/**
 * Tension of a span from the frequency that was heard.
 *
 * Formula: T = 4 m' L² f².
 *
 * @param length - L, m, above 0
 * @param frequency - f, Hz, zero or above
 * @param massPerLength - m', kg/m, above 0
 * @returns N
 * @throws RangeError outside the stated domains
 *
 * Source: {@link stringFrequency} solved for the tension.
 * Checked against: there and back (test/mechanics/belt-string.test.ts).
 */
export function tensionFromFrequency(length: number, frequency: number, massPerLength: number): number {
  requirePositive('length', length);
  requireNotNegative('frequency', frequency);
  requirePositive('massPerLength', massPerLength);
  return 4 * massPerLength * length ** 2 * frequency ** 2;
}

/**
 * Whether a span is long enough for the string formula.
 *
 * Formula: L/b of 15 or more.
 *
 * @param length - L, m, above 0
 * @param width - b of the belt, m, above 0
 * @returns true when bending stiffness can be neglected; below it the belt sounds higher than its tension
 * @throws RangeError for values that are not positive
 *
 * Source: common practice of tension meters, from memory; no published source.
 * Checked against: test/mechanics/belt-string.test.ts.
 */
export function isStringLike(length: number, width: number): boolean {
  requirePositive('length', length);
  requirePositive('width', width);
  return length / width >= LEAST_LENGTH_IN_WIDTHS;
}

/** See {@link isStringLike}. */
export const LEAST_LENGTH_IN_WIDTHS = 15;
