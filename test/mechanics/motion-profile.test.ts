import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { jerkLimitedRampTime, moveProfile, phasesOfMove, speedForMoveTime } from '../../server/src/mechanics/motion-profile.ts';

const metres = fc.double({ min: 1e-3, max: 3, noNaN: true });
const speeds = fc.double({ min: 1e-3, max: 2, noNaN: true });
const accelerations = fc.double({ min: 0.01, max: 50, noNaN: true });

describe('move', () => {
  test('hand calculation: 0.3 m at 0.15 m/s and 0.5 m/s²: 0.3/0.15 + 0.15/0.5 = 2.3 s; ramps 22.5 mm each; 85 % at speed', () => {
    const profile = moveProfile(0.3, 0.15, 0.5);
    expect(profile.kind).toBe('trapezoidal');
    expect(profile.time).toBeCloseTo(2.3, 12);
    expect(profile.accelerationDistance).toBeCloseTo(0.0225, 12);
    expect(profile.shareAtSpeed).toBeCloseTo(0.85, 12);
  });
  test('hand calculation: 0.08 m with 2 m/s² never reaches 0.5 m/s: peak √(0.08·2) = 0.4 m/s, 2·√(0.08/2) = 0.4 s', () => {
    const profile = moveProfile(0.08, 0.5, 2);
    expect(profile.kind).toBe('triangular');
    expect(profile.peakSpeed).toBeCloseTo(0.4, 12);
    expect(profile.time).toBeCloseTo(0.4, 12);
    expect(profile.shareAtSpeed).toBe(0);
  });
  test('property: the parts add up to the way; the time gives back the speed', () => {
    fc.assert(fc.property(metres, speeds, accelerations, accelerations, (distance, speed, up, down) => {
      const profile = moveProfile(distance, speed, up, down);
      const way = profile.accelerationDistance + profile.steadyDistance + profile.decelerationDistance;
      expect(Math.abs(way / distance - 1)).toBeLessThan(1e-9);
      const found = speedForMoveTime(distance, profile.time * (1 + 1e-12), up, down);
      // At the triangle the square root is flat, so 1e-12 of time is up to 1e-6 of speed.
      expect(found.kind === 'speed' ? Math.abs(found.speed / profile.peakSpeed - 1) : NaN).toBeLessThan(1e-4);
    }));
  });
  test('a time too short for any speed says the least time: 2·√(0.08/2) = 0.4 s', () => {
    const found = speedForMoveTime(0.08, 0.39, 2);
    expect(found.kind).toBe('too-short');
    expect(found.kind === 'too-short' ? found.leastTime : NaN).toBeCloseTo(0.4, 12);
  });
  test('jerk-limited ramps, hand calculation: 0.3/2 + 2/20 = 0.25 s; below a²/j: 2·√(0.05/50) = 0.0632 s', () => {
    expect(jerkLimitedRampTime(0.3, 2, 20)).toBeCloseTo(0.25, 12);
    expect(jerkLimitedRampTime(0.05, 2, 50)).toBeCloseTo(0.0632456, 6);
  });
  test('phases: signs of direction and acceleration', () => {
    const signs = phasesOfMove(moveProfile(0.3, 0.15, 0.5, 0.4)).map(({ name, direction, acceleration }) => [name, direction, Math.sign(acceleration)]);
    expect(signs).toEqual([
      ['accelerate-up', 1, 1], ['cruise-up', 1, 0], ['stop-up', 1, -1], ['hold', 0, 0],
      ['accelerate-down', -1, -1], ['cruise-down', -1, 0], ['stop-down', -1, 1],
    ]);
  });
});

test('programmer errors throw', () => {
  expect(() => moveProfile(0, 1, 1)).toThrow(RangeError);
  expect(() => moveProfile(1, 1, -1)).toThrow(RangeError);
  expect(() => speedForMoveTime(1, 0, 1)).toThrow(RangeError);
  expect(() => jerkLimitedRampTime(1, 1, 0)).toThrow(RangeError);
});
