import fc from 'fast-check';
import { expect, test } from 'vitest';
import { levellingMoves, levellingOrder, liftEffect, tiltOfPlate, tiltRange } from '../../server/src/mechanics/levelling.ts';

const three = [{ x: 0, y: 0 }, { x: 0.4, y: 0 }, { x: 0.2, y: 0.3 }] as const;
const four = [{ x: 0, y: 0 }, { x: 0.4, y: 0 }, { x: 0.4, y: 0.4 }, { x: 0, y: 0.4 }];

test('the plane through three lifts, and how far one of four is off (a quarter of its error, alternating)', () => {
  const tilt = tiltOfPlate(three, [1e-3, 3e-3, 2e-3 + 0.3e-3]);
  expect(tilt.slopeX).toBeCloseTo(5e-3, 12);
  expect(tilt.slopeY).toBeCloseTo(1e-3, 12);
  expect(tilt.height).toBeCloseTo(1e-3, 12);
  tilt.off.forEach((off) => expect(off).toBeCloseTo(0, 12));
  expect(tiltOfPlate(four, [4e-4, 0, 0, 0]).off.map((off) => Math.round(off * 1e7) / 1e3)).toEqual([1, -1, 1, -1]);
});

test('the moves level any plate and keep one place (property)', () => {
  const slope = fc.double({ min: -0.01, max: 0.01, noNaN: true });
  fc.assert(fc.property(slope, slope, (sx, sy) => {
    const keep = { x: 0.2, y: 0.1 };
    const heights = three.map(({ x, y }) => 0.01 + sx * x + sy * y);
    const moves = levellingMoves(three, sx, sy, keep);
    const after = tiltOfPlate(three, heights.map((h, i) => h + (moves[i] as number)));
    expect(after.steepest).toBeLessThan(1e-12);
    expect(after.height).toBeCloseTo(0.01 + sx * keep.x + sy * keep.y, 12);
  }));
});

test('one lift turns the plate about the line of the other two: the third, 0.3 m from it, by hand', () => {
  const effect = liftEffect(three, 2, [{ x: 0.2, y: 0.3 }, { x: 0.1, y: 0 }, { x: 0.4, y: 0.45 }]);
  expect(effect.slopePerMetre).toBeCloseTo(1 / 0.3, 9);
  expect(effect.rises.y).toBeCloseTo(1, 9);
  [1, 0, 1.5].forEach((rise, i) => expect(effect.riseAt[i]).toBeCloseTo(rise, 9));
});

test('reach: 2 mm up and down on lifts at most 0.4 m apart: 4/400 = 10 mrad in the worst direction', () => {
  const reach = three.map(() => ({ up: 2e-3, down: 2e-3 }));
  const range = tiltRange(three, reach);
  expect(range.everyDirection).toBeCloseTo(0.01, 12);
  expect([...range.between].sort()).toEqual([0, 1]);
});

test('an order is found that stays flat enough; in one go when there is room, in rounds when there is not', () => {
  const [start, end] = [[0, 0, 0], [3e-3, 3e-3, 3e-3]];
  const free = levellingOrder(three, start, end, 0.1);
  expect(free).toMatchObject({ kind: 'order', rounds: 1 });
  // A third of a millimetre at a time would do: the flattest first step lifts one lift by 3 mm/r over its height of at least 0.24 m.
  const tight = levellingOrder(three, start, end, 2e-3);
  if (tight.kind !== 'order') throw new Error('expected an order');
  expect(tight.rounds).toBeGreaterThan(1);
  expect(tight.steepest).toBeLessThanOrEqual(2e-3);
  // Walk it with small steps: never steeper than said.
  const heights = [0, 0, 0];
  for (let round = 0; round < tight.rounds; round++) for (const i of tight.order) for (let step = 0; step < 10; step++) {
    heights[i] = (heights[i] as number) + 3e-3 / tight.rounds / 10;
    expect(tiltOfPlate(three, heights).steepest).toBeLessThanOrEqual(tight.steepest + 1e-12);
  }
  heights.forEach((h) => expect(h).toBeCloseTo(3e-3, 12));
});

test('the start or the end may already be too steep; 64 rounds may not be enough', () => {
  expect(levellingOrder(three, [0, 4e-3, 0], [0, 0, 0], 5e-3)).toMatchObject({ kind: 'out of range', at: 'start', steepest: expect.any(Number) as number });
  expect(levellingOrder(three, [0, 0, 0], [0, 4e-3, 0], 5e-3)).toMatchObject({ kind: 'out of range', at: 'end' });
  expect(levellingOrder(three, [0, 0, 0], [1, 1, 1], 1e-3).kind).toBe('too steep on the way');
});

test('what a caller cannot mean throws', () => {
  expect(() => tiltOfPlate([{ x: 0, y: 0 }, { x: 1, y: 1 }, { x: 2, y: 2 }], [0, 0, 0])).toThrow(RangeError);
  expect(() => tiltOfPlate(three, [0, 0])).toThrow(RangeError);
  expect(() => tiltRange(three, [{ up: 1, down: 1 }])).toThrow(RangeError);
  expect(() => levellingOrder(three, [0, 0, 0], [0, 0, 0], 0)).toThrow(RangeError);
});
