import { describe, expect, test } from 'vitest';
import { accelerationPulse, jerkOfOnePeriod, lagUnderAcceleration, mostRinging, ringingAmplitude, settlingTime } from '../../server/src/mechanics/ringing.ts';

describe('the acceleration pulse', () => {
  test('without a limit of jerk: 3 m/s² to 0.3 m/s lasts 0.1 s', () => {
    expect(accelerationPulse(0.3, 3)).toEqual({ acceleration: 3, length: expect.closeTo(0.1, 12) as number, rise: 0 });
  });
  test('with it: 3 m/s² by 100 m/s³ rises in 0.03 s, and the ramp lasts 0.13 s', () => {
    expect(accelerationPulse(0.3, 3, 100)).toEqual({ acceleration: 3, length: expect.closeTo(0.1, 12) as number, rise: expect.closeTo(0.03, 12) as number });
  });
  test('too slow for the full acceleration: 0.04 m/s by 100 m/s³ reaches √4 = 2 m/s² in 0.02 s', () => {
    const pulse = accelerationPulse(0.04, 3, 100);
    expect(pulse.acceleration).toBeCloseTo(2, 12);
    expect(pulse.rise).toBeCloseTo(0.02, 12);
    expect(pulse.length).toBeCloseTo(0.02, 12);
  });
  test.each([[0.3, 3, 100], [0.3, 3, undefined], [0.04, 3, 100], [0.09, 3, 100]] as const)('its area is the speed: %f m/s', (speed, acceleration, jerk) => {
    const { acceleration: peak, length } = accelerationPulse(speed, acceleration, jerk);
    expect(peak * length).toBeCloseTo(speed, 12);
  });
});

describe('what remains', () => {
  const omega = 2 * Math.PI * 50; // a period of 20 ms
  test('half a period: twice the steady lag, 2 a/ω²: 3 m/s² at 50 Hz leaves 60.8 µm', () => {
    // 2·3/(314.16²) = 6/98696 = 60.79e-6.
    expect(ringingAmplitude({ acceleration: 3, length: 0.01, rise: 0 }, omega)).toBeCloseTo(60.79e-6, 8);
  });
  test.each([0.02, 0.04, 0.1])('a ramp of %f s, whole periods, leaves nothing', (length) => {
    expect(ringingAmplitude({ acceleration: 3, length, rise: 0 }, omega)).toBeLessThan(1e-15);
  });
  test('a rise of one period leaves nothing, whatever the ramp', () => {
    for (const length of [0.021, 0.025, 0.037]) expect(ringingAmplitude({ acceleration: 3, length, rise: 0.02 }, omega)).toBeLessThan(1e-15);
    expect(jerkOfOnePeriod(3, omega)).toBeCloseTo(150, 9); // 3 m/s² in 20 ms
  });
  test('a rise of half a period leaves 2/π = 63.7 % of it', () => {
    const sudden = ringingAmplitude({ acceleration: 3, length: 0.033, rise: 0 }, omega);
    expect(ringingAmplitude({ acceleration: 3, length: 0.033, rise: 0.01 }, omega) / sudden).toBeCloseTo(2 / Math.PI, 10);
  });
  test('a ramp much shorter than the period is a push: A = v/ω', () => {
    expect(ringingAmplitude({ acceleration: 1000, length: 1e-5, rise: 0 }, omega)).toBeCloseTo(0.01 / omega, 9);
  });
  test('a long damped ramp forgets its beginning: only a/ω² remains', () => {
    expect(ringingAmplitude({ acceleration: 3, length: 3, rise: 0 }, omega, 0.05)).toBeCloseTo(3 / omega ** 2 / Math.sqrt(1 - 0.0025), 12);
  });
  test('the bound is never passed, and is reached', () => {
    let closest = 0;
    for (let i = 1; i <= 400; i++) {
      for (const rise of [0, 0.003, 0.01, 0.02, 0.05]) {
        for (const damping of [0, 0.02, 0.1, 0.5]) {
          const pulse = { acceleration: 3, length: 0.05 + i * 2.5e-4, rise };
          const share = ringingAmplitude(pulse, omega, damping) / mostRinging(pulse, omega);
          expect(share).toBeLessThanOrEqual(1 + 1e-12);
          closest = Math.max(closest, share);
        }
      }
    }
    expect(closest).toBeGreaterThan(0.999);
  });
  test('twice the acceleration, twice the swing', () => {
    const at = (acceleration: number): number => ringingAmplitude({ acceleration, length: 0.013, rise: 0.004 }, omega, 0.03);
    expect(at(6)).toBeCloseTo(2 * at(3), 15);
  });
});

describe('lag and settling', () => {
  test('5 m/s² at 65 Hz lags 30 µm: 5/408.4² = 29.98e-6', () => {
    expect(lagUnderAcceleration(5, 2 * Math.PI * 65)).toBeCloseTo(29.98e-6, 8);
  });
  test('from 60 µm to 6 µm at 50 Hz and 5 %: ln 10/(0.05·314.16) = 0.1466 s', () => {
    expect(settlingTime(60e-6, 6e-6, 2 * Math.PI * 50, 0.05)).toBeCloseTo(0.1466, 4);
    expect(settlingTime(5e-6, 6e-6, 2 * Math.PI * 50, 0.05)).toBe(0);
  });
  test.each([
    () => ringingAmplitude({ acceleration: 3, length: 0.01, rise: 0.02 }, 300),
    () => ringingAmplitude({ acceleration: 3, length: 0.01, rise: 0 }, 0),
    () => ringingAmplitude({ acceleration: 3, length: 0.01, rise: 0 }, 300, 1),
    () => settlingTime(1, 0.1, 300, 0),
    () => accelerationPulse(0.1, 1, 0),
  ])('out of domain: refused', (run) => {
    expect(run).toThrow(RangeError);
  });
});
