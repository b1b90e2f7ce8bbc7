import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  electricalFrequency, fullStepTravel, fullStepsPerTurn, heightOnFullSteps, speedAtStepRate, stepRate, stepsFromAngle, stepsPerMetre,
} from '../../server/src/mechanics/step-rate.ts';

const mm = 1e-3;

test('hand calculation: 8 mm over 200 steps is 0.04 mm; 16 microsteps make 400 a millimetre', () => {
  expect(fullStepTravel(8 * mm, 200)).toBeCloseTo(0.04 * mm, 12);
  expect(stepsPerMetre(200, 16, 8 * mm) / 1000).toBeCloseTo(400, 9);
});
test('an angle that divides no whole turn is kept as it is', () => {
  expect(stepsFromAngle((7 * Math.PI) / 180)).toBeCloseTo(360 / 7, 9);
  expect(fullStepsPerTurn(100)).toBe(400);
});
test('property: step rate and speed are each other backwards', () => {
  fc.assert(fc.property(fc.double({ min: 0, max: 300, noNaN: true }), fc.constantFrom(1, 8, 16, 32), (speed, microsteps) => {
    expect(speedAtStepRate(stepRate(speed, 200, microsteps), 200, microsteps)).toBeCloseTo(speed, 9);
    expect(stepRate(speed, 200, 1)).toBeCloseTo(4 * electricalFrequency(speed, 50), 6);
  }));
});

describe('heights on full steps', () => {
  test.each([
    // Travel per turn mm, whole heights mm: each is a whole multiple of travel/200 (kinematics).
    [1.25, [0.1, 0.15, 0.2, 0.25, 0.3]], [3, [0.12, 0.15, 0.24, 0.3]], [4, [0.1, 0.12, 0.16, 0.2, 0.24, 0.28, 0.3, 0.32]],
    [5, [0.1, 0.15, 0.2, 0.25, 0.3]], [8, [0.12, 0.16, 0.2, 0.24, 0.28, 0.32]], [16, [0.16, 0.24, 0.32]],
  ])('%f mm a turn', (travel, heights) => {
    for (const height of heights) expect(heightOnFullSteps(height * mm, (travel * mm) / 200).whole, `${height}`).toBe(true);
  });
  test('hand calculation: 0.25 mm on 8 mm is 6.25 steps; nearest are 0.24 and 0.28 mm', () => {
    const found = heightOnFullSteps(0.25 * mm, 0.04 * mm);
    expect(found.whole).toBe(false);
    expect(found.steps).toBeCloseTo(6.25, 9);
    expect((found.below ?? NaN) / mm).toBeCloseTo(0.24, 9);
    expect(found.above / mm).toBeCloseTo(0.28, 9);
  });
  test('below one full step there is no whole height beneath', () => {
    const found = heightOnFullSteps(0.03 * mm, 0.04 * mm);
    expect(found.whole).toBe(false);
    expect(found.below).toBeUndefined();
    expect(found.above / mm).toBeCloseTo(0.04, 12);
  });
});

test('programmer errors throw', () => {
  expect(() => stepRate(-1, 200, 1)).toThrow(RangeError);
  expect(() => stepsPerMetre(200, 1.5, 1)).toThrow(RangeError);
  expect(() => heightOnFullSteps(0, 1)).toThrow(RangeError);
});
