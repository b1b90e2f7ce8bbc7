import { requirePositive } from './require-argument.ts';
import { INCH_TRAPEZOIDAL_FLANK_ANGLE, TRAPEZOIDAL_FLANK_ANGLE } from './trapezoidal-thread.ts';

/** The sliding threads that a screw may have, and the ball screw, whose balls are treated as a square thread of very low friction. */
export type ThreadForm = 'trapezoidal' | 'acme' | 'square' | 'ball';

/**
 * Half flank angle of a thread form in the axial section.
 *
 * Formula: 15° trapezoidal, 14.5° for the 29° inch thread, 0 for square threads and ball screws.
 * @param form the thread form; any other text counts as the steepest flank, the side of more friction.
 * @returns α in rad.
 * @throws nothing.
 * Source: ISO 2901; ASME B1.5.
 * Checked against: test/mechanics/sliding-thread.test.ts.
 */
export function flankAngleOf(form: string): number {
  switch (form) {
    case 'acme':
      return INCH_TRAPEZOIDAL_FLANK_ANGLE;
    case 'square':
    case 'ball':
      return 0;
    default:
      return TRAPEZOIDAL_FLANK_ANGLE;
  }
}

/**
 * How much smaller the pitch diameter of a sliding thread is than its major diameter.
 *
 * Formula: d − d2 = P/2.
 * @param pitch P in m, above 0.
 * @returns the difference in m.
 * @throws RangeError when the pitch is not positive.
 * Source: ISO 2901; ASME B1.5 (basic height P/2); Budynas and Nisbett, section 8-1, for square threads.
 * Checked against: test/mechanics/sliding-thread.test.ts.
 */
export function pitchDiameterBelowCrest(pitch: number): number {
  requirePositive('pitch', pitch);
  return pitch / 2;
}

/**
 * How much smaller the root diameter of a 29° inch thread or a square thread is than its major diameter.
 *
 * Formula: d − d3 = P for square threads; P + 0.020 in for 29° threads of 10 threads an inch or coarser, P + 0.010 in for finer ones.
 * @param form `acme` or `square`.
 * @param pitch P in m, above 0.
 * @returns the difference in m.
 * @throws RangeError when the pitch is not positive.
 * Source: ASME B1.5 (basic height P/2 and clearance of 0.010 or 0.005 in), from memory; Budynas and Nisbett, section 8-1.
 * Checked against: test/mechanics/sliding-thread.test.ts.
 */
export function rootBelowCrest(form: 'acme' | 'square', pitch: number): number {
  requirePositive('pitch', pitch);
  if (form === 'square') return pitch;
  // A tenth of an inch may arrive a rounding error short.
  return pitch + (pitch > 0.00254 * (1 - 1e-9) ? 0.02 : 0.01) * 0.0254;
}
