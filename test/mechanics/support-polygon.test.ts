import fc from 'fast-check';
import { expect, test } from 'vitest';
import { distanceToEdge, loadPoint, supportPolygon, tippingAcceleration, walkingAcceleration } from '../../server/src/mechanics/support-polygon.ts';

const square = [{ x: 0, y: 0 }, { x: 1, y: 0 }, { x: 1, y: 1 }, { x: 0, y: 1 }];

test('every place lies within the polygon of all, which turns left at every corner (property)', () => {
  const place = fc.record({ x: fc.integer({ min: -20, max: 20 }), y: fc.integer({ min: -20, max: 20 }) });
  fc.assert(fc.property(fc.array(place, { minLength: 1, maxLength: 12 }), (places) => {
    const polygon = supportPolygon(places);
    if (polygon.length < 3) return;
    polygon.forEach((a, i) => {
      const b = polygon[(i + 1) % polygon.length]!;
      const c = polygon[(i + 2) % polygon.length]!;
      expect((b.x - a.x) * (c.y - b.y) - (b.y - a.y) * (c.x - b.x)).toBeGreaterThan(0);
    });
    for (const one of places) expect(distanceToEdge(one, places)).toBeGreaterThanOrEqual(0);
  }));
});

test('distances by hand', () => {
  expect(distanceToEdge({ x: 0.5, y: 0.2 }, square)).toBeCloseTo(0.2, 12);
  expect(distanceToEdge({ x: 4, y: 5 }, square)).toBeCloseTo(-5, 12);
  expect(distanceToEdge({ x: 0.5, y: 1 }, square)).toBeCloseTo(0, 12);
  expect(distanceToEdge({ x: 0.5, y: 0.3 }, [{ x: 0, y: 0 }, { x: 1, y: 0 }])).toBeCloseTo(-0.3, 12);
  expect(distanceToEdge({ x: 3, y: 4 }, [{ x: 0, y: 0 }])).toBeCloseTo(-5, 12);
  expect(() => supportPolygon([])).toThrow(RangeError);
});

test('the load moves back by a h/g: 10 kg 0.5 m high at 2 m/s² and g = 10: 0.1 m; falling freely there is none', () => {
  const mass = { mass: 10, height: 0.5, x: 0.4, y: 0.5 };
  expect(loadPoint([{ ...mass, acceleration: { x: 2, y: 0, z: 0 } }], 10)).toEqual({ force: 100, x: expect.closeTo(0.3, 12) as number, y: expect.closeTo(0.5, 12) as number });
  expect(loadPoint([{ ...mass, acceleration: { x: 0, y: 0, z: -10 } }], 10)).toBe('no load');
});

test('tipping, by hand: 200 N 0.4 m from the edge, 8 kg at 0.5 m: 20 m/s²; at that acceleration the load acts on the edge', () => {
  const tipping = { weight: 200, at: { x: 0.4, y: 0.5 }, movingMass: 8, height: 0.5 };
  expect(tippingAcceleration(tipping, square)).toBeCloseTo(20, 9);
  expect(tippingAcceleration(tipping, square, { x: 1, y: 0 })).toBeCloseTo(20, 9);
  expect(tippingAcceleration(tipping, square, { x: -3, y: 0 })).toBeCloseTo(30, 9);
  expect(tippingAcceleration(tipping, square, { x: 0, y: 1 })).toBeCloseTo(25, 9);
  expect(tippingAcceleration({ ...tipping, at: { x: 1.2, y: 0.5 } }, square)).toBe(0);
  const load = loadPoint([{ mass: 12, height: 0.1, x: 0.4, y: 0.5 }, { mass: 8, height: 0.5, x: 0.4, y: 0.5, acceleration: { x: 20, y: 0, z: 0 } }], 10);
  if (load === 'no load') throw new Error('expected a load');
  expect(distanceToEdge(load, square)).toBeCloseTo(0, 9);
});

test('walking: 0.3·200/8 = 7.5 m/s²', () => {
  expect(walkingAcceleration(200, 8, 0.3)).toBeCloseTo(7.5, 12);
});
