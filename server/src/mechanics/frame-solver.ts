/** A frame of straight members: how it gives under loads. Small frames of some dozens of members. */
import { CholeskyDecomposition, Matrix } from 'ml-matrix';
import { memberEndLoads, memberStiffness, type MemberShape } from './frame-element.ts';
import { requireNotNegative } from './require-argument.ts';
import { cross3, minus3, plus3, times3, type Vector3 } from './vector3.ts';

export interface FrameMember extends Omit<MemberShape, 'from' | 'to'> {
  readonly from: string;
  readonly to: string;
  /** kg/m, zero or above. */
  readonly massPerLength: number;
}

/** Which of the motions of a node are held: shifts and turns about X, Y, Z. */
export type Held = readonly [boolean, boolean, boolean, boolean, boolean, boolean];
export const CLAMPED: Held = [true, true, true, true, true, true];
export const PLACED: Held = [true, true, true, false, false, false];

export interface Frame {
  /** Places by name, m. */
  readonly nodes: Readonly<Record<string, Vector3>>;
  readonly members: readonly FrameMember[];
  /** Held motions by node. */
  readonly feet: Readonly<Record<string, Held>>;
  /** Springs from the ground by node: N/m for three shifts, N·m/rad for three turns. */
  readonly springs?: Readonly<Record<string, readonly [number, number, number, number, number, number]>>;
  /** Masses by node: kg, and rotational inertia about X, Y, Z in kg·m². */
  readonly masses?: Readonly<Record<string, { readonly mass: number; readonly inertia?: Vector3 }>>;
}

/** Force in N and moment in N·m on a node. */
export interface NodeLoad {
  readonly force?: Vector3;
  readonly moment?: Vector3;
}

/** Shift in m and turn in rad of a node. */
export interface NodeMotion {
  readonly shift: Vector3;
  readonly turn: Vector3;
}

export type Deflection =
  | { readonly kind: 'deflected'; readonly motions: ReadonlyMap<string, NodeMotion> }
  /** The members leave it free to move: no answer. */
  | { readonly kind: 'mechanism' };

/** The assembled stiffness of what is free; `undefined` when the frame is a mechanism. */
export interface Assembly {
  readonly names: readonly string[];
  /** Index into the 6 n motions for each row of the stiffness. */
  readonly free: readonly number[];
  readonly solve: ((loads: Matrix) => Matrix) | undefined;
}

const NOTHING: Vector3 = [0, 0, 0];

/** Share of the largest term of a row that a pivot must keep; below it the motion is not held. */
const PIVOT = 1e-10;

/**
 * Assembles and factors a frame.
 *
 * @param frame - nodes that no member, foot or spring touches are left out
 * @throws RangeError for members between unknown or coincident nodes
 *
 * Source: direct stiffness method, Przemieniecki, chapter 6 (from memory).
 * Checked against: as `deflectFrame`.
 */
export function assembleFrame(frame: Frame): Assembly {
  const used = new Set(frame.members.flatMap((member) => [member.from, member.to]));
  const names = Object.keys(frame.nodes).filter((name) => used.has(name));
  const index = new Map(names.map((name, i) => [name, i]));
  const size = 6 * names.length;
  const k = Matrix.zeros(size, size);
  for (const member of frame.members) {
    const part = memberStiffness(placed(frame, member));
    const at = [member.from, member.to].flatMap((name) => [0, 1, 2, 3, 4, 5].map((i) => 6 * (index.get(name) as number) + i));
    at.forEach((row, i) => { at.forEach((column, j) => { k.set(row, column, k.get(row, column) + part.get(i, j)); }); });
  }
  for (const [name, springs] of Object.entries(frame.springs ?? {})) {
    const base = 6 * (index.get(name) ?? fail(name));
    springs.forEach((value, i) => {
      requireNotNegative('spring', value);
      k.set(base + i, base + i, k.get(base + i, base + i) + value);
    });
  }
  // The turn of a node where only pins meet has no stiffness and moves nothing.
  const loose = (i: number): boolean => {
    if (i % 6 < 3) return false;
    const nothing = 1e-9 * Math.abs(k.get(i - 3, i - 3));
    for (let j = 0; j < size; j++) if (Math.abs(k.get(i, j)) > nothing) return false;
    return true;
  };
  const held = (i: number): boolean => frame.feet[names[Math.floor(i / 6)] as string]?.[(i % 6) as 0] === true;
  const free = Array.from({ length: size }, (_, i) => i).filter((i) => !held(i) && !loose(i));
  if (free.length === 0) return { names, free, solve: () => Matrix.zeros(0, 1) };
  // Scaled to a unit diagonal, so that shifts and turns compare.
  const scale = free.map((i) => 1 / Math.sqrt(Math.max(k.get(i, i), Number.MIN_VALUE)));
  const reduced = k.selection([...free], [...free]);
  // Rounding leaves the two halves apart in the last digit, and the library asks for exact symmetry.
  for (let i = 0; i < free.length; i++) {
    for (let j = 0; j <= i; j++) {
      const value = reduced.get(i, j) * (scale[i] as number) * (scale[j] as number);
      reduced.set(i, j, value);
      reduced.set(j, i, value);
    }
  }
  const factor = new CholeskyDecomposition(reduced);
  const weak = !factor.isPositiveDefinite() || factor.lowerTriangularMatrix.diagonal().some((pivot) => !(pivot ** 2 > PIVOT));
  const lower = weak ? [] : factor.lowerTriangularMatrix.to2DArray().map((row) => Float64Array.from(row));
  return { names, free, solve: weak ? undefined : (loads) => substituted(lower, scale, loads) };
}

/** Answer to the loads by the factor of the scaled stiffness: the library's own way through its accessors takes several times as long. */
function substituted(lower: readonly Float64Array[], scale: readonly number[], loads: Matrix): Matrix {
  const answer = Matrix.zeros(loads.rows, loads.columns);
  const size = lower.length;
  const x = new Float64Array(size);
  for (let column = 0; column < loads.columns; column++) {
    for (let k = 0; k < size; k++) {
      const row = lower[k] as Float64Array;
      let sum = loads.get(k, column) * (scale[k] as number);
      for (let i = 0; i < k; i++) sum -= (row[i] as number) * (x[i] as number);
      x[k] = sum / (row[k] as number);
    }
    for (let k = size - 1; k >= 0; k--) {
      const row = lower[k] as Float64Array;
      const value = (x[k] as number) / (row[k] as number);
      x[k] = value;
      for (let i = 0; i < k; i++) x[i] = (x[i] as number) - (row[i] as number) * value;
    }
    for (let k = 0; k < size; k++) answer.set(k, column, (x[k] as number) * (scale[k] as number));
  }
  return answer;
}

const fail = (name: string): never => {
  throw new RangeError(`the frame has no member at node ${name}`);
};

/** A member with the places of its nodes. */
export function placed(frame: Frame, member: FrameMember): MemberShape {
  const from = frame.nodes[member.from] ?? fail(member.from);
  const to = frame.nodes[member.to] ?? fail(member.to);
  return { ...member, from, to };
}

/**
 * Deflection of a frame under loads on its nodes and under an even pull such as weight.
 *
 * Formula: K u = f; a member's own weight over its length comes to its nodes by `memberEndLoads`.
 *
 * @param frame - see `Frame`
 * @param loads - by node
 * @param pull - acceleration that acts on every member and mass, m/s²: [0, 0, −9.81] for weight, the opposite of the machine's own acceleration for inertia
 * @param assembly - of this very frame, where it is at hand already
 * @returns motions by node, or `mechanism`
 * @throws RangeError for loads at unknown nodes
 *
 * Source: direct stiffness method, Przemieniecki, chapter 6 (from memory).
 * Checked against: beam tables (test/mechanics/frame-solver.test.ts); Popov, example 12.1 (test/published/frame.test.ts); the solver ccx (test/independent/frame.test.ts).
 */
export function deflectFrame(frame: Frame, loads: Readonly<Record<string, NodeLoad>>, pull: Vector3 = [0, 0, 0], assembly: Assembly = assembleFrame(frame)): Deflection {
  if (assembly.solve === undefined) return { kind: 'mechanism' };
  const all = new Float64Array(6 * assembly.names.length);
  const add = (name: string, force: Vector3, moment: Vector3 = [0, 0, 0]): void => {
    const at = assembly.names.indexOf(name);
    if (at < 0) fail(name);
    [...force, ...moment].forEach((value, i) => { all[6 * at + i] = (all[6 * at + i] as number) + value; });
  };
  for (const [name, { force, moment }] of Object.entries(loads)) add(name, force ?? NOTHING, moment ?? NOTHING);
  for (const [name, { mass }] of Object.entries(frame.masses ?? {})) add(name, times3(mass, pull));
  if (pull.some((value) => value !== 0)) for (const member of frame.members) ownWeight(frame, member, pull, add);
  const result = assembly.free.length === 0 ? [] : assembly.solve(Matrix.columnVector(assembly.free.map((i) => all[i] as number))).to1DArray();
  const full = new Float64Array(all.length);
  assembly.free.forEach((i, n) => { full[i] = result[n] as number; });
  return { kind: 'deflected', motions: new Map(assembly.names.map((name, n) => [name, motion(full, n)])) };
}

/**
 * How far each node that can shift gives under forces on itself.
 *
 * @param assembly - of a frame
 * @returns by node: its shift in m under 1 N along X, along Y, along Z; `mechanism` when nothing holds the frame
 *
 * Source: as `deflectFrame`.
 * Checked against: `deflectFrame` (test/mechanics/frame-solver.test.ts).
 */
export function nodeFlexibilities({ names, free, solve }: Assembly): ReadonlyMap<string, readonly [Vector3, Vector3, Vector3]> | 'mechanism' {
  if (solve === undefined) return 'mechanism';
  const rows = new Map(free.map((i, row) => [i, row]));
  const shifts = free.filter((i) => i % 6 < 3);
  const loads = Matrix.zeros(free.length, shifts.length);
  shifts.forEach((i, column) => { loads.set(rows.get(i) as number, column, 1); });
  const answer = shifts.length === 0 ? loads : solve(loads);
  const columns = new Map(shifts.map((i, column) => [i, column]));
  const under = (node: number, axis: number): Vector3 => {
    const column = columns.get(6 * node + axis);
    const along = (i: number): number => {
      const row = rows.get(6 * node + i);
      return row === undefined || column === undefined ? 0 : answer.get(row, column);
    };
    return [along(0), along(1), along(2)];
  };
  return new Map(names.flatMap((name, node) => ([0, 1, 2].some((axis) => columns.has(6 * node + axis)) ? [[name, [under(node, 0), under(node, 1), under(node, 2)]] as const] : [])));
}

function motion(full: Float64Array, node: number): NodeMotion {
  const [x = 0, y = 0, z = 0, a = 0, b = 0, c = 0] = full.subarray(6 * node, 6 * node + 6);
  return { shift: [x, y, z], turn: [a, b, c] };
}

function ownWeight(frame: Frame, member: FrameMember, pull: Vector3, add: (name: string, force: Vector3, moment?: Vector3) => void): void {
  if (member.massPerLength === 0) return;
  const loads = memberEndLoads(placed(frame, member), times3(member.massPerLength, pull));
  const part = (at: number): Vector3 => [loads[at] as number, loads[at + 1] as number, loads[at + 2] as number];
  add(member.from, part(0), part(3));
  add(member.to, part(6), part(9));
}

/** Shift of a point that is fixed to a node, m from it: u + θ × r. */
export const shiftOfPoint = (node: NodeMotion, arm: Vector3): Vector3 => plus3(node.shift, cross3(node.turn, arm));

/**
 * A member cut into equal parts, so that its own weight, its mass and its modes are followed along it.
 *
 * @param frame - the member's nodes stand in it
 * @param index - of the member
 * @param parts - 1 or more
 * @param name - stem of the new nodes' names, which get `-1`, `-2` …
 * @returns a frame with the parts in place of the member; its joints stay at its ends
 */
export function divideMember(frame: Frame, index: number, parts: number, name: string): Frame {
  const member = frame.members[index] as FrameMember;
  const { from, to, joints = [{ bending: Infinity }, { bending: Infinity }] as const } = placed(frame, member);
  const names = [member.from, ...Array.from({ length: parts - 1 }, (_, i) => `${name}-${i + 1}`), member.to];
  const rigid = { bending: Infinity };
  const pieces = names.slice(1).map((end, i): FrameMember => ({ ...member, from: names[i] as string, to: end, joints: [i === 0 ? joints[0] : rigid, i === parts - 1 ? joints[1] : rigid] }));
  const places = Object.fromEntries(names.slice(1, -1).map((node, i) => [node, plus3(from, times3((i + 1) / parts, minus3(to, from)))]));
  return { ...frame, nodes: { ...frame.nodes, ...places }, members: [...frame.members.slice(0, index), ...pieces, ...frame.members.slice(index + 1)] };
}
