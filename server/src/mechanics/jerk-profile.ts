/** Moves from rest to rest whose speed, acceleration and jerk are limited; without a limit of jerk they are the trapezoid. */
import { requireFinite, requirePositive } from './require-argument.ts';

/** A stretch of constant jerk. */
export interface JerkSegment {
  /** s, ≥ 0. */
  readonly duration: number;
  /** Time at its start, s. */
  readonly start: number;
  /** State at its start: m, m/s, m/s². */
  readonly position: number;
  readonly speed: number;
  readonly acceleration: number;
  /** m/s³; zero where the acceleration stays. */
  readonly jerk: number;
}

/** Times and peaks of a move from rest to rest, the same going up to speed as coming down from it. */
export interface MoveOutline {
  /** m. */
  readonly distance: number;
  /** Whole move, s. */
  readonly time: number;
  /** Highest speed of the move, m/s; the limit where it is reached. */
  readonly peakSpeed: number;
  /** Highest acceleration of the move, m/s²; the limit where it is reached. */
  readonly peakAcceleration: number;
  readonly reachesSpeed: boolean;
  readonly reachesAcceleration: boolean;
  /** Time in which the acceleration goes from nothing to its peak, s; 0 without a limit of jerk. */
  readonly jerkTime: number;
  /** Time of one ramp, from rest to the highest speed, s. */
  readonly rampTime: number;
  /** Steady part, s. */
  readonly steadyTime: number;
}

/** A move from rest to rest, piece by piece. */
export interface JerkMove extends MoveOutline {
  /** Raise, hold and lower the acceleration; steady; the same three in braking. Those that do not occur have no duration. */
  readonly segments: readonly JerkSegment[];
}

/** Where a move is at one instant. */
export interface MoveState {
  readonly position: number;
  readonly speed: number;
  readonly acceleration: number;
}

/**
 * Highest acceleration of a ramp from rest to a speed.
 *
 * Formula: min(a, √(v j)).
 * @param speed v at the end of the ramp, m/s, > 0.
 * @param acceleration a, limit, m/s², > 0.
 * @param jerk j, limit, m/s³, > 0; Infinity: none.
 * @returns m/s².
 * Outside the domain: RangeError.
 * Source: derived: raising to a' and lowering again at once covers a speed of a'²/j.
 * Checked against: integration in time (test/independent/jerk-limited-move).
 */
export function peakAccelerationOfRamp(speed: number, acceleration: number, jerk: number): number {
  requirePositive('speed', speed);
  requirePositive('acceleration', acceleration);
  requireJerk(jerk);
  return Math.min(acceleration, Math.sqrt(speed * jerk));
}

/**
 * Times and peaks of the quickest move from rest to rest over a distance within limits of speed, acceleration and jerk.
 *
 * Formula: ramp to v takes v/a + a/j, or 2 √(v/j) where v < a²/j, and half of v times that of the way. If both ramps do not fit,
 * the highest speed is (√((a²/j)² + 4 a s) − a²/j)/2, or (s² j/4)^⅓ where the acceleration is not reached either.
 * @param distance s, m, > 0.
 * @param speed v, limit, m/s, > 0.
 * @param acceleration a, limit, m/s², > 0, the same for braking.
 * @param jerk j, limit, m/s³, > 0; Infinity by default: none, the trapezoid.
 * @returns its times and peaks.
 * Outside the domain: RangeError.
 * Source: derived: integral of a trapezoid of acceleration; the trapezoid of speed as its limit (Theraja, Textbook of Electrical
 * Technology, vol. III, chapter 43).
 * Checked against: integration of a controller in time (test/independent/jerk-limited-move); Theraja 43.1 to 43.3 in the limit
 * (test/published/profiles); `moveProfile` (test/mechanics/jerk-profile).
 */
export function moveOutline(distance: number, speed: number, acceleration: number, jerk: number = Infinity): MoveOutline {
  requirePositive('distance', distance);
  requirePositive('speed', speed);
  requirePositive('acceleration', acceleration);
  requireJerk(jerk);
  const reachesSpeed = speed * rampTimeTo(speed, acceleration, jerk) <= distance;
  const peakSpeed = reachesSpeed ? speed : speedWithoutCruise(distance, acceleration, jerk);
  const peakAcceleration = Math.min(acceleration, Math.sqrt(peakSpeed * jerk));
  const jerkTime = peakAcceleration / jerk;
  // Not below zero through rounding, where the acceleration is just reached.
  const rampTime = Math.max(0, peakSpeed / peakAcceleration - jerkTime) + 2 * jerkTime;
  const steadyTime = reachesSpeed ? Math.max(0, distance / peakSpeed - rampTime) : 0;
  return {
    distance, time: 2 * rampTime + steadyTime, peakSpeed, peakAcceleration, reachesSpeed,
    reachesAcceleration: peakAcceleration >= acceleration * (1 - 1e-12), jerkTime, rampTime, steadyTime,
  };
}

/**
 * The same move piece by piece.
 *
 * Formula, domain, source and checks: as `moveOutline`.
 * @param distance s, m, > 0.
 * @param speed v, limit, m/s, > 0.
 * @param acceleration a, limit, m/s², > 0, the same for braking.
 * @param jerk j, limit, m/s³, > 0; Infinity by default.
 * @returns the move in seven segments.
 */
export function jerkMove(distance: number, speed: number, acceleration: number, jerk: number = Infinity): JerkMove {
  const outline = moveOutline(distance, speed, acceleration, jerk);
  const { peakAcceleration, jerkTime, rampTime, steadyTime } = outline;
  const heldTime = rampTime - 2 * jerkTime;
  const plan: readonly (readonly [number, number, number])[] = [
    [jerkTime, 0, 1], [heldTime, peakAcceleration, 0], [jerkTime, peakAcceleration, -1],
    [steadyTime, 0, 0],
    [jerkTime, 0, -1], [heldTime, -peakAcceleration, 0], [jerkTime, -peakAcceleration, 1],
  ];
  const segments: JerkSegment[] = [];
  let [start, position, now] = [0, 0, 0];
  for (const [duration, startAcceleration, sense] of plan) {
    const segment = { duration, start, position, speed: now, acceleration: startAcceleration, jerk: sense === 0 || duration === 0 ? 0 : sense * jerk };
    segments.push(segment);
    ({ position, speed: now } = stateWithin(segment, duration));
    start += duration;
  }
  return { ...outline, segments };
}

/**
 * Position, speed and acceleration at an instant of a move.
 *
 * Formula: x + v t + a t²/2 + j t³/6 within each segment.
 * @param move see `jerkMove`.
 * @param time t since the start, s; before the start it is at rest at 0, after the end at rest at the distance.
 * @returns the state; at a jump of the acceleration the one after it.
 * Outside the domain: RangeError for a time that is not finite.
 * Source: kinematics.
 * Checked against: integration in time (test/independent/jerk-limited-move).
 */
export function stateAt(move: JerkMove, time: number): MoveState {
  requireFinite('time', time);
  if (time < 0) return { position: 0, speed: 0, acceleration: 0 };
  if (time >= move.time) return { position: move.distance, speed: 0, acceleration: 0 };
  let current = move.segments[0]!;
  for (const segment of move.segments) if (segment.duration > 0 && segment.start <= time) current = segment;
  return stateWithin(current, time - current.start);
}

function stateWithin({ position, speed, acceleration, jerk }: JerkSegment, t: number): MoveState {
  return {
    position: position + speed * t + (acceleration * t ** 2) / 2 + (jerk * t ** 3) / 6,
    speed: speed + acceleration * t + (jerk * t ** 2) / 2,
    acceleration: acceleration + jerk * t,
  };
}

function rampTimeTo(speed: number, acceleration: number, jerk: number): number {
  const rounding = acceleration ** 2 / jerk;
  return speed >= rounding ? speed / acceleration + acceleration / jerk : 2 * Math.sqrt(speed / jerk);
}

/** Highest speed if braking follows at once. */
function speedWithoutCruise(distance: number, acceleration: number, jerk: number): number {
  const rounding = acceleration ** 2 / jerk;
  const held = (Math.sqrt(rounding ** 2 + 4 * acceleration * distance) - rounding) / 2;
  return held >= rounding ? held : Math.cbrt((distance ** 2 * jerk) / 4);
}

function requireJerk(jerk: number): void {
  if (jerk !== Infinity) requirePositive('jerk', jerk);
}
