import { expect, test } from 'vitest';
import { reactionBounds, reactionExtremes, reactionShares, rectangleCorners } from '../../server/src/mechanics/support-extremes.ts';

const three = [{ x: 0, y: 0 }, { x: 1, y: 0 }, { x: 0, y: 1 }];
const square = [...three, { x: 1, y: 1 }];

test('three screws, a tool that travels, by hand', () => {
  // R1 = F (1 - x - y), R2 = F x, R3 = F y. Plate 60 N at (0.3, 0.3); 20 N from (0, 0) to (0.5, 0.8): R2 from 18 to 28, R1 from 24 - 6 to 24 + 20.
  const { least, most } = reactionExtremes(three, [{ x: 0.3, y: 0.3, force: 60 }], [{ forces: [20], places: rectangleCorners([0, 0.5], [0, 0.8]) }]);
  expect(least.map(({ reaction }) => reaction)).toEqual([18, 18, 18].map((value) => expect.closeTo(value, 9) as number));
  expect(most.map(({ reaction }) => reaction)).toEqual([44, 28, 34].map((value) => expect.closeTo(value, 9) as number));
  expect(least[0]?.moving).toEqual([{ x: 0.5, y: 0.8, force: 20 }]);
});

test('two independent loads each go to their own worst place; one that may be absent counts as nothing', () => {
  const tool = { forces: [20], places: rectangleCorners([0, 1], [0, 0]) };
  const work = { forces: [0, 50], places: [{ x: 0.2, y: 0.2 }, { x: 0.4, y: 0.1 }] };
  const { least, most } = reactionExtremes(three, [], [tool, work]);
  expect(least[1]?.reaction).toBeCloseTo(0, 9);
  expect(most[1]?.reaction).toBeCloseTo(20 + 20, 9);
  expect(() => reactionExtremes(three, [], [{ forces: [], places: [] }])).toThrow(RangeError);
});

test('four supports under the middle: each may carry nothing or half, whatever their stiffness', () => {
  // Either diagonal alone can hold it.
  expect(reactionBounds(square, [{ x: 0.5, y: 0.5, force: 100 }])).toEqual(square.map(() => ({ least: expect.closeTo(0, 9) as number, most: expect.closeTo(50, 9) as number })));
  expect(reactionBounds(three, [{ x: 0.2, y: 0.3, force: 10 }])).toEqual([5, 2, 3].map((value) => ({ least: expect.closeTo(value, 9) as number, most: expect.closeTo(value, 9) as number })));
  expect(reactionBounds(square, [{ x: 1.2, y: 0.5, force: 100 }])).toBe('tips');
  expect(reactionBounds([{ x: 0, y: 0 }, { x: 1, y: 0 }], [{ x: 0.25, y: 0, force: 8 }])).toEqual([6, 2].map((value) => ({ least: value, most: value })));
  expect(() => reactionBounds([], [])).toThrow(RangeError);
});

test('shares add up to 1', () => {
  expect(reactionShares([10, 20, 10])).toEqual([0.25, 0.5, 0.25]);
  expect(reactionShares([0, 0])).toBe('no load');
});
