import { expect, test } from 'vitest';
import { torqueFromPoints } from '../../server/src/mechanics/torque-curve-points.ts';
import { pullOutTorque } from '../../server/src/mechanics/stepper-torque.ts';

const points = [{ speed: 10, torque: 0.4 }, { speed: 50, torque: 0.4 }, { speed: 100, torque: 0.2 }];
const torqueAt = (speed: number, from?: number, to?: number): number => {
  const read = torqueFromPoints(points, speed, from, to);
  return read.kind === 'within' ? read.torque : NaN;
};

test('hand calculation: on a point, between points, below the first', () => {
  expect(torqueAt(50)).toBe(0.4);
  expect(torqueAt(75)).toBeCloseTo(0.3, 12);
  expect(torqueAt(0)).toBe(0.4);
  expect(torqueAt(100)).toBeCloseTo(0.2, 12);
});
test('nothing is extrapolated', () => {
  expect(torqueFromPoints(points, 100.001)).toEqual({ kind: 'beyond-the-points', lastSpeed: 100 });
  expect(torqueFromPoints(points, 60, 48, 24)).toEqual({ kind: 'beyond-the-points', lastSpeed: 50 });
});
test('hand calculation: points taken at 24 V serve at 48 V for twice the speed', () => {
  expect(torqueAt(150, 24, 48)).toBeCloseTo(0.3, 12);
});
test('the scaling follows the voltage-limited model itself', () => {
  const drive = { torqueConstant: 0.2, peakCurrent: 2, resistance: 0.2, inductance: 3e-3, polePairs: 50, voltage: 24 };
  const curve = Array.from({ length: 60 }, (_, i) => ({ speed: 3 * (i + 1), torque: pullOutTorque(drive, 3 * (i + 1)).design }));
  for (const speed of [60, 120, 200]) {
    const read = torqueFromPoints(curve, speed, 24, 48);
    const model = pullOutTorque({ ...drive, voltage: 48 }, speed).design;
    // Within 2 %: the resistance of 0.2 Ω takes 0.4 V of 24.
    expect(Math.abs((read.kind === 'within' ? read.torque : NaN) / model - 1)).toBeLessThan(0.02);
  }
});
test('programmer errors throw', () => {
  expect(() => torqueFromPoints([], 1)).toThrow(RangeError);
  expect(() => torqueFromPoints([points[1]!, points[0]!], 1)).toThrow(RangeError);
  expect(() => torqueFromPoints([{ speed: 1, torque: -0.1 }], 1)).toThrow(RangeError);
});
