/** Stepping motors against printed examples. Each literal on the right is the printed answer; the inputs are the book's. */
import { describe, expect, test } from 'vitest';
import { torqueConstant } from '../../server/src/mechanics/stepper-torque.ts';
import { DETENT_SHARE, detentTorque, incrementalMicrostepTorque, stepError } from '../../server/src/mechanics/stepper-standing.ts';
import {
  electricalFrequency, fullStepsPerTurn, speedAtStepRate, stepRate, stepsFromAngle, stepsPerMetre,
} from '../../server/src/mechanics/step-rate.ts';
import { riseAfter, windingRise } from '../../server/src/mechanics/motor-heat.ts';
import { travelPerMotorTurn } from '../../server/src/mechanics/axis-torque.ts';
import { degrees, perMinute } from '../mechanics/units.ts';

const turnsPerSecond = (speed: number): number => speed / (2 * Math.PI);

describe('counting steps', () => {
  test('Burman, Special Electrical Machines, example 3.5, p. 192: 1.8°, 4000 pulses a second', () => {
    const steps = stepsFromAngle(degrees(1.8));
    expect(steps).toBe(200);
    expect(turnsPerSecond(speedAtStepRate(4000, steps, 1))).toBeCloseTo(20, 9);
    expect((degrees(54) / (2 * Math.PI)) * steps).toBeCloseTo(30, 9);
  });
  test('Burman, example 3.9, p. 194: 2400 rpm with 200 steps', () => {
    expect(stepRate(perMinute(2400), 200, 1)).toBeCloseTo(8000, 6);
  });
  test('Burman, example 3.10, p. 194: half stepping of 500 steps, 72°', () => {
    expect(stepRate(2 * Math.PI, 500, 2)).toBeCloseTo(1000, 9);
    expect(stepRate(degrees(72), 500, 2)).toBeCloseTo(200, 9);
  });
  test('Burman, example 3.2, p. 196: 4 rotor poles, 600 rpm (the frequency as corrected: 40 Hz)', () => {
    expect(electricalFrequency(perMinute(600), 4)).toBeCloseTo(40, 9);
  });
  test('Hubert, Electric Machines, example 7.2, p. 287: 2°, 20.6 turns, 1800 pulses a second', () => {
    const steps = stepsFromAngle(degrees(2));
    expect(steps).toBe(180);
    expect(20.6 * steps).toBeCloseTo(3708, 9);
    expect(turnsPerSecond(speedAtStepRate(1800, steps, 1))).toBeCloseTo(10, 9);
  });
  test('Kulshreshtha, Basic Electrical Engineering, chapter 17: 2.5°, 25 turns', () => {
    expect(stepsFromAngle(degrees(2.5))).toBe(144);
    expect(25 * stepsFromAngle(degrees(2.5))).toBe(3600);
  });
  test('Kosow, Electric Machinery and Transformers, example 11-3, p. 381: 50 rotor teeth make 1.8°', () => {
    expect(360 / fullStepsPerTurn(50)).toBeCloseTo(1.8, 12);
  });
  test('Srivastava, Electrical Machines, example 7.11, p. 428: 9°, 200 rpm', () => {
    expect(stepRate(perMinute(200), stepsFromAngle(degrees(9)), 1)).toBeCloseTo(133.33, 2);
  });
  test('Groover, Automation, Production Systems and CIM, open-loop positioning example (from memory): 6 mm lead, 5 : 1, 48 steps', () => {
    const travel = travelPerMotorTurn({
      travelPerTurn: 0.006, efficiency: 1, reverseEfficiency: 1, dragTorque: 0, screwInertia: 0, motorInertia: 0,
      stages: [{ ratio: 5, efficiency: 1, reverseEfficiency: 1, fastInertia: 0, slowInertia: 0, backlash: 0 }],
    });
    expect(0.25 * stepsPerMetre(48, 1, travel)).toBeCloseTo(10000, 6);
    const speed = ((0.5 / 60) * 2 * Math.PI) / travel;
    expect((speed * 60) / (2 * Math.PI)).toBeCloseTo(416.67, 2);
    expect(stepRate(speed, 48, 1)).toBeCloseTo(333.33, 2);
  });
  test('common practice, no published source: 16 teeth of 2 mm, 16 microsteps, 40 mm/s (hand: 3200 / 32 mm; 40 · 100)', () => {
    expect(stepsPerMetre(200, 16, 0.032) / 1000).toBeCloseTo(100, 12);
    expect(stepRate((0.04 / 0.032) * 2 * Math.PI, 200, 16)).toBeCloseTo(4000, 9);
  });
  test('course notes on step and direction inputs: 250 kHz at 16 microsteps is 15 625 full steps a second, 4687 rpm', () => {
    const speed = speedAtStepRate(250000, 200, 16);
    expect(stepRate(speed, 200, 1)).toBeCloseTo(15625, 6);
    expect((speed * 60) / (2 * Math.PI)).toBeCloseTo(4687.5, 6);
  });
  test('a measurement log: 50 electrical hertz of a 1.8° motor are one turn a second', () => {
    expect(electricalFrequency(perMinute(60), 50)).toBeCloseTo(50, 12);
  });
});

describe('torque at rest', () => {
  test.each([
    [1, 100], [2, 70.71], [4, 38.27], [8, 19.51], [16, 9.8], [32, 4.91], [64, 2.45], [128, 1.23], [256, 0.61],
  ])('printed table of incremental torque: %i microsteps leave %f %% of the holding torque', (microsteps, percent) => {
    expect(Math.abs(incrementalMicrostepTorque(100, microsteps) - percent)).toBeLessThanOrEqual(0.0051);
  });
  test('usual sheet value ± 5 % of a step: ± 0.09° at 1.8°, ± 0.045° at 0.9°', () => {
    expect(stepError(200, 0.05)).toBeCloseTo(degrees(0.09), 12);
    expect(stepError(400, 0.05)).toBeCloseTo(degrees(0.045), 12);
  });
  test('a kit manual: one winding at 0.85 of rated current holds 0.60 of the rated torque', () => {
    expect(torqueConstant(1, 1) * 0.85).toBeCloseTo(0.6, 2);
  });
  test.each([
    ['12.6 kgf·cm holding, 400 gf·cm detent', 12.6 * 0.0980665, 0.4 * 0.0980665],
    ['0.57 N·m holding, 0.0196 N·m detent', 0.57, 0.0196],
  ])('two sheets lie within the default range of detent torque: %s', (_sheet, holding, detent) => {
    expect(detent).toBeGreaterThanOrEqual(detentTorque(holding, DETENT_SHARE.low));
    expect(detent).toBeLessThanOrEqual(detentTorque(holding, DETENT_SHARE.high));
    // The default is meant for "does it stay up": it must not promise more than a sheet does.
    expect(detentTorque(holding)).toBeLessThanOrEqual(detent);
  });
});

describe('heating', () => {
  test('Dubey, Fundamentals of Electrical Drives, example 4.1, p. 47: swing between 40 K and 49.9 K, 104.4 K if on for good', () => {
    // 49.9 and 104.4 are printed to three figures; a tenth of a kelvin either way is their rounding.
    expect(riseAfter(49.9, 15, 60, 20)).toBeCloseTo(40, 1);
    expect(Math.abs(riseAfter(40, 104.4, 60, 10) - 49.9)).toBeLessThan(0.05);
  });
  test('Dubey, example 4.4, p. 55: a 20 kW motor carries 51.0 kW for 10 minutes, 25.14 kW ten minutes on and ten off', () => {
    // Rise follows the square of the load; 1 is the permitted rise. Heating in 60 min, cooling in 90 min.
    expect(riseAfter(0, (51.0 / 20) ** 2, 60, 10)).toBeCloseTo(1, 2);
    let rise = 0;
    for (let cycle = 0; cycle < 60; cycle++) rise = riseAfter(riseAfter(rise, 0, 90, 10), (25.14 / 20) ** 2, 60, 10);
    expect(rise).toBeCloseTo(1, 3);
  });
  test('J. B. Gupta, example 45, p. 144: 8826 W at 90 %, 0.65 m by 1 m, 12 W/(m²·K) settles 40 K above the air', () => {
    const loss = 8826 / 0.9 - 8826;
    const surface = Math.PI * 0.65 * 1;
    const settled = windingRise(loss, 1 / (12 * surface));
    expect(settled.kind).toBe('settles');
    expect(settled.kind === 'settles' ? settled.rise : NaN).toBeCloseTo(40, 0);
  });
});
