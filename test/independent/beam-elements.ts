/**
 * A beam finite-element model of our own, to stand beside the exact formulas of `mechanics/`: it shares no code with them.
 * Elements: Hermite cubics with consistent mass (slender), or the shear-flexible element with lumped mass (Timoshenko);
 * geometric stiffness from the axial force of each element. Textbook: Przemieniecki, Theory of Matrix Structural Analysis,
 * chapters 5, 11 and 15 (from memory).
 */
export interface BeamModel {
  /** From the left end, m. */
  readonly length: number;
  readonly elements: number;
  /** E I in N·m² at x, so that stepped shafts work. */
  readonly bendingStiffness: (x: number) => number;
  /** kg/m. */
  readonly massPerLength: number;
  /** Tension at x, N; negative for compression. */
  readonly axialForce?: (x: number) => number;
  /** kappa G A, N; left out for a slender beam. */
  readonly shearStiffness?: number;
  /** rho I, or -rho I in forward whirl, kg·m; only with `shearStiffness`. */
  readonly rotaryInertia?: number;
  /** Springs at a place, N/m and N·m/rad; `Infinity` for a rigid hold. */
  readonly supports: readonly { readonly at: number; readonly lateral: number; readonly tilt: number }[];
}

type Matrix = Float64Array[];

interface Assembled {
  readonly stiffness: Matrix;
  readonly geometric: Matrix;
  readonly mass: Matrix;
  readonly size: number;
  readonly nodes: readonly number[];
  readonly freeIndex: readonly number[];
}

const zeros = (n: number): Matrix => Array.from({ length: n }, () => new Float64Array(n));

/** Nodes at every support and about `elements` elements over the length. */
function nodesOf(model: BeamModel): number[] {
  const places = [0, model.length, ...model.supports.map((support) => support.at)].sort((a, b) => a - b);
  const nodes: number[] = [0];
  for (let i = 1; i < places.length; i++) {
    const from = places[i - 1] as number;
    const to = places[i] as number;
    if (to - from < 1e-12 * model.length) continue;
    const count = Math.max(10, Math.round((model.elements * (to - from)) / model.length));
    for (let k = 1; k <= count; k++) nodes.push(from + ((to - from) * k) / count);
  }
  return nodes;
}

function assemble(model: BeamModel): Assembled {
  const nodes = nodesOf(model);
  const full = 2 * nodes.length;
  const stiffness = zeros(full);
  const geometric = zeros(full);
  const mass = zeros(full);
  for (let e = 0; e + 1 < nodes.length; e++) {
    const left = nodes[e] as number;
    const h = (nodes[e + 1] as number) - left;
    const middle = left + h / 2;
    const bending = model.bendingStiffness(middle);
    const shear = model.shearStiffness === undefined ? 0 : (12 * bending) / (model.shearStiffness * h * h);
    const k = bending / (h ** 3 * (1 + shear));
    add(stiffness, 2 * e, [
      [12 * k, 6 * h * k, -12 * k, 6 * h * k],
      [6 * h * k, (4 + shear) * h * h * k, -6 * h * k, (2 - shear) * h * h * k],
      [-12 * k, -6 * h * k, 12 * k, -6 * h * k],
      [6 * h * k, (2 - shear) * h * h * k, -6 * h * k, (4 + shear) * h * h * k],
    ]);
    const force = model.axialForce?.(middle) ?? 0;
    if (model.shearStiffness === undefined) {
      const g = force / (30 * h);
      add(geometric, 2 * e, [
        [36 * g, 3 * h * g, -36 * g, 3 * h * g],
        [3 * h * g, 4 * h * h * g, -3 * h * g, -h * h * g],
        [-36 * g, -3 * h * g, 36 * g, -3 * h * g],
        [3 * h * g, -h * h * g, -3 * h * g, 4 * h * h * g],
      ]);
      const m = (model.massPerLength * h) / 420;
      add(mass, 2 * e, [
        [156 * m, 22 * h * m, 54 * m, -13 * h * m],
        [22 * h * m, 4 * h * h * m, 13 * h * m, -3 * h * h * m],
        [54 * m, 13 * h * m, 156 * m, -22 * h * m],
        [-13 * h * m, -3 * h * h * m, -22 * h * m, 4 * h * h * m],
      ]);
    } else {
      const g = force / h;
      add(geometric, 2 * e, [[g, 0, -g, 0], [0, 0, 0, 0], [-g, 0, g, 0], [0, 0, 0, 0]]);
      const m = (model.massPerLength * h) / 2;
      const j = ((model.rotaryInertia ?? 0) * h) / 2;
      add(mass, 2 * e, [[m, 0, 0, 0], [0, j, 0, 0], [0, 0, m, 0], [0, 0, 0, j]]);
    }
  }
  const held = new Set<number>();
  for (const support of model.supports) {
    const node = nodes.findIndex((x) => Math.abs(x - support.at) < 1e-9 * model.length);
    [support.lateral, support.tilt].forEach((spring, which) => {
      const index = 2 * node + which;
      if (spring === Infinity) held.add(index);
      else (stiffness[index] as Float64Array)[index] = ((stiffness[index] as Float64Array)[index] as number) + spring;
    });
  }
  const freeIndex = Array.from({ length: full }, (_, i) => i).filter((i) => !held.has(i));
  const reduced = (matrix: Matrix): Matrix => freeIndex.map((i) => Float64Array.from(freeIndex, (j) => (matrix[i] as Float64Array)[j] as number));
  return { stiffness: reduced(stiffness), geometric: reduced(geometric), mass: reduced(mass), size: freeIndex.length, nodes, freeIndex };
}

function add(into: Matrix, at: number, block: readonly (readonly number[])[]): void {
  block.forEach((row, i) => {
    const target = into[at + i] as Float64Array;
    row.forEach((value, j) => {
      target[at + j] = (target[at + j] as number) + value;
    });
  });
}

const plus = (a: Matrix, b: Matrix): Matrix => a.map((row, i) => row.map((value, j) => value + ((b[i] as Float64Array)[j] as number)));

/** x with a x = b, by elimination without exchange; banded, so zeros are skipped. */
function solver(a: Matrix): (b: Float64Array) => Float64Array {
  const n = a.length;
  const lu = a.map((row) => Float64Array.from(row));
  const band = 4;
  for (let k = 0; k < n; k++) {
    for (let i = k + 1; i < Math.min(n, k + band); i++) {
      const row = lu[i] as Float64Array;
      const pivotRow = lu[k] as Float64Array;
      const factor = (row[k] as number) / (pivotRow[k] as number);
      row[k] = factor;
      for (let j = k + 1; j < Math.min(n, k + band); j++) row[j] = (row[j] as number) - factor * (pivotRow[j] as number);
    }
  }
  return (b) => {
    const x = Float64Array.from(b);
    for (let i = 0; i < n; i++) for (let j = Math.max(0, i - band); j < i; j++) x[i] = (x[i] as number) - ((lu[i] as Float64Array)[j] as number) * (x[j] as number);
    for (let i = n - 1; i >= 0; i--) {
      for (let j = i + 1; j < Math.min(n, i + band); j++) x[i] = (x[i] as number) - ((lu[i] as Float64Array)[j] as number) * (x[j] as number);
      x[i] = (x[i] as number) / ((lu[i] as Float64Array)[i] as number);
    }
    return x;
  };
}

const times = (a: Matrix, x: Float64Array): Float64Array => Float64Array.from(a, (row) => row.reduce((sum, value, j) => sum + value * (x[j] as number), 0));
const dot = (x: Float64Array, y: Float64Array): number => x.reduce((sum, value, i) => sum + value * (y[i] as number), 0);

/** Smallest lambda with k x = lambda m x, by inverse iteration. */
function smallest(k: Matrix, m: Matrix): number {
  const solve = solver(k);
  // A start without symmetry, so that no first mode is missed.
  let x = Float64Array.from({ length: k.length }, (_, i) => 1 + 0.7 * Math.sin(1.3 * i) + 0.01 * i);
  let lambda = 0;
  for (let step = 0; step < 3000; step++) {
    const y = solve(times(m, x));
    const next = dot(x, times(m, x)) / dot(y, times(m, x));
    const scale = 1 / Math.sqrt(dot(y, y));
    x = y.map((value) => value * scale);
    if (Math.abs(next - lambda) < 1e-13 * Math.abs(next)) return next;
    lambda = next;
  }
  return lambda;
}

/** Lowest angular frequency, rad/s. */
export function beamFrequency(model: BeamModel): number {
  const { stiffness, geometric, mass } = assemble(model);
  return Math.sqrt(smallest(plus(stiffness, geometric), mass));
}

/** Factor on the axial forces at which the beam buckles; every element in compression or unloaded. */
export function beamBucklingFactor(model: BeamModel): number {
  const { stiffness, geometric } = assemble(model);
  return smallest(stiffness, geometric.map((row) => row.map((value) => -value)));
}

/** Deflection in m at `at` under a lateral force of 1 N there. */
export function beamCompliance(model: BeamModel, at: number): number {
  const withNode = { ...model, supports: [...model.supports, { at, lateral: 0, tilt: 0 }] };
  const { stiffness, nodes, freeIndex, size } = assemble(withNode);
  const index = freeIndex.indexOf(2 * nodes.findIndex((x) => Math.abs(x - at) < 1e-9 * model.length));
  if (index < 0) return 0;
  const force = new Float64Array(size);
  force[index] = 1;
  return solver(stiffness)(force)[index] as number;
}
