/** Carriage loads from places by another way: a rigid body on springs, all six balances and the force of the drive solved as one linear system. */
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { evaluate, figureOf } from '../support/evaluate.ts';

/** Gaussian elimination with pivoting. */
function solved(matrix: readonly (readonly number[])[], right: readonly number[]): readonly number[] {
  const rows = matrix.map((row, i) => [...row, right[i] as number]);
  const size = rows.length;
  for (let column = 0; column < size; column++) {
    let pivot = column;
    for (let row = column + 1; row < size; row++) if (Math.abs((rows[row] as number[])[column] as number) > Math.abs((rows[pivot] as number[])[column] as number)) pivot = row;
    [rows[column], rows[pivot]] = [rows[pivot] as number[], rows[column] as number[]];
    const lead = rows[column] as number[];
    rows.forEach((row, i) => {
      if (i === column) return;
      const share = (row[column] as number) / (lead[column] as number);
      for (let k = column; k <= size; k++) row[k] = (row[k] as number) - share * (lead[k] as number);
    });
  }
  return rows.map((row, i) => (row[size] as number) / (row[i] as number));
}

const whole = (min: number, max: number): fc.Arbitrary<number> => fc.integer({ min, max });

test('two masses anywhere, level, along x, driven in the middle', () => {
  fc.assert(fc.property(
    fc.record({ x1: whole(-90, 90), y1: whole(-90, 90), z1: whole(-60, 120), x2: whole(-90, 90), y2: whole(-90, 90), z2: whole(-60, 120), a: whole(1, 8), spacing: whole(50, 150), rails: whole(60, 200) }),
    ({ x1, y1, z1, x2, y2, z2, a, spacing, rails }) => {
      const evaluation = evaluate('slider', {
        'conditions.gravity': '10 m/s²', 'motion.acceleration': `${a} m/s²`, 'guides.drive-offset': null, 'axis.along': 'x', 'guides.at': ['300 mm', '200 mm', '40 mm'],
        'guides.carriage-spacing': `${spacing} mm`, 'guides.rail-spacing': `${rails} mm`, 'axis.moves': ['plate', 'beam'],
        mass: { mass: '3 kg', at: [`${300 + x1} mm`, `${200 + y1} mm`, `${40 + z1} mm`] }, beam: { mass: '2 kg', at: [`${300 + x2} mm`, `${200 + y2} mm`, `${40 + z2} mm`] },
      });
      const carriages = [-1, 1].flatMap((i) => [-1, 1].map((j) => [(i * spacing) / 2000, (j * rails) / 2000] as const));
      const masses = [[3, x1, y1, z1], [2, x2, y2, z2]].map(([m, ...at]) => ({ m: m as number, at: at.map((mm) => mm / 1000) as [number, number, number] }));
      let most = 0;
      for (const sign of [1, -1]) {
        // Unknown: drive force, shifts v (y) and w (z), turns p, q, r about x, y, z. Every spring has 1 N/m and moves by shift + turn × place.
        const balance = Array.from({ length: 6 }, () => new Array<number>(6).fill(0));
        const add = (row: number, column: number, value: number): void => { (balance[row] as number[])[column] = ((balance[row] as number[])[column] as number) + value; };
        add(0, 0, 1);
        for (const [x, y] of carriages) {
          const moves = [[0, 1, 0, 0, 0, x], [0, 0, 1, y, -x, 0]];
          moves.forEach((move, direction) => {
            // Force on the body -move along y or z; moments y Fz about x, -x Fz about y, x Fy about z.
            const levers = direction === 0 ? [0, 1, 0, 0, 0, x] : [0, 0, 1, y, -x, 0];
            levers.forEach((lever, row) => move.forEach((part, column) => add(row, column, -lever * part)));
          });
        }
        const forces = masses.map(({ m, at }) => ({ f: [-m * sign * a, 0, -m * 10] as const, at }));
        const sum = (of: (one: (typeof forces)[number]) => number): number => -forces.reduce((total, one) => total + of(one), 0);
        const found = solved(balance, [
          sum(({ f }) => f[0]), sum(({ f }) => f[1]), sum(({ f }) => f[2]),
          sum(({ f, at }) => at[1] * f[2] - at[2] * f[1]), sum(({ f, at }) => at[2] * f[0] - at[0] * f[2]), sum(({ f, at }) => at[0] * f[1] - at[1] * f[0]),
        ]);
        const [, v = 0, w = 0, p = 0, q = 0, r = 0] = found;
        for (const [x, y] of carriages) most = Math.max(most, Math.hypot(v + r * x, w + p * y - q * x));
      }
      expect(Math.abs(figureOf(evaluation, 'guides.carriage-load-most') / most - 1)).toBeLessThan(1e-9);
    },
  ), { numRuns: 25 });
});
