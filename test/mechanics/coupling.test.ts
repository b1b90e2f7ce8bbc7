import { describe, expect, test } from 'vitest';
import {
  axialGive, boreFit, jointAngleError, jointSpeedFluctuation, misalignmentShare, sideForce, windUp,
} from '../../server/src/mechanics/coupling.ts';
import { degrees } from './units.ts';

const mm = 1e-3;

test('hand calculation: 0.3 N·m on 15 N·m/rad is 0.02 rad; 60 N on 30 N/mm is 2 mm; 0.1 mm on 40 N/mm pushes 4 N', () => {
  expect(windUp(0.3, 15)).toBeCloseTo(0.02, 12);
  expect(axialGive(60, 30e3)).toBeCloseTo(2 * mm, 12);
  expect(sideForce(0.1 * mm, 40e3)).toBeCloseTo(4, 12);
});
test('bores: same size fits, 0.1 mm of play closes, 0.15 mm does not, an inch shaft does not enter 6 mm', () => {
  expect(boreFit(5 * mm, 5 * mm).fits).toBe(true);
  expect(boreFit(5.1 * mm, 5 * mm).fits).toBe(true);
  expect(boreFit(6.5 * mm, 6.35 * mm).fits).toBe(false);
  expect(boreFit(6 * mm, 6.35 * mm).fits).toBe(false);
  expect(boreFit(6 * mm, 6.35 * mm).difference / mm).toBeCloseTo(-0.35, 9);
});
test('misalignment, hand calculation: 0.1 of 0.2 mm and 0.5° of 1° use all of it', () => {
  expect(misalignmentShare(0.1 * mm, 0.2 * mm, degrees(0.5), degrees(1))).toBeCloseTo(1, 12);
});

describe('universal-joint element', () => {
  /** The joint's own equation: the driven shaft's angle for the driving shaft's. */
  const driven = (drivingAngle: number, angle: number): number => Math.atan2(Math.sin(drivingAngle) * Math.cos(angle), Math.cos(drivingAngle));
  test.each([1, 2, 3, 20])('%i°: angle error and speed fluctuation are the extremes of the equation', (value) => {
    const angle = degrees(value);
    let error = 0;
    let slowest = Infinity;
    let fastest = 0;
    for (let i = 0; i < 20000; i++) {
      const at = ((i + 0.5) * Math.PI) / 20000 - Math.PI / 2;
      error = Math.max(error, Math.abs(driven(at, angle) - at));
      const ratio = (driven(at + 1e-5, angle) - driven(at - 1e-5, angle)) / 2e-5;
      if (Math.abs(ratio) < 10) [slowest, fastest] = [Math.min(slowest, ratio), Math.max(fastest, ratio)];
    }
    expect(Math.abs(jointAngleError(angle) / error - 1)).toBeLessThan(1e-4);
    expect(Math.abs(jointSpeedFluctuation(angle) / (fastest - slowest) - 1)).toBeLessThan(1e-3);
  });
  test('hand calculation: 2° on an 8 mm lead errs 0.39 µm (tan² 1° = 3.047e-4 rad · 8/2π mm)', () => {
    expect((jointAngleError(degrees(2)) / (2 * Math.PI)) * 8000).toBeCloseTo(0.388, 3);
  });
});

test('programmer errors throw', () => {
  expect(() => windUp(1, 0)).toThrow(RangeError);
  expect(() => boreFit(0, 1)).toThrow(RangeError);
  expect(() => jointAngleError(Math.PI / 2)).toThrow(RangeError);
  expect(() => misalignmentShare(0, 0, 0, 1)).toThrow(RangeError);
});
