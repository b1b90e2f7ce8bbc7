/**
 * A permanent-magnet DC motor, and a brushless one seen from its supply: what torque it gives over speed.
 *
 * V = R I + K ω, T = K (I − I₀). Inductance is left out: it does not count at steady speed.
 */
import { requireNotNegative, requirePositive } from './require-argument.ts';

/** A DC motor by its own data. */
export interface DcMotor {
  /** K, N·m/A = V·s/rad, > 0. */
  readonly torqueConstant: number;
  /** R between the terminals, brushes included, Ω, > 0. */
  readonly resistance: number;
  /** I₀, current that turns the unloaded motor, A, ≥ 0; taken the same at all speeds. */
  readonly noLoadCurrent: number;
}

/**
 * Current and torque of a DC motor at a voltage and a speed.
 *
 * Formula: I = (V − K ω)/R; T = K (I − I₀).
 * @param motor see `DcMotor`.
 * @param voltage V at the terminals, V, ≥ 0.
 * @param speed ω, rad/s, ≥ 0.
 * @returns I, A, and T at the shaft, N·m; negative beyond the no-load speed, where it brakes.
 * Outside the domain: RangeError.
 * Source: Fitzgerald, Kingsley and Umans, Electric Machinery, 6th ed., section 7.7.
 * Checked against: Fitzgerald 7.9, Jagannathan 7.4, J. B. Gupta ch. 1 ex. 5 (test/published/dc-motors); integration of the circuit in
 * time (test/independent/dc-motor-in-time).
 */
export function dcMotorAt(motor: DcMotor, voltage: number, speed: number): { readonly current: number; readonly torque: number } {
  requireMotor(motor);
  requireNotNegative('voltage', voltage);
  requireNotNegative('speed', speed);
  const current = (voltage - motor.torqueConstant * speed) / motor.resistance;
  return { current, torque: motor.torqueConstant * (current - motor.noLoadCurrent) };
}

/**
 * Speed of the unloaded motor.
 *
 * Formula: ω₀ = (V − R I₀)/K.
 * @param motor see `DcMotor`.
 * @param voltage V, V, > 0.
 * @returns ω₀, rad/s; 0 where the supply does not even turn it.
 * Outside the domain: RangeError.
 * Source: as `dcMotorAt` with T = 0.
 * Checked against: hand calculation (test/mechanics/dc-motor).
 */
export function noLoadSpeed(motor: DcMotor, voltage: number): number {
  requireMotor(motor);
  requirePositive('voltage', voltage);
  return Math.max(0, (voltage - motor.resistance * motor.noLoadCurrent) / motor.torqueConstant);
}

/** What the amplifier and the maker allow besides the supply. */
export interface TorqueLimits {
  /** Most current of the amplifier, A, > 0; Infinity: none. */
  readonly current: number;
  /** Peak torque of the motor, N·m, > 0; Infinity: not given. */
  readonly torque: number;
  /** Speed limit of the motor, rad/s, > 0; Infinity: not given. */
  readonly speed: number;
}

/** What sets the torque at a speed. */
export type TorqueLimitedBy = 'voltage' | 'current' | 'peak torque' | 'speed limit';

/** Torque at the shaft and what sets it. */
export interface LimitedTorque {
  /** N·m, ≥ 0. */
  readonly torque: number;
  /** A, at that torque. */
  readonly current: number;
  readonly limitedBy: TorqueLimitedBy;
}

/**
 * Greatest torque that a DC motor gives for a short time at a speed.
 *
 * Formula: least of K ((V − K ω)/R − I₀), K (I_max − I₀) and T_peak; none beyond the speed limit.
 * @param motor see `DcMotor`.
 * @param voltage V at the terminals, V, > 0: the loaded supply less the drops of the amplifier.
 * @param limits see `TorqueLimits`.
 * @param speed ω, rad/s, ≥ 0.
 * @returns the torque and what sets it; 0 where nothing is left.
 * Outside the domain: RangeError.
 * Source: as `dcMotorAt`.
 * Checked against: integration of the circuit with its current limited, in time (test/independent/dc-motor-in-time).
 */
export function greatestTorque(motor: DcMotor, voltage: number, limits: TorqueLimits, speed: number): LimitedTorque {
  requireLimits(limits);
  if (speed > limits.speed) return { torque: 0, current: 0, limitedBy: 'speed limit' };
  const byVoltage = dcMotorAt(motor, voltage, speed);
  return least(motor.torqueConstant, motor.noLoadCurrent, byVoltage.current, limits);
}

/**
 * The least of three limits of the torque, for any motor whose torque is K (I − I₀).
 *
 * @param torqueConstant K, N·m/A, > 0.
 * @param noLoadCurrent I₀, A, ≥ 0.
 * @param currentByVoltage current that the supply still pushes, A; negative: none.
 * @param limits see `TorqueLimits`.
 * @returns the torque, not below zero, and what sets it.
 * Outside the domain: RangeError.
 */
export function least(torqueConstant: number, noLoadCurrent: number, currentByVoltage: number, limits: TorqueLimits): LimitedTorque {
  const torqueOf = (current: number): number => Math.max(0, torqueConstant * (current - noLoadCurrent));
  let found: LimitedTorque = { torque: torqueOf(currentByVoltage), current: Math.max(0, currentByVoltage), limitedBy: 'voltage' };
  if (limits.current < found.current) found = { torque: torqueOf(limits.current), current: limits.current, limitedBy: 'current' };
  if (limits.torque < found.torque) found = { torque: limits.torque, current: limits.torque / torqueConstant + noLoadCurrent, limitedBy: 'peak torque' };
  return found;
}

/**
 * Current that a torque at the shaft asks for.
 *
 * Formula: I = |T|/K + I₀.
 * @param motor see `DcMotor`.
 * @param torque T, N·m, with its sign; braking is taken like driving, which is the safe side (friction then helps).
 * @returns I, A.
 * Outside the domain: RangeError.
 * Source: as `dcMotorAt`.
 * Checked against: hand calculation (test/mechanics/dc-motor).
 */
export function currentForTorque(motor: DcMotor, torque: number): number {
  requireMotor(motor);
  return Math.abs(torque) / motor.torqueConstant + motor.noLoadCurrent;
}

/** Throws RangeError unless the data can be those of a motor. */
function requireMotor(motor: DcMotor): void {
  requirePositive('torque constant', motor.torqueConstant);
  requirePositive('resistance', motor.resistance);
  requireNotNegative('no-load current', motor.noLoadCurrent);
}

/** Throws RangeError unless every limit is above zero; Infinity is none. */
export function requireLimits(limits: TorqueLimits): void {
  for (const [name, value] of Object.entries(limits)) if (!(value > 0)) throw new RangeError(`limit of ${name} must be greater than zero, got ${value}`);
}
