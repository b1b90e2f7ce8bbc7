import { expect, test } from 'vitest';
import {
  brushlessCopperLoss, greatestBrushlessTorque, peakLineBackEmf, torqueConstantFromLineBackEmf, torquePerPeakAmpere,
} from '../../server/src/mechanics/brushless.ts';

const none = { current: Infinity, torque: Infinity, speed: Infinity };
const motor = { torquePerPeakAmpere: 0.06, phaseResistance: 0.2, phaseInductance: 0, polePairs: 4, noLoadCurrent: 0 };

test('an ampere of root mean square is 1.41 of peak: 0.1 N·m/A rms is 0.0707 N·m/A peak', () => {
  expect(torquePerPeakAmpere(0.1, 'rms')).toBeCloseTo(0.0707107, 7);
  expect(torquePerPeakAmpere(0.1, 'peak')).toBe(0.1);
});
test('constants, hand calculation: √3·0.04 = 0.0693 N·m/A rms; its peak line back-EMF is √2·0.04 V·s/rad', () => {
  const perRms = torqueConstantFromLineBackEmf(0.04);
  expect(perRms).toBeCloseTo(0.0692820, 7);
  expect(peakLineBackEmf(torquePerPeakAmpere(perRms, 'rms'))).toBeCloseTo(Math.SQRT2 * 0.04, 12);
});
test('stall, hand calculation: 48/√3 = 27.713 V over 0.2 Ω is 138.56 A, times 0.06 is 8.314 N·m', () => {
  expect(greatestBrushlessTorque(motor, 48, none, 0).torque).toBeCloseTo(8.3138, 3);
});
test('without inductance it ends where the line back-EMF meets the supply: 48/(0.06·2/√3) = 692.8 rad/s', () => {
  expect(greatestBrushlessTorque(motor, 48, none, 692.7).torque).toBeGreaterThan(0);
  expect(greatestBrushlessTorque(motor, 48, none, 692.9).torque).toBe(0);
});
test('inductance, hand calculation at 400 rad/s, 0.1 mH, 4 pole pairs: e = 16 V, x = 0.16 Ω, (0.2 i + 16)² + (0.16 i)² = 768: i = (−3.2 + √(10.24 + 0.0656·512))/0.0656', () => {
  const found = greatestBrushlessTorque({ ...motor, phaseInductance: 1e-4 }, 48, none, 400);
  expect(found.current).toBeCloseTo((-3.2 + Math.sqrt(10.24 + 0.0656 * 512)) / 0.0656, 9);
  expect(found.limitedBy).toBe('voltage');
});
test('current, peak torque and speed limits', () => {
  expect(greatestBrushlessTorque(motor, 48, { ...none, current: 20 }, 100)).toEqual({ torque: expect.closeTo(1.2, 12) as number, current: 20, limitedBy: 'current' });
  expect(greatestBrushlessTorque(motor, 48, { ...none, current: 20, torque: 0.9 }, 100)).toMatchObject({ torque: 0.9, limitedBy: 'peak torque' });
  expect(greatestBrushlessTorque(motor, 48, { ...none, speed: 300 }, 301)).toMatchObject({ torque: 0, limitedBy: 'speed limit' });
});
test('copper loss, hand calculation: three phases of 10/√2 A in 0.2 Ω: 3·50·0.2 = 30 W', () => {
  expect(brushlessCopperLoss(10, 0.2)).toBeCloseTo(30, 12);
});
