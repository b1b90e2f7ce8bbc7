/** Rating life of rolling guides, mounting limits and plain bushings against printed numbers. */
import { describe, expect, test } from 'vitest';
import { guideLife, guideRatingNeeded, lifeExponent, ratingForTravel } from '../../server/src/mechanics/guide-life.ts';
import { permittedHeightDifference } from '../../server/src/mechanics/guide-mismatch.ts';
import { bushingPressure, bushingPressureVelocity } from '../../server/src/mechanics/plain-bushing.ts';

const pound = 4.4482216;
const inch = 0.0254;

describe('rating life', () => {
  // Both examples count revolutions; the law is the same, with a million of them in place of the rated travel.
  test('Wentzell, Machine Design, example 20.1, p. 431: 88.73 h at 1750 rpm', () => {
    const revolutions = guideLife({ element: 'ball', dynamicRating: 5050 * pound, ratedTravel: 1e6 }, 2400 * pound);
    expect(revolutions / 1750 / 60).toBeCloseTo(88.73, 2);
  });
  test('Wentzell, example 20.2: 6621.42 lb for 21 million', () => {
    expect(guideRatingNeeded('ball', 1e6, 2400 * pound, 21e6) / pound).toBeCloseTo(6621.42, 2);
  });
  test('trade handbook on linear bearings, citing ISO 14728-1: a rating for 50 km is 1.26 times that for 100 km; rollers 1.23 (2^0.3, by hand)', () => {
    expect(ratingForTravel({ element: 'ball', dynamicRating: 1, ratedTravel: 100e3 }, 50e3)).toBeCloseTo(1.26, 3);
    expect(ratingForTravel({ element: 'roller', dynamicRating: 1, ratedTravel: 100e3 }, 50e3)).toBeCloseTo(1.2311, 4);
  });
  test('ISO 14728-1 (as quoted): exponents 3 and 10/3', () => {
    expect(lifeExponent('ball')).toBe(3);
    expect(lifeExponent('roller')).toBeCloseTo(10 / 3, 15);
  });
});

test('mounting sheet of a miniature guide, section 15.4.1: 120 mm apart, factor 0.00015: 0.018 mm', () => {
  expect(permittedHeightDifference(0.12, 0.00015)).toBeCloseTo(0.018e-3, 9);
});

test('page on plastic bearings: 35 lb on 0.625 by 1.03125 in is 54.3 psi, at 19.635 ft/min 1066.2 psi·ft/min', () => {
  const psi = pound / inch ** 2;
  const pressure = bushingPressure(35 * pound, 0.625 * inch, 1.03125 * inch);
  expect(pressure / psi).toBeCloseTo(54.3, 1);
  const feetPerMinute = 0.3048 / 60;
  expect(bushingPressureVelocity({ pressure, speed: 19.635 * feetPerMinute }) / (psi * feetPerMinute)).toBeCloseTo(1066.2, 0);
});
