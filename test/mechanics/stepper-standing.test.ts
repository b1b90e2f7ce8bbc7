import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  detentPositionError, detentTorque, frictionDeadBand, holdingTorqueAtCurrent, incrementalMicrostepTorque, lagUnderLoad, magneticStiffness,
  microstepsBeforeMoving, motorNaturalFrequency, startSpeedWithoutRamp, stepError,
} from '../../server/src/mechanics/stepper-standing.ts';
import { torqueConstant } from '../../server/src/mechanics/stepper-torque.ts';

const fullStep = Math.PI / 100;

describe('holding', () => {
  const k = torqueConstant(1, 1);
  test.each([
    // Share of the sheet's holding torque, by hand: k·I_p with k = T_H/(√2·I_r).
    ['peak set to the rated current', 1, 1, 1 / Math.SQRT2],
    ['root mean square set to the rated current', Math.SQRT2, 1, 1],
    ['half the current at rest', 1, 0.5, 0.5 / Math.SQRT2],
  ])('%s', (_name, peak, rest, share) => {
    expect(holdingTorqueAtCurrent(k, peak, rest)).toBeCloseTo(share, 12);
  });
  test('detent, hand calculation: 3 % of 0.57 N·m is 17 mN·m', () => {
    expect(detentTorque(0.57)).toBeCloseTo(0.0171, 12);
    expect(detentTorque(0.57, 0.1)).toBeCloseTo(0.057, 12);
  });
});

describe('microsteps', () => {
  test.each([
    // n·(2/π)·asin(T_f/T_H) by hand, rounded up. Example: 16·0.63662·asin 0.3 = 16·0.63662·0.30469 = 3.104 → 4.
    [16, 0.05, 1], [16, 0.1, 2], [16, 0.2, 3], [16, 0.3, 4], [32, 0.05, 2], [32, 0.1, 3], [32, 0.2, 5], [32, 0.3, 7],
    [64, 0.05, 3], [64, 0.1, 5], [64, 0.2, 9], [64, 0.3, 13], [16, 0, 1],
  ])('%i microsteps, friction %f of holding: %i before it moves', (microsteps, share, expected) => {
    expect(microstepsBeforeMoving(share, 1, microsteps)).toEqual({ kind: 'moves-after', microsteps: expected });
  });
  test('friction above the holding torque never lets go', () => {
    expect(microstepsBeforeMoving(1, 1, 16)).toEqual({ kind: 'friction-holds' });
  });
  test('property: the torque behind the count overcomes the friction, behind one less it does not', () => {
    fc.assert(fc.property(fc.double({ min: 0.001, max: 0.99, noNaN: true }), fc.constantFrom(1, 2, 4, 8, 16, 32, 64, 128, 256), (share, microsteps) => {
      const found = microstepsBeforeMoving(share, 1, microsteps);
      const count = found.kind === 'moves-after' ? found.microsteps : NaN;
      const pull = (n: number): number => Math.sin(Math.min(1, n / microsteps) * (Math.PI / 2));
      expect(pull(count)).toBeGreaterThanOrEqual(share - 1e-8);
      if (count > 1) expect(pull(count - 1)).toBeLessThan(share + 1e-8);
    }));
  });
  test('one microstep per full step has the whole torque', () => {
    expect(incrementalMicrostepTorque(0.4, 1)).toBeCloseTo(0.4, 12);
  });
});

describe('lag', () => {
  test('half load lags 30 electrical degrees, a third of a full step (asin 0.5 = 30°; 30/90)', () => {
    const found = lagUnderLoad(0.2, 0.4, 50);
    expect(found.kind === 'lags' ? found.angle / fullStep : NaN).toBeCloseTo(1 / 3, 12);
  });
  test('more than the holding torque pulls out', () => {
    expect(lagUnderLoad(0.41, 0.4, 50)).toEqual({ kind: 'pulled-out' });
    expect(lagUnderLoad(-0.41, 0.4, 50)).toEqual({ kind: 'pulled-out' });
  });
  test.each([
    // (4/π)·asin(q) full steps by hand: asin 0.05 = 0.05002, 0.1 → 0.10017, 0.2 → 0.20136, 0.5 → 0.52360.
    [0.05, 0.0637], [0.1, 0.1275], [0.2, 0.2564], [0.5, 0.6667],
  ])('dead band at friction %f of holding: %f of a full step wide', (share, steps) => {
    const found = frictionDeadBand(share, 1, 50);
    expect(found.kind === 'lags' ? found.angle / fullStep : NaN).toBeCloseTo(steps, 3);
  });
  test('stiffness is the slope of the torque curve, by finite difference', () => {
    for (const load of [0, 0.1, 0.3]) {
      const at = Math.asin(load / 0.4);
      const slope = (0.4 * Math.sin(at + 1e-6) - 0.4 * Math.sin(at - 1e-6)) / (2e-6 / 50);
      expect(Math.abs(magneticStiffness(0.4, 50, load) / slope - 1)).toBeLessThan(1e-6);
    }
    expect(magneticStiffness(0.4, 50, 0.4)).toBe(0);
  });
  test('detent bends the microsteps, hand calculation: 0.033/50 rad = 0.0378°', () => {
    expect((detentPositionError(0.033, 1, 50) * 180) / Math.PI).toBeCloseTo(0.0378, 4);
  });
  test('step error of 5 % of 1.8° on an 8 mm lead, hand calculation: 0.05·8/200 = 0.002 mm', () => {
    expect((stepError(200) / (2 * Math.PI)) * 8).toBeCloseTo(0.002, 12);
  });
});

describe('swing and start', () => {
  test('hand calculation: √(50·0.57/82e-7)/2π = √3.4756e6/2π = 1864.3/6.2832 = 296.7 Hz', () => {
    expect(motorNaturalFrequency(magneticStiffness(0.57, 50), 82e-7)).toBeCloseTo(296.7, 1);
  });
  test('without load the ideal start is 8 full steps per period of the swing', () => {
    const inertia = 2e-5;
    const found = startSpeedWithoutRamp(0.4, inertia, 50);
    const fullStepsPerSecond = (found.kind === 'starts' ? found.speed : NaN) / fullStep;
    // By hand: 2√(T/(N J)) rad/s over π/(2N) is 4N/π·√(T/(N J)); 8 f0 = (8/2π)·√(N T/J): the same.
    expect(fullStepsPerSecond / motorNaturalFrequency(magneticStiffness(0.4, 50), inertia)).toBeCloseTo(8, 9);
  });
  test('a load beyond the holding torque pulls out', () => {
    expect(startSpeedWithoutRamp(0.4, 1e-5, 50, 0.4)).toEqual({ kind: 'pulled-out' });
  });
  test('property: four times the inertia halves the start speed; more load lowers it', () => {
    fc.assert(fc.property(fc.double({ min: 1e-6, max: 1e-3, noNaN: true }), fc.double({ min: 0, max: 0.9, noNaN: true }), (inertia, share) => {
      const speed = (j: number, q: number): number => {
        const found = startSpeedWithoutRamp(1, j, 50, q);
        return found.kind === 'starts' ? found.speed : NaN;
      };
      expect(speed(4 * inertia, share) / speed(inertia, share)).toBeCloseTo(0.5, 9);
      expect(speed(inertia, share + 0.05)).toBeLessThan(speed(inertia, share));
    }));
  });
  test('programmer errors throw', () => {
    expect(() => magneticStiffness(-1, 50)).toThrow(RangeError);
    expect(() => incrementalMicrostepTorque(1, 0)).toThrow(RangeError);
    expect(() => holdingTorqueAtCurrent(1, 1, 1.5)).toThrow(RangeError);
    expect(() => stepError(0)).toThrow(RangeError);
    expect(() => motorNaturalFrequency(1, 0)).toThrow(RangeError);
  });
});
