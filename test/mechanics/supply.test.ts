import fc from 'fast-check';
import { expect, test } from 'vitest';
import { handPushedVoltage, railVoltageAfter, returnedEnergy, returnedPower, supplyCurrent, supplyPower } from '../../server/src/mechanics/supply.ts';

test('hand calculation: (20 W shaft + 6.8 W copper)/0.85 = 31.529 W, at 24 V 1.3137 A', () => {
  const power = supplyPower(20, 6.8, 0.85);
  expect(power).toBeCloseTo(31.529, 3);
  expect(supplyCurrent(power, 24)).toBeCloseTo(1.3137, 4);
  expect(supplyPower(-30, 6.8)).toBe(0);
});
test('hand calculation: 20 kg lowered at 0.1 m/s give 19.62 W; windings of 8 W leave 11.62 W, of 25 W nothing', () => {
  expect(returnedPower(-20 * 9.81 * 0.1, 8)).toBeCloseTo(11.62, 9);
  expect(returnedPower(-20 * 9.81 * 0.1, 25)).toBe(0);
});
test('hand calculation: 1.25 J into 1000 µF at 36 V: √(1296 + 2500) = 61.61 V', () => {
  expect(railVoltageAfter(36, 1.25, 1e-3)).toBeCloseTo(61.61, 2);
});
test('property: returned energy agrees with summing small steps', () => {
  fc.assert(fc.property(
    fc.double({ min: -2, max: 2, noNaN: true }), fc.double({ min: 0, max: 100, noNaN: true }), fc.double({ min: 0, max: 100, noNaN: true }),
    fc.double({ min: 0, max: 50, noNaN: true }),
    (torque, from, to, copper) => {
      let sum = 0;
      const steps = 2000;
      for (let i = 0; i < steps; i++) {
        const speed = from + ((to - from) * (i + 0.5)) / steps;
        sum += (Math.max(0, -torque * speed - copper) * 0.5) / steps;
      }
      expect(Math.abs(returnedEnergy(torque, from, to, 0.5, copper) - sum)).toBeLessThan(1e-3);
    },
  ));
});
test('hand calculation: 0.2 V·s/rad pushed to 78.5 rad/s makes 15.7 V', () => {
  expect(handPushedVoltage(0.2, 78.5)).toBeCloseTo(15.7, 9);
});
test('programmer errors throw', () => {
  expect(() => supplyPower(1, -1)).toThrow(RangeError);
  expect(() => supplyPower(1, 1, 1.1)).toThrow(RangeError);
  expect(() => railVoltageAfter(24, 1, 0)).toThrow(RangeError);
});
