/** The worst of what supports can carry: over the places of a tool or workpiece, and over what nobody knows about their stiffness. */
import { requireFinite, requireNotNegative } from './require-argument.ts';
import { resultantLoad, supportReactions, type PlanPoint, type PlateLoad, type PlateSupport } from './support-reactions.ts';

/**
 * The corners of a rectangle in plan, over which a tool or workpiece moves.
 *
 * Formula: every end of x with every end of y.
 *
 * @param x - both ends, m
 * @param y - both ends, m
 * @returns four places
 *
 * Source: definition.
 * Checked against: test/mechanics/support-extremes.test.ts.
 */
export function rectangleCorners(x: readonly [number, number], y: readonly [number, number]): readonly PlanPoint[] {
  return x.flatMap((one) => y.map((other) => ({ x: one, y: other })));
}

/** A load that moves over the plate. */
export interface MovingLoad {
  /** N down, 0 or above: the heaviest one, and also 0 when it may be absent. */
  readonly forces: readonly number[];
  /** Corners of the area, or a list of places. */
  readonly places: readonly PlanPoint[];
}

/** Extreme of one support. */
export interface ReactionAt {
  /** N. */
  readonly reaction: number;
  /** For each moving load: which force and where. */
  readonly moving: readonly PlateLoad[];
}

/** Extremes of each support. */
export interface ReactionExtremes {
  readonly least: readonly ReactionAt[];
  readonly most: readonly ReactionAt[];
}

/**
 * Least and greatest reaction of each support while loads move over the plate.
 *
 * Formula: reactions at every combination of forces and places of the moving loads. A reaction is linear in the loads and in their first moments, so for a load F at
 * (x, y) it is F (a + b x + c y): over a convex area its extremes are at corners, and over a range of forces at the ends. Loads that move
 * independently add, each with its own extreme, so all are found one by one.
 *
 * @param supports - that hold in both directions; what only lies lifts off exactly where the least reaction falls below 0
 * @param fixed - loads that stay
 * @param moving - independent moving loads
 * @returns for each support the least and the most with the places
 * @throws RangeError for a moving load without place or force, and as `supportReactions`
 *
 * Source: linear programming: a linear function over a polygon is extreme at a corner.
 * Checked against: test/independent/support-reactions.test.ts (a fine grid); test/mechanics/support-extremes.test.ts (properties).
 */
export function reactionExtremes(supports: readonly PlateSupport[], fixed: readonly PlateLoad[], moving: readonly MovingLoad[]): ReactionExtremes {
  const base = supportReactions(supports, fixed).reactions;
  const unloaded = supportReactions(supports, []).reactions; // gaps alone
  const cases = moving.map(({ forces, places }) => {
    if (forces.length === 0 || places.length === 0) throw new RangeError('reactionExtremes: a moving load needs a force and a place');
    return forces.flatMap((force) => {
      requireNotNegative('force', force);
      return places.map(({ x, y }) => {
        const load = { x, y, force };
        return { load, adds: supportReactions(supports, [load]).reactions.map((r, i) => r - (unloaded[i] as number)) };
      });
    });
  });
  const extreme = (sign: 1 | -1): readonly ReactionAt[] =>
    supports.map((_, i) => {
      let reaction = base[i] as number;
      const at = cases.map((options) => {
        const best = options.reduce((a, b) => (sign * (b.adds[i] as number) > sign * (a.adds[i] as number) ? b : a));
        reaction += best.adds[i] as number;
        return best.load;
      });
      return { reaction, moving: at };
    });
  return { least: extreme(-1), most: extreme(1) };
}

/**
 * Share of each support in the whole load.
 *
 * Formula: R_i/sum R.
 *
 * @param reactions - N
 * @returns shares that add up to 1, or `no load` when the sum is not above 0
 * @throws RangeError for values that are not finite
 *
 * Source: definition.
 * Checked against: test/mechanics/support-extremes.test.ts.
 */
export function reactionShares(reactions: readonly number[]): readonly number[] | 'no load' {
  let sum = 0;
  for (const reaction of reactions) {
    requireFinite('reaction', reaction);
    sum += reaction;
  }
  return sum > 0 ? reactions.map((reaction) => reaction / sum) : 'no load';
}

/** Range of one reaction. */
export interface ReactionRange {
  /** N, 0 or above. */
  readonly least: number;
  readonly most: number;
}

/**
 * What each of several supports that only push may carry, whatever their stiffness and however uneven they stand.
 *
 * Formula: the least and greatest R_i of all R ≥ 0 that balance the load. Such sets form a polytope whose corners rest on at most three supports, so every triangle
 * (and line, and point) of supports that holds the load by itself is tried.
 *
 * @param supports - 1 to 16
 * @param loads - see {@link PlateLoad}
 * @returns a range for each support, or `tips` when no set of supports holds the load
 * @throws RangeError for more than 16 supports, and outside the stated domains
 *
 * Source: fundamental theorem of linear programming.
 * Checked against: test/mechanics/support-extremes.test.ts; test/independent/support-reactions.test.ts.
 */
export function reactionBounds(supports: readonly PlanPoint[], loads: readonly PlateLoad[]): readonly ReactionRange[] | 'tips' {
  if (supports.length === 0 || supports.length > 16) throw new RangeError(`reactionBounds: 1 to 16 supports, got ${supports.length}`);
  for (const { x, y } of supports) {
    requireFinite('x', x);
    requireFinite('y', y);
  }
  const load = resultantLoad(loads);
  if (load === 'no load') return 'tips';
  const size = Math.max(...supports.map(({ x, y }) => Math.hypot(x - load.x, y - load.y))) || 1;
  // About the load's own place, in units of the size: the shares must add up to 1 and their moments to 0.
  const places = supports.map(({ x, y }) => [(x - load.x) / size, (y - load.y) / size] as const);
  const least = supports.map(() => 1);
  const most = supports.map(() => 0);
  let found = false;
  const take = (indices: readonly number[], shares: readonly number[]): void => {
    if (shares.some((share) => share < -1e-12)) return;
    found = true;
    supports.forEach((_, i) => {
      const position = indices.indexOf(i);
      const share = position < 0 ? 0 : Math.max(0, shares[position] as number);
      least[i] = Math.min(least[i] as number, share);
      most[i] = Math.max(most[i] as number, share);
    });
  };
  for (let a = 0; a < places.length; a++) {
    const [ax, ay] = places[a] as readonly [number, number];
    if (Math.hypot(ax, ay) <= 1e-12) take([a], [1]);
    for (let b = a + 1; b < places.length; b++) {
      const [bx, by] = places[b] as readonly [number, number];
      const [dx, dy] = [bx - ax, by - ay];
      const square = dx * dx + dy * dy;
      if (square > 1e-18 && Math.abs(dx * ay - dy * ax) <= 1e-12 * Math.sqrt(square)) {
        const share = -(dx * ax + dy * ay) / square;
        take([a, b], [1 - share, share]);
      }
      for (let c = b + 1; c < places.length; c++) {
        const [cx, cy] = places[c] as readonly [number, number];
        const area = dx * (cy - ay) - dy * (cx - ax);
        if (Math.abs(area) <= 1e-12) continue;
        const atB = ((cx - ax) * ay - (cy - ay) * ax) / area;
        const atC = (dy * ax - dx * ay) / area;
        take([a, b, c], [1 - atB - atC, atB, atC]);
      }
    }
  }
  return found ? supports.map((_, i) => ({ least: (least[i] as number) * load.force, most: (most[i] as number) * load.force })) : 'tips';
}
