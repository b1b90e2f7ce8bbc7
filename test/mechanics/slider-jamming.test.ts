import fc from 'fast-check';
import { expect, test } from 'vitest';
import { combinedOffset, guidedLengthNeeded, jammingRatio, lockingOffset, oneSidedDrive, sliderForce } from '../../server/src/mechanics/slider-jamming.ts';

const base = { guidedLength: 0.1, friction: 0.2, driveOffset: 0, load: 10 };

test('closed forms, by hand: 10/(1 - 2·0.2·0.5) = 12.5; 10 (1 + 2·0.2·3) = 22; both 10·2.2/0.8 = 27.5 N', () => {
  expect(sliderForce({ ...base, driveOffset: 0.05 })).toEqual({ kind: 'moves', force: expect.closeTo(12.5, 9) as number, locksAbove: Infinity });
  expect(sliderForce({ ...base, loadOffset: 0.3 })).toMatchObject({ force: expect.closeTo(22, 9) as number });
  expect(sliderForce({ ...base, driveOffset: 0.05, loadOffset: -0.3 })).toMatchObject({ force: expect.closeTo(27.5, 9) as number });
});

test('a side force rubs by itself until a couple outweighs it: 10 + 0.2·60 = 22 N; seals come on top', () => {
  expect(sliderForce({ ...base, sideForce: -60, constantDrag: 3 })).toMatchObject({ force: expect.closeTo(25, 9) as number });
  expect(sliderForce({ ...base, sideForce: 60, driveOffset: 0.05 })).toMatchObject({ force: expect.closeTo(22, 9) as number });
});

test('a drive through the load drives straight: nothing is rubbed off', () => {
  expect(sliderForce({ ...base, driveOffset: 0.07, loadOffset: 0.07 })).toMatchObject({ kind: 'moves', force: expect.closeTo(10, 9) as number });
});

test('a load offset alone never locks, a drive offset locks from s/(2 mu) on (property)', () => {
  const some = fc.double({ min: 0.01, max: 2, noNaN: true });
  fc.assert(fc.property(some, some, some, (s, mu, offset) => {
    expect(sliderForce({ guidedLength: s, friction: mu, driveOffset: 0, load: 5, loadOffset: offset }).kind).toBe('moves');
    const limit = lockingOffset(s, mu);
    expect(sliderForce({ guidedLength: s, friction: mu, driveOffset: limit * 1.0001, load: 5 }).kind).toBe('locks');
    expect(sliderForce({ guidedLength: s, friction: mu, driveOffset: -limit * 0.9999, load: 5 }).kind).toBe('moves');
    expect(jammingRatio(guidedLengthNeeded(limit, mu), mu, limit)).toBeCloseTo(1, 9);
  }));
});

test('length needed: 2·0.2·0.3·2 = 0.24 m; offsets in two directions: 5 of 3 and 4 round, 7 flat', () => {
  expect(guidedLengthNeeded(-0.3, 0.2, 2)).toBeCloseTo(0.24, 12);
  expect(combinedOffset('round', 3, -4)).toBe(5);
  expect(combinedOffset('flat faces', 3, -4)).toBe(7);
});

test('a bridge driven at one side: 5 + 4 (1 + 2·0.1·0.4/0.08) = 13 N, racking 4·0.4/(1e6·0.08²/2) = 0.5 mrad', () => {
  const { force, racking } = oneSidedDrive({ drivenLoad: 5, otherLoad: 4, spacing: 0.4, guidedLength: 0.08, friction: 0.1, bearingStiffness: 1e6 });
  expect(force).toBeCloseTo(13, 9);
  expect(racking).toBeCloseTo(0.5e-3, 9);
  // The same as a slider with both loads in their places.
  expect(sliderForce({ guidedLength: 0.08, friction: 0.1, driveOffset: 0, load: 9, loadOffset: (4 * 0.4) / 9 })).toMatchObject({ force: expect.closeTo(13, 9) as number });
});

test('what a caller cannot mean throws', () => {
  expect(() => sliderForce({ ...base, guidedLength: 0 })).toThrow(RangeError);
  expect(() => sliderForce({ ...base, load: -1 })).toThrow(RangeError);
  expect(() => guidedLengthNeeded(1, 1, 0.5)).toThrow(RangeError);
});
