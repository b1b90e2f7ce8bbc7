import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { jerkLimitedRampTime, moveProfile, phasesOfMove, shortestMove, speedForMoveTime } from '../../server/src/mechanics/motion-profile.ts';

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

describe('shortest move', () => {
  test('constant acceleration, speed free: the triangle, 2·√(s/a) = 2·√(0.5/2) = 1 s', () => {
    const found = shortestMove(0.5, 50, () => 2);
    expect(found.kind === 'moves' ? found.time : NaN).toBeCloseTo(1, 6);
  });
  test('constant acceleration, speed capped: s/v + v/a = 0.5/0.5 + 0.5/2 = 1.25 s', () => {
    const found = shortestMove(0.5, 0.5, () => 2);
    expect(found.kind === 'moves' ? found.time : NaN).toBeCloseTo(1.25, 9);
  });
  test('constant power a = c/v: t = s/v + v²/c is least at v = (s c/2)^⅓; s = 1, c = 0.25: v = 0.5, t = 3 s', () => {
    const found = shortestMove(1, 20, (v) => 0.25 / v);
    expect(found.kind).toBe('moves');
    if (found.kind !== 'moves') return;
    expect(found.time).toBeCloseTo(3, 6);
    expect(found.speed).toBeCloseTo(0.5, 3);
  });
  test('no acceleration anywhere: it cannot move', () => {
    expect(shortestMove(1, 1, () => 0)).toEqual({ kind: 'cannot-move' });
    expect(shortestMove(1, 1, () => 1, () => Number.NaN)).toEqual({ kind: 'cannot-move' });
  });
  test('property: nothing on a finer grid is quicker', () => {
    fc.assert(fc.property(metres, fc.double({ min: 0.2, max: 5, noNaN: true }), (distance, strength) => {
      const at = (v: number): number => strength * Math.min(1, 0.3 / v) - 0.1 * v;
      const found = shortestMove(distance, 2, at);
      for (let i = 1; i <= 500; i++) {
        const v = (2 * i) / 500;
        if (at(v) > 0) expect(found.kind === 'moves' ? found.time : Infinity).toBeLessThanOrEqual(moveProfile(distance, v, at(v)).time * (1 + 1e-6));
      }
    }), { numRuns: 50 });
  });
});

test('programmer errors throw', () => {
  expect(() => moveProfile(0, 1, 1)).toThrow(RangeError);
  expect(() => moveProfile(1, 1, -1)).toThrow(RangeError);
  expect(() => speedForMoveTime(1, 0, 1)).toThrow(RangeError);
  expect(() => jerkLimitedRampTime(1, 1, 0)).toThrow(RangeError);
  expect(() => shortestMove(1, Number.POSITIVE_INFINITY, () => 1)).toThrow(RangeError);
});
