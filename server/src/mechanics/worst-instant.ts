/** The instant of a move at which the torque of a motor is used most, and the shortest move that it could make. */
import { moveOutline } from './jerk-profile.ts';
import type { JerkMove, MoveOutline } from './jerk-profile.ts';
import { requireFinite, requireNotNegative, requirePositive } from './require-argument.ts';

/**
 * Torque that a motor must put out in one direction of travel, counted positive in the direction in which it turns.
 * Friction and the losses of the drive make it bend where the axis begins to brake: one slope for either side.
 */
export interface TorqueDemand {
  /** At steady speed, N·m. */
  readonly steady: number;
  /** More for each m/s² of speeding up, N·m/(m/s²), ≥ 0. */
  readonly perGain: number;
  /** Less for each m/s² of slowing down, N·m/(m/s²), ≥ 0. */
  readonly perLoss: number;
}

/**
 * Torque demanded at an acceleration.
 *
 * Formula: T = T_s + c₊ a while it speeds up, T_s − c₋ |a| while it slows down.
 * @param demand see `TorqueDemand`.
 * @param acceleration a along the direction of travel, m/s²; negative: slowing down.
 * @returns T, N·m; negative where the motor brakes.
 * Outside the domain: RangeError.
 * Source: Newton's second law through a drive whose losses go with the load: the torque is linear in the acceleration.
 * Checked against: `motorTorque` phase by phase (test/mechanics/worst-instant).
 */
export function demandAt(demand: TorqueDemand, acceleration: number): number {
  requireFinite('acceleration', acceleration);
  return demand.steady + (acceleration >= 0 ? demand.perGain : demand.perLoss) * acceleration;
}

/** The instant at which least torque is left. */
export interface WorstInstant {
  /** Available over demanded; Infinity where nothing is demanded. */
  readonly ratio: number;
  /** s since the start. */
  readonly time: number;
  /** m/s. */
  readonly speed: number;
  /** m/s². */
  readonly acceleration: number;
  /** N·m, with its sign. */
  readonly demanded: number;
  /** N·m. */
  readonly available: number;
}

/** Instants looked at in each segment of a move. */
const INSTANTS = 48;

/**
 * The least ratio of available to demanded torque along a move, and where it is.
 *
 * Formula: min over t of T_a(v(t)) / |T(a(t))|; both ends of every segment and instants between are looked at.
 * @param move see `jerkMove`.
 * @param demand see `TorqueDemand`.
 * @param available torque of the motor at a speed of the axis (m/s, ≥ 0), N·m, ≥ 0; taken the same for braking, the safe side.
 * @returns the instant; between two instants the ratio may be lower by the square of their distance, below 0.1 % for smooth curves.
 * Outside the domain: RangeError.
 * Source: definition.
 * Checked against: the closed form of the trapezoid; a finer grid (test/mechanics/worst-instant).
 */
export function worstInstant(move: JerkMove, demand: TorqueDemand, available: (speed: number) => number): WorstInstant {
  let worst: WorstInstant | undefined;
  for (const segment of move.segments) {
    if (segment.duration <= 0) continue;
    for (let i = 0; i <= INSTANTS; i++) {
      const t = (segment.duration * i) / INSTANTS;
      const speed = Math.max(0, segment.speed + segment.acceleration * t + (segment.jerk * t ** 2) / 2);
      const acceleration = segment.acceleration + segment.jerk * t;
      const demanded = demandAt(demand, acceleration);
      const has = available(speed);
      const ratio = demanded === 0 ? Infinity : has / Math.abs(demanded);
      if (!worst || ratio < worst.ratio) worst = { ratio, time: segment.start + t, speed, acceleration, demanded, available: has };
    }
  }
  if (!worst) throw new RangeError('a move takes time');
  return worst;
}

/** A speed that must not be passed, and what sets it. */
export interface SpeedLimit {
  readonly name: string;
  /** m/s, > 0. */
  readonly speed: number;
}

/** The shortest move, or that there is none. */
export type QuickestMove =
  | {
      readonly kind: 'moves';
      /** s. */
      readonly time: number;
      /** m/s and m/s² at the most. */
      readonly speed: number;
      readonly acceleration: number;
      /** What would have to grow to make it shorter. */
      readonly limitedBy: 'speed' | 'torque' | 'jerk';
      /** Name of the speed limit where that is it. */
      readonly limit?: string;
    }
  | { readonly kind: 'cannot-move' };

/**
 * Shortest move over a distance with ramps of even acceleration (or even jerk) that use all of the torque where it is scarcest.
 *
 * Formula: least time of `moveOutline` over (v, a): for each v the largest a for which T_a ≥ |T| all along the ramps. Without a limit of jerk
 * the fast end of the ramp decides: a = min((T_a(v) − T_s)/c₊, (T_a(v) + T_s)/c₋). With one, a is found by halving. v is found by a
 * scan over two decades and finer ones around the best.
 * @param distance s, m, > 0.
 * @param limits at least one limit of speed.
 * @param demand see `TorqueDemand`; `perGain` > 0.
 * @param available torque of the motor at a speed of the axis, N·m, ≥ 0, not rising with speed.
 * @param jerk j, m/s³, > 0; Infinity by default: none.
 * @returns the move and what limits it: the lowest of the speed limits where the best move runs at it, the jerk where the move without
 * a limit of jerk would take a tenth less, else the torque. With a limit of jerk the time is within 3 % of the best.
 * Outside the domain: `cannot-move` where the torque does not keep the axis moving at any speed; RangeError without a limit.
 * Source: derived; ramps as controllers make them.
 * Checked against: closed forms for constant torque and for constant power, a finer grid (test/mechanics/worst-instant).
 */
export function quickestMove(
  distance: number, limits: readonly SpeedLimit[], demand: TorqueDemand, available: (speed: number) => number, jerk: number = Infinity,
): QuickestMove {
  requirePositive('distance', distance);
  requirePositive('torque for acceleration', demand.perGain);
  requireNotNegative('torque for slowing down', demand.perLoss);
  const lowest = limits.reduce<SpeedLimit | undefined>((least, one) => (least && least.speed <= one.speed ? least : one), undefined);
  if (!lowest) throw new RangeError('at least one limit of speed is needed');
  requirePositive('speed limit', lowest.speed);
  const abrupt = searchSpeeds(lowest.speed, 24, (speed) => abruptMove(distance, speed, demand, available));
  if (!abrupt) return { kind: 'cannot-move' };
  const best = jerk === Infinity ? abrupt : searchSpeeds(lowest.speed, 24, (speed) => smoothMove(distance, speed, demand, available, jerk));
  if (!best) return { kind: 'cannot-move' };
  const { move } = best;
  const atLimit = best.speed >= 0.99 * lowest.speed && move.reachesSpeed;
  const byJerk = move.time > abrupt.move.time / 0.9;
  return {
    kind: 'moves', time: move.time, speed: move.peakSpeed, acceleration: move.peakAcceleration,
    ...(byJerk ? { limitedBy: 'jerk' } : atLimit ? { limitedBy: 'speed', limit: lowest.name } : { limitedBy: 'torque' }),
  };
}

type Available = (speed: number) => number;

/** Greatest acceleration at a torque, in ramps up and down; not above zero where the torque does not even keep the speed. */
const accelerationWithin = (torque: number, { steady, perGain, perLoss }: TorqueDemand): number =>
  Math.min((torque - steady) / perGain, perLoss > 0 ? (torque + steady) / perLoss : Infinity);

function abruptMove(distance: number, speed: number, demand: TorqueDemand, available: Available): MoveOutline | undefined {
  const acceleration = accelerationWithin(available(speed), demand);
  return acceleration > 0 && Number.isFinite(acceleration) ? moveOutline(distance, speed, acceleration) : undefined;
}

/** With a limit of jerk the acceleration has fallen already where the speed is highest, so that more of it fits. */
function smoothMove(distance: number, speed: number, demand: TorqueDemand, available: Available, jerk: number): MoveOutline | undefined {
  let high = accelerationWithin(available(0), demand);
  if (!(high > 0 && Number.isFinite(high))) return undefined;
  let low = Math.max(0, Math.min(high, accelerationWithin(available(speed), demand)));
  let found = low > 0 ? moveOutline(distance, speed, low, jerk) : undefined;
  for (let i = 0; i < 14; i++) {
    const middle = (low + high) / 2;
    const move = moveOutline(distance, speed, middle, jerk);
    if (fastEndsFit(move, demand, available, jerk)) [low, found] = [middle, move];
    else high = middle;
  }
  return found;
}

/** Looks at the instants in which the acceleration falls to nothing at the highest speed: elsewhere the same acceleration is slower. */
function fastEndsFit(move: MoveOutline, demand: TorqueDemand, available: Available, jerk: number): boolean {
  for (let i = 0; i <= 6; i++) {
    const acceleration = (move.peakAcceleration * i) / 6;
    const speed = Math.max(0, move.peakSpeed - acceleration ** 2 / (2 * jerk));
    if (accelerationWithin(available(speed), demand) < acceleration) return false;
  }
  return true;
}

function searchSpeeds(greatest: number, points: number, moveAt: (speed: number) => MoveOutline | undefined): { readonly speed: number; readonly move: MoveOutline } | undefined {
  const ratio = 10 ** (2 / points);
  const best: { at?: { readonly speed: number; readonly move: MoveOutline } } = {};
  const timeAt = (speed: number): void => {
    const move = moveAt(speed);
    if (move && !(best.at && best.at.move.time <= move.time)) best.at = { speed, move };
  };
  for (let i = 0; i <= points; i++) timeAt(greatest / ratio ** i);
  if (!best.at) return undefined;
  // Finer and finer around the best: the time has kinks, so that a golden section may take the wrong side.
  for (let step = Math.sqrt(ratio) ** 0.5; step > 1.0003; step = step ** 0.25) {
    const centre = best.at.speed;
    for (const power of [-3, -2, -1, 1, 2, 3]) if (centre * step ** power <= greatest) timeAt(centre * step ** power);
  }
  return best.at;
}
