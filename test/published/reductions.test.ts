/** Geared and hoisted loads seen from the motor, against printed examples. */
import { describe, expect, test } from 'vitest';
import { bestRatio, fastSideTorque, inertiaAtInput } from '../../server/src/mechanics/reduction.ts';
import type { ReductionStage } from '../../server/src/mechanics/reduction.ts';
import { driveForce, motorTorque, reflectedInertia, runDownAcceleration } from '../../server/src/mechanics/axis-torque.ts';
import type { AxisLoad, DriveChain } from '../../server/src/mechanics/axis-torque.ts';
import { perMinute } from '../mechanics/units.ts';

const stage = (ratio: number, efficiency = 1): ReductionStage => ({
  ratio, efficiency, reverseEfficiency: efficiency, fastInertia: 0, slowInertia: 0, backlash: 0,
});
const plainChain: DriveChain = {
  travelPerTurn: 1, efficiency: 1, reverseEfficiency: 1, dragTorque: 0, screwInertia: 0, stages: [], motorInertia: 0,
};
const vertical = (mass: number): AxisLoad => ({ mass, slope: Math.PI / 2, gravity: 9.81, friction: 0, process: 0, counterbalance: 0 });
/** A hoist that goes at `speed` while the motor turns at `rpm`: the same algebra as a screw. */
const hoist = (speed: number, rpm: number, efficiency: number): DriveChain => ({
  ...plainChain, travelPerTurn: (speed * 2 * Math.PI) / perMinute(rpm), efficiency,
});

describe('geared load and hoisted mass together', () => {
  test('Dubey, Fundamentals of Electrical Drives, example 2.1, p. 16', () => {
    const winch = hoist(1.5, 1420, 0.85);
    const torque = fastSideTorque(stage(10, 0.9), 10, 1) + motorTorque(winch, driveForce(vertical(1000), 1, 0), 1, 0).torque;
    expect(torque).toBeCloseTo(117.53, 2);
    // Printed as 0.4 kg·m², one figure.
    expect(0.2 + inertiaAtInput([stage(10)], 10) + reflectedInertia(winch, 1000)).toBeCloseTo(0.4, 2);
  });
  test('J. B. Gupta, Elements of Electric Drives, chapter 1, example 4, p. 19', () => {
    const winch = hoist(2, 1500, 0.88);
    const torque = fastSideTorque(stage(10, 0.9), 50, 1) + motorTorque(winch, driveForce(vertical(600), 1, 0), 1, 0).torque;
    expect(torque).toBeCloseTo(90.72, 2);
    expect((torque * perMinute(1500)) / 1000).toBeCloseTo(14.25, 2);
    // Printed rounded to 0.6 kg·m².
    expect(0.4 + inertiaAtInput([stage(10)], 10) + reflectedInertia(winch, 600)).toBeCloseTo(0.6, 2);
  });
});

test('J. B. Gupta, chapter 1, example 3, p. 18: 50 N·m through 10 : 1 at 90 %, 1400 rpm', () => {
  // Printed 815 W, reckoned with 22/7 and rounded up: 0.1 % off.
  const power = fastSideTorque(stage(10, 0.9), 50, 1) * perMinute(1400);
  expect(Math.abs(power / 815 - 1)).toBeLessThan(1e-3);
});

test('B. R. Gupta and Singhal, example 3.7, p. 37: winch with no-load torque', () => {
  const winch: DriveChain = { ...hoist(1, 1000, 1), dragTorque: 80, screwInertia: 0.3, motorInertia: 0.5 };
  expect(motorTorque(winch, driveForce(vertical(400), 1, 0), 1, 0).torque).toBeCloseTo(117.47, 2);
  expect(winch.motorInertia + reflectedInertia(winch, 400)).toBeCloseTo(0.8365, 4);
});

test('B. R. Gupta and Singhal, example 3.9, p. 38: one geared and one belt-driven load', () => {
  const inertia = 0.3 + inertiaAtInput([stage(10)], 15) + inertiaAtInput([stage(3)], 0.6);
  const torque = fastSideTorque(stage(10), 100, 1) + fastSideTorque(stage(3), 35, 1);
  expect(inertia).toBeCloseTo(0.5167, 4);
  expect(torque).toBeCloseTo(21.667, 3);
  expect(Math.abs(torque * perMinute(1440) - 3267.3)).toBeLessThan(0.1);
});

test('B. R. Gupta and Singhal, example 3.6, p. 36: material on a conveyor as a travelling mass', () => {
  const speed = perMinute(1200);
  const mass = (100e3 / 3600 / 1.2) * 200;
  const conveyor: DriveChain = { ...plainChain, travelPerTurn: (1.2 * 2 * Math.PI) / speed, motorInertia: 0.1 };
  expect(reflectedInertia(conveyor, mass)).toBeCloseTo(0.4222, 4);
  const level: AxisLoad = { ...vertical(mass), slope: 0 };
  // Printed 8.2 N·m.
  expect(motorTorque(conveyor, driveForce(level, 1, 1.2 / 8), 1, 1.2 / 8).torque).toBeCloseTo(8.2, 2);
});

test('B. R. Gupta and Singhal, example 3.10, p. 39: torque as printed; its inertia takes weight for mass and is wrong', () => {
  const speed = perMinute(1440);
  const chain: DriveChain = { ...plainChain, travelPerTurn: (10 * 2 * Math.PI) / speed, screwInertia: 0.6, motorInertia: 0.4, dragTorque: 1.5 };
  const load: AxisLoad = { ...vertical(100), slope: 0, friction: 1.2 * 100 };
  expect(motorTorque(chain, driveForce(load, 1, 0), 1, 0).torque).toBeCloseTo(9.46, 2);
  const inertia = chain.motorInertia + reflectedInertia(chain, 100);
  // By hand: 0.4 + 0.6 + 100 · (10/150.80)² = 1.4398 kg·m²; the book has 5.314 with 100 · 9.81.
  expect(inertia).toBeCloseTo(1.4398, 4);
  expect(chain.motorInertia + reflectedInertia(chain, 100 * 9.81)).toBeCloseTo(5.314, 3);
});

test('Khurmi and Gupta, Theory of Machines, example 3.14, p. 51: ratio of quickest acceleration', () => {
  const ratio = bestRatio(2, 32, 100);
  expect(ratio).toBeCloseTo(4, 12);
  const motorAcceleration = 100 / (2 + inertiaAtInput([stage(ratio)], 32));
  expect(motorAcceleration).toBeCloseTo(25, 12);
  expect(motorAcceleration / ratio).toBeCloseTo(6.25, 12);
});

test.each([
  [1, 0.231], [0.9, 0.216],
])('Khurmi and Gupta, example 3.13, p. 50: falling mass drives a gear train backwards, efficiency %f', (efficiency, printed) => {
  const drum: DriveChain = {
    ...plainChain, travelPerTurn: 2 * Math.PI * 0.3, screwInertia: 100, motorInertia: 5, stages: [stage(6, efficiency)],
  };
  const falls = runDownAcceleration(drum, vertical(75), 1);
  expect(falls.kind).toBe('accelerates');
  expect(falls.kind === 'accelerates' ? falls.acceleration : NaN).toBeCloseTo(printed, 3);
});

test('Khurmi and Gupta, example 3.2, p. 32: cage and rope started upwards (torque part)', () => {
  const drum: DriveChain = { ...plainChain, travelPerTurn: 2 * Math.PI * 0.5, screwInertia: 250 * 0.35 ** 2 };
  expect(motorTorque(drum, driveForce(vertical(500 + 3 * 100), 1, 1.5), 1, 1.5).torque).toBeCloseTo(4615.9, 1);
});

test('Khurmi and Gupta, example 3.4, p. 35: up a slope of 1 in 20 through 40 : 1 at 85 %', () => {
  const load: AxisLoad = { ...vertical(14000), slope: Math.asin(1 / 20), friction: 1200 };
  const drum: DriveChain = {
    ...plainChain, travelPerTurn: 2 * Math.PI * 0.5, screwInertia: 253.125, motorInertia: 1.71875, stages: [stage(40, 0.85)],
  };
  const { torque, driver } = motorTorque(drum, driveForce(load, 1, 0.1), 1, 0.1);
  expect(torque).toBeCloseTo(154.46, 2);
  expect(driver).toBe('motor');
  expect((torque * (1.8 / 0.5) * 40) / 1000).toBeCloseTo(22.24, 2);
});
