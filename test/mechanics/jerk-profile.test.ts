import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { jerkMove, peakAccelerationOfRamp, stateAt } from '../../server/src/mechanics/jerk-profile.ts';
import { jerkLimitedRampTime, moveProfile } from '../../server/src/mechanics/motion-profile.ts';

const metres = fc.double({ min: 1e-4, max: 3, noNaN: true });
const speeds = fc.double({ min: 1e-3, max: 3, noNaN: true });
const accelerations = fc.double({ min: 0.01, max: 50, noNaN: true });
const jerks = fc.double({ min: 0.1, max: 1e5, noNaN: true });

describe('move with limited jerk, hand calculations', () => {
  test('all seven parts: 1 m, 0.5 m/s, 2 m/s², 20 m/s³: jerk 0.1 s, ramp 0.5/2 + 2/20 = 0.35 s, 1/0.5 + 0.35 = 2.35 s', () => {
    const move = jerkMove(1, 0.5, 2, 20);
    expect(move.time).toBeCloseTo(2.35, 12);
    expect(move.rampTime).toBeCloseTo(0.35, 12);
    expect(move.jerkTime).toBeCloseTo(0.1, 12);
    expect(move.steadyTime).toBeCloseTo(1.65, 12);
    expect(move.segments.map(({ duration }) => Number(duration.toFixed(9)))).toEqual([0.1, 0.15, 0.1, 1.65, 0.1, 0.15, 0.1]);
    expect([move.reachesSpeed, move.reachesAcceleration]).toEqual([true, true]);
  });
  test('the acceleration is not reached: 1 m, 0.1 m/s, 2 m/s², 20 m/s³: √(0.1·20) = 1.4142 m/s², ramp 2·√(0.1/20) = 0.141421 s', () => {
    const move = jerkMove(1, 0.1, 2, 20);
    expect(move.peakAcceleration).toBeCloseTo(1.41421356, 7);
    expect(move.time).toBeCloseTo(10.141421, 5);
    expect([move.reachesSpeed, move.reachesAcceleration]).toEqual([true, false]);
    expect(peakAccelerationOfRamp(0.1, 2, 20)).toBeCloseTo(1.41421356, 7);
  });
  test('the speed is not reached: 0.1 m, 1 m/s, 2 m/s², 20 m/s³: v = (√(0.2² + 4·2·0.1) − 0.2)/2 = 0.358258 m/s, t = 2 (v/2 + 0.1) = 0.558258 s', () => {
    const move = jerkMove(0.1, 1, 2, 20);
    expect(move.peakSpeed).toBeCloseTo(0.3582576, 6);
    expect(move.time).toBeCloseTo(0.5582576, 6);
    expect([move.reachesSpeed, move.reachesAcceleration]).toEqual([false, true]);
  });
  test('neither is reached: 0.002 m, 1 m/s, 2 m/s², 20 m/s³: v = (0.002²·20/4)^⅓ = 0.0271442 m/s, t = 4·(0.002/(2·20))^⅓ = 0.147361 s', () => {
    const move = jerkMove(0.002, 1, 2, 20);
    expect(move.peakSpeed).toBeCloseTo(0.02714418, 7);
    expect(move.time).toBeCloseTo(0.1473613, 6);
    expect([move.reachesSpeed, move.reachesAcceleration]).toEqual([false, false]);
  });
  test('half way up a symmetric ramp is half the speed, at the full acceleration', () => {
    const move = jerkMove(1, 0.5, 2, 20);
    const half = stateAt(move, 0.175);
    expect(half.speed).toBeCloseTo(0.25, 12);
    expect(half.acceleration).toBeCloseTo(2, 12);
    // One ramp covers half of v times its time: 0.0875 m.
    expect(stateAt(move, 0.35).position).toBeCloseTo(0.0875, 12);
    expect(stateAt(move, -1)).toEqual({ position: 0, speed: 0, acceleration: 0 });
    expect(stateAt(move, 9)).toEqual({ position: 1, speed: 0, acceleration: 0 });
  });
});

describe('properties', () => {
  test('without a limit of jerk it is the trapezoid', () => {
    fc.assert(fc.property(metres, speeds, accelerations, (distance, speed, acceleration) => {
      const move = jerkMove(distance, speed, acceleration);
      const even = moveProfile(distance, speed, acceleration);
      expect(Math.abs(move.time / even.time - 1)).toBeLessThan(1e-12);
      expect(Math.abs(move.peakSpeed / even.peakSpeed - 1)).toBeLessThan(1e-12);
      expect(move.peakAcceleration).toBe(acceleration);
    }));
  });
  test('it ends at the distance, at rest, within its limits, and is never quicker than without the limit of jerk', () => {
    fc.assert(fc.property(metres, speeds, accelerations, jerks, (distance, speed, acceleration, jerk) => {
      const move = jerkMove(distance, speed, acceleration, jerk);
      const last = move.segments[6]!;
      const end = last.position + last.speed * last.duration + (last.acceleration * last.duration ** 2) / 2 + (last.jerk * last.duration ** 3) / 6;
      expect(Math.abs(end / distance - 1)).toBeLessThan(1e-9);
      expect(move.peakSpeed).toBeLessThanOrEqual(speed * (1 + 1e-12));
      expect(move.peakAcceleration).toBeLessThanOrEqual(acceleration * (1 + 1e-12));
      expect(move.time).toBeGreaterThanOrEqual(jerkMove(distance, speed, acceleration).time * (1 - 1e-12));
      for (let i = 0; i <= 20; i++) {
        const state = stateAt(move, (move.time * i) / 20);
        expect(state.speed).toBeLessThanOrEqual(speed * (1 + 1e-9));
        expect(Math.abs(state.acceleration)).toBeLessThanOrEqual(acceleration * (1 + 1e-9));
        // The way back mirrors the way there.
        expect(Math.abs(state.position + stateAt(move, (move.time * (20 - i)) / 20).position - distance)).toBeLessThan(1e-6 * distance);
      }
    }));
  });
  test('the ramp is that of `jerkLimitedRampTime`', () => {
    fc.assert(fc.property(speeds, accelerations, jerks, (speed, acceleration, jerk) => {
      expect(Math.abs(jerkMove(1e6, speed, acceleration, jerk).rampTime / jerkLimitedRampTime(speed, acceleration, jerk) - 1)).toBeLessThan(1e-9);
    }));
  });
});

test.each([[0, 1, 1, 1], [1, 0, 1, 1], [1, 1, -1, 1], [1, 1, 1, 0], [1, 1, 1, Number.NaN]])('refuses %f m, %f m/s, %f m/s², %f m/s³', (...limits) => {
  expect(() => jerkMove(limits[0], limits[1], limits[2], limits[3])).toThrow(RangeError);
});
