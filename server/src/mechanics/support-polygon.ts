/** The polygon of supports seen from above, how far the load is from its edge, and when a machine tips. */
import { requireFinite, requireNotNegative, requirePositive } from './require-argument.ts';
import { type PlanPoint } from './support-reactions.ts';

/**
 * Convex hull of places in plan: the polygon within which a load must act for none of the supports to have to pull, all being used.
 *
 * Formula: Andrew's monotone chain; places on an edge are left out.
 *
 * @param places - 1 or more
 * @returns corners counter-clockwise, the leftmost (lowest of them) first; two for places in line, one for a single place
 * @throws RangeError for no place, or values that are not finite
 *
 * Source: A. M. Andrew, Information Processing Letters 9 (1979) (from memory).
 * Checked against: test/mechanics/support-polygon.test.ts (properties).
 */
export function supportPolygon(places: readonly PlanPoint[]): readonly PlanPoint[] {
  if (places.length === 0) throw new RangeError('supportPolygon: at least one place is needed');
  for (const { x, y } of places) {
    requireFinite('x', x);
    requireFinite('y', y);
  }
  const sorted = [...places].sort((a, b) => a.x - b.x || a.y - b.y).filter((p, i, all) => i === 0 || p.x !== (all[i - 1] as PlanPoint).x || p.y !== (all[i - 1] as PlanPoint).y);
  if (sorted.length < 3) return sorted;
  const chain = (points: readonly PlanPoint[]): PlanPoint[] => {
    const found: PlanPoint[] = [];
    for (const point of points) {
      while (found.length >= 2 && turn(found[found.length - 2] as PlanPoint, found[found.length - 1] as PlanPoint, point) <= 0) found.pop();
      found.push(point);
    }
    found.pop();
    return found;
  };
  return [...chain(sorted), ...chain([...sorted].reverse())];
}

/** Twice the area of a triangle, positive counter-clockwise. */
const turn = (a: PlanPoint, b: PlanPoint, c: PlanPoint): number => (b.x - a.x) * (c.y - a.y) - (b.y - a.y) * (c.x - a.x);

/**
 * How far a place lies inside the polygon of the supports.
 *
 * Formula: least distance to an edge inside; minus the distance to the polygon outside.
 *
 * @param place - where the load acts
 * @param supports - see {@link supportPolygon}
 * @returns m; positive inside, 0 on the edge, negative outside or when the supports stand in line (then 0 at most)
 * @throws RangeError as {@link supportPolygon}
 *
 * Source: geometry.
 * Checked against: test/mechanics/support-polygon.test.ts.
 */
export function distanceToEdge(place: PlanPoint, supports: readonly PlanPoint[]): number {
  requireFinite('x', place.x);
  requireFinite('y', place.y);
  const polygon = supportPolygon(supports);
  const [only] = polygon as readonly [PlanPoint, ...PlanPoint[]];
  if (polygon.length === 1) return -Math.hypot(place.x - only.x, place.y - only.y);
  const edges = polygon.map((corner, i) => [corner, polygon[(i + 1) % polygon.length] as PlanPoint] as const);
  const nearest = Math.min(...edges.map(([a, b]) => distanceToSegment(place, a, b)));
  const inside = polygon.length > 2 && edges.every(([a, b]) => turn(a, b, place) >= 0);
  return inside ? nearest : -nearest;
}

function distanceToSegment(p: PlanPoint, a: PlanPoint, b: PlanPoint): number {
  const [dx, dy] = [b.x - a.x, b.y - a.y];
  const along = Math.min(1, Math.max(0, ((p.x - a.x) * dx + (p.y - a.y) * dy) / (dx * dx + dy * dy)));
  return Math.hypot(p.x - a.x - along * dx, p.y - a.y - along * dy);
}

/** A mass above the supports. */
export interface StandingMass extends PlanPoint {
  /** kg, 0 or above. */
  readonly mass: number;
  /** h of its centre of gravity above the plane of the supports, m; negative below it. */
  readonly height: number;
  /** Its own acceleration, m/s². Default none. */
  readonly acceleration?: { readonly x: number; readonly y: number; readonly z: number } | undefined;
}

/**
 * Where the load acts in the plane of the supports while masses accelerate, and how great it is.
 *
 * Formula: F = sum m (g + a_z); x = sum m ((g + a_z) x - a_x h)/F, y likewise.
 *
 * @param masses - see {@link StandingMass}
 * @param gravity - g, m/s², above 0
 * @returns place and force, usable as a load of `supportReactions`; `no load` when all of it falls
 * @throws RangeError outside the stated domains
 *
 * Source: d'Alembert; known as the zero-moment point.
 * Checked against: test/mechanics/support-polygon.test.ts.
 */
export function loadPoint(masses: readonly StandingMass[], gravity = 9.80665): (PlanPoint & { readonly force: number }) | 'no load' {
  requirePositive('gravity', gravity);
  let [force, mx, my] = [0, 0, 0];
  for (const { mass, height, x, y, acceleration = { x: 0, y: 0, z: 0 } } of masses) {
    requireNotNegative('mass', mass);
    for (const value of [height, x, y, acceleration.x, acceleration.y, acceleration.z]) requireFinite('mass', value);
    const down = mass * (gravity + acceleration.z);
    force += down;
    my += down * x - mass * acceleration.x * height;
    mx += down * y - mass * acceleration.y * height;
  }
  return force > 0 ? { force, x: my / force, y: mx / force } : 'no load';
}

/** Tipping by one moving mass. */
export interface TippingCase {
  /** Whole weight on the supports, N, above 0. */
  readonly weight: number;
  /** Where it acts at rest. */
  readonly at: PlanPoint;
  /** What accelerates, kg, above 0. */
  readonly movingMass: number;
  /** h of its centre of gravity above the supports, m, above 0. */
  readonly height: number;
}

/**
 * Horizontal acceleration at which a machine begins to lift a foot.
 *
 * Formula: a = W l/(m h), l the way from the load to the edge of the polygon against the acceleration; in the worst direction l is the distance to the nearest edge.
 *
 * @param tipping - see {@link TippingCase}
 * @param supports - see {@link supportPolygon}
 * @param direction - of the acceleration in plan, not both 0; left out: the worst of all
 * @returns m/s²; 0 when the load acts on the edge or outside
 * @throws RangeError outside the stated domains
 *
 * Source: {@link loadPoint} solved for the acceleration.
 * Checked against: test/mechanics/support-polygon.test.ts.
 */
export function tippingAcceleration(tipping: TippingCase, supports: readonly PlanPoint[], direction?: PlanPoint): number {
  const { weight, at, movingMass, height } = tipping;
  requirePositive('weight', weight);
  requirePositive('movingMass', movingMass);
  requirePositive('height', height);
  const inside = distanceToEdge(at, supports);
  if (inside <= 0) return 0;
  const reach = direction === undefined ? inside : wayToEdge(at, supports, { x: -direction.x, y: -direction.y });
  return (weight * reach) / (movingMass * height);
}

/** From a place inside a polygon along a direction to its edge. */
function wayToEdge(from: PlanPoint, supports: readonly PlanPoint[], direction: PlanPoint): number {
  const size = Math.hypot(direction.x, direction.y);
  requirePositive('direction', size);
  const polygon = supportPolygon(supports);
  let way = Infinity;
  polygon.forEach((a, i) => {
    const b = polygon[(i + 1) % polygon.length] as PlanPoint;
    const [nx, ny] = [b.y - a.y, a.x - b.x]; // outwards
    const towards = (nx * direction.x + ny * direction.y) / size;
    if (towards > 0) way = Math.min(way, (nx * (a.x - from.x) + ny * (a.y - from.y)) / towards);
  });
  return way;
}

/**
 * Horizontal acceleration of a moving mass at which a machine slides (walks) on its feet.
 *
 * Formula: a = mu W/m.
 *
 * @param weight - W, N, above 0
 * @param movingMass - m, kg, above 0
 * @param friction - mu between feet and table, 0 or above
 * @returns m/s²
 * @throws RangeError outside the stated domains
 *
 * Source: Coulomb friction.
 * Checked against: test/mechanics/support-polygon.test.ts.
 */
export function walkingAcceleration(weight: number, movingMass: number, friction: number): number {
  requirePositive('weight', weight);
  requirePositive('movingMass', movingMass);
  requireNotNegative('friction', friction);
  return (friction * weight) / movingMass;
}
