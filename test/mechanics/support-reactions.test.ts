import { expect, test } from 'vitest';
import { lyingPlateReactions, resultantLoad, supportReactions, triangleShares } from '../../server/src/mechanics/support-reactions.ts';

const square = [{ x: 0, y: 0 }, { x: 1, y: 0 }, { x: 1, y: 1 }, { x: 0, y: 1 }];

test('one support takes the force, and leaves the moments for the guides', () => {
  const { reactions, leftForGuides } = supportReactions([{ x: 0.2, y: 0.1 }], [{ x: 0.5, y: 0.3, force: 100 }]);
  expect(reactions[0]).toBeCloseTo(100, 9);
  expect(leftForGuides.mx).toBeCloseTo(100 * 0.2, 9);
  expect(leftForGuides.my).toBeCloseTo(100 * 0.3, 9);
});

test('two supports share along their line; across it the guides hold', () => {
  // 100 N a quarter of the way and 0.1 m off the line: 75 and 25 N, 10 N·m left.
  const { reactions, leftForGuides } = supportReactions([{ x: 0, y: 0 }, { x: 2, y: 0 }], [{ x: 0.5, y: 0.1, force: 100 }]);
  expect(reactions[0]).toBeCloseTo(75, 9);
  expect(reactions[1]).toBeCloseTo(25, 9);
  expect(leftForGuides.mx).toBeCloseTo(10, 9);
  expect(leftForGuides.my).toBeCloseTo(0, 9);
});

test('three supports: area shares, whatever their stiffness', () => {
  const three = [{ x: 0, y: 0, stiffness: 7 }, { x: 1, y: 0 }, { x: 0.2, y: 0.9, stiffness: 0.1 }];
  const load = { x: 0.3, y: 0.2, force: 50 };
  const shares = triangleShares(three[0]!, three[1]!, three[2]!, load);
  supportReactions(three, [load]).reactions.forEach((r, i) => expect(r).toBeCloseTo(50 * (shares?.[i] ?? NaN), 9));
  expect(triangleShares({ x: 0, y: 0 }, { x: 1, y: 1 }, { x: 2, y: 2 }, load)).toBeUndefined();
});

test('four alike under the middle: a quarter each; a hair off a diagonal on uneven feet it still rests on that diagonal', () => {
  supportReactions(square, [{ x: 0.5, y: 0.5, force: 100 }]).reactions.forEach((r) => expect(r).toBeCloseTo(25, 9));
  for (const off of [0, 1e-12, 1e-9, 1e-6, 1e-4]) {
    const plate = lyingPlateReactions(square.map((one, i) => ({ ...one, stiffness: 1e6, gap: i % 2 === 0 ? 0 : 1e-3 })), [{ x: 0.5, y: 0.5 + off, force: 100 }]);
    if (plate.kind !== 'rests') throw new Error('expected to rest');
    expect(plate.reactions[0]).toBeCloseTo(50, 1);
    expect(plate.reactions[2]).toBeCloseTo(50, 1);
    expect(plate.reactions.reduce((sum, r) => sum + r, 0)).toBeCloseTo(100, 6);
    expect(plate.lifted).toContain(1);
  }
});

test('a load near a corner lifts the far support of four, by hand', () => {
  // W/4 - W x0/(2 l) - W y0/(2 b) = 25 - 20 - 20 = -15 N with like springs. On the other three: shares 0.1, 0.8, 0.1.
  expect(supportReactions(square, [{ x: 0.9, y: 0.9, force: 100 }]).reactions[0]).toBeCloseTo(-15, 9);
  const plate = lyingPlateReactions(square, [{ x: 0.9, y: 0.9, force: 100 }]);
  if (plate.kind !== 'rests') throw new Error('expected to rest');
  [0, 10, 80, 10].forEach((r, i) => expect(plate.reactions[i]).toBeCloseTo(r, 6));
  expect(plate.lifted).toEqual([0]);
  expect(lyingPlateReactions(square, [{ x: 1.1, y: 0.9, force: 100 }]).kind).toBe('tips');
  expect(lyingPlateReactions(square, []).kind).toBe('tips');
});

test('resultant: 10 N at 0 and 30 N at 2: 40 N at 1.5', () => {
  expect(resultantLoad([{ x: 0, y: 0, force: 10 }, { x: 2, y: 4, force: 30 }])).toEqual({ force: 40, x: 1.5, y: 3 });
  expect(resultantLoad([])).toBe('no load');
});

test('what a caller cannot mean throws', () => {
  expect(() => supportReactions([], [])).toThrow(RangeError);
  expect(() => supportReactions([{ x: 0, y: 0, stiffness: 0 }], [])).toThrow(RangeError);
  expect(() => lyingPlateReactions([{ x: 0, y: 0 }, { x: 1, y: 0 }, { x: 2, y: 0 }], [])).toThrow(RangeError);
});
