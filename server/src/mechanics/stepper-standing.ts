/** A stepping motor at rest or nearly so: what it holds, how far it lags, how it swings, how fast it may start. */
import { requireNotNegative, requirePositive, requireWhole } from './require-argument.ts';

/** A default that stands in for a value that nobody gave: what to use, and how far it may be off. */
export interface DefaultRange {
  readonly nominal: number;
  readonly low: number;
  readonly high: number;
}

/**
 * Detent (unpowered cogging) torque as a share of the holding torque when the sheet is silent.
 * Source: weak. Two sheets give 3.2 % and 3.4 %; general texts say 5 to 10 %. The low end is the one for "does it stay up".
 */
export const DETENT_SHARE: DefaultRange = { nominal: 0.03, low: 0.03, high: 0.1 };

/**
 * Position error of one full step at no load, as a share of a full step, not cumulative.
 * Source: usual sheet value ± 5 %; some sheets say ± 3 %.
 */
export const STEP_ERROR_SHARE: DefaultRange = { nominal: 0.05, low: 0.03, high: 0.05 };

/**
 * Detent torque from the holding torque, when the sheet does not give it.
 *
 * Formula: T_d = share · T_H.
 * @param holdingTorque T_H at rated current, both phases on, N·m, > 0.
 * @param share T_d / T_H, 0 to 1; `DETENT_SHARE` by default.
 * @returns T_d, N·m. A cogging torque: zero between detents and of the wrong sign half the time; it is not a brake.
 * Outside the domain: RangeError.
 * Source: see `DETENT_SHARE`.
 * Checked against: two sheets (test/published/steppers).
 */
export function detentTorque(holdingTorque: number, share: number = DETENT_SHARE.nominal): number {
  requirePositive('holding torque', holdingTorque);
  requireNotNegative('share', share);
  return share * holdingTorque;
}

/**
 * Greatest torque of the energised motor standing still.
 *
 * Formula: T_H' = k · I_p · ρ.
 * @param torqueConstant k, N·m/A, > 0.
 * @param peakCurrent I_p, A, > 0.
 * @param restShare ρ, share of the current that the drive keeps at rest, 0 to 1; 1 by default.
 * @returns T_H', N·m, at every position between steps.
 * Outside the domain: RangeError.
 * Source: Acarnley, Stepping Motors, 4th ed., chapter 3.
 * Checked against: 0.71, 1.00 and 0.35 of T_H for the usual settings, hand calculation (test/mechanics/stepper-standing).
 */
export function holdingTorqueAtCurrent(torqueConstant: number, peakCurrent: number, restShare = 1): number {
  requirePositive('torque constant', torqueConstant);
  requirePositive('peak current', peakCurrent);
  requireNotNegative('share at rest', restShare);
  if (restShare > 1) throw new RangeError('the share at rest must not exceed 1');
  return torqueConstant * peakCurrent * restShare;
}

/**
 * Torque that one microstep adds: what is behind the finest command.
 *
 * Formula: T_inc = T_H' · sin(90° / n).
 * @param holdingTorque T_H' at the set current, N·m, > 0.
 * @param microsteps n per full step, whole, ≥ 1.
 * @returns T_inc, N·m. A position lag, not a loss of running torque.
 * Outside the domain: RangeError.
 * Source: sinusoidal static torque curve, Acarnley, Stepping Motors, 4th ed., chapter 3.
 * Checked against: a printed table for 1 to 256 microsteps (test/published/steppers).
 */
export function incrementalMicrostepTorque(holdingTorque: number, microsteps: number): number {
  requirePositive('holding torque', holdingTorque);
  requireWhole('microsteps', microsteps, 1);
  return holdingTorque * Math.sin(Math.PI / 2 / microsteps);
}

/** How many microsteps pass before friction lets go. */
export type MicrostepsBeforeMoving =
  | { readonly kind: 'moves-after'; /** Whole microsteps, ≥ 1. */ readonly microsteps: number }
  | { readonly kind: 'friction-holds' };

/**
 * Microsteps commanded before the load moves.
 *
 * Formula: n · (2/π) · asin(T_f / T_H'), rounded up, at least 1.
 * @param frictionTorque T_f at the motor shaft, N·m, ≥ 0.
 * @param holdingTorque T_H' at the set current, N·m, > 0.
 * @param microsteps n per full step, whole, ≥ 1.
 * @returns the count; or `friction-holds` when T_f ≥ T_H': it never moves.
 * Outside the domain: RangeError.
 * Source: derived from the sinusoidal static torque curve.
 * Checked against: hand calculation for 16, 32 and 64 microsteps (test/mechanics/stepper-standing).
 */
export function microstepsBeforeMoving(frictionTorque: number, holdingTorque: number, microsteps: number): MicrostepsBeforeMoving {
  requireNotNegative('friction torque', frictionTorque);
  requirePositive('holding torque', holdingTorque);
  requireWhole('microsteps', microsteps, 1);
  if (frictionTorque >= holdingTorque) return { kind: 'friction-holds' };
  const exact = (microsteps * 2 * Math.asin(frictionTorque / holdingTorque)) / Math.PI;
  return { kind: 'moves-after', microsteps: Math.max(1, Math.ceil(exact - 1e-9)) };
}

/** How far the rotor lags behind the field, or that it does not hold at all. */
export type RotorLag =
  | { readonly kind: 'lags'; /** Mechanical angle, rad. */ readonly angle: number }
  | { readonly kind: 'pulled-out' };

/**
 * Lag of the rotor under a steady torque.
 *
 * Formula: θ = asin(T / T_H') / N.
 * @param torque T at the motor shaft, N·m, either sign.
 * @param holdingTorque T_H' at the set current, N·m, > 0.
 * @param polePairs N, whole, ≥ 1.
 * @returns θ with the sign of T, mechanical rad; or `pulled-out` when |T| > T_H'. Half load lags a third of a full step.
 * Outside the domain: RangeError.
 * Source: Acarnley, Stepping Motors, 4th ed., chapter 3 (static position error).
 * Checked against: 30 electrical degrees at half load, hand calculation (test/mechanics/stepper-standing).
 */
export function lagUnderLoad(torque: number, holdingTorque: number, polePairs: number): RotorLag {
  requirePositive('holding torque', holdingTorque);
  requireWhole('pole pairs', polePairs, 1);
  if (Math.abs(torque) > holdingTorque) return { kind: 'pulled-out' };
  return { kind: 'lags', angle: Math.asin(torque / holdingTorque) / polePairs };
}

/**
 * Whole width of the dead band in which friction leaves the shaft.
 *
 * Formula: 2 · asin(T_f / T_H') / N (that is (4/π) · asin(T_f / T_H') full steps).
 * @param frictionTorque T_f at the motor shaft, N·m, ≥ 0.
 * @param holdingTorque T_H', N·m, > 0.
 * @param polePairs N, whole, ≥ 1.
 * @returns total width, mechanical rad; or `pulled-out` when friction exceeds the holding torque.
 * Outside the domain: RangeError.
 * Source: derived from the sinusoidal static torque curve.
 * Checked against: 0.128 full step at a tenth of the holding torque, hand calculation (test/mechanics/stepper-standing).
 */
export function frictionDeadBand(frictionTorque: number, holdingTorque: number, polePairs: number): RotorLag {
  requireNotNegative('friction torque', frictionTorque);
  const half = lagUnderLoad(frictionTorque, holdingTorque, polePairs);
  return half.kind === 'lags' ? { kind: 'lags', angle: 2 * half.angle } : half;
}

/**
 * Stiffness of the magnetic spring between field and rotor.
 *
 * Formula: k_θ = N · √(T_H'² − T²), which is N · T_H' without load.
 * @param holdingTorque T_H' at the set current, N·m, > 0.
 * @param polePairs N, whole, ≥ 1.
 * @param loadTorque T, steady, N·m, |T| ≤ T_H'; 0 by default.
 * @returns k_θ, N·m/rad; 0 at or beyond pull-out.
 * Outside the domain: RangeError.
 * Source: slope of the sinusoidal static torque curve, Acarnley, Stepping Motors, 4th ed., chapter 3.
 * Checked against: finite difference of the torque curve (test/mechanics/stepper-standing).
 */
export function magneticStiffness(holdingTorque: number, polePairs: number, loadTorque = 0): number {
  requirePositive('holding torque', holdingTorque);
  requireWhole('pole pairs', polePairs, 1);
  return polePairs * Math.sqrt(Math.max(0, holdingTorque ** 2 - loadTorque ** 2));
}

/**
 * Largest position error that the motor itself makes at no load.
 *
 * Formula: share · 2π / s.
 * @param stepsPerRevolution s, full steps per turn, whole, ≥ 1.
 * @param share of a full step; `STEP_ERROR_SHARE` by default.
 * @returns ± error, rad, not cumulative.
 * Outside the domain: RangeError.
 * Source: usual sheet value, see `STEP_ERROR_SHARE`.
 * Checked against: ± 0.09° and ± 0.045° (test/published/steppers).
 */
export function stepError(stepsPerRevolution: number, share: number = STEP_ERROR_SHARE.nominal): number {
  requireWhole('steps per revolution', stepsPerRevolution, 1);
  requireNotNegative('share', share);
  return (share * 2 * Math.PI) / stepsPerRevolution;
}

/**
 * How far detent torque bends the even spacing of microsteps.
 *
 * Formula: T_d / (N · T_H').
 * @param detent T_d, N·m, ≥ 0.
 * @param holdingTorque T_H', N·m, > 0.
 * @param polePairs N, whole, ≥ 1.
 * @returns peak error, mechanical rad, with the period of one full step; for T_d ≪ T_H'.
 * Outside the domain: RangeError.
 * Source: derived: detent torque over magnetic stiffness.
 * Checked against: hand calculation (test/mechanics/stepper-standing).
 */
export function detentPositionError(detent: number, holdingTorque: number, polePairs: number): number {
  requireNotNegative('detent torque', detent);
  return detent / magneticStiffness(holdingTorque, polePairs);
}

/**
 * Natural frequency of the rotor and its load on the magnetic spring.
 *
 * Formula: f = √(k_θ / J) / 2π.
 * @param stiffness k_θ, N·m/rad, > 0.
 * @param inertia J, rotor and reflected load, kg·m², > 0.
 * @returns f, Hz. Excited when full steps come at this rate, and at half of it.
 * Outside the domain: RangeError.
 * Source: simple oscillator; Acarnley, Stepping Motors, 4th ed., chapter 4.
 * Checked against: integration of the swing (test/independent/stepper-time-domain).
 */
export function motorNaturalFrequency(stiffness: number, inertia: number): number {
  requirePositive('stiffness', stiffness);
  requirePositive('inertia', inertia);
  return Math.sqrt(stiffness / inertia) / (2 * Math.PI);
}

/** The sudden speed that a standing motor follows, or that it cannot even hold. */
export type StartSpeed =
  | { readonly kind: 'starts'; /** Ideal limit, rad/s of the shaft. */ readonly speed: number }
  | { readonly kind: 'pulled-out' };

/** Share of the ideal start speed to use. Source: common practice, no published source. */
export const START_SPEED_SHARE = 0.5;

/**
 * Greatest speed to which the field may jump at once without leaving the rotor behind.
 *
 * Formula: ω = √( (2 / (J N)) · (2 T_H' cos δ − T_L (π − 2δ)) ), δ = asin(T_L / T_H').
 * @param holdingTorque T_H' at the set current, N·m, > 0.
 * @param inertia J, rotor and reflected load, kg·m², > 0.
 * @param polePairs N, whole, ≥ 1.
 * @param opposingTorque T_L, load or friction against the motion, N·m, ≥ 0; 0 by default.
 * @returns the ideal limit; use `START_SPEED_SHARE` of it. `pulled-out` when T_L ≥ T_H'.
 * Outside the domain: RangeError.
 * Source: derived from energy: kinetic energy relative to the field against the barrier of the static torque curve between its
 * stable and its unstable point. Friction gives the same as gravity: until the lag reaches δ the shaft stands and loses nothing.
 * Checked against: integration of the start (test/independent/stepper-time-domain).
 */
export function startSpeedWithoutRamp(holdingTorque: number, inertia: number, polePairs: number, opposingTorque = 0): StartSpeed {
  requirePositive('holding torque', holdingTorque);
  requirePositive('inertia', inertia);
  requireWhole('pole pairs', polePairs, 1);
  requireNotNegative('opposing torque', opposingTorque);
  if (opposingTorque >= holdingTorque) return { kind: 'pulled-out' };
  const angle = Math.asin(opposingTorque / holdingTorque);
  const barrier = 2 * holdingTorque * Math.cos(angle) - opposingTorque * (Math.PI - 2 * angle);
  return { kind: 'starts', speed: Math.sqrt((2 * barrier) / (inertia * polePairs)) };
}
