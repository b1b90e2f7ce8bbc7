/** Section properties against series and limits. */
import { describe, expect, test } from 'vitest';
import { rectangularTube, roundSection, solidRectangle } from '../../server/src/mechanics/frame-sections.ts';

test.each([1, 1.5, 2, 4, 10])('solid rectangle, sides 1 to %d: torsion by the series of Saint-Venant within 0.5 %%', (ratio) => {
  // J = a c³ (1/3 − (64/π⁵)(c/a) Σ tanh(n π a/(2 c))/n⁵), n odd (Timoshenko and Goodier, Theory of Elasticity, torsion of rectangular bars, from memory).
  let sum = 0;
  for (let n = 1; n < 40; n += 2) sum += Math.tanh((n * Math.PI * ratio) / 2) / n ** 5;
  const series = ratio * (1 / 3 - (64 / Math.PI ** 5 / ratio) * sum);
  expect(Math.abs(solidRectangle(1, ratio).torsion / series - 1)).toBeLessThan(5e-3);
  expect(solidRectangle(ratio, 1).torsion).toBe(solidRectangle(1, ratio).torsion);
});

test('solid rectangle 20 mm wide, 40 mm high: 10.67 and 2.67 cm⁴ by b h³/12', () => {
  const section = solidRectangle(0.02, 0.04);
  expect(section.secondUpright).toBeCloseTo(10.6667e-8, 12);
  expect(section.secondSideways).toBeCloseTo(2.6667e-8, 12);
});

test('round: polar is twice the second moment; a tube is the difference of two bars', () => {
  const tube = roundSection(0.03, 0.02);
  expect(tube.torsion).toBe(2 * tube.secondUpright);
  expect(tube.secondUpright).toBeCloseTo(roundSection(0.03).secondUpright - roundSection(0.02).secondUpright, 20);
  expect(tube.area).toBeCloseTo((Math.PI * (0.03 ** 2 - 0.02 ** 2)) / 4, 15);
});

describe('rectangular tube', () => {
  test('sharp corners: difference of two rectangles', () => {
    const tube = rectangularTube(0.03, 0.05, 0.002, 0);
    expect(tube.area).toBeCloseTo(0.03 * 0.05 - 0.026 * 0.046, 15);
    expect(tube.secondUpright).toBeCloseTo((0.03 * 0.05 ** 3 - 0.026 * 0.046 ** 3) / 12, 18);
  });
  test('rounded as far as it goes, a square tube is a round one', () => {
    const found = rectangularTube(0.04, 0.04, 0.002, 0.02);
    const round = roundSection(0.04, 0.036);
    expect(found.area / round.area).toBeCloseTo(1, 9);
    expect(found.secondUpright / round.secondUpright).toBeCloseTo(1, 9);
    // The line of the middle holds for thin walls: t³/3 on top of 2 π r³ t.
    expect(Math.abs(found.torsion / round.torsion - 1)).toBeLessThan(2e-3);
  });
});

test('what cannot be is refused', () => {
  expect(() => rectangularTube(0.02, 0.04, 0.01)).toThrow(RangeError);
  expect(() => rectangularTube(0.02, 0.04, 0.002, 0.011)).toThrow(RangeError);
  expect(() => roundSection(0.02, 0.02)).toThrow(RangeError);
  expect(() => solidRectangle(0, 1)).toThrow(RangeError);
});
