/** Move profiles against integration in small steps of time. */
import { describe, expect, test } from 'vitest';
import { jerkLimitedRampTime, moveProfile, phasesOfMove } from '../../server/src/mechanics/motion-profile.ts';

/** A controller in steps of time: speeds up, cruises, and brakes as soon as the way left is the braking distance. */
function drive(distance: number, speed: number, acceleration: number, deceleration: number) {
  const dt = 1e-5;
  let way = 0;
  let now = 0;
  let time = 0;
  let top = 0;
  let steady = 0;
  while (distance - way > 1e-12 && time < 100) {
    const mustBrake = now ** 2 / (2 * deceleration) >= distance - way;
    const before = now;
    // Brakes by what is needed for the way left, so that it ends where it should and not a time step short.
    if (mustBrake) now = Math.max(0, now - (now ** 2 / (2 * (distance - way))) * dt);
    else now = Math.min(speed, now + acceleration * dt);
    const step = ((before + now) / 2) * dt;
    if (!mustBrake && before === speed) steady += step;
    way += step;
    time += dt;
    top = Math.max(top, now);
    if (now === 0) break;
  }
  return { time, top, steady };
}

test.each([
  ['long', 0.36, 0.015, 0.2, 0.2], ['brisk', 0.3, 0.3, 2, 1], ['too short for the speed', 0.01, 0.3, 2, 3], ['hardly reaches it', 0.0452, 0.3, 2, 2],
])('%s move', (_name, distance, speed, acceleration, deceleration) => {
  const profile = moveProfile(distance, speed, acceleration, deceleration);
  const driven = drive(distance, speed, acceleration, deceleration);
  expect(Math.abs(profile.time - driven.time)).toBeLessThan(2e-3 * profile.time);
  expect(Math.abs(profile.peakSpeed - driven.top)).toBeLessThan(1e-3 * profile.peakSpeed);
  expect(Math.abs(profile.shareAtSpeed * distance - driven.steady)).toBeLessThan(1e-3 * distance);
});

test('the phases of a move, integrated, lead up and back to where it began', () => {
  const profile = moveProfile(0.3, 0.25, 2, 1.2);
  let way = 0;
  let highest = 0;
  let speed = 0;
  for (const phase of phasesOfMove(profile)) {
    const steps = 1000;
    const dt = phase.duration / steps;
    for (let i = 0; i < steps; i++) {
      way += speed * dt + (phase.acceleration * dt ** 2) / 2;
      speed += phase.acceleration * dt;
    }
    if (phase.duration > 0) expect(Math.abs(speed) <= phase.speed + 1e-9).toBe(true);
    highest = Math.max(highest, way);
  }
  expect(highest).toBeCloseTo(0.3, 9);
  expect(way).toBeCloseTo(0, 9);
  expect(speed).toBeCloseTo(0, 9);
});

describe('ramp with limited jerk', () => {
  test.each([[0.3, 2, 20], [0.05, 2, 50], [0.2, 2, 20]])('to %f m/s with %f m/s² and %f m/s³', (target, acceleration, jerk) => {
    // Raise the acceleration by the jerk; let it fall again as soon as what is left of the speed is a²/(2j).
    const dt = 1e-6;
    let speed = 0;
    let now = 0;
    let time = 0;
    while (speed < target && time < 10) {
      now = now ** 2 / (2 * jerk) >= target - speed ? now - jerk * dt : Math.min(acceleration, now + jerk * dt);
      if (now <= 0) break;
      speed += now * dt;
      time += dt;
    }
    expect(Math.abs(jerkLimitedRampTime(target, acceleration, jerk) / time - 1)).toBeLessThan(0.005);
  });
});
