/**
 * What a two-phase hybrid stepping motor can pull at speed, estimated from its sheet.
 *
 * Model: two-phase synchronous machine, sinusoidal flux linkage, constant inductance, ideal current regulator with the
 * supply as its limit, steady speed, no iron loss, no resonance. In rotor coordinates
 * v_d = R i_d − N ω L i_q,  v_q = R i_q + N ω L i_d + k ω,  T = k i_q  (Fitzgerald, Kingsley and Umans, Electric Machinery,
 * 6th ed., section 11.3, for the same machine with a field-weakening supply limit). The result is a range, never a curve to rely on:
 * no measured curve stands behind it. A measured curve, where there is one, goes before it (`torqueFromPoints`).
 */
import { requireNotNegative, requirePositive, requireWhole } from './require-argument.ts';

/** The electrical side of a stepping motor and of what drives it. */
export interface StepperDrive {
  /** k, torque constant and peak back-EMF constant of one phase, N·m/A = V·s/rad, > 0. */
  readonly torqueConstant: number;
  /** I_p, peak of the sinusoidal phase current that the drive sets, A, > 0. */
  readonly peakCurrent: number;
  /** R, resistance of one phase, Ω, > 0. */
  readonly resistance: number;
  /** L, inductance of one phase, H, > 0. */
  readonly inductance: number;
  /** N, pole pairs of the motor (rotor teeth: 50 for 1.8°, 100 for 0.9°), whole, ≥ 1. */
  readonly polePairs: number;
  /** V, voltage that reaches the winding: the loaded supply less the drops of the bridge, V, > 0. */
  readonly voltage: number;
}

/** How a holding torque on a sheet was taken. */
export type HoldingTorqueBasis = 'both-phases' | 'one-phase';

/**
 * Torque constant of one phase from the holding torque of the sheet.
 *
 * Formula: k = T_H / (√2 · I_r) with both phases on; k = T_H / I_r with one phase on.
 * @param holdingTorque T_H, N·m, > 0.
 * @param ratedCurrent I_r, direct current per phase at which T_H was taken, A, > 0.
 * @param basis both phases on (the usual bipolar sheet) or one.
 * @returns k, N·m/A; the same number is the peak back-EMF per phase in V·s/rad (power balance).
 * Outside the domain: RangeError. Valid while torque follows current, up to about the rated current (see `creditedPeakCurrent`).
 * Source: Acarnley, Stepping Motors, 4th ed., chapter 3 (static torque of two phases adds as sine and cosine); power balance.
 * Checked against: the 0.60 of rated holding torque printed for one winding at 0.85 of rated current (test/published/steppers).
 */
export function torqueConstant(holdingTorque: number, ratedCurrent: number, basis: HoldingTorqueBasis = 'both-phases'): number {
  requirePositive('holding torque', holdingTorque);
  requirePositive('rated current', ratedCurrent);
  return holdingTorque / (basis === 'both-phases' ? Math.SQRT2 * ratedCurrent : ratedCurrent);
}

/** A current setting in both of its readings. */
export interface CurrentSetting {
  /** Peak of the sinusoidal phase current, A. */
  readonly peak: number;
  /** Root-mean-square phase current, A: the one that heats. */
  readonly rms: number;
}

/**
 * Reads a current setting that was given as peak or as root mean square.
 *
 * Formula: I_p = √2 · I_rms.
 * @param current as written, A, > 0.
 * @param meaning which of the two was written.
 * @returns both readings. Taking one for the other changes torque by 1.41 and heat by 2.
 * Outside the domain: RangeError.
 * Source: definition of the root mean square of a sine.
 * Checked against: hand calculation (test/mechanics/stepper-torque).
 */
export function currentSetting(current: number, meaning: 'peak' | 'rms'): CurrentSetting {
  requirePositive('current', current);
  return meaning === 'peak' ? { peak: current, rms: current / Math.SQRT2 } : { peak: current * Math.SQRT2, rms: current };
}

/** Credit ends here: root-mean-square current over rated current beyond which no more torque is counted (iron saturates). */
export const SATURATION_RATIO = 1.2;

/**
 * Peak current that may be credited with torque.
 *
 * Formula: min(I_p, 1.2 · √2 · I_r).
 * @param peakCurrent I_p as set, A, > 0.
 * @param ratedCurrent I_r of the sheet (both phases, direct current), A, > 0.
 * @returns credited peak current, A.
 * Outside the domain: RangeError.
 * Source: common practice, no published source; one measured motor gave 16 % more torque for 27 % more current.
 * Checked against: hand calculation (test/mechanics/stepper-torque).
 */
export function creditedPeakCurrent(peakCurrent: number, ratedCurrent: number): number {
  requirePositive('peak current', peakCurrent);
  requirePositive('rated current', ratedCurrent);
  return Math.min(peakCurrent, SATURATION_RATIO * Math.SQRT2 * ratedCurrent);
}

/** The speed up to which the supply can still push the set current, or why there is none. */
export type CornerSpeed =
  | { readonly kind: 'corner'; /** ω_c, rad/s. */ readonly speed: number }
  | {
      readonly kind: 'supply-cannot-push-current';
      /** R · I_p, V: what the winding takes standing still. */
      readonly voltageNeeded: number;
      /** V / R, A: the most that this supply pushes, standing still. */
      readonly currentReached: number;
    };

/**
 * Corner speed: the highest speed at which the drive still reaches the set current in phase with the back-EMF.
 *
 * Formula: (R I_p + k ω)² + (N ω L I_p)² = V², solved for ω.
 * @param drive see `StepperDrive`.
 * @returns ω_c in rad/s; or `supply-cannot-push-current` when R I_p ≥ V.
 * Outside the domain: RangeError for quantities that are not positive.
 * Source: voltage equation of the synchronous machine, Fitzgerald, Kingsley and Umans, 6th ed., section 11.3.
 * Checked against: time-stepped simulation of both windings (test/independent/stepper-time-domain).
 */
export function cornerSpeed(drive: StepperDrive): CornerSpeed {
  requireDrive(drive);
  const { torqueConstant: k, peakCurrent, resistance, inductance, polePairs, voltage } = drive;
  const resistiveDrop = resistance * peakCurrent;
  if (resistiveDrop >= voltage) {
    return { kind: 'supply-cannot-push-current', voltageNeeded: resistiveDrop, currentReached: voltage / resistance };
  }
  const a = k ** 2 + (polePairs * inductance * peakCurrent) ** 2;
  const b = 2 * resistiveDrop * k;
  const c = resistiveDrop ** 2 - voltage ** 2;
  // The form without cancellation: c is negative, so the positive root is −2c / (b + √(b² − 4ac)).
  return { kind: 'corner', speed: (-2 * c) / (b + Math.sqrt(b ** 2 - 4 * a * c)) };
}

/** Torque that a stepping motor can be expected to pull at one speed. */
export interface TorqueRange {
  /** Estimate A, N·m: the value to design with, on the safe side of the loss-free model. */
  readonly design: number;
  /** Bound B, N·m: both limits taken one by one with a sinusoidal voltage. */
  readonly voltageBound: number;
  /** Upper bound, N·m: as B, but the saturated drive has become a square wave of fundamental 4 V / π. */
  readonly upper: number;
}

/**
 * Pull-out torque at a speed, as a range: design estimate, voltage-source bound, upper bound.
 *
 * Formula: A = min(B, k I_p · min(1, ω_c/ω));
 * B = min(k I_p, k V/Z − k² ω R/Z²) with Z² = R² + (N ω L)²; upper: B with 4 V/π in place of V. None is below zero.
 * @param drive see `StepperDrive`. If the supply cannot push the set current, I_p is replaced by V/R.
 * @param speed ω of the motor shaft, rad/s, ≥ 0.
 * @returns the range, N·m. Without iron loss, cogging or resonance, which take from it; sheets scatter by about ± 35 %.
 * Outside the domain: RangeError for quantities that are not positive or a negative speed.
 * Source: model at the head of this file; A is the constant-power continuation from the corner, our choice.
 * Checked against: time-stepped simulation of both windings (test/independent/stepper-time-domain).
 */
export function pullOutTorque(drive: StepperDrive, speed: number): TorqueRange {
  return pullOutCurve(drive)(speed);
}

/**
 * The same for many speeds of one drive, with everything that does not depend on speed reckoned once.
 *
 * Formula, domain, source and checks: as `pullOutTorque`.
 * @param drive see `StepperDrive`.
 * @returns the range as a function of ω, rad/s, ≥ 0.
 */
export function pullOutCurve(drive: StepperDrive): (speed: number) => TorqueRange {
  const corner = cornerSpeed(drive);
  const { torqueConstant: k, resistance, voltage } = drive;
  const standing = k * (corner.kind === 'corner' ? drive.peakCurrent : corner.currentReached);
  const cornerReached = corner.kind === 'corner' ? corner.speed : 0;
  const reactance = drive.polePairs * drive.inductance;
  const squareWave = (4 / Math.PI) * voltage;
  return (speed) => {
    requireNotNegative('speed', speed);
    const impedanceSquared = resistance ** 2 + (reactance * speed) ** 2;
    const impedance = Math.sqrt(impedanceSquared);
    const drag = (k ** 2 * speed * resistance) / impedanceSquared;
    const bound = (volts: number): number => Math.max(0, Math.min(standing, (k * volts) / impedance - drag));
    const voltageBound = bound(voltage);
    const constantPower = speed <= cornerReached ? standing : (standing * cornerReached) / speed;
    // With hardly any inductance the torque falls to zero at the no-load speed, below the constant-power curve: B governs then.
    const design = corner.kind === 'corner' ? Math.min(constantPower, voltageBound) : voltageBound;
    return { design, voltageBound, upper: bound(squareWave) };
  };
}

/**
 * Shaft power that the voltage-limited motor nears far above the corner.
 *
 * Formula: P = k V / (N L) − k² R / (N L)².
 * @param drive see `StepperDrive`.
 * @returns P, W, ≥ 0. It grows with the supply voltage and not with the current.
 * Outside the domain: RangeError.
 * Source: limit of bound B times speed for N ω L ≫ R.
 * Checked against: bound B at very high speed (test/mechanics/stepper-torque).
 */
export function shaftPowerFarAboveCorner(drive: StepperDrive): number {
  requireDrive(drive);
  const reactance = drive.polePairs * drive.inductance;
  return Math.max(0, (drive.torqueConstant * drive.voltage) / reactance - (drive.torqueConstant ** 2 * drive.resistance) / reactance ** 2);
}

function requireDrive(drive: StepperDrive): void {
  requirePositive('torque constant', drive.torqueConstant);
  requirePositive('peak current', drive.peakCurrent);
  requirePositive('resistance', drive.resistance);
  requirePositive('inductance', drive.inductance);
  requireWhole('pole pairs', drive.polePairs, 1);
  requirePositive('voltage', drive.voltage);
}

/**
 * Speeds beyond which the estimate must not be leaned on without a measured curve: losses and drag, which it leaves out, take over.
 * Source: weak. One measured motor lost control of its current near 20 rev/s and stalled at 25 rev/s; one sheet ends at 25 rev/s.
 */
export const ESTIMATE_DOUBTFUL_ABOVE = 2 * Math.PI * 15;
/** See `ESTIMATE_DOUBTFUL_ABOVE`, rad/s. */
export const ESTIMATE_ENDS_AT = 2 * Math.PI * 25;
