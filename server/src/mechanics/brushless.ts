/**
 * Brushless (permanent-magnet synchronous) motors fed with sinusoidal currents in phase with their back-EMF. No credit is taken for
 * field weakening.
 */
import { least, requireLimits } from './dc-motor.ts';
import type { LimitedTorque, TorqueLimits } from './dc-motor.ts';
import { requireNotNegative, requirePositive, requireWhole } from './require-argument.ts';

/**
 * Torque per ampere of peak phase current from a torque constant that was given per ampere of peak or of root mean square.
 *
 * Formula: K_p = K_rms/√2.
 * @param torqueConstant as written, N·m/A, > 0.
 * @param meaning of the ampere in it.
 * @returns K_p, N·m per A of peak phase current. Taking one for the other changes the current by 1.41 and the heat by 2.
 * Outside the domain: RangeError.
 * Source: definition of the root mean square of a sine.
 * Checked against: hand calculation (test/mechanics/brushless).
 */
export function torquePerPeakAmpere(torqueConstant: number, meaning: 'peak' | 'rms'): number {
  requirePositive('torque constant', torqueConstant);
  return meaning === 'peak' ? torqueConstant : torqueConstant / Math.SQRT2;
}

/**
 * Torque constant of a three-phase motor with sinusoidal currents from its back-EMF between two lines.
 *
 * Formula: K = √3 · K_e, both in root mean square (N·m/A and V·s/rad).
 * @param lineBackEmf K_e, root mean square between lines over speed, V·s/rad, > 0.
 * @returns K, N·m per A of root mean square phase current.
 * Outside the domain: RangeError.
 * Source: power balance: T ω = √3 U_LL I.
 * Checked against: the three phases summed in time (test/independent/brushless-phases).
 */
export function torqueConstantFromLineBackEmf(lineBackEmf: number): number {
  requirePositive('back-EMF constant', lineBackEmf);
  return Math.sqrt(3) * lineBackEmf;
}

/**
 * Peak back-EMF between two lines over speed, from the torque constant.
 *
 * Formula: k_LL = (2/√3) K_p.
 * @param perPeakAmpere K_p, N·m per A of peak phase current, > 0.
 * @returns k_LL, V·s/rad: at k_LL ω = V the supply is used up.
 * Outside the domain: RangeError.
 * Source: power balance: T ω = (3/2) e_p I_p for sinusoids in phase, and √3 between lines and phase.
 * Checked against: the three phases summed in time (test/independent/brushless-phases).
 */
export function peakLineBackEmf(perPeakAmpere: number): number {
  requirePositive('torque constant', perPeakAmpere);
  return (2 / Math.sqrt(3)) * perPeakAmpere;
}

/** A brushless motor by its own data. */
export interface BrushlessMotor {
  /** K_p, N·m per A of peak phase current, > 0. */
  readonly torquePerPeakAmpere: number;
  /** R of one phase, half of what is measured between two lines, Ω, > 0. */
  readonly phaseResistance: number;
  /** L of one phase, half of what is measured between two lines, H, ≥ 0; 0 where it is not known. */
  readonly phaseInductance: number;
  /** Pole pairs, whole, ≥ 1; they count only together with the inductance. */
  readonly polePairs: number;
  /** Peak phase current that turns the unloaded motor, A, ≥ 0. */
  readonly noLoadCurrent: number;
}

/**
 * Greatest torque that a brushless motor gives for a short time at a speed.
 *
 * Formula: the peak phase current i for which (R i + e)² + (N ω L i)² = (V/√3)², e = (2/3) K_p ω; then the least of K_p (i − i₀),
 * K_p (i_max − i₀) and T_peak; none beyond the speed limit.
 * @param motor see `BrushlessMotor`.
 * @param voltage V of the supply, direct, V, > 0: an amplifier with space-vector modulation makes phase voltages up to V/√3 of peak.
 * @param limits see `TorqueLimits`; the current is the peak phase current.
 * @param speed ω, rad/s, ≥ 0.
 * @returns the torque, the peak phase current and what sets it.
 * Outside the domain: RangeError.
 * Source: voltage equation of the synchronous machine with i_d = 0, Fitzgerald, Kingsley and Umans, Electric Machinery, 6th ed.,
 * section 11.3; V/√3 is the largest circle within the hexagon of a three-phase bridge.
 * Checked against: three phases integrated in time (test/independent/brushless-phases); Fitzgerald 11.10 for the flux
 * (test/published/dc-motors).
 */
export function greatestBrushlessTorque(motor: BrushlessMotor, voltage: number, limits: TorqueLimits, speed: number): LimitedTorque {
  requireMotor(motor);
  requirePositive('voltage', voltage);
  requireNotNegative('speed', speed);
  requireLimits(limits);
  if (speed > limits.speed) return { torque: 0, current: 0, limitedBy: 'speed limit' };
  return least(motor.torquePerPeakAmpere, motor.noLoadCurrent, currentByVoltage(motor, voltage / Math.sqrt(3), speed), limits);
}

function currentByVoltage(motor: BrushlessMotor, phaseVoltage: number, speed: number): number {
  const emf = (2 / 3) * motor.torquePerPeakAmpere * speed;
  const reactance = motor.polePairs * speed * motor.phaseInductance;
  const impedanceSquared = motor.phaseResistance ** 2 + reactance ** 2;
  const b = motor.phaseResistance * emf;
  const c = emf ** 2 - phaseVoltage ** 2;
  if (c >= 0) return 0;
  // The form without cancellation of (−b + √(b² − Z² c))/Z².
  return -c / (b + Math.sqrt(b ** 2 - impedanceSquared * c));
}

/**
 * Copper loss of a three-phase motor.
 *
 * Formula: P = (3/2) R i².
 * @param peakCurrent i, peak phase current, A, ≥ 0.
 * @param phaseResistance R of one phase, Ω, > 0.
 * @returns P, W.
 * Outside the domain: RangeError.
 * Source: three phases of root mean square i/√2.
 * Checked against: hand calculation (test/mechanics/brushless).
 */
export function brushlessCopperLoss(peakCurrent: number, phaseResistance: number): number {
  requireNotNegative('peak current', peakCurrent);
  requirePositive('resistance', phaseResistance);
  return 1.5 * phaseResistance * peakCurrent ** 2;
}

function requireMotor(motor: BrushlessMotor): void {
  requirePositive('torque constant', motor.torquePerPeakAmpere);
  requirePositive('resistance', motor.phaseResistance);
  requireNotNegative('inductance', motor.phaseInductance);
  requireNotNegative('no-load current', motor.noLoadCurrent);
  requireWhole('pole pairs', motor.polePairs, 1);
}
