import { expect, test } from 'vitest';
import { signChange, threshold } from '../../server/src/mechanics/bisection.ts';

test('the root of two lies where its square passes two, rising or falling', () => {
  // sqrt(2) = 1.41421356237309505.
  expect(signChange((x) => x * x - 2, 0, 2)).toBeCloseTo(Math.SQRT2, 15);
  expect(signChange((x) => 2 - x * x, 0, 2)).toBeCloseTo(Math.SQRT2, 15);
});

test('a root at an end is found, no root is the caller’s mistake', () => {
  expect(signChange((x) => x, 0, 1)).toBe(0);
  expect(signChange((x) => x - 1, 0, 1)).toBe(1);
  expect(() => signChange((x) => x * x + 1, -1, 1)).toThrow(RangeError);
  expect(() => signChange(() => Number.NaN, 0, 1)).toThrow(RangeError);
});

test('a threshold to a relative 1e-10', () => {
  expect(Math.abs(threshold((x) => x > Math.PI, 0, 100) / Math.PI - 1)).toBeLessThan(2e-10);
  expect(() => threshold(() => true, 2, 1)).toThrow(RangeError);
});
