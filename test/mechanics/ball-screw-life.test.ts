import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { equivalentMeanLoad, lifeAsTravelAndTime, meanLoadOfRamp, preloadedLife, ratingForLife, ratingLife, staticSafety } from '../../server/src/mechanics/ball-screw-life.ts';

const phases = fc.array(fc.record({ force: fc.double({ min: 1, max: 1e4, noNaN: true }).chain((size) => fc.constantFrom(size, -size)), turns: fc.double({ min: 0.1, max: 1000, noNaN: true }) }), { minLength: 1, maxLength: 6 });

test('the mean lies between the smallest and largest load and grows in proportion', () => {
  fc.assert(fc.property(phases, (duty) => {
    const mean = equivalentMeanLoad(duty) as number;
    const sizes = duty.map((phase) => Math.abs(phase.force));
    expect(mean).toBeGreaterThanOrEqual(Math.min(...sizes) * (1 - 1e-9));
    expect(mean).toBeLessThanOrEqual(Math.max(...sizes) * (1 + 1e-9));
    const doubled = equivalentMeanLoad(duty.map((phase) => ({ ...phase, force: 2 * phase.force }))) as number;
    expect(doubled).toBeCloseTo(2 * mean, 6);
  }));
});

test('two phases by hand', () => {
  // (100³ · 3 + 200³ · 1)/4 = 2.75e6, cube root 140.1.
  expect(equivalentMeanLoad([{ force: 100, turns: 3 }, { force: -200, turns: 1 }])).toBeCloseTo(140.1, 1);
  expect(equivalentMeanLoad([{ force: 100, turns: 0 }])).toBe('no motion');
  expect(() => equivalentMeanLoad([{ force: 1, turns: -1 }])).toThrow(RangeError);
});

test('a ramp equals many small steps, and the usual short form is at most 8.5 % above', () => {
  for (const [least, most] of [[0, 100], [30, 100], [50, 100], [100, 100]] as const) {
    const steps = Array.from({ length: 2000 }, (_, i) => ({ force: least + ((most - least) * (i + 0.5)) / 2000, turns: 1 }));
    expect(meanLoadOfRamp(least, most)).toBeCloseTo(equivalentMeanLoad(steps) as number, 3);
    const short = (least + 2 * most) / 3;
    expect(short / meanLoadOfRamp(least, most)).toBeGreaterThan(0.999);
    expect(short / meanLoadOfRamp(least, most)).toBeLessThan(1.085);
  }
});

test('half the load, eight times the life; rating for a life gives the life back', () => {
  fc.assert(fc.property(fc.double({ min: 100, max: 1e5, noNaN: true }), fc.double({ min: 1, max: 1e4, noNaN: true }), (rating, load) => {
    expect(ratingLife(rating, load / 2) / ratingLife(rating, load)).toBeCloseTo(8, 9);
    expect(ratingForLife(load, ratingLife(rating, load)) / rating).toBeCloseTo(1, 9);
  }));
  expect(ratingLife(100, 0)).toBe(Infinity);
});

describe('preloaded', () => {
  test('without load both halves wear alike: 2^-0.9 of one', () => {
    expect((preloadedLife(1000, [{ force: 0, turns: 1 }], 100) as number) / ratingLife(1000, 100)).toBeCloseTo(2 ** -0.9, 6);
  });
  test('without preload and one direction it is the plain life', () => {
    expect((preloadedLife(1000, [{ force: 100, turns: 5 }], 0) as number) / ratingLife(1000, 100)).toBeCloseTo(1, 9);
    expect(preloadedLife(1000, [{ force: 100, turns: 0 }], 0)).toBe('no motion');
  });
  test('preload never lengthens life', () => {
    fc.assert(fc.property(phases, fc.double({ min: 1, max: 1000, noNaN: true }), (duty, preload) => {
      expect(preloadedLife(1e4, duty, preload) as number).toBeLessThanOrEqual((preloadedLife(1e4, duty, 0) as number) * (1 + 1e-6));
    }));
  });
});

test('life as travel and time', () => {
  // 1e6 turns of 5 mm: 5 km; at 600 rpm 1666.7 min = 27.78 h.
  const found = lifeAsTravelAndTime(1e6, 5e-3, 20 * Math.PI);
  expect(found.travel).toBeCloseTo(5000, 9);
  expect(found.time / 3600).toBeCloseTo(27.78, 2);
});

test('static safety', () => {
  expect(staticSafety(13000, -1300)).toBeCloseTo(10, 12);
  expect(staticSafety(13000, 0)).toBe(Infinity);
});
