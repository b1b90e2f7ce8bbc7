import { signChange } from './bisection.ts';
import { type LateralSupport } from './shaft-on-supports.ts';

/** How the end of a screw is held sideways: clamped against tilt, held but free to tilt, or not held. */
export type ShaftEnd = 'fixed' | 'supported' | 'free';

/** The arrangements of two ends that hold a shaft, each independent of which end is which. */
export type EndPair = 'fixed-fixed' | 'fixed-supported' | 'supported-supported' | 'fixed-free';

/**
 * Names the arrangement of two ends, whichever comes first.
 *
 * Formula: the set of the two ends.
 *
 * @param one - one end
 * @param other - the other end
 * @returns the pair, or `mechanism` when the ends leave the shaft free to swing (free with free or with supported)
 *
 * Source: statics of a beam.
 * Checked against: test/mechanics/whirl.test.ts.
 */
export function endPair(one: ShaftEnd, other: ShaftEnd): EndPair | 'mechanism' {
  const both = new Set([one, other]);
  if (both.has('free')) return both.has('fixed') ? 'fixed-free' : 'mechanism';
  if (both.size === 1) return one === 'fixed' ? 'fixed-fixed' : 'supported-supported';
  return 'fixed-supported';
}

/**
 * The support that an end is, for the exact solver.
 *
 * Formula: fixed: held, infinitely stiff against tilt; supported: held, 0; free: not held, 0.
 *
 * @param end - how the end is held
 * @returns lateral hold and tilt stiffness (N·m/rad: 0 or `Infinity`)
 *
 * Source: definition.
 * Checked against: test/independent/whirl.test.ts.
 */
export function supportOf(end: ShaftEnd): LateralSupport {
  return { lateral: end === 'free' ? 'free' : 'held', tiltStiffness: end === 'fixed' ? Infinity : 0 };
}

/**
 * First root beta of the frequency equation of a uniform slender beam.
 *
 * Formula: fixed-free cos b cosh b = -1; supported sin b = 0; fixed-supported tan b = tanh b; fixed-fixed cos b cosh b = 1.
 *
 * @param ends - arrangement of the ends
 * @returns beta, dimensionless (1.875, 3.142, 3.927, 4.730)
 *
 * Source: Timoshenko, Vibration Problems in Engineering, chapter on transverse vibration of bars; Blevins, Formulas for Natural Frequency and Mode Shape, table 8-1 (from memory).
 * Checked against: test/published/whirl.test.ts, Blevins, table 8-1.
 */
export function firstVibrationRoot(ends: EndPair): number {
  return VIBRATION_ROOTS[ends];
}

/**
 * First root u of the buckling equation of a uniform slender column; the critical load is u² E I / L².
 *
 * Formula: fixed-free cos u = 0; supported sin u = 0; fixed-supported tan u = u; fixed-fixed sin(u/2) = 0.
 *
 * @param ends - arrangement of the ends
 * @returns u, dimensionless (pi/2, pi, 4.493, 2 pi)
 *
 * Source: Timoshenko and Gere, Theory of Elastic Stability, section 2.1 to 2.2 (from memory).
 * Checked against: test/published/column-buckling.test.ts, Timoshenko and Gere, section 2.1.
 */
export function firstBucklingRoot(ends: EndPair): number {
  return BUCKLING_ROOTS[ends];
}

// Written without poles and without large numbers, so that halving finds the first root and nothing else.
const sech = (b: number): number => 1 / Math.cosh(b);
const VIBRATION_ROOTS: Readonly<Record<EndPair, number>> = {
  'fixed-free': signChange((b) => Math.cos(b) + sech(b), 0.1, Math.PI),
  'supported-supported': signChange((b) => Math.sin(b), 0.1, 5),
  'fixed-supported': signChange((b) => Math.sin(b) - Math.cos(b) * Math.tanh(b), Math.PI, 5),
  'fixed-fixed': signChange((b) => Math.cos(b) - sech(b), Math.PI, 6),
};
const BUCKLING_ROOTS: Readonly<Record<EndPair, number>> = {
  'fixed-free': signChange((u) => Math.cos(u), 0.1, 3),
  'supported-supported': signChange((u) => Math.sin(u), 0.1, 5),
  'fixed-supported': signChange((u) => Math.sin(u) - u * Math.cos(u), Math.PI, 1.49 * Math.PI),
  'fixed-fixed': signChange((u) => Math.sin(u / 2), 0.1, 7),
};
