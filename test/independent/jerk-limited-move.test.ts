/** Moves with limited jerk against a controller in steps of time that knows no closed form of the move, and against three moving averages. */
import { expect, test } from 'vitest';
import { jerkMove, stateAt } from '../../server/src/mechanics/jerk-profile.ts';

interface Limits { readonly distance: number; readonly speed: number; readonly acceleration: number; readonly jerk: number }

const cases: readonly (readonly [string, Limits])[] = [
  ['all parts', { distance: 0.3, speed: 0.5, acceleration: 2, jerk: 20 }],
  ['acceleration not reached', { distance: 0.08, speed: 0.1, acceleration: 2, jerk: 20 }],
  ['speed not reached', { distance: 0.1, speed: 1, acceleration: 2, jerk: 20 }],
  ['neither reached', { distance: 0.002, speed: 1, acceleration: 2, jerk: 20 }],
  ['brisk', { distance: 0.25, speed: 0.3, acceleration: 5, jerk: 300 }],
];

/** Way to a stop from a speed and an acceleration, in steps of time: lower the acceleration, hold it, bring it back so that both end at nothing. */
function stoppingWay(speed: number, acceleration: number, { acceleration: limit, jerk }: Limits, dt: number): number {
  let [v, a, way] = [speed, acceleration, 0];
  while (v > 0) {
    const mustEase = a < 0 && v <= a ** 2 / (2 * jerk);
    const next = mustEase ? Math.min(-1e-9, a + jerk * dt) : Math.max(-limit, a - jerk * dt);
    const after = v + ((a + next) / 2) * dt;
    way += ((v + Math.max(0, after)) / 2) * dt;
    [v, a] = [after, next];
  }
  return way;
}

/** In each step the largest jerk after which it neither gets too fast nor fails to stop in time. */
function controller(limits: Limits, dt: number): { time: number; top: number; strongest: number } {
  const { distance, speed: vLimit, acceleration: aLimit, jerk } = limits;
  let [x, v, a, time, top, strongest] = [0, 0, 0, 0, 0, 0];
  while (time < 30) {
    let chosen: readonly [number, number, number] | undefined;
    let tooFar = false;
    for (const j of [jerk, 0, -jerk]) {
      const next = Math.max(-aLimit, Math.min(aLimit, a + j * dt));
      const after = v + ((a + next) / 2) * dt;
      const way = x + ((v + after) / 2) * dt;
      const speedOnceEased = after + (next > 0 ? next ** 2 / (2 * jerk) : 0);
      const stops = way + stoppingWay(Math.max(after, 0), next, limits, dt) <= distance;
      if (j === 0) tooFar = !stops;
      if (speedOnceEased <= vLimit * (1 + 1e-9) && stops) {
        chosen = [way, after, next];
        break;
      }
    }
    // To go on as it is would be too far: from here on it stops.
    if (!chosen || tooFar) return stopped(v, a, limits, dt, { time, top, strongest });
    [x, v, a] = chosen;
    time += dt;
    top = Math.max(top, v);
    strongest = Math.max(strongest, a);
  }
  return { time, top, strongest };
}

/** The rest of the way: as `stoppingWay`, watching time and speed. */
function stopped(speed: number, acceleration: number, { acceleration: limit, jerk }: Limits, dt: number, before: { time: number; top: number; strongest: number }) {
  let [v, a] = [speed, acceleration];
  let { time, top } = before;
  while (v > 0) {
    const mustEase = a < 0 && v <= a ** 2 / (2 * jerk);
    const next = mustEase ? Math.min(-1e-9, a + jerk * dt) : Math.max(-limit, a - jerk * dt);
    v += ((a + next) / 2) * dt;
    a = next;
    time += dt;
    top = Math.max(top, v);
  }
  return { time, top, strongest: before.strongest };
}

test.each(cases)('%s: time, highest speed and acceleration of a controller in steps of time', (_name, limits) => {
  const move = jerkMove(limits.distance, limits.speed, limits.acceleration, limits.jerk);
  const driven = controller(limits, move.time / 3000);
  // Steps of 1/3000 of the move; every change of the jerk costs some, and the last creep to a stop a few dozen.
  expect(Math.abs(driven.time / move.time - 1)).toBeLessThan(0.02);
  expect(Math.abs(driven.top / move.peakSpeed - 1)).toBeLessThan(0.01);
  expect(Math.abs(driven.strongest / move.peakAcceleration - 1)).toBeLessThan(0.01);
});

test.each(cases)('%s: a step of position through three moving averages', (_name, limits) => {
  const move = jerkMove(limits.distance, limits.speed, limits.acceleration, limits.jerk);
  // A jump filtered by s/v, then v/a, then a/j has these limits of speed, acceleration and jerk.
  const dt = move.time / 20000;
  const widths = [limits.distance / move.peakSpeed, move.peakSpeed / move.peakAcceleration, move.peakAcceleration / limits.jerk];
  let signal = new Float64Array(20400).fill(limits.distance);
  for (const width of widths) signal = movingAverage(signal, width / dt);
  for (let i = 0; i < 20000; i += 250) expect(Math.abs(signal[i]! - stateAt(move, i * dt).position)).toBeLessThan(3e-4 * limits.distance);
});

/** Mean over the last so many samples, not a whole number of them; nothing before the start. */
function movingAverage(signal: Float64Array<ArrayBuffer>, width: number): Float64Array<ArrayBuffer> {
  const sums = new Float64Array(signal.length + 1);
  for (let i = 0; i < signal.length; i++) sums[i + 1] = sums[i]! + signal[i]!;
  const upTo = (x: number): number => {
    if (x <= 0) return 0;
    const whole = Math.floor(x);
    return sums[whole]! + (x - whole) * (signal[whole] ?? 0);
  };
  return signal.map((_, i) => (upTo(i) - upTo(i - width)) / width);
}

test.each(cases)('%s: integrating the jerk of the segments ends at rest at the distance', (_name, limits) => {
  const move = jerkMove(limits.distance, limits.speed, limits.acceleration, limits.jerk);
  let [x, v, a] = [0, 0, 0];
  for (const { jerk, duration } of move.segments) {
    const dt = duration / 20000;
    for (let i = 0; i < 20000; i++) {
      const next = a + jerk * dt;
      const after = v + ((a + next) / 2) * dt;
      x += ((v + after) / 2) * dt;
      [v, a] = [after, next];
    }
  }
  expect(x).toBeCloseTo(limits.distance, 8);
  expect(Math.abs(v)).toBeLessThan(1e-9);
  expect(Math.abs(a)).toBeLessThan(1e-9);
});
