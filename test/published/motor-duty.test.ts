/** Motors on loads that come and go, against printed examples. */
import { describe, expect, test } from 'vitest';
import { loadedRiseFor, overloadTime, temperatureSwing } from '../../server/src/mechanics/intermittent-heating.ts';

describe('Dubey, Fundamentals of Electrical Drives', () => {
  test('example 4.1, p. 47: 10 loaded, 20 idle at 15 K, constant 60, lowest rise 40 K: highest 49.9 K; 104.4 K if loaded for good', () => {
    const cycle = { idleRise: 15, loadedTime: 10, idleTime: 20, heatingConstant: 60, coolingConstant: 60 };
    const swing = temperatureSwing({ ...cycle, loadedRise: 104.4 });
    // Printed to three figures.
    expect(Math.abs(swing.highest - 49.9)).toBeLessThan(0.05);
    expect(Math.abs(swing.lowest - 40)).toBeLessThan(0.05);
    expect(Math.abs(loadedRiseFor(49.9, cycle) - 104.4)).toBeLessThan(0.1);
  });
  test('example 4.4, p. 55: 20 kW, heating in 60 min, cooling in 90 min: 51.0 kW for 10 min, 25.14 kW ten minutes on and ten off', () => {
    // Rise follows the square of the load; 1 is the permitted rise.
    const time = overloadTime(0, (51.0 / 20) ** 2, 1, 60);
    expect(time.kind === 'for' ? time.time : NaN).toBeCloseTo(10, 1);
    const cycle = { idleRise: 0, loadedTime: 10, idleTime: 10, heatingConstant: 60, coolingConstant: 90 };
    expect(20 * Math.sqrt(loadedRiseFor(1, cycle))).toBeCloseTo(25.14, 2);
    expect(temperatureSwing({ ...cycle, loadedRise: (25.14 / 20) ** 2 }).highest).toBeCloseTo(1, 3);
  });
});
