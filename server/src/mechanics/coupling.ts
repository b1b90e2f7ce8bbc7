/** Shaft couplings: wind-up, give, bores, and the misalignment they take. */
import { requireFinite, requireNotNegative, requirePositive } from './require-argument.ts';

/**
 * Angle by which a coupling winds up.
 *
 * Formula: θ = T / k_t.
 * @param torque T, N·m, either sign.
 * @param stiffness k_t, N·m/rad, > 0.
 * @returns θ, rad.
 * Outside the domain: RangeError. For torques within the rating.
 * Source: definition of the stiffness.
 * Checked against: hand calculation (test/mechanics/coupling).
 */
export function windUp(torque: number, stiffness: number): number {
  requireFinite('torque', torque);
  requirePositive('torsional stiffness', stiffness);
  return torque / stiffness;
}

/**
 * Distance by which a coupling stretches or shortens under an axial load.
 *
 * Formula: x = F / k_a.
 * @param force F that the coupling carries, N, either sign.
 * @param axialStiffness k_a, N/m, > 0.
 * @returns x, m. A coupling is no thrust bearing: this is why.
 * Outside the domain: RangeError.
 * Source: definition of the stiffness.
 * Checked against: hand calculation (test/mechanics/coupling).
 */
export function axialGive(force: number, axialStiffness: number): number {
  requireFinite('force', force);
  requirePositive('axial stiffness', axialStiffness);
  return force / axialStiffness;
}

/** How a bore and a shaft go together. */
export interface BoreFit {
  readonly fits: boolean;
  /** Bore less shaft, m: positive is play, negative does not go on. */
  readonly difference: number;
}

/** Difference between bore and shaft up to which a clamping hub closes on the shaft, m. Source: common practice, no published source. */
export const CLAMPING_PLAY = 0.1e-3;

/**
 * Whether a coupling's bore goes on a shaft and closes on it.
 *
 * Formula: −1 µm ≤ bore − shaft ≤ 0.1 mm.
 * @param bore m, > 0.
 * @param shaft m, > 0.
 * @returns the verdict and the difference; both as nominal sizes.
 * Outside the domain: RangeError.
 * Source: `CLAMPING_PLAY`.
 * Checked against: 6.35 mm in 6 and 6.5 mm, hand calculation (test/mechanics/coupling).
 */
export function boreFit(bore: number, shaft: number): BoreFit {
  requirePositive('bore', bore);
  requirePositive('shaft', shaft);
  const difference = bore - shaft;
  return { fits: difference >= -1e-6 && difference <= CLAMPING_PLAY + 1e-9, difference };
}

/**
 * Share of a coupling's misalignment that is used up.
 *
 * Formula: e/e_max + β/β_max.
 * @param parallel e, offset of the shafts, m, ≥ 0.
 * @param parallelLimit e_max, m, > 0.
 * @param angular β, rad, ≥ 0.
 * @param angularLimit β_max, rad, > 0.
 * @returns the sum of both shares; 1 is the limit.
 * Outside the domain: RangeError.
 * Source: common practice, no published source: limits printed for one kind alone are shared out in proportion.
 * Checked against: hand calculation (test/mechanics/coupling).
 */
export function misalignmentShare(parallel: number, parallelLimit: number, angular: number, angularLimit: number): number {
  requireNotNegative('parallel offset', parallel);
  requirePositive('limit of parallel offset', parallelLimit);
  requireNotNegative('angle', angular);
  requirePositive('limit of angle', angularLimit);
  return parallel / parallelLimit + angular / angularLimit;
}

/**
 * Side force of two offset shafts on each other.
 *
 * Formula: F = k_r e.
 * @param parallel e, m, ≥ 0.
 * @param radialStiffness k_r of the coupling, N/m, > 0.
 * @returns F, N, turning once per revolution: it bends the screw.
 * Outside the domain: RangeError.
 * Source: definition of the stiffness.
 * Checked against: hand calculation (test/mechanics/coupling).
 */
export function sideForce(parallel: number, radialStiffness: number): number {
  requireNotNegative('parallel offset', parallel);
  requirePositive('radial stiffness', radialStiffness);
  return radialStiffness * parallel;
}

/**
 * Angle error of one universal-joint element at an angle.
 *
 * Formula: ± tan²(β/2).
 * @param angle β between the shafts, rad, 0 ≤ β < π/2.
 * @returns half of the swing, rad, twice per revolution: well below a micrometre on ordinary leads.
 * Outside the domain: RangeError.
 * Source: Khurmi and Gupta, Theory of Machines, section 9 (tan θ = tan φ · cos β); extreme of φ − θ derived.
 * Checked against: the extreme of the joint's own equation, sought numerically (test/mechanics/coupling).
 */
export function jointAngleError(angle: number): number {
  requireJointAngle(angle);
  // The extreme of φ − atan(tan φ cos β) is asin((1 − cos β)/(1 + cos β)), and that fraction is tan²(β/2).
  return Math.asin(Math.tan(angle / 2) ** 2);
}

/**
 * Fluctuation of the driven shaft's speed of one universal-joint element at an angle.
 *
 * Formula: (ω_max − ω_min)/ω = 1/cos β − cos β.
 * @param angle β between the shafts, rad, 0 ≤ β < π/2.
 * @returns the fluctuation, as a share of the speed.
 * Outside the domain: RangeError.
 * Source: Khurmi and Gupta, Theory of Machines, section 9.
 * Checked against: the derivative of the joint's own equation, sought numerically (test/mechanics/coupling).
 */
export function jointSpeedFluctuation(angle: number): number {
  requireJointAngle(angle);
  return 1 / Math.cos(angle) - Math.cos(angle);
}

function requireJointAngle(angle: number): void {
  requireNotNegative('angle', angle);
  if (angle >= Math.PI / 2) throw new RangeError('the angle of a joint must be below 90°');
}
