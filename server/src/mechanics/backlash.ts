import { requireFinite, requireNotNegative, requirePositive } from './require-argument.ts';
import { requireWithin } from './require-within.ts';

/**
 * Travel lost when the axis turns round.
 *
 * Formula: Δ = play + 2 F / k. The flank crosses its play, and the drive, stretched by F one way, is pressed by F the other way.
 * @param play axial play in m, 0 or above.
 * @param reversingForce F, friction and load that change sign at the turn, in N, 0 or above.
 * @param stiffness k of the drive along the axis, in N/m, above 0; undefined: taken as rigid.
 * @returns Δ in m.
 * @throws RangeError when an argument is outside its domain.
 * Source: spring with a gap; common practice, no published source.
 * Checked against: test/mechanics/backlash.test.ts (hand calculation).
 */
export function lostMotion(play: number, reversingForce: number, stiffness?: number): number {
  requireNotNegative('play', play);
  requireNotNegative('reversingForce', reversingForce);
  if (stiffness === undefined) return play;
  requirePositive('stiffness', stiffness);
  return play + (2 * reversingForce) / stiffness;
}

/**
 * Force that tries to open the flank contact of a sprung nut while the axis speeds up or slows down.
 *
 * Formula: F = m a + F_friction + F_process.
 * @param mass m that the nut moves, in kg, 0 or above.
 * @param acceleration a in m/s², 0 or above.
 * @param friction of the guides, in N, 0 or above.
 * @param process force of the tool against the spring side, in N, 0 or above.
 * @returns F in N.
 * @throws RangeError when an argument is negative.
 * Source: Newton's law; design rule of sprung nuts is common practice, no published source.
 * Checked against: test/mechanics/backlash.test.ts.
 */
export function reversalForce(mass: number, acceleration: number, friction: number, process: number): number {
  requireNotNegative('mass', mass);
  requireNotNegative('acceleration', acceleration);
  requireNotNegative('friction', friction);
  requireNotNegative('process', process);
  return mass * acceleration + friction + process;
}

/** How far a nut's spring should exceed the reversal force. Common practice, no published source. */
export const SPRING_RESERVE = 1.2;

/**
 * Torque that a sprung nut adds while it moves, either way.
 *
 * Formula: T = F d2/2 · [tan(φ′ + λ) + tan(φ′ − λ)], φ′ = atan µ′: one half is screwed up against the spring, the other down with it.
 * @param springForce F in N, 0 or above.
 * @param pitchDiameter d2 in m, above 0.
 * @param leadAngle λ in rad, from 0 and below π/2.
 * @param effectiveFriction µ′, 0 or above.
 * @returns T in N·m, or undefined when µ′ tan λ ≥ 1: the half under the spring jams.
 * @throws RangeError when an argument is outside its domain.
 * Source: raising and lowering torque, Budynas and Nisbett, section 8-2, one for each half of the nut.
 * Checked against: test/independent/thread-flank-balance.test.ts.
 */
export function springDragTorque(springForce: number, pitchDiameter: number, leadAngle: number, effectiveFriction: number): number | undefined {
  requireNotNegative('springForce', springForce);
  requirePositive('pitchDiameter', pitchDiameter);
  requireWithin('leadAngle', leadAngle, 0, Math.PI / 2);
  requireNotNegative('effectiveFriction', effectiveFriction);
  const rise = Math.tan(leadAngle);
  if (effectiveFriction * rise >= 1) return undefined;
  const friction = Math.atan(effectiveFriction);
  return ((springForce * pitchDiameter) / 2) * (Math.tan(friction + leadAngle) + Math.tan(friction - leadAngle));
}

/**
 * Downward acceleration up to which the weight of a hanging load keeps the same flank pressed.
 *
 * Formula: a = g − (F_friction + F_lift) / m, with the part of g along the axis.
 * @param gravityAlong g sin β in m/s², from 0.
 * @param mass m in kg, above 0.
 * @param friction of the guides, in N, 0 or above.
 * @param lift force of the tool or a counterbalance that lifts the load, in N, 0 or above.
 * @returns a in m/s²; 0 or below: the weight does not close the play at all.
 * @throws RangeError when an argument is outside its domain.
 * Source: Newton's law of the hanging mass.
 * Checked against: test/mechanics/backlash.test.ts.
 */
export function gravityPreloadLimit(gravityAlong: number, mass: number, friction: number, lift: number): number {
  requireFinite('gravityAlong', gravityAlong);
  requireNotNegative('gravityAlong', gravityAlong);
  requirePositive('mass', mass);
  requireNotNegative('friction', friction);
  requireNotNegative('lift', lift);
  return gravityAlong - (friction + lift) / mass;
}
