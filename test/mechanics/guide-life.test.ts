import { expect, test } from 'vitest';
import { equivalentCarriageLoad, guideLife, guideRatingNeeded, guideStaticSafety, lifeInTime, loweredRating, meanGuideLoad, ratingForTravel } from '../../server/src/mechanics/guide-life.ts';

const rating = { element: 'ball', dynamicRating: 4000, ratedTravel: 100e3 } as const;

test('by hand: (4000/500)³·100 km = 51 200 km; with a load factor of 2 an eighth; the same carriage on the other base lives as long', () => {
  expect(guideLife(rating, 500)).toBeCloseTo(51200e3, 3);
  expect(guideLife(rating, 500, 2)).toBeCloseTo(6400e3, 3);
  expect(guideLife({ ...rating, dynamicRating: ratingForTravel(rating, 50e3), ratedTravel: 50e3 }, 500)).toBeCloseTo(51200e3, 3);
  expect(guideLife(rating, 0)).toBe(Infinity);
  expect(guideRatingNeeded('ball', 100e3, 500, 51200e3)).toBeCloseTo(4000, 6);
});

test('mean load: damage of the phases added up. 300 N over 1 m and 100 N over 3 m: cube root of 30e6/4 = 195.7 N', () => {
  expect(meanGuideLoad('ball', [{ load: 300, travel: 1 }, { load: -100, travel: 3 }])).toBeCloseTo(Math.cbrt(7.5e6), 9);
  expect(meanGuideLoad('roller', [{ load: 300, travel: 2 }])).toBeCloseTo(300, 9);
  expect(meanGuideLoad('ball', [])).toBe('no motion');
});

test('51 200 km at 0.5 m strokes, one there and back a second: 51.2e6 s', () => {
  expect(lifeInTime(51200e3, 0.5, 1)).toBeCloseTo(51.2e6, 3);
});

test('two that touch 0.81 of the rating (one supplier), six as five (from memory)', () => {
  expect(loweredRating(1000, { touching: 2 })).toBeCloseTo(810, 9);
  expect(loweredRating(1000, { touching: 6, hardness: 0.5, temperature: 0.9 })).toBeCloseTo(274.5, 9);
});

test('forces and moments on one carriage, by hand: 100 + 200 + 6000·(3/30 + 1/20 + 0) = 1200 N, safety 5', () => {
  const ratings = { staticRating: 6000, rollMoment: 30, pitchMoment: 20 };
  const load = { fy: -100, fz: 200, mx: -3, my: 1, mz: 0 };
  expect(equivalentCarriageLoad(load, ratings)).toBeCloseTo(1200, 9);
  expect(guideStaticSafety(6000, 1200)).toBe(5);
  expect(equivalentCarriageLoad({ ...load, mz: 0.1 }, ratings)).toBe('takes no moment');
});

test('what a caller cannot mean throws', () => {
  expect(() => guideLife({ ...rating, dynamicRating: 0 }, 1)).toThrow(RangeError);
  expect(() => guideLife(rating, 1, 0.5)).toThrow(RangeError);
  expect(() => loweredRating(1, { hardness: 1.1 })).toThrow(RangeError);
  expect(() => lifeInTime(-1, 1, 1)).toThrow(RangeError);
});
