/** Point-to-point moves with constant ramps: times and distances. The shortest one a motor allows is in `worst-instant.ts`. */
import { requireNotNegative, requirePositive } from './require-argument.ts';

/** A move from rest to rest. */
export interface MoveProfile {
  /** Trapezoidal: the set speed is reached. Triangular: the way is too short for it. */
  readonly kind: 'trapezoidal' | 'triangular';
  /** Highest speed of the move, m/s. */
  readonly peakSpeed: number;
  /** Ramp up, steady, ramp down, s. */
  readonly accelerationTime: number;
  readonly steadyTime: number;
  readonly decelerationTime: number;
  /** The same three, m. */
  readonly accelerationDistance: number;
  readonly steadyDistance: number;
  readonly decelerationDistance: number;
  /** Whole move, s. */
  readonly time: number;
  /** Steady distance over the whole distance, 0 to 1. */
  readonly shareAtSpeed: number;
}

/**
 * Move over a distance with a set speed and set accelerations.
 *
 * Formula: ramp time v/a, ramp distance v²/(2a); if the ramps do not fit, v = √(2 s a₁ a₂ / (a₁ + a₂)).
 * @param distance s, m, > 0.
 * @param speed v, m/s, > 0.
 * @param acceleration a₁, m/s², > 0.
 * @param deceleration a₂, m/s², > 0; a₁ by default.
 * @returns the profile.
 * Outside the domain: RangeError.
 * Source: uniformly accelerated motion; Theraja, Textbook of Electrical Technology, vol. III, chapter 43.
 * Checked against: Theraja, examples 43.1 to 43.3 (test/published/motion); integration (test/independent).
 */
export function moveProfile(distance: number, speed: number, acceleration: number, deceleration: number = acceleration): MoveProfile {
  requirePositive('distance', distance);
  requirePositive('speed', speed);
  requirePositive('acceleration', acceleration);
  requirePositive('deceleration', deceleration);
  const reachable = Math.sqrt((2 * distance * acceleration * deceleration) / (acceleration + deceleration));
  const kind = speed <= reachable ? 'trapezoidal' : 'triangular';
  const peakSpeed = Math.min(speed, reachable);
  const accelerationTime = peakSpeed / acceleration;
  const decelerationTime = peakSpeed / deceleration;
  const accelerationDistance = (peakSpeed * accelerationTime) / 2;
  const decelerationDistance = (peakSpeed * decelerationTime) / 2;
  const steadyDistance = kind === 'triangular' ? 0 : Math.max(0, distance - accelerationDistance - decelerationDistance);
  const steadyTime = steadyDistance / peakSpeed;
  return {
    kind, peakSpeed, accelerationTime, steadyTime, decelerationTime, accelerationDistance, steadyDistance, decelerationDistance,
    time: accelerationTime + steadyTime + decelerationTime,
    shareAtSpeed: steadyDistance / distance,
  };
}

/** The speed that makes a move last a given time, or the least time there is. */
export type SpeedForTime =
  | { readonly kind: 'speed'; /** m/s. */ readonly speed: number }
  | { readonly kind: 'too-short'; /** The triangular move, s. */ readonly leastTime: number };

/**
 * Speed needed to make a move in a given time.
 *
 * Formula: K = ½ (1/a₁ + 1/a₂);  v = (t − √(t² − 4 K s)) / (2 K).
 * @param distance s, m, > 0.
 * @param time t, s, > 0.
 * @param acceleration a₁, m/s², > 0.
 * @param deceleration a₂, m/s², > 0; a₁ by default.
 * @returns v; or `too-short` when even the triangular move takes longer.
 * Outside the domain: RangeError.
 * Source: Theraja, Textbook of Electrical Technology, vol. III, chapter 43.
 * Checked against: Theraja, example 43.1 (test/published/motion).
 */
export function speedForMoveTime(distance: number, time: number, acceleration: number, deceleration: number = acceleration): SpeedForTime {
  requirePositive('distance', distance);
  requirePositive('time', time);
  requirePositive('acceleration', acceleration);
  requirePositive('deceleration', deceleration);
  const ramps = (1 / acceleration + 1 / deceleration) / 2;
  const discriminant = time ** 2 - 4 * ramps * distance;
  if (discriminant < 0) return { kind: 'too-short', leastTime: 2 * Math.sqrt(ramps * distance) };
  // The form without cancellation of (t − √…)/(2K).
  return { kind: 'speed', speed: (2 * distance) / (time + Math.sqrt(discriminant)) };
}

/**
 * Time of a ramp whose jerk is limited.
 *
 * Formula: v/a + a/j if v ≥ a²/j, else 2 √(v/j). The way is half of v times this time.
 * @param speed v reached from rest, m/s, > 0.
 * @param acceleration a, highest, m/s², > 0.
 * @param jerk j, m/s³, > 0.
 * @returns ramp time, s.
 * Outside the domain: RangeError.
 * Source: derived: integral of a trapezoid of acceleration.
 * Checked against: integration (test/independent/move-integration).
 */
export function jerkLimitedRampTime(speed: number, acceleration: number, jerk: number): number {
  requirePositive('speed', speed);
  requirePositive('acceleration', acceleration);
  requirePositive('jerk', jerk);
  return speed >= acceleration ** 2 / jerk ? speed / acceleration + acceleration / jerk : 2 * Math.sqrt(speed / jerk);
}

/** One phase of a move out and back along an axis. Signs: positive along the axis, upwards on a vertical one. */
export interface MovePhase {
  readonly name: MovePhaseName;
  /** Direction of travel: +1 up, −1 down, 0 at rest. */
  readonly direction: 1 | 0 | -1;
  /** Acceleration with its sign, m/s². */
  readonly acceleration: number;
  /** Speed at the fast end of the phase, where the motor has least torque, m/s, ≥ 0. */
  readonly speed: number;
  /** s; the hold has no duration of its own. */
  readonly duration: number;
}
export type MovePhaseName = 'accelerate-up' | 'cruise-up' | 'stop-up' | 'hold' | 'accelerate-down' | 'cruise-down' | 'stop-down';

/**
 * Phases of a move up and back down, each with direction and signed acceleration.
 *
 * @param profile of the move, the same both ways.
 * @returns seven phases in order; in a triangular move the cruising phases have no duration but still the top speed.
 * Outside the domain: cannot be.
 * Source: kinematics.
 * Checked against: integration of the phases (test/independent/move-integration).
 */
export function phasesOfMove(profile: MoveProfile): readonly MovePhase[] {
  const up = profile.peakSpeed / profile.accelerationTime;
  const down = profile.peakSpeed / profile.decelerationTime;
  const speed = profile.peakSpeed;
  const { accelerationTime, steadyTime, decelerationTime } = profile;
  requireNotNegative('steady time', steadyTime);
  return [
    { name: 'accelerate-up', direction: 1, acceleration: up, speed, duration: accelerationTime },
    { name: 'cruise-up', direction: 1, acceleration: 0, speed, duration: steadyTime },
    { name: 'stop-up', direction: 1, acceleration: -down, speed, duration: decelerationTime },
    { name: 'hold', direction: 0, acceleration: 0, speed: 0, duration: 0 },
    { name: 'accelerate-down', direction: -1, acceleration: -up, speed, duration: accelerationTime },
    { name: 'cruise-down', direction: -1, acceleration: 0, speed, duration: steadyTime },
    { name: 'stop-down', direction: -1, acceleration: down, speed, duration: decelerationTime },
  ];
}
