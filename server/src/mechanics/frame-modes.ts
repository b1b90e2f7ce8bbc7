/** How a frame swings. */
import { EigenvalueDecomposition, Matrix } from 'ml-matrix';
import { assembleFrame, placed, type Assembly, type Frame } from './frame-solver.ts';
import { requireNotNegative } from './require-argument.ts';
import { length3, minus3, type Vector3 } from './vector3.ts';

export interface FrameMode {
  /** rad/s. */
  readonly angularFrequency: number;
  /** Shifts by node that has mass; the largest is 1. */
  readonly shape: ReadonlyMap<string, Vector3>;
}

export type FrameModes = { readonly kind: 'modes'; readonly modes: readonly FrameMode[] } | { readonly kind: 'mechanism' } | { readonly kind: 'no mass' };

/**
 * Lowest modes of a frame, its mass lumped at the nodes: half of every member at either end, and the masses that stand on nodes.
 *
 * Formula: (K − ω² M) φ = 0; with the flexibility F = K⁻¹ at the nodes that have mass: eigenvalues 1/ω² of M^½ F M^½, which is symmetric.
 *
 * @param frame - members divided where their own mass swings: lumping reads low, in 12 parts the first mode of a beam by less than 0.5 %, the second by less than 1.5 %
 * @param count - how many modes, lowest first
 * @param assembly - of this very frame, where it is at hand already
 * @throws RangeError for a negative mass, or one at a node without member
 * @returns modes, `mechanism` when nothing holds it, `no mass` when nothing that moves has mass
 *
 * Source: Clough and Penzien, Dynamics of Structures, lumped masses and the flexibility form (from memory).
 * Checked against: beam roots (test/mechanics/frame-modes.test.ts); the solver ccx (test/independent/frame.test.ts).
 */
export function frameModes(frame: Frame, count: number, assembly: Assembly = assembleFrame(frame)): FrameModes {
  if (assembly.solve === undefined) return { kind: 'mechanism' };
  const masses = new Float64Array(6 * assembly.names.length);
  const add = (name: string, i: number, value: number): void => {
    requireNotNegative('mass', value);
    const at = 6 * assembly.names.indexOf(name) + i;
    masses[at] = (masses[at] as number) + value;
  };
  for (const member of frame.members) {
    const { from, to } = placed(frame, member);
    const half = (member.massPerLength * length3(minus3(to, from))) / 2;
    for (const name of [member.from, member.to]) for (const i of [0, 1, 2]) add(name, i, half);
  }
  for (const [name, { mass, inertia = [0, 0, 0] }] of Object.entries(frame.masses ?? {})) {
    if (!assembly.names.includes(name)) throw new RangeError(`the frame has no member at node ${name}`);
    for (const i of [0, 1, 2] as const) {
      add(name, i, mass);
      add(name, i + 3, inertia[i]);
    }
  }
  const moving = assembly.free.map((dof, row) => ({ dof, row, mass: masses[dof] as number })).filter(({ mass }) => mass > 0);
  if (moving.length === 0) return { kind: 'no mass' };
  const loads = Matrix.zeros(assembly.free.length, moving.length);
  moving.forEach(({ row, mass }, j) => { loads.set(row, j, Math.sqrt(mass)); });
  const answer = assembly.solve(loads);
  const flexibility = Matrix.zeros(moving.length, moving.length);
  moving.forEach(({ row, mass }, i) => { for (let j = 0; j < moving.length; j++) flexibility.set(i, j, Math.sqrt(mass) * answer.get(row, j)); });
  const symmetric = flexibility.add(flexibility.transpose()).mul(0.5);
  const eigen = new EigenvalueDecomposition(symmetric, { assumeSymmetric: true });
  const order = eigen.realEigenvalues.map((value, i) => ({ value, i })).filter(({ value }) => value > 0).sort((a, b) => b.value - a.value).slice(0, count);
  const modes = order.map(({ value, i }): FrameMode => {
    const shape = new Map<string, [number, number, number]>();
    moving.forEach(({ dof, mass }, n) => {
      if (dof % 6 > 2) return;
      const name = assembly.names[Math.floor(dof / 6)] as string;
      const shift = shape.get(name) ?? [0, 0, 0];
      shift[dof % 6] = eigen.eigenvectorMatrix.get(n, i) / Math.sqrt(mass);
      shape.set(name, shift);
    });
    const largest = Math.max(...[...shape.values()].map((shift) => Math.hypot(...shift)));
    return { angularFrequency: 1 / Math.sqrt(value), shape: new Map([...shape].map(([name, [x, y, z]]) => [name, [x / largest, y / largest, z / largest]])) };
  });
  return { kind: 'modes', modes };
}
