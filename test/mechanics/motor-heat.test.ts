import { describe, expect, test } from 'vitest';
import {
  COPPER_TEMPERATURE_COEFFICIENT, copperLossOfSetting, ratedCopperLoss, riseAfter, rmsTorque, thermalResistanceBound, warmingFromTwoReadings,
  windingRise,
} from '../../server/src/mechanics/motor-heat.ts';

describe('copper loss', () => {
  test('both sine currents together, summed over one period, heat evenly: I_p²·R', () => {
    let sum = 0;
    for (let i = 0; i < 1000; i++) {
      const angle = (2 * Math.PI * i) / 1000;
      sum += (2.4 * Math.sin(angle)) ** 2 * 1.3 + (2.4 * Math.cos(angle)) ** 2 * 1.3;
    }
    expect(copperLossOfSetting(2.4, 1.3)).toBeCloseTo(sum / 1000, 9);
  });
  test('peak at the rated current makes half the rated heat, root mean square at the rated current all of it', () => {
    expect(copperLossOfSetting(2, 1.7) / ratedCopperLoss(2, 1.7)).toBeCloseTo(0.5, 12);
    expect(copperLossOfSetting(2 * Math.SQRT2, 1.7) / ratedCopperLoss(2, 1.7)).toBeCloseTo(1, 12);
  });
});

describe('temperature', () => {
  test.each([
    // 80 K/(2·I_r²·R) by hand: 80/(2·4·1.7) = 5.882; 80/(2·7.84·1.1) = 4.638; 80/(2·17.64·0.45) = 5.039 K/W.
    [2.0, 1.7, 5.882], [2.8, 1.1, 4.638], [4.2, 0.45, 5.039],
  ])('bound of the thermal resistance of a motor of %f A and %f Ω: %f K/W', (current, resistance, bound) => {
    expect(thermalResistanceBound(current, resistance)).toBeCloseTo(bound, 3);
  });
  test('with the same growth of resistance in both, the rated current ends at the permitted rise', () => {
    const bound = thermalResistanceBound(2, 1.7, 80, COPPER_TEMPERATURE_COEFFICIENT);
    const found = windingRise(ratedCopperLoss(2, 1.7), bound, COPPER_TEMPERATURE_COEFFICIENT);
    expect(found.kind === 'settles' ? found.rise : NaN).toBeCloseTo(80, 9);
  });
  test('hand calculation with copper that grows: 10 W · 6 K/W = 60 K; 60/(1 − 60/255) = 78.46 K', () => {
    const found = windingRise(10, 6, COPPER_TEMPERATURE_COEFFICIENT);
    expect(found.kind === 'settles' ? found.rise : NaN).toBeCloseTo(78.46, 2);
  });
  test('a constant current runs away once α·P·R_th reaches 1 (255 K without growth)', () => {
    expect(windingRise(42.6, 6, COPPER_TEMPERATURE_COEFFICIENT).kind).toBe('runs-away');
    expect(windingRise(42.4, 6, COPPER_TEMPERATURE_COEFFICIENT).kind).toBe('settles');
  });
  test('a rise starts where it is and ends where it goes; 63.2 % after one time constant', () => {
    expect(riseAfter(10, 50, 600, 0)).toBeCloseTo(10, 12);
    expect(riseAfter(0, 1, 600, 600)).toBeCloseTo(0.632, 3);
    expect(riseAfter(10, 50, 600, 1e5)).toBeCloseTo(50, 9);
  });
  test('two readings of a known curve give it back', () => {
    const found = warmingFromTwoReadings(riseAfter(0, 47, 900, 500), riseAfter(0, 47, 900, 1000), 500);
    expect(found.kind).toBe('warming');
    if (found.kind !== 'warming') return;
    expect(found.endRise).toBeCloseTo(47, 9);
    expect(found.timeConstant).toBeCloseTo(900, 6);
  });
  test('readings that no warming body gives are refused', () => {
    expect(warmingFromTwoReadings(20, 41, 500).kind).toBe('not-a-warming-curve');
    expect(warmingFromTwoReadings(20, 19, 500).kind).toBe('not-a-warming-curve');
  });
});

test('root mean square of an even rise from nothing to T is T/√3', () => {
  expect(rmsTorque([{ start: 0, end: 3, duration: 7 }])).toBeCloseTo(3 / Math.sqrt(3), 12);
});

test('programmer errors throw', () => {
  expect(() => copperLossOfSetting(1, 0)).toThrow(RangeError);
  expect(() => ratedCopperLoss(-1, 1)).toThrow(RangeError);
  expect(() => windingRise(-1, 1)).toThrow(RangeError);
  expect(() => riseAfter(0, 1, 0, 1)).toThrow(RangeError);
  expect(() => rmsTorque([])).toThrow(RangeError);
});
