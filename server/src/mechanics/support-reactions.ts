/** A rigid plate on supports: what each carries. Seen from above: x and y in the plane, forces downwards. */
import { Matrix, pseudoInverse, solve } from 'ml-matrix';
import { requireFinite, requirePositive } from './require-argument.ts';
import { distanceToEdge } from './support-polygon.ts';

/** A place in plan, m. */
export interface PlanPoint {
  readonly x: number;
  readonly y: number;
}

/** A support under a plate. */
export interface PlateSupport extends PlanPoint {
  /** k, N/m or any common measure, above 0. Default 1: all alike. Says nothing with three supports. With a gap it must be N/m. */
  readonly stiffness?: number | undefined;
  /** How much lower than the common plane it stands before anything gives, m; negative when too high. Default 0. */
  readonly gap?: number | undefined;
}

/** A force down on the plate, N; a mass at rest presses with m g. */
export interface PlateLoad extends PlanPoint {
  readonly force: number;
}

/** Reactions. */
export interface SupportReactions {
  /** N upwards, for each support in order; negative: it would have to pull. */
  readonly reactions: readonly number[];
  /** What the supports cannot hold and guides must: moments about the x and y directions through the centre of the supports, N·m. Zero for three or more that do not stand in line. */
  readonly leftForGuides: { readonly mx: number; readonly my: number };
}

/** The whole load, and the place where it acts. */
export interface ResultantLoad extends PlanPoint {
  /** N down. */
  readonly force: number;
}

/**
 * One force that does as much as all.
 *
 * Formula: F = sum F_i, x = sum F_i x_i/F, y likewise.
 *
 * @param loads - see {@link PlateLoad}
 * @returns resultant, or `no load` when the sum is not above 0
 * @throws RangeError for values that are not finite
 *
 * Source: statics.
 * Checked against: test/mechanics/support-reactions.test.ts.
 */
export function resultantLoad(loads: readonly PlateLoad[]): ResultantLoad | 'no load' {
  const { force, mx, my } = sumOf(loads);
  return force > 0 ? { force, x: my / force, y: mx / force } : 'no load';
}

/** Sum of forces and first moments: F, sum F y, sum F x. */
function sumOf(loads: readonly PlateLoad[]): { force: number; mx: number; my: number } {
  let [force, mx, my] = [0, 0, 0];
  for (const load of loads) {
    for (const value of [load.force, load.x, load.y]) requireFinite('load', value);
    force += load.force;
    mx += load.force * load.y;
    my += load.force * load.x;
  }
  return { force, mx, my };
}

/**
 * Reactions of supports that hold in both directions (nuts, bolted feet) under a rigid plate.
 *
 * Formula: the plate sinks by c0 + cx x + cy y; R_i = k_i (that - gap_i); sum R, sum R x and sum R y balance the loads. Three supports: statics alone,
 * R_i = F times the area share of the triangle opposite. Two, or all in line: shares along the line, the rest is left for the guides. One: all of the force.
 *
 * @param supports - 1 or more at different places
 * @param loads - see {@link PlateLoad}
 * @returns see {@link SupportReactions}; with four and more the stiffnesses decide, see `reactionBounds` for what holds whatever they are
 * @throws RangeError for no support, and outside the stated domains
 *
 * Source: statics; rigid plate on springs, least squares of the springs' energy.
 * Checked against: test/published/support-reactions.test.ts (Hibbeler 5.13, three-wheel truck); test/independent/support-reactions.test.ts.
 */
export function supportReactions(supports: readonly PlateSupport[], loads: readonly PlateLoad[]): SupportReactions {
  const plate = plateOn(supports);
  const load = plate.loadOf(loads);
  const sunk = plate.sink(load, supports.map(() => true));
  const reactions = plate.reactions(sunk);
  return { reactions, leftForGuides: plate.rest(load, reactions) };
}

/** What a plate does that only lies on its supports. */
export type LyingPlate =
  | {
      readonly kind: 'rests';
      /** N, 0 or above, for each support in order. */
      readonly reactions: readonly number[];
      /** Indices of supports that the plate does not touch. */
      readonly lifted: readonly number[];
    }
  /** Nothing holds it: the load acts outside the supports, or there is none. */
  | { readonly kind: 'tips' };

/**
 * Reactions of supports that only push (wheels, feet, loose pins): those that would have to pull lift off.
 *
 * Formula: least of sum R_i²/(2 k_i) + R_i gap_i over all R_i ≥ 0 that balance the loads. From three supports that hold them by themselves, supports into which the plate
 * would sink join and those that would have to pull leave, one at a time (active set).
 *
 * @param supports - 3 or more that do not stand in line
 * @param loads - see {@link PlateLoad}
 * @returns reactions, or `tips` when the resultant acts outside the polygon of the supports or right on its edge
 * @throws RangeError for supports in line, and outside the stated domains
 *
 * Source: unilateral contact of a rigid plate as a convex minimum (derived; the minimum is unique); Nocedal and Wright, Numerical Optimization, chapter 16 (from memory).
 * Checked against: test/independent/support-reactions.test.ts (every combination of touching supports tried).
 */
export function lyingPlateReactions(supports: readonly PlateSupport[], loads: readonly PlateLoad[]): LyingPlate {
  const plate = plateOn(supports);
  if (plate.rank < 3) throw new RangeError('lyingPlateReactions: three supports that do not stand in line are needed');
  const load = plate.loadOf(loads);
  const resultant = resultantLoad(loads);
  if (resultant === 'no load' || distanceToEdge(resultant, supports) <= 1e-9 * plate.size) return { kind: 'tips' };
  const triangle = firstTriangle(supports, resultant);
  if (triangle === undefined) return { kind: 'tips' };
  let forces: readonly number[] = supports.map((_, i) => Math.max(0, triangle.shares[triangle.indices.indexOf(i)] ?? 0) * resultant.force);
  let touching: readonly boolean[] = supports.map((_, i) => triangle.indices.includes(i));
  const small = 1e-12 * resultant.force;
  for (let step = 0; step < 100 * supports.length; step++) {
    const sunk = plate.sink(load, touching);
    const wanted = plate.reactions(sunk).map((force, i) => (touching[i] ? force : 0));
    // As far towards it as no support has to pull.
    let share = 1;
    let leaves = -1;
    wanted.forEach((force, i) => {
      const now = forces[i] as number;
      // One that alone holds the rest from turning about a line has nothing to choose.
      if (!touching[i] || force >= 0 || force >= now - small || !plate.holds(touching.map((touch, j) => touch && j !== i))) return;
      const limit = now / (now - force);
      if (limit < share) [share, leaves] = [limit, i];
    });
    forces = forces.map((now, i) => (i === leaves ? 0 : Math.max(0, now + share * ((wanted[i] as number) - now))));
    if (leaves >= 0) {
      touching = touching.map((touch, i) => touch && i !== leaves);
      continue;
    }
    // One that the plate would sink into joins.
    const pressed = plate.pressed(sunk);
    const deep = 1e-12 * Math.max(...pressed.map(Math.abs));
    const joins = pressed.findIndex((depth, i) => !touching[i] && depth > deep);
    if (joins < 0) return { kind: 'rests', reactions: forces, lifted: forces.flatMap((force, i) => (force > small ? [] : [i])) };
    touching = touching.map((touch, i) => touch || i === joins);
  }
  // Sets that differ by rounding take turns: their forces are the same.
  return { kind: 'rests', reactions: forces, lifted: forces.flatMap((force, i) => (force > small ? [] : [i])) };
}

interface Triangle { readonly indices: readonly number[]; readonly shares: readonly number[] }

/** Three supports that hold a load by themselves, the fullest such triangle. */
function firstTriangle(supports: readonly PlanPoint[], load: PlanPoint): Triangle | undefined {
  let best: Triangle | undefined;
  let least = -1e-9;
  for (let a = 0; a < supports.length; a++) for (let b = a + 1; b < supports.length; b++) for (let c = b + 1; c < supports.length; c++) {
    const shares = triangleShares(supports[a] as PlanPoint, supports[b] as PlanPoint, supports[c] as PlanPoint, load);
    if (shares === undefined || Math.min(...shares) <= least) continue;
    least = Math.min(...shares);
    best = { indices: [a, b, c], shares };
  }
  return best;
}

/**
 * Share of each of three supports in a load: the area of the triangle opposite, with the load, over the whole.
 *
 * Formula: barycentric coordinates.
 *
 * @param a - first support
 * @param b - second
 * @param c - third
 * @param load - where the load acts
 * @returns shares that add up to 1, negative where one would have to pull; undefined for supports in line
 *
 * Source: statics.
 * Checked against: test/mechanics/support-reactions.test.ts.
 */
export function triangleShares(a: PlanPoint, b: PlanPoint, c: PlanPoint, load: PlanPoint): readonly [number, number, number] | undefined {
  const area = (p: PlanPoint, q: PlanPoint, r: PlanPoint): number => (q.x - p.x) * (r.y - p.y) - (q.y - p.y) * (r.x - p.x);
  const whole = area(a, b, c);
  const longest = Math.max(Math.hypot(b.x - a.x, b.y - a.y), Math.hypot(c.x - a.x, c.y - a.y), Math.hypot(c.x - b.x, c.y - b.y));
  if (Math.abs(whole) <= 1e-6 * longest * longest) return undefined;
  const [atA, atB] = [area(load, b, c) / whole, area(a, load, c) / whole];
  return [atA, atB, 1 - atA - atB];
}

/** A rigid plate on springs, in coordinates about the centre of its supports and of their size. */
function plateOn(supports: readonly PlateSupport[]): Plate {
  if (supports.length === 0) throw new RangeError('at least one support is needed');
  for (const { x, y, stiffness = 1, gap = 0 } of supports) {
    for (const value of [x, y, gap]) requireFinite('support', value);
    requirePositive('stiffness', stiffness);
  }
  const middle = { x: supports.reduce((sum, { x }) => sum + x, 0) / supports.length, y: supports.reduce((sum, { y }) => sum + y, 0) / supports.length };
  const size = Math.max(...supports.map(({ x, y }) => Math.hypot(x - middle.x, y - middle.y))) || 1;
  const rows = supports.map(({ x, y }) => [1, (x - middle.x) / size, (y - middle.y) / size]);
  const stiffness = supports.map((support) => support.stiffness ?? 1);
  const gaps = supports.map((support) => support.gap ?? 0);
  const softest = Math.min(...stiffness);
  const rank = rankOf(rows);

  const pressed = (c: readonly number[]): readonly number[] => rows.map((row, i) => row.reduce((sum, value, j) => sum + value * (c[j] as number), 0) - (gaps[i] as number));
  return {
    size,
    rank,
    stiffness,
    pressed,
    loadOf: (loads) => {
      const sum = sumOf(loads);
      return [sum.force, (sum.my - sum.force * middle.x) / size, (sum.mx - sum.force * middle.y) / size];
    },
    sink: (load, touching) => {
      const normal = Matrix.zeros(3, 3);
      const right = load.map((value) => value / softest);
      rows.forEach((row, i) => {
        if (!touching[i]) return;
        const k = (stiffness[i] as number) / softest;
        for (let a = 0; a < 3; a++) {
          right[a] = (right[a] as number) + k * (gaps[i] as number) * (row[a] as number);
          for (let b = 0; b < 3; b++) normal.set(a, b, normal.get(a, b) + k * (row[a] as number) * (row[b] as number));
        }
      });
      const held = rankOf(rows.filter((_, i) => touching[i])) === 3;
      return (held ? solve(normal, Matrix.columnVector([...right])) : pseudoInverse(normal).mmul(Matrix.columnVector([...right]))).to1DArray();
    },
    holds: (touching) => rankOf(rows.filter((_, i) => touching[i]), 1e-6) === 3,
    reactions: (c) => pressed(c).map((d, i) => (stiffness[i] as number) * d),
    rest: (load, reactions) => {
      const sum = (axis: 1 | 2): number => (load[axis] as number) - reactions.reduce((total, r, i) => total + r * ((rows[i] as readonly number[])[axis] as number), 0);
      // About the x direction a force acts by its y.
      return rank === 3 ? { mx: 0, my: 0 } : { mx: sum(2) * size, my: sum(1) * size };
    },
  };
}

interface Plate {
  readonly size: number;
  readonly rank: number;
  readonly stiffness: readonly number[];
  readonly loadOf: (loads: readonly PlateLoad[]) => readonly number[];
  /** Whether these supports hold against tilt by more than a hair. */
  readonly holds: (touching: readonly boolean[]) => boolean;
  readonly sink: (load: readonly number[], touching: readonly boolean[]) => readonly number[];
  readonly pressed: (c: readonly number[]) => readonly number[];
  readonly reactions: (c: readonly number[]) => readonly number[];
  readonly rest: (load: readonly number[], reactions: readonly number[]) => { readonly mx: number; readonly my: number };
}

/** 1 for one place, 2 for a line, 3 otherwise; coordinates of the order of 1. */
function rankOf(rows: readonly (readonly number[])[], hair = 1e-9): number {
  const [first] = rows;
  if (!first) return 0;
  const [x0, y0] = [first[1] as number, first[2] as number];
  let far: readonly number[] = first;
  for (const row of rows) if (Math.hypot((row[1] as number) - x0, (row[2] as number) - y0) > Math.hypot((far[1] as number) - x0, (far[2] as number) - y0)) far = row;
  const [dx, dy] = [(far[1] as number) - x0, (far[2] as number) - y0];
  const distance = Math.hypot(dx, dy);
  if (distance < hair) return 1;
  return rows.some((row) => Math.abs(dx * ((row[2] as number) - y0) - dy * ((row[1] as number) - x0)) > hair * distance) ? 3 : 2;
}
