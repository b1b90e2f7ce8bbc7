import { carriageLoads, tableWrench, type TableCarriage } from '../../mechanics/carriage-loads.ts';
import { equivalentCarriageLoad, type CarriageLoad } from '../../mechanics/guide-life.ts';

/** What the loads on carriages need. */
export const carriageNeeds = {
  mass: 'axis.moved-mass', gravity: 'conditions.gravity', inclination: 'axis.inclination', process: 'axis.process-force', rails: 'guides.rails', carriages: 'guides.carriages',
  length: 'guides.carriage-length',
} as const;
export const carriageOptional = { railSpacing: 'guides.rail-spacing', spacing: 'guides.carriage-spacing', offset: 'guides.drive-offset', acceleration: 'motion.acceleration' } as const;

export interface CarriageValues {
  readonly mass: number; readonly gravity: number; readonly inclination: number; readonly process: number; readonly rails: number; readonly carriages: number; readonly length: number;
  readonly railSpacing: number | undefined; readonly spacing: number | undefined; readonly offset: number | undefined; readonly acceleration: number | undefined;
}

/** `count` places evenly between ±half of the spacing. */
const spread = (count: number, spacing: number): readonly number[] =>
  count <= 1 ? [0] : Array.from({ length: count }, (_, i) => spacing * (i / (count - 1) - 0.5));

/** Load on each carriage, speeding up and slowing down one after the other; a reason where there is none. */
export function loadsOf(values: CarriageValues): readonly CarriageLoad[] | string {
  const { mass, gravity, inclination, process, rails, carriages, length, railSpacing, spacing, offset = 0, acceleration = 0 } = values;
  if (!(mass >= 0 && rails >= 1 && carriages >= 1 && length > 0)) return 'mass and carriages must be above zero';
  if (carriages > 1 && !((spacing ?? 0) > 0)) return 'the spacing of the carriages is not given';
  // How the weight is shared does not depend on the spacing of two rails, as long as it lies midway.
  const set = spread(rails, railSpacing !== undefined && railSpacing > 0 ? railSpacing : 1).flatMap((y) =>
    // Where two stand apart on a rail their own short lengths are not counted on.
    spread(carriages, spacing ?? 0).map((x): TableCarriage => ({ x, y, length: carriages > 1 ? 0 : length })));
  const found: CarriageLoad[] = [];
  for (const sign of [1, -1]) {
    const wrench = tableWrench({
      masses: [{ mass, at: [0, 0, 0] }],
      gravity: [-gravity * Math.sin(inclination), 0, -gravity * Math.cos(inclination)],
      acceleration: [sign * acceleration, 0, 0],
      forces: [{ force: [-sign * Math.abs(process), 0, 0], at: [0, 0, 0] }],
      drive: { y: offset, z: 0 },
    });
    const loads = carriageLoads(set, wrench);
    if (loads === 'not held') return 'the carriages leave the slider free to turn';
    found.push(...loads);
  }
  return found;
}

/** Across the rail, whatever the direction. */
export const resultant = ({ fy, fz }: CarriageLoad): number => Math.hypot(fy, fz);

/** Bushings turn on their shaft and feel the resultant; rails feel each direction on its own rows. */
const ROUND = new Set(['ball-bushing', 'self-aligning-ball-bushing']);

/** The greatest equivalent load; a reason where a carriage would have to take a moment that it has no rating for. */
export function equivalentOf(loads: readonly CarriageLoad[], bearing: string, staticRating: number, moment: number | undefined): number | string {
  if (!(staticRating > 0) || (moment !== undefined && !(moment > 0))) return 'ratings must be above zero';
  let most = 0;
  for (const load of loads) {
    const seen = ROUND.has(bearing) ? { ...load, fy: 0, fz: resultant(load) } : load;
    const found = equivalentCarriageLoad(seen, { staticRating, rollMoment: moment, pitchMoment: moment, yawMoment: moment });
    if (found === 'takes no moment') {
      return 'a carriage would have to take the moment of the drive, for which no rating is given; two apart on each rail take it as forces';
    }
    most = Math.max(most, found);
  }
  return most;
}
