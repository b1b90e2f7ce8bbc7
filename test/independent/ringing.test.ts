/** What remains of the swing after a ramp, against an integration of the move in time (Runge and Kutta, fourth order). */
import { describe, expect, test } from 'vitest';
import { accelerationPulse, ringingAmplitude, type AccelerationPulse } from '../../server/src/mechanics/ringing.ts';

/** Acceleration of the drive at a time. */
function driveAt(time: number, { acceleration, length, rise }: AccelerationPulse): number {
  if (time < 0 || time > length + rise) return 0;
  if (rise === 0) return time <= length ? acceleration : 0;
  return acceleration * Math.max(0, Math.min(1, time / rise, (length + rise - time) / rise));
}

/** Amplitude left when the drive has reached its speed: from place and speed of the mass relative to the drive at that time. */
function integrated(pulse: AccelerationPulse, omega: number, damping: number): number {
  const end = pulse.length + pulse.rise;
  // Corners of the pulse fall upon steps: each stretch between them is cut into even steps.
  const corners = [0, pulse.rise, pulse.length, end].filter((time, index, all) => index === 0 || time > (all[index - 1] as number) + 1e-15);
  let z = 0;
  let w = 0;
  for (let stretch = 0; stretch + 1 < corners.length; stretch++) {
    const from = corners[stretch] as number;
    const to = corners[stretch + 1] as number;
    const steps = 4000;
    const dt = (to - from) / steps;
    // Within a stretch the acceleration is a straight line; its ends are taken from inside.
    const inside = (time: number): number => driveAt(Math.min(to - 1e-12, Math.max(from + 1e-12, time)), pulse);
    const f = (time: number, place: number, speed: number): number => -inside(time) - 2 * damping * omega * speed - omega ** 2 * place;
    for (let i = 0; i < steps; i++) {
      const t = from + i * dt;
      const [a1, b1] = [w, f(t, z, w)];
      const [a2, b2] = [w + (dt / 2) * b1, f(t + dt / 2, z + (dt / 2) * a1, w + (dt / 2) * b1)];
      const [a3, b3] = [w + (dt / 2) * b2, f(t + dt / 2, z + (dt / 2) * a2, w + (dt / 2) * b2)];
      const [a4, b4] = [w + dt * b3, f(t + dt, z + dt * a3, w + dt * b3)];
      z += (dt / 6) * (a1 + 2 * a2 + 2 * a3 + a4);
      w += (dt / 6) * (b1 + 2 * b2 + 2 * b3 + b4);
    }
  }
  const damped = omega * Math.sqrt(1 - damping ** 2);
  // z = A e^(−ζωt) cos(…): the speed without what the decay takes, over the damped frequency, is the other leg.
  return Math.hypot(z, (w + damping * omega * z) / damped);
}

const MOVES: readonly (readonly [string, number, number, number | undefined])[] = [
  ['short sudden ramp', 0.05, 3, undefined],
  ['long sudden ramp', 0.5, 2, undefined],
  ['with a limit of jerk', 0.3, 3, 120],
  ['gentle jerk', 0.3, 3, 31],
  ['never reaches its acceleration', 0.04, 3, 100],
];

describe.each(MOVES)('%s', (_, speed, acceleration, jerk) => {
  test.each([0, 0.02, 0.1, 0.4])('damping %f: within 1e-6 of the largest that could remain', (damping) => {
    for (const frequency of [7, 19, 23.7, 41, 66, 130]) {
      const omega = 2 * Math.PI * frequency;
      const pulse = accelerationPulse(speed, acceleration, jerk);
      const exact = ringingAmplitude(pulse, omega, damping);
      expect(Math.abs(exact - integrated(pulse, omega, damping)) / ((2 * acceleration) / omega ** 2)).toBeLessThan(1e-6);
    }
  });
});
