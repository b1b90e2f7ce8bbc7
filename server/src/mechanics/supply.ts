/** What a drive takes from its supply and what it gives back. */
import { requireFinite, requireNotNegative, requirePositive } from './require-argument.ts';

/** Efficiency of a chopper drive from supply to winding when nothing is known. Source: weak, from memory. */
export const DRIVE_EFFICIENCY = { nominal: 0.85, low: 0.8, high: 0.95 } as const;

/**
 * Power that one motor and its drive take from the supply.
 *
 * Formula: P = max(0, T ω + P_copper) / η_drive.
 * @param shaftPower T ω, W, negative when the load drives.
 * @param copperLoss P_copper at the set current, W, ≥ 0.
 * @param driveEfficiency η_drive, 0 to 1; `DRIVE_EFFICIENCY` by default.
 * @returns P, W, ≥ 0. Iron loss left out.
 * Outside the domain: RangeError.
 * Source: power balance.
 * Checked against: hand calculation (test/mechanics/supply).
 */
export function supplyPower(shaftPower: number, copperLoss: number, driveEfficiency: number = DRIVE_EFFICIENCY.nominal): number {
  requireFinite('shaft power', shaftPower);
  requireNotNegative('copper loss', copperLoss);
  requirePositive('efficiency of the drive', driveEfficiency);
  if (driveEfficiency > 1) throw new RangeError('an efficiency must not exceed 1');
  return Math.max(0, shaftPower + copperLoss) / driveEfficiency;
}

/**
 * Current taken from the supply.
 *
 * Formula: I = P / V.
 * @param power P, W, ≥ 0.
 * @param voltage V, > 0.
 * @returns I, A: at low speed far below the phase current.
 * Outside the domain: RangeError.
 * Source: power balance.
 * Checked against: hand calculation (test/mechanics/supply).
 */
export function supplyCurrent(power: number, voltage: number): number {
  requireNotNegative('power', power);
  requirePositive('voltage', voltage);
  return power / voltage;
}

/**
 * Power that goes back into the supply while the load drives the motor.
 *
 * Formula: P = max(0, −T ω − P_copper).
 * @param shaftPower T ω at the motor, W; negative when the load drives.
 * @param copperLoss P_copper at the set current, W, ≥ 0: the windings burn this first.
 * @returns P, W, ≥ 0. Losses of the drive left out, which is the safe side for the supply.
 * Outside the domain: RangeError.
 * Source: power balance.
 * Checked against: 20 kg lowered at 0.1 m/s, hand calculation (test/mechanics/supply).
 */
export function returnedPower(shaftPower: number, copperLoss: number): number {
  requireFinite('shaft power', shaftPower);
  requireNotNegative('copper loss', copperLoss);
  return Math.max(0, -shaftPower - copperLoss);
}

/**
 * Voltage that a supply rail reaches when energy is pushed back into its capacitors.
 *
 * Formula: V₂ = √(V² + 2 E / C).
 * @param voltage V before, > 0.
 * @param energy E returned, J, ≥ 0.
 * @param capacitance C of rail and supply, F, > 0.
 * @returns V₂, V, if nothing clamps or absorbs it.
 * Outside the domain: RangeError.
 * Source: energy of a capacitor.
 * Checked against: 1.25 J into 1000 µF at 36 V, hand calculation (test/mechanics/supply).
 */
export function railVoltageAfter(voltage: number, energy: number, capacitance: number): number {
  requirePositive('voltage', voltage);
  requireNotNegative('energy', energy);
  requirePositive('capacitance', capacitance);
  return Math.sqrt(voltage ** 2 + (2 * energy) / capacitance);
}

/**
 * Energy that a phase of even deceleration or steady lowering returns, the windings' share taken off.
 *
 * Formula: E = ∫ max(0, −T ω − P_copper) dt, with ω changing evenly from ω₀ to ω₁ and T constant.
 * @param torque T at the motor, N·m, signed in the direction of turning: negative when the load drives.
 * @param startSpeed ω₀, rad/s, ≥ 0.
 * @param endSpeed ω₁, rad/s, ≥ 0.
 * @param duration s, ≥ 0.
 * @param copperLoss W, ≥ 0.
 * @returns E, J, ≥ 0.
 * Outside the domain: RangeError.
 * Source: power balance, integrated in closed form.
 * Checked against: numerical integration (test/mechanics/supply).
 */
export function returnedEnergy(torque: number, startSpeed: number, endSpeed: number, duration: number, copperLoss: number): number {
  requireFinite('torque', torque);
  requireNotNegative('speed at the start', startSpeed);
  requireNotNegative('speed at the end', endSpeed);
  requireNotNegative('duration', duration);
  requireNotNegative('copper loss', copperLoss);
  const atStart = -torque * startSpeed - copperLoss;
  const atEnd = -torque * endSpeed - copperLoss;
  if (atStart <= 0 && atEnd <= 0) return 0;
  if (atStart >= 0 && atEnd >= 0) return ((atStart + atEnd) / 2) * duration;
  // One end below zero: a triangle over the part of the time that lies above.
  const peak = Math.max(atStart, atEnd);
  return (peak / 2) * duration * (peak / Math.abs(atStart - atEnd));
}

/**
 * Voltage that a phase winding makes when an unpowered axis is pushed by hand.
 *
 * Formula: e = k ω, peak.
 * @param torqueConstant k, V·s/rad, > 0.
 * @param motorSpeed ω, rad/s, ≥ 0.
 * @returns e, V peak: it can light up or damage a drive that is switched off.
 * Outside the domain: RangeError.
 * Source: definition of the back-EMF constant.
 * Checked against: hand calculation (test/mechanics/supply).
 */
export function handPushedVoltage(torqueConstant: number, motorSpeed: number): number {
  requirePositive('torque constant', torqueConstant);
  requireNotNegative('speed', motorSpeed);
  return torqueConstant * motorSpeed;
}
