/** DC and brushless motors against printed examples. */
import { describe, expect, test } from 'vitest';
import { peakLineBackEmf, torqueConstantFromLineBackEmf, torquePerPeakAmpere } from '../../server/src/mechanics/brushless.ts';
import { dcMotorAt, noLoadSpeed } from '../../server/src/mechanics/dc-motor.ts';
import { perMinute } from '../mechanics/units.ts';

describe('DC motors', () => {
  test('Fitzgerald, Kingsley and Umans, Electric Machinery, example 7.9, p. 389: 1.25 A at 50 V and 2100 rpm with 1.03 Ω make 0.22 V·s/rad', () => {
    // Printed to two figures: half of the last one is 2.3 %.
    const motor = { torqueConstant: 0.22, resistance: 1.03, noLoadCurrent: 1.25 };
    expect(Math.abs(noLoadSpeed(motor, 50) / perMinute(2100) - 1)).toBeLessThan(0.023);
  });
  test('the same example: at 48 V and 1700 rpm, 61 W of rotational loss taken off, 275 W at the shaft', () => {
    const motor = { torqueConstant: 0.22, resistance: 1.03, noLoadCurrent: 0 };
    expect(dcMotorAt(motor, 48, perMinute(1700)).torque * perMinute(1700) - 61).toBeCloseTo(275, 0);
  });
  test('Jagannathan, Introduction to Power Electronics, example 7.4, p. 261: 0.4 of 230 V, 2 Ω, 0.5 V·s/rad, 1400 rpm: 9.35 A, 4.674 N·m', () => {
    const found = dcMotorAt({ torqueConstant: 0.5, resistance: 2, noLoadCurrent: 0 }, 0.4 * 230, perMinute(1400));
    expect(found.current).toBeCloseTo(9.35, 2);
    expect(found.torque).toBeCloseTo(4.674, 3);
  });
  test('J. B. Gupta, Elements of Electric Drives, chapter 1, example 5, p. 50: 220 V, 100 A, 0.1 Ω, 1000 rpm; 905 rpm at 200 V and the same current', () => {
    // The load is taken as part of the no-load current, which makes the loaded speed the no-load speed.
    const torqueConstant = (220 - 0.1 * 100) / perMinute(1000);
    const speed = noLoadSpeed({ torqueConstant, resistance: 0.1, noLoadCurrent: 100 }, 200);
    // Printed rounded up (904.76).
    expect(Math.abs(speed / perMinute(1) - 905)).toBeLessThan(0.5);
  });
});

describe('brushless motors', () => {
  test('Fitzgerald, Kingsley and Umans, example 11.10, p. 593: 220 V open-circuit at 3200 rpm; 0.65 of the torque of 25 kW at 4000 rpm takes 48.2 A of peak', () => {
    const perPeak = torquePerPeakAmpere(torqueConstantFromLineBackEmf(220 / perMinute(3200)), 'rms');
    const torque = (0.65 * 25000) / perMinute(4000);
    // Printed to three figures.
    expect(Math.abs(torque / perPeak - 48.2)).toBeLessThan(0.1);
    expect((peakLineBackEmf(perPeak) * perMinute(3200)) / Math.SQRT2).toBeCloseTo(220, 9);
  });
});
