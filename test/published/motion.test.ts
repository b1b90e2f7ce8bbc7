/** Moves and duty cycles against printed examples. */
import { describe, expect, test } from 'vitest';
import { moveProfile, speedForMoveTime } from '../../server/src/mechanics/motion-profile.ts';
import { accelerationAvailable, motorTorque } from '../../server/src/mechanics/axis-torque.ts';
import type { AxisLoad, DriveChain } from '../../server/src/mechanics/axis-torque.ts';
import { rmsTorque } from '../../server/src/mechanics/motor-heat.ts';
import { stepRate, stepsFromAngle } from '../../server/src/mechanics/step-rate.ts';
import { degrees, kilometresPerHour, perMinute } from '../mechanics/units.ts';

/** A shaft alone: one metre of travel per radian, so that linear and angular figures are the same numbers. */
const bareShaft = (inertia: number, drag: number): DriveChain => ({
  travelPerTurn: 2 * Math.PI, efficiency: 1, reverseEfficiency: 1, dragTorque: drag, screwInertia: 0, stages: [], motorInertia: inertia,
});
const noLoad: AxisLoad = { mass: 1e-12, slope: 0, gravity: 9.81, friction: 0, process: 0, counterbalance: 0 };

describe('trapezoidal moves', () => {
  test('Theraja, Textbook of Electrical Technology, vol. III, example 43.1, p. 1716: 39.2 km/h at the top', () => {
    const found = speedForMoveTime(2000, 2000 / kilometresPerHour(36), kilometresPerHour(1.8), kilometresPerHour(3.6));
    expect(found.kind === 'speed' ? found.speed * 3.6 : NaN).toBeCloseTo(39.2, 1);
  });
  test('Theraja, example 43.2, p. 1716: 1.7 km/h/s makes 1.25 of the average speed', () => {
    const running = 1500 / kilometresPerHour(36) - 25;
    // 1.7 is printed to two figures (exact 1.6875), which moves the top speed by 0.1 %.
    const found = speedForMoveTime(1500, running, kilometresPerHour(1.7), kilometresPerHour(3));
    expect(found.kind === 'speed' ? found.speed / (1500 / running) : NaN).toBeCloseTo(1.25, 2);
    expect(moveProfile(1500, 15, kilometresPerHour(1.7), kilometresPerHour(3)).time).toBeCloseTo(running, 0);
  });
  test('Theraja, example 43.3, p. 1716: schedule speed 38.7 km/h', () => {
    const running = 1500 / kilometresPerHour(38.7) - 21;
    const profile = moveProfile(1500, (1.25 * 1500) / running, kilometresPerHour(1.8), kilometresPerHour(3.6));
    expect(profile.kind).toBe('trapezoidal');
    expect((1500 / (profile.time + 21)) * 3.6).toBeCloseTo(38.7, 1);
  });
  test('Khurmi and Gupta, Theory of Machines, example 3.2, p. 32: 100 m in 14.17 s', () => {
    expect(moveProfile(100, 10, 1.5, 6).time).toBeCloseTo(14.17, 2);
  });
});

describe('torque of ramps and duty cycles', () => {
  test('Burman, Special Electrical Machines, example 3.12, p. 195: 200 to 300 rad/s in 0.2 s against 0.06 N·m', () => {
    expect(motorTorque(bareShaft(1e-4, 0.06), 0, 1, (300 - 200) / 0.2).torque).toBeCloseTo(0.11, 12);
  });
  test('Burman, example 3.14, p. 196: 0.3 N·m on 4e-4 kg·m² makes 14 320 steps/s² of 3°', () => {
    const found = accelerationAvailable(bareShaft(4e-4, 0), noLoad, 1, 1, 'gain', 0.3);
    const perSecond = stepRate(found.kind === 'accelerates' ? found.acceleration : NaN, stepsFromAngle(degrees(3)), 1);
    // Printed to four figures.
    expect(Math.abs(perSecond - 14320)).toBeLessThan(5);
  });
  test('Dubey, Fundamentals of Electrical Drives, example 4.2, p. 52 (answer as corrected: 45 975 N·m)', () => {
    const reversal = motorTorque(bareShaft(10000, 0), 0, 1, (2 * perMinute(200)) / 5).torque;
    const steady = (torque: number, duration: number) => ({ start: torque, end: torque, duration });
    const torque = rmsTorque([
      steady(25000, 10), steady(0, 1), steady(-reversal, 5), steady(0, 1), steady(-20000, 15), steady(0, 1), steady(reversal, 5), steady(0, 1),
    ]);
    expect(Math.abs(torque - 45975)).toBeLessThan(1);
    expect(Math.abs((torque * perMinute(200)) / 1000 - 962.895)).toBeLessThan(0.05);
  });
});
