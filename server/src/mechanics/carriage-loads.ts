/** What the carriages of a table carry: from masses, accelerations and forces to the load on each. x runs along the rails, y across, z away from their base. */
import { Matrix, solve } from 'ml-matrix';
import { type CarriageLoad } from './guide-life.ts';
import { requireFinite, requireNotNegative, requirePositive } from './require-argument.ts';

/** x, y, z. */
export type Vector = readonly [number, number, number];

/** How the rails lie: on the floor, under the ceiling, on a wall with the travel level, or with the travel up and down. */
export type GuideOrientation = 'floor' | 'ceiling' | 'wall' | 'vertical';

/**
 * Gravity in the frame of the rails.
 *
 * Formula: floor (0, 0, -g), ceiling (0, 0, g), wall (0, -g, 0), vertical (-g, 0, 0), with x up where the travel is vertical and y up on a wall.
 *
 * @param orientation - how the rails lie
 * @param gravity - g, m/s², above 0
 * @returns m/s²
 * @throws RangeError when g is not positive
 *
 * Source: definition.
 * Checked against: test/mechanics/carriage-loads.test.ts.
 */
export function gravityOfRails(orientation: GuideOrientation, gravity = 9.80665): Vector {
  requirePositive('gravity', gravity);
  switch (orientation) {
    case 'floor': return [0, 0, -gravity];
    case 'ceiling': return [0, 0, gravity];
    case 'wall': return [0, -gravity, 0];
    case 'vertical': return [-gravity, 0, 0];
  }
}

/** What acts on a table. Places count from the middle of the carriages, in the plane where they grip the rails. */
export interface TableLoads {
  /** kg, 0 or above, at its centre of gravity. */
  readonly masses: readonly { readonly mass: number; readonly at: Vector }[];
  /** m/s², see {@link gravityOfRails}. */
  readonly gravity: Vector;
  /** Acceleration of the table, m/s²; the part across the rails is that of an axis that carries them. */
  readonly acceleration: Vector;
  /** Other forces, N. */
  readonly forces?: readonly { readonly force: Vector; readonly at: Vector }[] | undefined;
  /** Line of the driving force, m. */
  readonly drive: { readonly y: number; readonly z: number };
}

/** What the carriages must hold together, about the middle, and what the drive must push. */
export interface TableWrench extends CarriageLoad {
  /** Force of the drive along x, N, without friction. */
  readonly driveForce: number;
}

/**
 * Forces and moments that the drive leaves to the carriages.
 *
 * Formula: sum over masses of m (g - a) and over other forces, F and r × F about the middle; the drive adds F_d = -sum F_x at its own line.
 *
 * @param loads - see {@link TableLoads}
 * @returns load on the whole set of carriages (positive: the table is pushed along +y, +z) and the driving force
 * @throws RangeError for a negative mass or values that are not finite
 *
 * Source: balance of a rigid body (d'Alembert).
 * Checked against: test/mechanics/carriage-loads.test.ts (hand calculations).
 */
export function tableWrench(loads: TableLoads): TableWrench {
  let sum: Vector = [0, 0, 0];
  let moment: Vector = [0, 0, 0];
  const add = (force: Vector, at: Vector): void => {
    for (const value of [...force, ...at]) requireFinite('load', value);
    sum = plus(sum, force);
    moment = plus(moment, cross(at, force));
  };
  for (const { mass, at } of loads.masses) {
    requireNotNegative('mass', mass);
    add([0, 1, 2].map((i) => mass * ((loads.gravity[i] as number) - (loads.acceleration[i] as number))) as unknown as Vector, at);
  }
  for (const { force, at } of loads.forces ?? []) add(force, at);
  const driveForce = -sum[0];
  add([driveForce, 0, 0], [0, loads.drive.y, loads.drive.z]);
  return { fy: sum[1], fz: sum[2], mx: moment[0], my: moment[1], mz: moment[2], driveForce };
}

const plus = (a: Vector, b: Vector): Vector => [a[0] + b[0], a[1] + b[1], a[2] + b[2]];
const cross = (a: Vector, b: Vector): Vector => [a[1] * b[2] - a[2] * b[1], a[2] * b[0] - a[0] * b[2], a[0] * b[1] - a[1] * b[0]];

/** One carriage. */
export interface TableCarriage {
  /** Along the rails from the middle, m. */
  readonly x: number;
  /** Across the rails from the middle, m. */
  readonly y: number;
  /** Stiffness across the rail, sideways and away from it, N/m or any common measure, above 0. Default 1: all alike. */
  readonly stiffness?: number | undefined;
  /** Length over which its elements carry, m, 0 or above; gives it pitch and yaw stiffness k l²/12. Default 0: none. */
  readonly length?: number | undefined;
  /** Distance of its two rows across, m, 0 or above; gives it roll stiffness k w²/4. Default 0: none. */
  readonly rowSpacing?: number | undefined;
}

/**
 * The usual arrangements of carriages, about their middle.
 *
 * Formula: rails ±b/2 across, carriages of a rail ±l/2 along.
 *
 * @param rails - 1 or 2
 * @param perRail - carriages on each, 1 or 2
 * @param railSpacing - b, m, above 0 with two rails
 * @param carriageSpacing - l, m, above 0 with two carriages on a rail
 * @param each - length and rowSpacing of one carriage, see {@link TableCarriage}
 * @returns carriages: rail at -y first, and on each rail the one at -x first
 * @throws RangeError outside the stated domains
 *
 * Source: definition.
 * Checked against: test/mechanics/carriage-loads.test.ts.
 */
export function carriagesOnRails(
  rails: 1 | 2, perRail: 1 | 2, railSpacing: number, carriageSpacing: number, each: Pick<TableCarriage, 'length' | 'rowSpacing' | 'stiffness'> = {},
): readonly TableCarriage[] {
  if (rails === 2) requirePositive('railSpacing', railSpacing);
  if (perRail === 2) requirePositive('carriageSpacing', carriageSpacing);
  const ys = rails === 2 ? [-railSpacing / 2, railSpacing / 2] : [0];
  const xs = perRail === 2 ? [-carriageSpacing / 2, carriageSpacing / 2] : [0];
  return ys.flatMap((y) => xs.map((x) => ({ ...each, x, y })));
}

/**
 * Load on each carriage of a rigid table.
 *
 * Formula: the table moves by (v, w, rotations) until the springs of all carriages balance the wrench. Four alike without a stiffness of their own
 * against moments: R = Fz/4 ± My/(2 l) ± Mx/(2 b), sideways Fy/4 ± Mz/(2 l). One: everything.
 *
 * @param carriages - 1 or more, see {@link TableCarriage}
 * @param wrench - about the place that the carriages' x and y count from, see {@link tableWrench}
 * @returns a load for each carriage, in their order, or `not held` when the carriages leave the table free to turn (a carriage's own length or rows
 * would hold it)
 * @throws RangeError outside the stated domains
 *
 * Source: rigid body on springs; for four carriages the form that rail makers print. One of the supports is redundant, so equal stiffness decides; rails out of
 * line come on top, see `mismatchForce`.
 * Checked against: test/mechanics/carriage-loads.test.ts; test/independent/carriage-loads.test.ts (springs by energy).
 */
export function carriageLoads(carriages: readonly TableCarriage[], wrench: CarriageLoad): readonly CarriageLoad[] | 'not held' {
  if (carriages.length === 0) throw new RangeError('carriageLoads: at least one carriage is needed');
  for (const value of [wrench.fy, wrench.fz, wrench.mx, wrench.my, wrench.mz]) requireFinite('wrench', value);
  const full = carriages.map(({ x, y, stiffness = 1, length = 0, rowSpacing = 0 }) => {
    requireFinite('x', x);
    requireFinite('y', y);
    requirePositive('stiffness', stiffness);
    requireNotNegative('length', length);
    requireNotNegative('rowSpacing', rowSpacing);
    return { x, y, k: stiffness, bend: (stiffness * length ** 2) / 12, roll: (stiffness * rowSpacing ** 2) / 4 };
  });
  // Two systems that do not know each other: sideways (v, yaw), and away from the rails (w, roll, pitch).
  const sideways = balance(
    full.map(({ x, k, bend }) => ({ rows: [[1, x], [0, 1]], stiffness: [k, bend] })),
    [wrench.fy, wrench.mz],
  );
  const away = balance(
    // w at (x, y) with roll a and pitch b: w + a y - b x.
    full.map(({ x, y, k, bend, roll }) => ({ rows: [[1, y, -x], [0, 1, 0], [0, 0, 1]], stiffness: [k, roll, bend] })),
    [wrench.fz, wrench.mx, wrench.my],
  );
  if (sideways === 'not held' || away === 'not held') return 'not held';
  return full.map((_, i) => {
    const [fy, mz] = sideways[i] as readonly [number, number];
    const [fz, mx, my] = away[i] as readonly [number, number, number];
    return { fy, fz, mx, my, mz };
  });
}

/** Force of every spring when a rigid body on them balances `load`; scaled so that lengths do not upset the rank. */
function balance(bodies: readonly { readonly rows: readonly (readonly number[])[]; readonly stiffness: readonly number[] }[], load: readonly number[]): readonly (readonly number[])[] | 'not held' {
  // Directions that nothing loads and nothing holds may stay: they are left out.
  const size = load.length;
  const whole = Matrix.zeros(size, size);
  for (const { rows, stiffness } of bodies) {
    rows.forEach((row, r) => {
      for (let i = 0; i < size; i++) for (let j = 0; j < size; j++) whole.set(i, j, whole.get(i, j) + (stiffness[r] as number) * (row[i] as number) * (row[j] as number));
    });
  }
  const kept = Array.from({ length: size }, (_, i) => i).filter((i) => whole.get(i, i) > 0);
  if (load.some((value, i) => value !== 0 && !kept.includes(i))) return 'not held';
  const scale = kept.map((i) => 1 / Math.sqrt(whole.get(i, i)));
  const part = new Matrix(kept.map((i, a) => kept.map((j, b) => whole.get(i, j) * (scale[a] as number) * (scale[b] as number))));
  const right = Matrix.columnVector(kept.map((i, a) => (load[i] as number) * (scale[a] as number)));
  let moved: readonly number[];
  try {
    moved = solve(part, right).to1DArray();
  } catch {
    return 'not held';
  }
  const found = new Array<number>(size).fill(0);
  kept.forEach((i, a) => { found[i] = (moved[a] as number) * (scale[a] as number); });
  return bodies.map(({ rows, stiffness }) => rows.map((row, r) => (stiffness[r] as number) * row.reduce((sum, value, i) => sum + value * (found[i] as number), 0)));
}
