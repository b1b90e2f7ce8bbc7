/** Tipping and walking by hand. */
import { describe, expect, test } from 'vitest';
import { supportPolygon, tippingForce, tippingMargin, walkingFactor, type Standing } from '../../server/src/mechanics/frame-stability.ts';

// 40 kg on feet 0.6 m by 0.4 m, centre of gravity 0.05 m off the middle along X.
const standing: Standing = { feet: [[-0.3, -0.2], [0.3, -0.2], [0.3, 0.2], [-0.3, 0.2]], mass: 40, centre: [0.05, 0], gravity: 10 };

test('outline: corners counterclockwise, a foot inside and one on an edge left out', () => {
  expect(supportPolygon([[0, 0], [1, 0], [0.5, 0.4], [1, 1], [0.5, 0], [0, 1]])).toEqual([[0, 0], [1, 0], [1, 1], [0, 1]]);
  expect(supportPolygon([[0, 0], [1, 1], [2, 2]]).length).toBe(2);
});

describe('tipping', () => {
  test('at rest: the nearest edge', () => {
    expect(tippingMargin(standing, [])).toBeCloseTo(0.2, 12);
  });
  test('8 kg thrown at 5 m/s² at 0.5 m: 40 · 0.5/400 = 0.05 m nearer to the edge along X', () => {
    expect(tippingMargin(standing, [{ force: [40, 0], height: 0.5 }])).toBeCloseTo(Math.min(0.3 - 0.05 - 0.05, 0.2), 12);
    // 400 N at 0.5 m would need 0.5 m.
    expect(tippingMargin(standing, [{ force: [400, 0], height: 0.5 }])).toBeCloseTo(-0.3 + 0.05, 12);
  });
  test('force to tip: 400 · 0.25/0.5 = 200 N one way, 400 · 0.35/0.5 = 280 N the other, 160 N across', () => {
    expect(tippingForce(standing, [1, 0], 0.5)).toBeCloseTo(200, 9);
    expect(tippingForce(standing, [-2, 0], 0.5)).toBeCloseTo(280, 9);
    expect(tippingForce(standing, [0, 1], 0.5)).toBeCloseTo(160, 9);
  });
  test('on three feet it tips over the side between two; at the found force the margin is nil', () => {
    const stool: Standing = { ...standing, feet: [[0.3, 0], [-0.3, 0.25], [-0.3, -0.25]] };
    for (const direction of [[1, 0.4], [1, 3], [-1, 0.2]] as const) {
      const force = tippingForce(stool, direction, 0.4);
      const size = Math.hypot(...direction);
      expect(tippingMargin(stool, [{ force: [(force * direction[0]) / size, (force * direction[1]) / size], height: 0.4 }])).toBeCloseTo(0, 12);
    }
  });
  test('a centre of gravity outside tips by itself', () => {
    expect(tippingForce({ ...standing, centre: [0.31, 0] }, [-1, 0], 0.5)).toBe(0);
    expect(tippingMargin({ ...standing, centre: [0.31, 0] }, [])).toBeCloseTo(-0.01, 12);
  });
  test('feet in a line are refused', () => {
    expect(() => tippingMargin({ ...standing, feet: [[0, 0], [1, 0], [2, 0]] }, [])).toThrow(RangeError);
  });
});

test('walking: 0.4 · 40 · 10/100 N = 1.6', () => {
  expect(walkingFactor(standing, 0.4, 100)).toBeCloseTo(1.6, 12);
  expect(walkingFactor(standing, 0.4, 0)).toBe(Infinity);
});
