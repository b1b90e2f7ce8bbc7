/** Whether a machine on its feet tips over or walks when its masses are thrown about. */
import { requireFinite, requireNotNegative, requirePositive } from './require-argument.ts';
import { supportPolygon as hullOf } from './support-polygon.ts';

/** A place in plan, m. */
export type PlanPoint = readonly [number, number];

/**
 * The outline of the feet, counterclockwise.
 *
 * @param feet - in plan
 * @returns corners of their convex hull; two for feet in a line, one or none for fewer
 *
 * Source: see `supportPolygon` of the supports.
 * Checked against: test/mechanics/frame-stability.test.ts.
 */
export const supportPolygon = (feet: readonly PlanPoint[]): PlanPoint[] =>
  feet.length === 0 ? [] : hullOf(feet.map(([x, y]) => ({ x, y }))).map(({ x, y }): PlanPoint => [x, y]);

const turn = (a: PlanPoint, b: PlanPoint, c: PlanPoint): number => (b[0] - a[0]) * (c[1] - a[1]) - (b[1] - a[1]) * (c[0] - a[0]);

export interface Standing {
  /** Feet in plan; three or more, not in a line. */
  readonly feet: readonly PlanPoint[];
  /** Mass of the whole machine, kg, above 0. */
  readonly mass: number;
  /** Centre of gravity in plan. */
  readonly centre: PlanPoint;
  /** m/s², above 0. */
  readonly gravity: number;
}

/** A level force on the machine, such as the reaction to a mass that is accelerated. */
export interface LevelForce {
  /** N. */
  readonly force: PlanPoint;
  /** Above the feet, m. */
  readonly height: number;
}

/**
 * How far inside the outline of the feet the resultant of weight and level forces meets the floor.
 *
 * Formula: c + Σ h F/(m g); distance to the nearest edge.
 *
 * @param standing - feet and weight
 * @param forces - that act at the same time
 * @returns m; zero where a foot is about to lift, negative where the machine tips
 * @throws RangeError for feet in a line, or outside the stated domains
 *
 * Source: balance of moments about an edge of the feet.
 * Checked against: by hand (test/mechanics/frame-stability.test.ts).
 */
export function tippingMargin(standing: Standing, forces: readonly LevelForce[]): number {
  const weight = requirePositiveWeight(standing);
  const [x, y] = forces.reduce<PlanPoint>(([px, py], { force, height }) => {
    requireNotNegative('height', height);
    return [px + (height * force[0]) / weight, py + (height * force[1]) / weight];
  }, standing.centre);
  return Math.min(...edges(standing).map(([a, b]) => turn(a, b, [x, y]) / Math.hypot(b[0] - a[0], b[1] - a[1])));
}

/**
 * Greatest level force in a direction before a foot lifts.
 *
 * Formula: F = m g d/h, d the way from the centre of gravity to the outline of the feet along the direction.
 *
 * @param standing - feet and weight
 * @param direction - in plan, any length above zero
 * @param height - h of the force above the feet, m, above 0
 * @returns N; 0 when the centre of gravity is not within the feet
 * @throws RangeError outside the stated domains
 *
 * Source: balance of moments about an edge of the feet.
 * Checked against: by hand and `tippingMargin` (test/mechanics/frame-stability.test.ts).
 */
export function tippingForce(standing: Standing, direction: PlanPoint, height: number): number {
  const weight = requirePositiveWeight(standing);
  requirePositive('height', height);
  const size = Math.hypot(direction[0], direction[1]);
  requirePositive('length of the direction', size);
  const ways = edges(standing).map(([a, b]) => {
    const inside = turn(a, b, standing.centre) / Math.hypot(b[0] - a[0], b[1] - a[1]);
    // Speed towards the edge per way along the direction.
    const approach = ((b[1] - a[1]) * direction[0] - (b[0] - a[0]) * direction[1]) / size / Math.hypot(b[0] - a[0], b[1] - a[1]);
    if (inside <= 0) return 0;
    return approach <= 1e-12 ? Infinity : inside / approach;
  });
  return (weight * Math.min(...ways)) / height;
}

/**
 * Factor by which the grip of the feet exceeds a level force.
 *
 * Formula: µ m g/|F|.
 *
 * @param standing - mass and gravity
 * @param friction - µ of the feet on the floor, zero or above
 * @param force - |F|, N, zero or above
 * @returns below 1 the machine walks; `Infinity` without force
 * @throws RangeError outside the stated domains
 *
 * Source: dry friction.
 * Checked against: by hand (test/mechanics/frame-stability.test.ts).
 */
export function walkingFactor(standing: Pick<Standing, 'mass' | 'gravity'>, friction: number, force: number): number {
  requirePositive('mass', standing.mass);
  requirePositive('gravity', standing.gravity);
  requireNotNegative('friction', friction);
  requireNotNegative('force', force);
  return force === 0 ? Infinity : (friction * standing.mass * standing.gravity) / force;
}

function requirePositiveWeight({ mass, gravity, centre }: Standing): number {
  requirePositive('mass', mass);
  requirePositive('gravity', gravity);
  centre.forEach((value) => { requireFinite('centre', value); });
  return mass * gravity;
}

function edges({ feet }: Standing): (readonly [PlanPoint, PlanPoint])[] {
  const corners = supportPolygon(feet);
  if (corners.length < 3) throw new RangeError('a machine stands on three feet or more that are not in a line');
  return corners.map((corner, i) => [corner, corners[(i + 1) % corners.length] as PlanPoint]);
}
