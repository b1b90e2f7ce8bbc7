import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  cornerSpeed, creditedPeakCurrent, currentSetting, shaftPowerFarAboveCorner, pullOutTorque, torqueConstant,
} from '../../server/src/mechanics/stepper-torque.ts';
import type { StepperDrive } from '../../server/src/mechanics/stepper-torque.ts';

const drive: StepperDrive = { torqueConstant: 0.2, peakCurrent: 2, resistance: 1.5, inductance: 3e-3, polePairs: 50, voltage: 24 };
const drives = fc.record({
  torqueConstant: fc.double({ min: 0.05, max: 1.5, noNaN: true }),
  peakCurrent: fc.double({ min: 0.3, max: 6, noNaN: true }),
  resistance: fc.double({ min: 0.2, max: 30, noNaN: true }),
  inductance: fc.double({ min: 1e-4, max: 40e-3, noNaN: true }),
  polePairs: fc.constantFrom(50, 100),
  voltage: fc.double({ min: 5, max: 100, noNaN: true }),
});
const speeds = fc.double({ min: 0, max: 200, noNaN: true });

describe('torque constant and current setting', () => {
  test('hand calculation: 0.4 N·m at 2 A, both phases: 0.4/(1.41421·2) = 0.141421 N·m/A; one phase: 0.2', () => {
    expect(torqueConstant(0.4, 2)).toBeCloseTo(0.141421, 6);
    expect(torqueConstant(0.4, 2, 'one-phase')).toBeCloseTo(0.2, 12);
  });
  test('hand calculation: 2 A peak is 1.41421 A rms; 2 A rms is 2.82843 A peak', () => {
    expect(currentSetting(2, 'peak').rms).toBeCloseTo(1.41421, 5);
    expect(currentSetting(2, 'rms').peak).toBeCloseTo(2.82843, 5);
  });
  test('hand calculation: credit ends at 1.2 · 1.41421 · 2 A = 3.39411 A', () => {
    expect(creditedPeakCurrent(5, 2)).toBeCloseTo(3.39411, 5);
    expect(creditedPeakCurrent(3, 2)).toBe(3);
  });
  test('programmer errors throw', () => {
    expect(() => torqueConstant(0, 2)).toThrow(RangeError);
    expect(() => torqueConstant(0.4, -1)).toThrow(RangeError);
    expect(() => currentSetting(Number.NaN, 'rms')).toThrow(RangeError);
    expect(() => pullOutTorque(drive, -1)).toThrow(RangeError);
    expect(() => cornerSpeed({ ...drive, polePairs: 49.5 })).toThrow(RangeError);
  });
});

describe('corner speed', () => {
  test('hand calculation without resistance: ω = V/√(k² + (N L I)²) = 24/√(0.04 + 0.09) = 66.564 rad/s', () => {
    const found = cornerSpeed({ ...drive, resistance: 1e-12 });
    expect(found.kind === 'corner' ? found.speed : NaN).toBeCloseTo(66.564, 3);
  });
  test('hand calculation without inductance: ω = (V − R I)/k = (24 − 3)/0.2 = 105 rad/s', () => {
    const found = cornerSpeed({ ...drive, inductance: 1e-12 });
    expect(found.kind === 'corner' ? found.speed : NaN).toBeCloseTo(105, 6);
  });
  test('a supply that cannot push the current says what it would need: 20 Ω · 2 A = 40 V, reaches 24/20 = 1.2 A', () => {
    const found = cornerSpeed({ ...drive, resistance: 20 });
    expect(found.kind).toBe('supply-cannot-push-current');
    if (found.kind !== 'supply-cannot-push-current') return;
    expect(found.voltageNeeded).toBeCloseTo(40, 12);
    expect(found.currentReached).toBeCloseTo(1.2, 12);
    expect(pullOutTorque({ ...drive, resistance: 20 }, 0).design).toBeCloseTo(0.24, 12);
  });
  test('property: the voltage equation holds at the corner; more voltage, higher corner; more current, lower corner', () => {
    fc.assert(fc.property(drives, (d) => {
      const found = cornerSpeed(d);
      if (found.kind !== 'corner') return d.resistance * d.peakCurrent >= d.voltage;
      const { torqueConstant: k, peakCurrent: i, resistance, inductance, polePairs, voltage } = d;
      const needed = Math.hypot(resistance * i + k * found.speed, polePairs * found.speed * inductance * i);
      expect(Math.abs(needed / voltage - 1)).toBeLessThan(1e-9);
      const higher = cornerSpeed({ ...d, voltage: voltage * 1.1 });
      const weaker = cornerSpeed({ ...d, peakCurrent: i * 0.9 });
      expect(higher.kind === 'corner' && higher.speed > found.speed).toBe(true);
      expect(weaker.kind === 'corner' && weaker.speed > found.speed).toBe(true);
      return true;
    }));
  });
});

describe('pull-out torque', () => {
  test('property: design ≤ voltage bound ≤ upper ≤ k·I_p; never negative; never rising with speed', () => {
    fc.assert(fc.property(drives, speeds, speeds, (d, a, b) => {
      const slow = pullOutTorque(d, Math.min(a, b));
      const fast = pullOutTorque(d, Math.max(a, b));
      for (const range of [slow, fast]) {
        expect(range.design).toBeGreaterThanOrEqual(0);
        expect(range.voltageBound).toBeGreaterThanOrEqual(range.design);
        expect(range.upper).toBeGreaterThanOrEqual(range.voltageBound);
        expect(range.upper).toBeLessThanOrEqual(d.torqueConstant * d.peakCurrent * (1 + 1e-12));
      }
      expect(fast.design).toBeLessThanOrEqual(slow.design * (1 + 1e-12));
    }));
  });
  test('property: constant power beyond the corner of a motor with the usual inductance', () => {
    const found = cornerSpeed(drive);
    const corner = found.kind === 'corner' ? found.speed : NaN;
    const power = pullOutTorque(drive, corner).design * corner;
    for (const factor of [1.2, 2, 4]) expect(pullOutTorque(drive, factor * corner).design * factor * corner).toBeCloseTo(power, 9);
  });
  test('property: twice the voltage and twice the speed give the same torque when resistance does not matter', () => {
    fc.assert(fc.property(drives, speeds, (d, speed) => {
      const lossless = { ...d, resistance: 1e-9 };
      const doubled = pullOutTorque({ ...lossless, voltage: 2 * d.voltage }, 2 * speed);
      expect(doubled.design).toBeCloseTo(pullOutTorque(lossless, speed).design, 6);
    }));
  });
  test('power far above the corner, hand calculation: 0.2·24/0.15 − 0.04·1.5/0.0225 = 32 − 2.667 = 29.333 W, which bound B nears', () => {
    expect(shaftPowerFarAboveCorner(drive)).toBeCloseTo(29.333, 3);
    const fast = 3000;
    expect(Math.abs((pullOutTorque(drive, fast).voltageBound * fast) / 29.333 - 1)).toBeLessThan(1e-3);
  });
});
