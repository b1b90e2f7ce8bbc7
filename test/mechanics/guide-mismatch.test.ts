import { expect, test } from 'vitest';
import { mismatchDrag, mismatchForce, permittedHeightDifference, twistForce } from '../../server/src/mechanics/guide-mismatch.ts';
import { supportReactions } from '../../server/src/mechanics/support-reactions.ts';

test('0.1 mm over two pairs of carriages of 20e6 N/m and a frame of 5e6: 1e-4/(0.05e-6 + 0.05e-6 + 0.2e-6) = 333 N, by hand', () => {
  expect(mismatchForce(-1e-4, [20e6, 20e6, 5e6])).toBeCloseTo(1000 / 3, 6);
  expect(mismatchForce(1e-4, [Infinity, 1e6])).toBeCloseTo(100, 9);
  expect(() => mismatchForce(1e-4, [Infinity])).toThrow(RangeError);
  expect(() => mismatchForce(1e-4, [0])).toThrow(RangeError);
});

test('both sides rub: 2·0.003·100·2 = 1.2 N', () => {
  expect(mismatchDrag(100, 2, 0.003)).toBeCloseTo(1.2, 12);
});

test('one of four too high by 20 µm at 10e6 N/m: 50 N more on it and on the one opposite, 50 less on the others', () => {
  const corners = [[0, 0], [1, 0], [1, 1], [0, 1]].map(([x, y], i) => ({ x: x as number, y: y as number, stiffness: 10e6, gap: i === 0 ? -20e-6 : 0 }));
  const { reactions } = supportReactions(corners, [{ x: 0.5, y: 0.5, force: 400 }]);
  expect(twistForce(20e-6, 10e6)).toBeCloseTo(50, 9);
  reactions.forEach((reaction, i) => expect(reaction).toBeCloseTo(i % 2 === 0 ? 150 : 50, 6));
});

test('a height difference of 0.0012 of 200 mm is 0.24 mm', () => {
  expect(permittedHeightDifference(0.2, 0.0012)).toBeCloseTo(0.24e-3, 12);
});
