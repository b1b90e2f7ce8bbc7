/**
 * The rank of joints by two other ways that share no code with ours:
 * 1. each joint as conditions on the place of the moved body (distances to far points, angles, the rise of a thread); their derivatives by finite differences; rank by elimination with full pivoting;
 * 2. joints as bars with whole-number coordinates; rank by exact elimination in whole numbers.
 */
import { describe, expect, test } from 'vitest';
import { countConstraints, scaleOf } from '../../server/src/mechanics/constraint-rank.ts';
import { wrenchesOf, type Joint } from '../../server/src/mechanics/constraint-wrenches.ts';
import type { Vector3 } from '../../server/src/mechanics/vector3.ts';
import { HAND_COUNTS } from '../mechanics/constraint-layouts.ts';

type V = readonly [number, number, number];
type Pose = (point: V) => V;
/** Turn by the vector r (formula of Rodrigues), then shift. */
function pose(q: readonly number[]): Pose {
  const [tx = 0, ty = 0, tz = 0, rx = 0, ry = 0, rz = 0] = q;
  const angle = Math.hypot(rx, ry, rz);
  return ([x, y, z]) => {
    if (angle === 0) return [x + tx, y + ty, z + tz];
    const [kx, ky, kz] = [rx / angle, ry / angle, rz / angle];
    const dot = (kx * x + ky * y + kz * z) * (1 - Math.cos(angle));
    const [c, s] = [Math.cos(angle), Math.sin(angle)];
    return [x * c + (ky * z - kz * y) * s + kx * dot + tx, y * c + (kz * x - kx * z) * s + ky * dot + ty, z * c + (kx * y - ky * x) * s + kz * dot + tz];
  };
}
const add = (a: V, b: V, factor = 1): V => [a[0] + factor * b[0], a[1] + factor * b[1], a[2] + factor * b[2]];
const dot = (a: V, b: V): number => a[0] * b[0] + a[1] * b[1] + a[2] * b[2];
const cross = (a: V, b: V): V => [a[1] * b[2] - a[2] * b[1], a[2] * b[0] - a[0] * b[2], a[0] * b[1] - a[1] * b[0]];
const unit = (a: V): V => add([0, 0, 0], a, 1 / Math.hypot(...a));

/** What stays the same when the joint is kept. */
function conditions(joint: Joint): ((move: Pose) => number)[] {
  const p = joint.at;
  const n = unit(joint.axis);
  const seed: V = joint.across ?? (Math.abs(n[2]) > 0.5 ? [0.3, 1, 0] : [0, 0.3, 1]);
  const a = unit(add(seed, n, -dot(seed, n)));
  const b = cross(n, a);
  const reach = 0.05;
  /** Length of a bar from `point` of the body to a far anchor. */
  const bar = (point: V, direction: V) => (move: Pose): number => {
    const end = add(point, direction);
    return Math.hypot(...add(move(point), end, -1));
  };
  const places = [add(p, n, reach), add(p, n, -reach)] as const;
  const acrossShaft = (point: V): ((move: Pose) => number)[] => [bar(point, a), bar(point, b)];
  const alongShaft = [...acrossShaft(places[0]), ...acrossShaft(places[1])];
  /** Turn of the body about n, from a mark on it. */
  const turn = (move: Pose): number => {
    const mark = add(move(add(p, a)), move(p), -1);
    return Math.atan2(dot(mark, b), dot(mark, a));
  };
  const rise = (move: Pose): number => dot(add(move(p), p, -1), n) - ((joint.lead ?? 0) / (2 * Math.PI)) * turn(move);
  switch (joint.kind) {
    case 'rail-carriage': case 'wheel-carriage': return [...alongShaft, bar(add(p, a, reach), b)];
    case 'two-bushings': case 'one-bushing': return alongShaft;
    case 'self-aligning-bushing': case 'carriage-on-ball': case 'vee-wheel': return acrossShaft(p);
    case 'fork': case 'flat-wheel': return [bar(p, a)];
    case 'ball': case 'cone': return [bar(p, a), bar(p, b), bar(p, n)];
    case 'ball-on-radial-slide': case 'vee': return [bar(p, b), bar(p, n)];
    case 'flat': case 'wire-flexure': case 'belt': return [bar(p, n)];
    case 'blade-flexure': return [bar(p, a), bar(p, b), bar(add(p, a, reach), b)];
    case 'rigid-bolts': return [...alongShaft, bar(add(p, a, reach), b), bar(p, n)];
    case 'nut-rigid': return [...alongShaft, rise];
    case 'nut-sliding-plate': return [rise, (move) => dot(add(move(add(p, a)), move(p), -1), n), (move) => dot(add(move(add(p, b)), move(p), -1), n)];
    case 'nut-decoupled': return [rise];
  }
}

function jacobianRank(joints: readonly Joint[]): number {
  const rows = joints.flatMap(conditions).map((condition) => Array.from({ length: 6 }, (_, i) => {
    const step = Array.from({ length: 6 }, (_, j) => (i === j ? 1e-5 : 0));
    return (condition(pose(step)) - condition(pose(step.map((value) => -value)))) / 2e-5;
  }));
  return eliminate(rows, 1e-6);
}

/** Rank by elimination with full pivoting. */
function eliminate(given: number[][], tolerance: number): number {
  const rows = given.map((row) => [...row]);
  for (let rank = 0; ; rank++) {
    let best = [rank, rank, 0] as [number, number, number];
    rows.forEach((row, i) => row.forEach((value, j) => { if (i >= rank && j >= rank && Math.abs(value) > best[2]) best = [i, j, Math.abs(value)]; }));
    const [i, j, size] = best;
    if (size <= tolerance) return rank;
    [rows[rank], rows[i]] = [rows[i]!, rows[rank]!];
    for (const row of rows) [row[rank], row[j]] = [row[j]!, row[rank]!];
    const pivot = rows[rank]!;
    for (const row of rows.slice(rank + 1)) {
      const factor = row[rank]! / pivot[rank]!;
      pivot.forEach((value, k) => { row[k] = row[k]! - factor * value; });
    }
    if (rank === 5) return 6;
  }
}

const ours = (joints: readonly Joint[]): number => countConstraints(wrenchesOf(joints, 'drives held'), scaleOf(joints.map((joint) => joint.at))).rank;

test.each(HAND_COUNTS)('$name: derivatives of conditions', ({ joints }) => {
  expect(jacobianRank(joints)).toBe(ours(joints));
});

describe('random layouts', () => {
  let state = 20261125;
  const random = (): number => {
    state = (Math.imul(state, 1664525) + 1013904223) >>> 0;
    return state / 2 ** 32;
  };
  const kinds: readonly Joint['kind'][] = ['rail-carriage', 'carriage-on-ball', 'wheel-carriage', 'vee-wheel', 'flat-wheel', 'two-bushings', 'self-aligning-bushing', 'fork', 'ball', 'ball-on-radial-slide', 'cone', 'vee', 'flat', 'blade-flexure', 'wire-flexure', 'rigid-bolts', 'nut-rigid', 'nut-sliding-plate', 'nut-decoupled', 'belt'];
  test('200 of one to four joints on a grid, along the axes or askew', () => {
    const seen = new Map<number, number>();
    for (let k = 0; k < 200; k++) {
      const grid = (): number => Math.round(4 * (random() - 0.5)) / 10;
      const direction = (): Vector3 => ([[1, 0, 0], [0, 1, 0], [0, 0, 1], [1, 2, 2]] as const)[Math.floor(4 * random())]!;
      const joints = Array.from({ length: 1 + Math.floor(4 * random()) }, (_, i): Joint => ({ owner: String(i), kind: kinds[Math.floor(kinds.length * random())]!, at: [grid(), grid(), grid()], axis: direction(), across: [random() + 0.1, -random() - 0.1, random() / 2 + 0.3], lead: 0.01 }));
      const rank = ours(joints);
      expect(jacobianRank(joints), JSON.stringify(joints)).toBe(rank);
      seen.set(rank, (seen.get(rank) ?? 0) + 1);
    }
    // The comparison says something only if many ranks came up.
    expect(seen.size).toBeGreaterThanOrEqual(5);
  });
});

describe('bars with whole-number coordinates, in exact arithmetic', () => {
  /** Rank of whole-number rows without any rounding (elimination without fractions). */
  const exactRank = (given: readonly (readonly number[])[]): number => {
    const rows = given.map((row) => row.map(BigInt));
    let rank = 0;
    for (let column = 0; column < 6; column++) {
      const at = rows.findIndex((row, i) => i >= rank && row[column] !== 0n);
      if (at < 0) continue;
      [rows[rank], rows[at]] = [rows[at]!, rows[rank]!];
      const pivot = rows[rank]!;
      for (let i = rank + 1; i < rows.length; i++) {
        const row = rows[i]!;
        const factor = row[column]!;
        rows[i] = row.map((value, k) => value * pivot[column]! - factor * pivot[k]!);
      }
      rank++;
    }
    return rank;
  };
  const bars = (list: readonly (readonly [V, V])[]): { exact: number; found: number } => ({
    exact: exactRank(list.map(([at, direction]) => [...direction, ...cross(at, direction)])),
    found: ours(list.map(([at, axis], i): Joint => ({ owner: String(i), kind: 'wire-flexure', at: [at[0] / 1000, at[1] / 1000, at[2] / 1000], axis }))),
  });
  test.each<[string, readonly (readonly [V, V])[], number]>([
    ['six legs of a platform', [[[200, 0, 0], [1, 2, 9]], [[200, 0, 0], [1, -2, 9]], [[-100, 173, 0], [-2, 1, 9]], [[-100, 173, 0], [2, 1, 9]], [[-100, -173, 0], [-2, -1, 9]], [[-100, -173, 0], [2, -1, 9]]], 6],
    // All six meet the upright axis: nothing holds the turn about it.
    ['six bars that all meet one line', [[[200, 0, 0], [200, 0, 900]], [[0, 200, 0], [0, 200, 900]], [[-200, 0, 0], [-200, 0, 900]], [[100, 0, 0], [1, 0, 0]], [[0, 100, 0], [0, 1, 0]], [[0, 0, 300], [1, 0, 1]]], 5],
    ['four upright bars', [[[200, 150, 0], [0, 0, 1]], [[-200, 150, 0], [0, 0, 1]], [[-200, -150, 0], [0, 0, 1]], [[200, -150, 0], [0, 0, 1]]], 3],
    // Three parallel bars in a plane hold one shift and one tilt only.
    ['three upright bars in a row', [[[0, 0, 0], [0, 0, 1]], [[100, 0, 0], [0, 0, 1]], [[250, 0, 0], [0, 0, 1]]], 2],
    ['a row out by a millimetre', [[[0, 0, 0], [0, 0, 1]], [[100, 1, 0], [0, 0, 1]], [[250, 0, 0], [0, 0, 1]]], 3],
  ])('%s', (_, list, hand) => {
    const { exact, found } = bars(list);
    expect(exact).toBe(hand);
    expect(found).toBe(exact);
  });
});
