import type { DrivingForces } from '../../mechanics/belt-spans.ts';

/** What the belt has to move. */
export const forceNeeds = {
  lifting: 'drive.lifting-load', rest: 'drive.gravity-load', mass: 'axis.moved-mass', acceleration: 'motion.acceleration', friction: 'guides.friction-force',
  process: 'axis.process-force', share: 'drive.load-share',
} as const;
export const forceOptional = { counterweight: 'counterbalance.mass', processShare: 'drive.process-share' } as const;
export const forceMaybe = { position: 'drive.motor-position' } as const;

export type ForceValues = { readonly [alias in keyof typeof forceNeeds]: number } & { readonly counterweight: number | undefined; readonly processShare: number | undefined; readonly position: string | undefined };

/** Forces in a move; the largest each way are zero or above. */
export interface Push extends DrivingForces {
  /** Of the resting load, positive towards the driving pulley, N. */
  readonly rest: number;
  /** While it speeds up and while it speeds down, positive towards the driving pulley, N. A weight may pull the same way in both. */
  readonly whileMoving: readonly [number, number];
}

/**
 * The ways in which the belt may have to push: one where it is known which end the motor is at, two where it is not.
 * A motor above pulls up through the span next to it, one below through the long way round.
 */
export function pushes({ lifting, rest, mass, acceleration, friction, process, share, processShare, counterweight = 0, position }: ForceValues): readonly Push[] {
  // The force of the work is against the drive on the way down too.
  const lowest = rest - ((mass + counterweight) * acceleration + friction) * share - Math.max(0, process) * (processShare ?? share);
  const [up, down] = [Math.max(0, lifting), Math.max(0, -lowest)];
  if (rest === 0) {
    const most = Math.max(up, down);
    return [{ towards: most, away: most, rest: 0, whileMoving: [most, -most] }];
  }
  const above: Push = { towards: up, away: down, rest, whileMoving: [lifting, lowest] };
  const below: Push = { towards: down, away: up, rest: -rest, whileMoving: [-lifting, -lowest] };
  if (position === undefined) return [above, below];
  return [position === 'above' ? above : below];
}
