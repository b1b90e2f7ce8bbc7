import { expect, test } from 'vitest';
import { bushingEdgePressure, bushingPressure, travelToWear } from '../../server/src/mechanics/plain-bushing.ts';

test('60 N on 12 by 20 mm: 0.25 MPa, by hand', () => {
  expect(bushingPressure(60, 12e-3, 20e-3)).toBeCloseTo(0.25e6, 6);
});

test.each([0, 2e-3, 5e-3, 30e-3])('strips of a linear pressure with the edge value computed carry 60 N at %f m', (eccentricity) => {
  const [d, l, n] = [12e-3, 20e-3, 2000];
  const edge = bushingEdgePressure(60, eccentricity, d, l);
  const mean = bushingPressure(60, d, l);
  let [force, moment] = [0, 0];
  for (let i = 0; i < n; i++) {
    const x = ((i + 0.5) / n - 0.5) * l;
    const strip = (mean + (edge - mean) * (x / (l / 2))) * d * (l / n);
    force += strip;
    moment += strip * x;
  }
  expect(force).toBeCloseTo(60, 6);
  expect(moment).toBeCloseTo(60 * eccentricity, 6);
});

test('0.1 mm at 1e-15 m²/N and 0.25 MPa: 400 km; nothing wears without load', () => {
  expect(travelToWear(0.1e-3, 1e-15, 0.25e6)).toBeCloseTo(400e3, 3);
  expect(travelToWear(0.1e-3, 1e-15, 0)).toBe(Infinity);
});
