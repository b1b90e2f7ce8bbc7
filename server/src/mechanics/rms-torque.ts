/** Torque over a whole working cycle as heat feels it: moves with their ramps, pauses, holding at rest. */
import { demandAt } from './worst-instant.ts';
import type { TorqueDemand } from './worst-instant.ts';
import type { JerkMove } from './jerk-profile.ts';
import { rmsTorque } from './motor-heat.ts';
import { requireFinite, requirePositive } from './require-argument.ts';

/**
 * Mean square of the torque over one move.
 *
 * Formula: Σ (T_a² + T_a T_b + T_b²)/3 · t over the segments, divided by the time of the move; torque changes evenly within a segment,
 * since the acceleration does.
 * @param move see `jerkMove`.
 * @param demand see `TorqueDemand`.
 * @returns N²·m².
 * Outside the domain: RangeError.
 * Source: Dubey, Fundamentals of Electrical Drives, section 4.3; the integral of a square of a straight line.
 * Checked against: quadrature (test/independent/rms-torque).
 */
export function meanSquareOfMove(move: JerkMove, demand: TorqueDemand): number {
  // A segment lies on one side of zero acceleration, so that torque is a straight line in it.
  const ends = move.segments.map(({ acceleration, jerk, duration }) => ({
    start: demandAt(demand, acceleration), end: demandAt(demand, acceleration + jerk * duration), duration,
  }));
  return rmsTorque(ends) ** 2;
}

/** What a motor does in one working cycle. */
export interface Cycle {
  /** Moves with their torque, one after the other. */
  readonly moves: readonly { readonly move: JerkMove; readonly demand: TorqueDemand }[];
  /** Share of the time in motion, above 0, up to 1. */
  readonly duty: number;
  /** Torque while it stands, N·m. */
  readonly holding: number;
}

/**
 * Root mean square of the torque over a cycle of moves and standing still.
 *
 * Formula: √( D · Σ ∫T² dt / Σ t + (1 − D) T₀² ).
 * @param cycle see `Cycle`.
 * @returns T_rms, N·m. What counts for a motor whose current follows its torque; a stepping motor's heat follows its setting.
 * Outside the domain: RangeError for no move or a duty that is not above 0 and at most 1.
 * Source: Dubey, Fundamentals of Electrical Drives, section 4.3.
 * Checked against: quadrature (test/independent/rms-torque); the sum itself against Dubey, example 4.2 (test/published/motion).
 */
export function rmsTorqueOfCycle(cycle: Cycle): number {
  const { moves, duty, holding } = cycle;
  requirePositive('duty', duty);
  requireFinite('holding torque', holding);
  if (duty > 1) throw new RangeError('a duty must not exceed 1');
  if (moves.length === 0) throw new RangeError('a cycle needs a move');
  let square = 0;
  let time = 0;
  for (const { move, demand } of moves) {
    square += meanSquareOfMove(move, demand) * move.time;
    time += move.time;
  }
  return Math.sqrt((duty * square) / time + (1 - duty) * holding ** 2);
}
