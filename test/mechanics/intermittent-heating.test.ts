import fc from 'fast-check';
import { expect, test } from 'vitest';
import { loadedRiseFor, overloadTime, temperatureSwing } from '../../server/src/mechanics/intermittent-heating.ts';

const minutes = fc.double({ min: 1, max: 200, noNaN: true });

test('short pauses and loads settle at the mean, hand calculation: 1 s at 80 K, 3 s at 0 K with 1000 s: 20 K', () => {
  const { highest, lowest } = temperatureSwing({ loadedRise: 80, idleRise: 0, loadedTime: 1, idleTime: 3, heatingConstant: 1000, coolingConstant: 1000 });
  expect(Math.abs(highest - 20)).toBeLessThan(0.05);
  expect(Math.abs(lowest - 20)).toBeLessThan(0.05);
});
test('a load on for ten time constants reaches its end, 80 K', () => {
  expect(temperatureSwing({ loadedRise: 80, idleRise: 10, loadedTime: 1e4, idleTime: 1e4, heatingConstant: 1000, coolingConstant: 1000 }).highest).toBeCloseTo(80, 2);
});
test('time of an overload, hand calculation: from 0 K towards 160 K until 80 K: τ·ln 2', () => {
  expect(overloadTime(0, 160, 80, 600)).toEqual({ kind: 'for', time: expect.closeTo(600 * Math.LN2, 9) as number });
  expect(overloadTime(0, 80, 80, 600)).toEqual({ kind: 'for-good' });
  expect(overloadTime(81, 160, 80, 600)).toEqual({ kind: 'too-hot-already' });
});
test('property: the allowed load is the one whose swing ends at the limit', () => {
  fc.assert(fc.property(minutes, minutes, minutes, minutes, fc.double({ min: 0, max: 30, noNaN: true }), (loadedTime, idleTime, heatingConstant, coolingConstant, idleRise) => {
    const cycle = { idleRise, loadedTime, idleTime, heatingConstant, coolingConstant };
    const loadedRise = loadedRiseFor(80, cycle);
    expect(Math.abs(temperatureSwing({ ...cycle, loadedRise }).highest - 80)).toBeLessThan(1e-6);
  }));
});
