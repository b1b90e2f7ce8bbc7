/** Levelling a plate by lifts that move one by one. Heights in m above any common plane; slopes in rad (small). */
import { Matrix, solve } from 'ml-matrix';
import { requireFinite, requireNotNegative, requirePositive, requireWhole } from './require-argument.ts';
import { supportPolygon } from './support-polygon.ts';
import { type PlanPoint } from './support-reactions.ts';

/** How a plate stands. */
export interface PlateTilt {
  /** At the origin of x and y, m. */
  readonly height: number;
  /** Rise along x and along y, rad. */
  readonly slopeX: number;
  readonly slopeY: number;
  /** Steepest slope, rad, 0 or above. */
  readonly steepest: number;
  /** Height of each lift above the plane, m: what a plate on more than three lifts must bend or leave. Zero with three. */
  readonly off: readonly number[];
}

/**
 * The plane through the tops of lifts, or the plane that misses them least.
 *
 * Formula: z = h + s_x x + s_y y; three lifts exactly, more by least squares.
 *
 * @param lifts - places, 3 or more that do not stand in line
 * @param heights - of each, m
 * @returns see {@link PlateTilt}
 * @throws RangeError for fewer than three, lifts in line, or another number of heights
 *
 * Source: least squares.
 * Checked against: test/mechanics/levelling.test.ts.
 */
export function tiltOfPlate(lifts: readonly PlanPoint[], heights: readonly number[]): PlateTilt {
  requireLifts(lifts);
  if (heights.length !== lifts.length) throw new RangeError(`tiltOfPlate: ${lifts.length} lifts and ${heights.length} heights`);
  for (const height of heights) requireFinite('height', height);
  const middle = centreOf(lifts);
  const size = Math.max(...lifts.map(({ x, y }) => Math.hypot(x - middle.x, y - middle.y)));
  const rows = new Matrix(lifts.map(({ x, y }) => [1, (x - middle.x) / size, (y - middle.y) / size]));
  const [a, b, c] = solve(rows.transpose().mmul(rows), rows.transpose().mmul(Matrix.columnVector([...heights]))).to1DArray() as [number, number, number];
  const [slopeX, slopeY] = [b / size, c / size];
  const height = a - slopeX * middle.x - slopeY * middle.y;
  return {
    height,
    slopeX,
    slopeY,
    steepest: Math.hypot(slopeX, slopeY),
    off: lifts.map(({ x, y }, i) => (heights[i] as number) - height - slopeX * x - slopeY * y),
  };
}

/**
 * How far each lift must go to take a measured tilt away.
 *
 * Formula: dz_i = -(s_x (x_i - x_0) + s_y (y_i - y_0)).
 *
 * @param lifts - places
 * @param slopeX - measured rise along x, rad
 * @param slopeY - measured rise along y, rad
 * @param keep - place whose height stays, for instance the middle of the plate
 * @returns m for each lift, up positive
 * @throws RangeError for values that are not finite
 *
 * Source: geometry.
 * Checked against: test/mechanics/levelling.test.ts.
 */
export function levellingMoves(lifts: readonly PlanPoint[], slopeX: number, slopeY: number, keep: PlanPoint): readonly number[] {
  for (const value of [slopeX, slopeY, keep.x, keep.y, ...lifts.flatMap(({ x, y }) => [x, y])]) requireFinite('place or slope', value);
  return lifts.map(({ x, y }) => -(slopeX * (x - keep.x) + slopeY * (y - keep.y)));
}

/** How far a lift can go from where it stands. */
export interface LiftReach {
  /** m down, 0 or above. */
  readonly down: number;
  /** m up, 0 or above. */
  readonly up: number;
}

/** What tilt lifts can reach. */
export interface TiltRange {
  /** Slope that can be taken away whatever its direction, rad. */
  readonly everyDirection: number;
  /** The two lifts that set it, indices. */
  readonly between: readonly [number, number];
}

/**
 * The tilt that lifts can take away, in its worst direction.
 *
 * Formula: a slope g along u needs heights g u · r_i + c with c free; all lifts can follow when each pair can: g u · (r_i - r_j) ≤ up_i + down_j. The worst direction
 * is along a pair: g = min (up_i + down_j)/|r_i - r_j|.
 *
 * @param lifts - places, 3 or more that do not stand in line
 * @param reach - of each lift, see {@link LiftReach}
 * @returns see {@link TiltRange}; the height of the plate then follows
 * @throws RangeError outside the stated domains
 *
 * Source: intervals on a line have a common point when each two have (Helly); derived.
 * Checked against: test/independent/levelling.test.ts (all directions tried).
 */
export function tiltRange(lifts: readonly PlanPoint[], reach: readonly LiftReach[]): TiltRange {
  requireLifts(lifts);
  if (reach.length !== lifts.length) throw new RangeError(`tiltRange: ${lifts.length} lifts and ${reach.length} reaches`);
  for (const { up, down } of reach) {
    requireNotNegative('up', up);
    requireNotNegative('down', down);
  }
  let everyDirection = Infinity;
  let between: readonly [number, number] = [0, 1];
  lifts.forEach((one, i) => lifts.forEach((other, j) => {
    const distance = Math.hypot(one.x - other.x, one.y - other.y);
    if (i === j || distance === 0) return;
    const slope = ((reach[i] as LiftReach).up + (reach[j] as LiftReach).down) / distance;
    if (slope < everyDirection) [everyDirection, between] = [slope, [i, j]];
  }));
  return { everyDirection, between };
}

/** What a movement of one lift does to a plate on three. */
export interface LiftEffect {
  /** Slope per movement of the lift, 1/m: 1/(distance to the line through the other two). */
  readonly slopePerMetre: number;
  /** Direction in which the plate rises, of length 1. */
  readonly rises: PlanPoint;
  /** Rise at each wanted place per movement of the lift: 1 at the lift, 0 on the line through the other two, above 1 beyond. */
  readonly riseAt: readonly number[];
}

/**
 * What one of three lifts does.
 *
 * Formula: the rise at a place is its barycentric coordinate; its gradient is 1/h across the line through the other two lifts.
 *
 * @param lifts - three places that do not stand in line
 * @param index - which lift moves, 0 to 2
 * @param places - where the rise is wanted, for instance the corners of the plate; may be empty
 * @returns see {@link LiftEffect}; times the smallest step of the lift it is the smallest correction
 * @throws RangeError outside the stated domains
 *
 * Source: geometry.
 * Checked against: test/mechanics/levelling.test.ts.
 */
export function liftEffect(lifts: readonly [PlanPoint, PlanPoint, PlanPoint], index: 0 | 1 | 2, places: readonly PlanPoint[]): LiftEffect {
  requireWhole('index', index, 0);
  const tilt = tiltOfPlate(lifts, [0, 1, 2].map((i) => (i === index ? 1 : 0)));
  return {
    slopePerMetre: tilt.steepest,
    rises: { x: tilt.slopeX / tilt.steepest, y: tilt.slopeY / tilt.steepest },
    riseAt: places.map(({ x, y }) => tilt.height + tilt.slopeX * x + tilt.slopeY * y),
  };
}

/** In which order lifts are moved. */
export type LevellingOrder =
  | {
      readonly kind: 'order';
      /** Indices of the lifts that move, in the order for each round. */
      readonly order: readonly number[];
      /** In how many equal parts the movement is done, lift after lift. */
      readonly rounds: number;
      /** Steepest slope on the way, rad. */
      readonly steepest: number;
    }
  /** The plate is steeper than allowed at the start or at the end, whatever the order. */
  | { readonly kind: 'out of range'; readonly at: 'start' | 'end'; readonly steepest: number }
  /** Even in 64 parts it grows too steep on the way. */
  | { readonly kind: 'too steep on the way'; readonly steepest: number };

/**
 * An order of moving lifts one by one that keeps the plate from growing steeper than allowed.
 *
 * Formula: for 1, 2, 4 … 64 rounds every order is tried; the slope is extreme where one lift stops and the next begins, since it is a
 * convex function of the moving lift. The first number of rounds that stays within the limit is taken, with its flattest order.
 *
 * @param lifts - 3 to 6 places that do not stand in line
 * @param start - heights at the start, m
 * @param end - heights wanted, m; with more than three lifts the plate is also twisted on the way, see `off` of {@link tiltOfPlate}
 * @param steepest - slope allowed, rad, above 0: from guides, joints or the gap to the tool
 * @returns see {@link LevellingOrder}
 * @throws RangeError outside the stated domains
 *
 * Source: exhaustive search (derived); the length of a vector that moves on a line is convex.
 * Checked against: test/mechanics/levelling.test.ts.
 */
export function levellingOrder(lifts: readonly PlanPoint[], start: readonly number[], end: readonly number[], steepest: number): LevellingOrder {
  requireLifts(lifts);
  if (lifts.length > 6) throw new RangeError('levellingOrder: at most six lifts');
  requirePositive('steepest', steepest);
  // The slope is linear in the heights: what each lift adds.
  const adds = lifts.map((_, i) => tiltOfPlate(lifts, lifts.map((__, j) => (i === j ? 1 : 0))));
  const before = tiltOfPlate(lifts, start);
  const after = tiltOfPlate(lifts, end);
  if (before.steepest > steepest) return { kind: 'out of range', at: 'start', steepest: before.steepest };
  if (after.steepest > steepest) return { kind: 'out of range', at: 'end', steepest: after.steepest };
  const moving = lifts.map((_, i) => i).filter((i) => start[i] !== end[i]);
  const orders = permutations(moving);
  let flattest = { order: moving as readonly number[], steepest: Infinity };
  for (let rounds = 1; rounds <= 64; rounds *= 2) {
    flattest = { order: moving, steepest: Infinity };
    for (const order of orders) {
      let [x, y] = [before.slopeX, before.slopeY];
      let worst = before.steepest;
      for (let round = 0; round < rounds; round++) {
        for (const i of order) {
          const way = ((end[i] as number) - (start[i] as number)) / rounds;
          x += way * (adds[i] as PlateTilt).slopeX;
          y += way * (adds[i] as PlateTilt).slopeY;
          worst = Math.max(worst, Math.hypot(x, y));
        }
      }
      if (worst < flattest.steepest) flattest = { order, steepest: worst };
    }
    // A hair above the limit is rounding of the many additions.
    if (flattest.steepest <= steepest * (1 + 1e-9)) return { kind: 'order', order: flattest.order, rounds, steepest: flattest.steepest };
  }
  return { kind: 'too steep on the way', steepest: flattest.steepest };
}

function permutations(items: readonly number[]): readonly (readonly number[])[] {
  if (items.length === 0) return [[]];
  return items.flatMap((item) => permutations(items.filter((other) => other !== item)).map((rest) => [item, ...rest]));
}

const centreOf = (places: readonly PlanPoint[]): PlanPoint => ({
  x: places.reduce((sum, { x }) => sum + x, 0) / places.length,
  y: places.reduce((sum, { y }) => sum + y, 0) / places.length,
});

function requireLifts(lifts: readonly PlanPoint[]): void {
  if (lifts.length < 3) throw new RangeError('three lifts are needed');
  if (standInLine(lifts)) throw new RangeError('three lifts that do not stand in line are needed');
}

/** Whether lifts stand in one line, or all at one place, so that they cannot level. */
export function standInLine(lifts: readonly PlanPoint[]): boolean {
  const corners = supportPolygon(lifts);
  const [a, b] = corners;
  const far = corners.reduce((most, { x, y }) => Math.max(most, Math.hypot(x - (a?.x ?? 0), y - (a?.y ?? 0))), 0);
  return a === undefined || b === undefined || corners.every(({ x, y }) => Math.abs((b.x - a.x) * (y - a.y) - (b.y - a.y) * (x - a.x)) <= 1e-9 * far * far);
}
