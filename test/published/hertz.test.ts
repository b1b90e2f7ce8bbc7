/** Contacts against printed values. */
import { describe, expect, test } from 'vitest';
import { pointContact } from '../../server/src/mechanics/hertz-contact.ts';

const off = (found: number, wanted: number): number => Math.abs(found / wanted - 1);

// Verification case of an open finite-element suite: two spheres of radius 2, ν 0.25, E 14 062 500, pressed with 10 000: a 0.1, approach 0.01.
test('two equal spheres', () => {
  const found = pointContact(10000, [[0.5, 0.5], [0.5, 0.5]], 0, { youngsModulus: [14062500, 14062500], poissonRatio: [0.25, 0.25] });
  expect(off(found.longHalf, 0.1)).toBeLessThan(1e-9);
  expect(off(found.shortHalf, 0.1)).toBeLessThan(1e-9);
  expect(off(found.approach, 0.01)).toBeLessThan(1e-9);
  // 3 N/(2 π a²) and k = 2 E* a, by hand: E* = 14062500/(2 · 0.9375) = 7.5e6.
  expect(off(found.peakPressure, 477464.8)).toBeLessThan(1e-6);
  expect(off(found.stiffness, 1.5e6)).toBeLessThan(1e-9);
});

describe('Boresi and Schmidt, Advanced Mechanics of Materials, example 17.1', () => {
  // Barrels of radii 60, 130 and 80, 200 mm at 60°, 4.5 kN, E 200 GPa, ν 0.29. Printed 1597 MPa with coefficients read off a chart.
  const found = pointContact(4500, [[1 / 0.06, 1 / 0.13], [1 / 0.08, 1 / 0.2]], Math.PI / 3, { youngsModulus: [200e9, 200e9], poissonRatio: [0.29, 0.29] });
  test('the chart reads 2.8 % low', () => {
    expect(found.peakPressure / 1596.76e6 - 1).toBeGreaterThan(0.02);
    expect(found.peakPressure / 1596.76e6 - 1).toBeLessThan(0.035);
  });
  test('the pressure carries the load and its gap vanishes at the edge: integrated over the area', () => {
    // p = p₀ √(1 − r²): the load is 2/3 p₀ π a b. And the deflection under the pressure, by summing point loads, drops by A x² from the middle to (x, 0).
    expect(off((2 / 3) * found.peakPressure * Math.PI * found.longHalf * found.shortHalf, 4500)).toBeLessThan(1e-9);
    const modulus = 200e9 / (2 * (1 - 0.29 ** 2));
    const sum = (1 / 0.06 + 1 / 0.13 + 1 / 0.08 + 1 / 0.2) / 2;
    const [d1, d2] = [1 / 0.06 - 1 / 0.13, 1 / 0.08 - 1 / 0.2];
    const difference = 0.5 * Math.sqrt(d1 ** 2 + d2 ** 2 + 2 * d1 * d2 * Math.cos((2 * Math.PI) / 3));
    const weak = (sum - difference) / 2;
    const strong = (sum + difference) / 2;
    const [a, b] = [found.longHalf, found.shortHalf];
    /** u(x, y) = ∫∫ p/(π E* s) ds s dφ in rays from the point: along a ray p is a root of a quadratic, whose integral is π/2 of its peak over its curvature. */
    const deflection = (x: number, y: number): number => {
      let total = 0;
      const count = 2000;
      for (let i = 0; i < count; i++) {
        const phi = (Math.PI * (i + 0.5)) / count;
        const [c, s] = [Math.cos(phi), Math.sin(phi)];
        // 1 − ((x + c t)/a)² − ((y + s t)/b)² = α − 2 β t − γ t²; over the whole chord ∫√ = π (α + β²/γ)/(2 √γ).
        const alpha = 1 - (x / a) ** 2 - (y / b) ** 2;
        const beta = (c * x) / a ** 2 + (s * y) / b ** 2;
        const gamma = (c / a) ** 2 + (s / b) ** 2;
        total += (Math.PI * (alpha + beta ** 2 / gamma)) / (2 * Math.sqrt(gamma));
      }
      return (found.peakPressure * total * Math.PI) / count / (Math.PI * modulus);
    };
    expect(off(deflection(0, 0), found.approach)).toBeLessThan(1e-6);
    expect(off((deflection(0, 0) - deflection(a / 2, 0)) / (a / 2) ** 2, weak)).toBeLessThan(1e-6);
    expect(off((deflection(0, 0) - deflection(0, b / 2)) / (b / 2) ** 2, strong)).toBeLessThan(1e-6);
  });
});

// A 6 mm ball on a flat of steel, 20 N: a 73 µm, p₀ 1.77 GPa; by hand E* = 206e9/(2 · 0.91) = 113.2e9, a³ = 3 · 20 · 0.003/(4 E*).
test('ball on a flat', () => {
  const found = pointContact(20, [[1 / 0.003, 1 / 0.003], [0, 0]], 0, { youngsModulus: [206e9, 206e9], poissonRatio: [0.3, 0.3] });
  expect(off(found.longHalf, 73.5e-6)).toBeLessThan(2e-3);
  expect(off(found.peakPressure, 1.767e9)).toBeLessThan(3e-3);
});

test('a ball in a groove of its own radius touches along a line', () => {
  expect(() => pointContact(20, [[1, 1], [-1, 0]], 0, { youngsModulus: [1, 1], poissonRatio: [0.3, 0.3] })).toThrow(RangeError);
});
