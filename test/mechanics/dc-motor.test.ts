import fc from 'fast-check';
import { expect, test } from 'vitest';
import { currentForTorque, dcMotorAt, greatestTorque, noLoadSpeed } from '../../server/src/mechanics/dc-motor.ts';

const motor = { torqueConstant: 0.05, resistance: 0.5, noLoadCurrent: 0.4 };
const none = { current: Infinity, torque: Infinity, speed: Infinity };

test('stall, hand calculation: 24 V over 0.5 Ω is 48 A, (48 − 0.4)·0.05 = 2.38 N·m', () => {
  expect(dcMotorAt(motor, 24, 0)).toEqual({ current: 48, torque: expect.closeTo(2.38, 12) as number });
});
test('no load, hand calculation: (24 − 0.2)/0.05 = 476 rad/s, and no torque there', () => {
  expect(noLoadSpeed(motor, 24)).toBeCloseTo(476, 12);
  expect(dcMotorAt(motor, 24, 476).torque).toBeCloseTo(0, 12);
});
test('the greatest shaft power of a motor without losses lies at half of the no-load speed: T_s ω₀/4', () => {
  const ideal = { ...motor, noLoadCurrent: 0 };
  const power = (speed: number): number => dcMotorAt(ideal, 24, speed).torque * speed;
  const whole = noLoadSpeed(ideal, 24);
  expect(power(whole / 2)).toBeCloseTo((dcMotorAt(ideal, 24, 0).torque * whole) / 4, 12);
  expect(power(whole * 0.49)).toBeLessThan(power(whole / 2));
  expect(power(whole * 0.51)).toBeLessThan(power(whole / 2));
});
test('limits, hand calculation: 10 A gives (10 − 0.4)·0.05 = 0.48 N·m; a peak of 0.3 N·m goes before it; nothing beyond the speed limit', () => {
  expect(greatestTorque(motor, 24, { ...none, current: 10 }, 100)).toEqual({ torque: expect.closeTo(0.48, 12) as number, current: 10, limitedBy: 'current' });
  expect(greatestTorque(motor, 24, { ...none, current: 10, torque: 0.3 }, 100)).toMatchObject({ torque: 0.3, limitedBy: 'peak torque', current: expect.closeTo(6.4, 12) as number });
  // 400 rad/s: (24 − 20)/0.5 = 8 A by voltage.
  expect(greatestTorque(motor, 24, { ...none, current: 10 }, 400)).toMatchObject({ limitedBy: 'voltage', torque: expect.closeTo(0.38, 12) as number });
  expect(greatestTorque(motor, 24, { ...none, speed: 300 }, 301)).toMatchObject({ torque: 0, limitedBy: 'speed limit' });
  expect(greatestTorque(motor, 24, none, 1000).torque).toBe(0);
});
test('current for a torque and back', () => {
  fc.assert(fc.property(fc.double({ min: 0, max: 2, noNaN: true }), (torque) => {
    const current = currentForTorque(motor, torque);
    expect(motor.torqueConstant * (current - motor.noLoadCurrent)).toBeCloseTo(torque, 12);
    expect(currentForTorque(motor, -torque)).toBe(current);
  }));
});
test('property: torque never rises with speed', () => {
  const speed = fc.double({ min: 0, max: 800, noNaN: true });
  fc.assert(fc.property(speed, speed, fc.double({ min: 1, max: 100, noNaN: true }), (one, other, current) => {
    const [slow, fast] = [Math.min(one, other), Math.max(one, other)];
    expect(greatestTorque(motor, 24, { ...none, current }, fast).torque).toBeLessThanOrEqual(greatestTorque(motor, 24, { ...none, current }, slow).torque + 1e-12);
  }));
});
test.each([{ ...motor, resistance: 0 }, { ...motor, torqueConstant: -1 }, { ...motor, noLoadCurrent: Number.NaN }])('refuses %o', (bad) => {
  expect(() => dcMotorAt(bad, 24, 0)).toThrow(RangeError);
});
