import { Matrix, pseudoInverse, SingularValueDecomposition } from 'ml-matrix';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { scaleOf } from '../../server/src/mechanics/constraint-rank.ts';
import { wrenchesOf, type Joint } from '../../server/src/mechanics/constraint-wrenches.ts';
import { heldAgainstLevelling, type LevellingHolds } from '../../server/src/mechanics/levelling-freedom.ts';
import type { Vector3 } from '../../server/src/mechanics/vector3.ts';

const up: Vector3 = [0, 0, 1];
const holdsOf = (joints: readonly Joint[]): LevellingHolds => heldAgainstLevelling(wrenchesOf(joints, 'drives held'), scaleOf(joints.map(({ at }) => at)));
const guide = (owner: string, kind: Joint['kind'], at: Vector3, across?: Vector3): Joint => ({ owner, kind, at, axis: up, ...(across === undefined ? {} : { across }) });

describe('what holds the tilt, counted by hand', () => {
  it('nothing, where points are held only sideways at one height', () => {
    expect(holdsOf([guide('a', 'carriage-on-ball', [0, 0, 0]), guide('b', 'fork', [0.4, 0, 0], [0, 1, 0])])).toEqual({ count: 0, holds: [] });
  });
  it('two points of one upright shaft together: sideways forces at two heights are a couple', () => {
    expect(holdsOf([guide('above', 'self-aligning-bushing', [0, 0, 0.1]), guide('below', 'self-aligning-bushing', [0, 0, -0.1])])).toEqual({
      count: 2,
      holds: [{ held: 'tilt about X', owners: ['above', 'below'], together: true }, { held: 'tilt about Y', owners: ['above', 'below'], together: true }],
    });
  });
  it('a bolted carriage alone, and beside it a second one alone', () => {
    expect(holdsOf([guide('a', 'rail-carriage', [0, 0, 0]), guide('b', 'rail-carriage', [0.4, 0, 0])])).toEqual({
      count: 2,
      holds: [{ held: 'tilt about X', owners: ['a', 'b'], together: false }, { held: 'tilt about Y', owners: ['a', 'b'], together: false }],
    });
  });
  it('one of both tilts: forks along x at two heights are a couple about y', () => {
    expect(holdsOf([guide('above', 'fork', [0.1, 0, 0.1], [1, 0, 0]), guide('below', 'fork', [0.1, 0, -0.1], [1, 0, 0])])).toEqual({ count: 1, holds: [{ held: 'tilt about Y', owners: ['above', 'below'], together: true }] });
  });
  it('the height, by a foot that stands', () => {
    expect(holdsOf([guide('a', 'carriage-on-ball', [0, 0, 0]), guide('foot', 'flat', [0.2, 0.1, 0])])).toEqual({ count: 1, holds: [{ held: 'shift along Z', owners: ['foot'], together: false }] });
  });
  it('everything, where it is bolted down', () => {
    expect(holdsOf([guide('bolts', 'rigid-bolts', [0, 0, 0])]).count).toBe(3);
  });
});

/** Rotation matrix of a rotation vector (Rodrigues). */
function rotation([a, b, c]: Vector3): Matrix {
  const angle = Math.hypot(a, b, c);
  if (angle === 0) return Matrix.eye(3);
  const cross = new Matrix([[0, -c, b], [c, 0, -a], [-b, a, 0]]).div(angle);
  return Matrix.add(Matrix.add(Matrix.eye(3), Matrix.mul(cross, Math.sin(angle))), Matrix.mul(cross.mmul(cross), 1 - Math.cos(angle)));
}

/** How far a moved part stands beside what each joint holds: distances of its points, and of arrows that are fixed to it. */
function misfit({ kind, at, across }: Joint, turn: Vector3, slide: Vector3): number[] {
  const moved = rotation(turn);
  const place = moved.mmul(Matrix.columnVector([...at])).to1DArray().map((value, i) => value + (slide[i] as number) - (at[i] as number));
  const arrow = (direction: Vector3): number[] => moved.mmul(Matrix.columnVector([...direction])).to1DArray();
  const [x, y, z] = place as [number, number, number];
  switch (kind) {
    case 'fork': return [x * (across?.[0] ?? 0) + y * (across?.[1] ?? 0)];
    case 'flat': return [z];
    case 'rail-carriage': return [x, y, arrow([0, 0, 1])[0] as number, arrow([0, 0, 1])[1] as number, arrow([1, 0, 0])[1] as number];
    case 'two-bushings': return [x, y, arrow([0, 0, 1])[0] as number, arrow([0, 0, 1])[1] as number];
    default: return [x, y];
  }
}

describe('against points that are moved one way after the other', () => {
  const place = fc.tuple(fc.integer({ min: -3, max: 3 }), fc.integer({ min: -3, max: 3 }), fc.constantFrom(0, 1, -1)).map(([x, y, z]): Vector3 => [x / 10, y / 10, z / 10]);
  const joint = fc.record({ kind: fc.constantFrom('fork', 'flat', 'carriage-on-ball', 'self-aligning-bushing', 'two-bushings', 'rail-carriage'), at: place, across: fc.constantFrom<Vector3>([1, 0, 0], [0, 1, 0]) });
  it('holds as many of height and tilts (property)', () => {
    fc.assert(fc.property(fc.array(joint, { minLength: 1, maxLength: 4 }), (list) => {
      const joints = list.map(({ kind, at, across }, i): Joint => guide(`j${i}`, kind as Joint['kind'], at, kind === 'fork' ? across : undefined));
      const h = 1e-5;
      // Central differences of the distances over each of six motions: x, y and the turn are free to follow, height and tilts are commanded.
      const column = (turn: Vector3, slide: Vector3): number[] => {
        const way = (sign: number): number[] => joints.flatMap((one) => misfit(one, turn.map((v) => sign * h * v) as unknown as Vector3, slide.map((v) => sign * h * v) as unknown as Vector3));
        const [plus, minus] = [way(1), way(-1)];
        // At least as many rows as columns, as the decomposition wants them.
        return [...plus.map((value, i) => (value - (minus[i] as number)) / (2 * h)), 0, 0, 0];
      };
      const free = new Matrix([column([0, 0, 0], [1, 0, 0]), column([0, 0, 0], [0, 1, 0]), column([0, 0, 1], [0, 0, 0])]).transpose();
      const commanded = new Matrix([column([0, 0, 0], [0, 0, 1]), column([1, 0, 0], [0, 0, 0]), column([0, 1, 0], [0, 0, 0])]).transpose();
      // What no following takes away.
      const left = Matrix.sub(commanded, free.mmul(pseudoInverse(free, 1e-7)).mmul(commanded));
      const rank = new SingularValueDecomposition(left).diagonal.filter((value) => value > 1e-6).length;
      const { count, holds } = holdsOf(joints);
      expect(count).toBe(rank);
      expect(holds.length > 0).toBe(count > 0);
    }), { numRuns: 300 });
  });
});
