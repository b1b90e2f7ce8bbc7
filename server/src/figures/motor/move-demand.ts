import { jerkMove, type JerkMove } from '../../mechanics/jerk-profile.ts';
import type { TorqueDemand } from '../../mechanics/worst-instant.ts';

/** Torques of one motor in the parts of a move. */
export interface TorquesOfMove {
  readonly acceleration: number;
  readonly cruising: number;
  readonly lifting: number;
  readonly lowering?: number | undefined;
  readonly stopping?: number | undefined;
  readonly starting?: number | undefined;
}

export const upNeeds = { acceleration: 'motion.acceleration', cruising: 'motor.cruising-torque', lifting: 'motor.lifting-torque' } as const;
export const downNeeds = { lowering: 'motor.lowering-torque', stopping: 'motor.stopping-torque', starting: 'motor.starting-down-torque' } as const;

/**
 * Torque on the way up (or forward). Two points of the straight line give it; it is continued into braking, which asks for a little more
 * than there is, since the losses of the drive then help.
 */
export function upDemand({ acceleration, cruising, lifting }: TorquesOfMove): TorqueDemand {
  const slope = acceleration > 0 ? Math.max(0, (lifting - cruising) / acceleration) : 0;
  return { steady: cruising, perGain: slope, perLoss: slope };
}

/** Torque on the way down (or back), positive where the motor pushes; a level axis goes back as it went forward. */
export function downDemand(torques: TorquesOfMove): TorqueDemand {
  const { acceleration, lowering, stopping, starting } = torques;
  const up = upDemand(torques);
  if (lowering === undefined) return up;
  return {
    steady: lowering,
    perGain: starting === undefined ? up.perGain : Math.max(0, (starting - lowering) / acceleration),
    perLoss: stopping === undefined ? up.perLoss : Math.max(0, (lowering - stopping) / acceleration),
  };
}

/** The move over the whole travel; without a limit of jerk the trapezoid. */
export const wholeMove = (travel: number, speed: number, acceleration: number, jerk: number | undefined): JerkMove => jerkMove(travel, speed, acceleration, jerk ?? Infinity);

/** A move that is long enough to reach the speed, whatever the travel. */
export function fullRamp(speed: number, acceleration: number, jerk: number | undefined): JerkMove {
  const ramp = speed / acceleration + (jerk === undefined ? 0 : acceleration / jerk) + (jerk === undefined ? 0 : 2 * Math.sqrt(speed / jerk));
  return jerkMove(2 * speed * ramp, speed, acceleration, jerk ?? Infinity);
}
