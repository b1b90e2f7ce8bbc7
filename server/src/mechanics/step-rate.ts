/** Counting steps: travel, steps per length, step rate, full-step heights. */
import { requireNotNegative, requirePositive, requireWhole } from './require-argument.ts';

/**
 * Full steps per turn of a two-phase hybrid motor.
 *
 * Formula: s = 4 N.
 * @param polePairs N, rotor teeth, whole, ≥ 1.
 * @returns s: 200 for 50 teeth (1.8°).
 * Outside the domain: RangeError.
 * Source: Kosow, Electric Machinery and Transformers, chapter 11.
 * Checked against: Kosow, example 11-3 (test/published/steppers).
 */
export function fullStepsPerTurn(polePairs: number): number {
  requireWhole('pole pairs', polePairs, 1);
  return 4 * polePairs;
}

/**
 * Full steps per turn from the step angle.
 *
 * Formula: s = 2π / angle.
 * @param stepAngle rad, > 0.
 * @returns s, to the nearest whole when within a millionth of it.
 * Outside the domain: RangeError.
 * Source: definition; Hubert, Electric Machines, chapter 7.
 * Checked against: Hubert, example 7.2 (test/published/steppers).
 */
export function stepsFromAngle(stepAngle: number): number {
  requirePositive('step angle', stepAngle);
  const steps = (2 * Math.PI) / stepAngle;
  const whole = Math.round(steps);
  return Math.abs(steps - whole) <= 1e-6 * steps ? whole : steps;
}

/**
 * Pulses per metre of travel.
 *
 * Formula: s n / p_m.
 * @param stepsPerTurn s, > 0.
 * @param microsteps n per full step, whole, ≥ 1.
 * @param travelPerMotorTurn p_m, m, > 0.
 * @returns 1/m; a thousandth of it is the usual figure per millimetre.
 * Outside the domain: RangeError.
 * Source: kinematics.
 * Checked against: 100 per mm for 32 mm a turn and 16 microsteps (test/published/steppers).
 */
export function stepsPerMetre(stepsPerTurn: number, microsteps: number, travelPerMotorTurn: number): number {
  requirePositive('steps per turn', stepsPerTurn);
  requireWhole('microsteps', microsteps, 1);
  requirePositive('travel per motor turn', travelPerMotorTurn);
  return (stepsPerTurn * microsteps) / travelPerMotorTurn;
}

/**
 * Pulses per second at a speed of the motor.
 *
 * Formula: f = ω s n / 2π.
 * @param motorSpeed ω, rad/s, ≥ 0.
 * @param stepsPerTurn s, > 0.
 * @param microsteps n per full step, whole, ≥ 1.
 * @returns f, Hz.
 * Outside the domain: RangeError.
 * Source: kinematics; Burman, Special Electrical Machines, chapter 3.
 * Checked against: Burman, examples 3.5, 3.9; Srivastava, example 7.11 (test/published/steppers).
 */
export function stepRate(motorSpeed: number, stepsPerTurn: number, microsteps: number): number {
  requireNotNegative('speed', motorSpeed);
  requirePositive('steps per turn', stepsPerTurn);
  requireWhole('microsteps', microsteps, 1);
  return (motorSpeed * stepsPerTurn * microsteps) / (2 * Math.PI);
}

/**
 * Speed of the motor at a pulse rate: `stepRate` backwards.
 *
 * Formula: ω = 2π f / (s n).
 * @param rate f, Hz, ≥ 0.
 * @param stepsPerTurn s, > 0.
 * @param microsteps n per full step, whole, ≥ 1.
 * @returns ω, rad/s.
 * Outside the domain: RangeError.
 * Source: kinematics.
 * Checked against: Burman, example 3.5; Hubert, example 7.2 (test/published/steppers).
 */
export function speedAtStepRate(rate: number, stepsPerTurn: number, microsteps: number): number {
  requireNotNegative('rate', rate);
  requirePositive('steps per turn', stepsPerTurn);
  requireWhole('microsteps', microsteps, 1);
  return (2 * Math.PI * rate) / (stepsPerTurn * microsteps);
}

/**
 * Frequency of the current in a winding.
 *
 * Formula: f_e = N ω / 2π.
 * @param motorSpeed ω, rad/s, ≥ 0.
 * @param polePairs N, > 0.
 * @returns f_e, Hz.
 * Outside the domain: RangeError.
 * Source: definition of the pole pair.
 * Checked against: 50 Hz at one turn a second; Burman, example 3.2 corrected (test/published/steppers).
 */
export function electricalFrequency(motorSpeed: number, polePairs: number): number {
  requireNotNegative('speed', motorSpeed);
  requirePositive('pole pairs', polePairs);
  return (polePairs * motorSpeed) / (2 * Math.PI);
}

/**
 * Travel of one full step.
 *
 * Formula: h = p_m / s.
 * @param travelPerMotorTurn p_m, m, > 0.
 * @param stepsPerTurn s, > 0.
 * @returns h, m. Four of them are the pole pitch, the size of a lost-step error.
 * Outside the domain: RangeError.
 * Source: kinematics.
 * Checked against: 0.04 mm for 8 mm and 200 steps (test/mechanics/step-rate).
 */
export function fullStepTravel(travelPerMotorTurn: number, stepsPerTurn: number): number {
  requirePositive('travel per motor turn', travelPerMotorTurn);
  requirePositive('steps per turn', stepsPerTurn);
  return travelPerMotorTurn / stepsPerTurn;
}

/** A height beside the whole full steps around it. */
export interface HeightOnSteps {
  /** Full steps in the height, not rounded. */
  readonly steps: number;
  /** True when that is a whole number, at least one, within the tolerance. */
  readonly whole: boolean;
  /** Nearest whole heights, m: one below (none under one full step) and one above; both the height itself when it is whole. */
  readonly below: number | undefined;
  readonly above: number;
}

/**
 * Whether a height (a layer) is a whole number of full steps, and the nearest heights that are.
 *
 * Formula: height / h compared with the nearest whole number.
 * @param height m, > 0.
 * @param fullStep h, travel of one full step, m, > 0.
 * @param tolerance in full steps, ≥ 0; 0.001 by default (rounding of what was typed).
 * @returns see `HeightOnSteps`.
 * Outside the domain: RangeError.
 * Source: kinematics; that whole steps print more evenly is common practice, no published source.
 * Checked against: table of heights for leads of 1 to 16 mm, hand calculation (test/mechanics/step-rate).
 */
export function heightOnFullSteps(height: number, fullStep: number, tolerance = 1e-3): HeightOnSteps {
  requirePositive('height', height);
  requirePositive('full step', fullStep);
  requireNotNegative('tolerance', tolerance);
  const steps = height / fullStep;
  const nearest = Math.round(steps);
  if (nearest >= 1 && Math.abs(steps - nearest) <= tolerance) {
    return { steps, whole: true, below: nearest * fullStep, above: nearest * fullStep };
  }
  const lower = Math.floor(steps);
  return { steps, whole: false, below: lower >= 1 ? lower * fullStep : undefined, above: (lower + 1) * fullStep };
}
