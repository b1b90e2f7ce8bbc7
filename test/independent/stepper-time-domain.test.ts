/** The torque estimate, start speed and natural frequency of a stepping motor against integration in time. */
import { describe, expect, test } from 'vitest';
import { cornerSpeed, pullOutTorque, torqueConstant } from '../../server/src/mechanics/stepper-torque.ts';
import type { StepperDrive } from '../../server/src/mechanics/stepper-torque.ts';
import { magneticStiffness, motorNaturalFrequency, startSpeedWithoutRamp } from '../../server/src/mechanics/stepper-standing.ts';
import { meanTorque, simulatedPullOut } from './two-phase-motor.ts';

/** Four sheets from the engineering notes: holding torque N·m, rated current A, resistance Ω, inductance H. */
const sheets = [
  { name: 'size 17, 0.57 N·m', holding: 0.57, rated: 2.0, resistance: 1.7, inductance: 3.6e-3, voltages: [12, 24, 36] },
  { name: 'size 23, 1.24 N·m', holding: 1.236, rated: 2.8, resistance: 1.1, inductance: 3.0e-3, voltages: [24, 48] },
  { name: 'size 34, 4.41 N·m', holding: 4.41, rated: 4.2, resistance: 0.45, inductance: 4.0e-3, voltages: [48, 72] },
];
const drives: { label: string; drive: StepperDrive }[] = sheets.flatMap(({ name, holding, rated, resistance, inductance, voltages }) =>
  voltages.flatMap((voltage) =>
    [1, Math.SQRT2].map((factor) => ({
      label: `${name}, ${voltage} V, peak ${factor === 1 ? 'at' : '1.41 times'} the rating`,
      drive: { torqueConstant: torqueConstant(holding, rated), peakCurrent: factor * rated, resistance, inductance, polePairs: 50, voltage },
    })),
  ),
);

describe('pull-out torque', () => {
  test.each(drives)('$label: the simulation lies between the design estimate and the upper bound', ({ drive }) => {
    for (const turns of [1, 3, 5, 8, 12, 18, 28]) {
      const speed = turns * 2 * Math.PI;
      const simulated = simulatedPullOut(drive, speed);
      const range = pullOutTorque(drive, speed);
      // 0.3 %: time step and angle search of the simulation.
      expect(range.design, `design at ${turns} rev/s`).toBeLessThanOrEqual(simulated * 1.003);
      expect(range.upper, `upper at ${turns} rev/s`).toBeGreaterThanOrEqual(simulated * 0.997);
      // And the range is worth having: it never spans more than a factor of 1.7.
      expect(range.upper / range.design).toBeLessThan(1.7);
    }
  });
  test.each(drives)('$label: up to the corner the set current flows, above it it does not', ({ drive }) => {
    const corner = cornerSpeed(drive);
    if (corner.kind !== 'corner') throw new Error('the supply of this motor does reach the current');
    const full = drive.torqueConstant * drive.peakCurrent;
    // In phase with the back-EMF (no advance) the chopper holds k·I_p below the corner and fails to above.
    expect(meanTorque(drive, corner.speed * 0.98, 0) / full).toBeGreaterThan(0.998);
    expect(meanTorque(drive, corner.speed * 1.15, 0) / full).toBeLessThan(0.985);
  });
});

/** The rotor as a pendulum on the field: J θ'' = T sin N(field − θ) − load − friction, friction sticking at rest. */
function swing(options: { holding: number; inertia: number; fieldSpeed: number; load: number; friction: number; startLag: number; time: number }) {
  const { holding, inertia, fieldSpeed, load, friction, startLag, time } = options;
  const dt = 2e-6;
  let angle = -startLag;
  let speed = 0;
  let largestLag = -Infinity;
  const crossings: number[] = [];
  for (let t = 0; t < time; t += dt) {
    const lag = fieldSpeed * t - angle;
    largestLag = Math.max(largestLag, lag);
    const pull = holding * Math.sin(50 * lag) - load;
    const before = speed;
    if (speed === 0 && Math.abs(pull) <= friction) continue;
    const against = speed === 0 ? Math.sign(pull) : Math.sign(speed);
    speed += ((pull - friction * against) / inertia) * dt;
    if (before !== 0 && Math.sign(speed) !== Math.sign(before)) {
      crossings.push(t);
      if (friction > 0) speed = 0;
    }
    angle += speed * dt;
  }
  return { lag: largestLag, crossings };
}

describe('start without a ramp', () => {
  const holding = 0.403;
  const inertia = 2.12e-5;
  /** Highest field speed that the rotor still follows, by halving. Lost once the lag passes a whole electrical turn's worth. */
  const limit = (load: number, friction: number): number => {
    const startLag = Math.asin(load / holding) / 50;
    let low = 5;
    let high = 80;
    for (let i = 0; i < 12; i++) {
      const middle = (low + high) / 2;
      const followed = swing({ holding, inertia, fieldSpeed: middle, load, friction, startLag, time: 0.03 }).lag < (1.5 * Math.PI) / 50;
      if (followed) low = middle;
      else high = middle;
    }
    return low;
  };
  test.each([
    ['no load', 0, 0], ['gravity of a quarter of the holding torque', 0.25, 0], ['gravity of half', 0.5, 0],
    ['friction of a quarter', 0, 0.25], ['friction of half', 0, 0.5],
  ])('%s', (_name, loadShare, frictionShare) => {
    const load = loadShare * holding;
    const friction = frictionShare * holding;
    const formula = startSpeedWithoutRamp(holding, inertia, 50, load + friction);
    const integrated = limit(load, friction);
    // 1 %: near the limit the rotor lingers at the unstable point longer than the 30 ms looked at.
    expect(Math.abs((formula.kind === 'starts' ? formula.speed : NaN) / integrated - 1)).toBeLessThan(0.01);
  });
});

test('natural frequency against the period of a small swing', () => {
  const holding = 0.403;
  const inertia = 8.2e-6;
  const { crossings } = swing({ holding, inertia, fieldSpeed: 0, load: 0, friction: 0, startLag: 0.001 / 50, time: 0.05 });
  const halfPeriods = crossings.length - 1;
  const frequency = halfPeriods / 2 / (crossings[crossings.length - 1]! - crossings[0]!);
  expect(Math.abs(motorNaturalFrequency(magneticStiffness(holding, 50), inertia) / frequency - 1)).toBeLessThan(0.002);
});
