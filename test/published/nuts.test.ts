/** Nut pressure, sliding speed and pressure times velocity against printed examples. */
import { describe, expect, it } from 'vitest';
import { bearingPressure, lengthForPressure, pressureVelocity, slidingSpeed } from '../../server/src/mechanics/nut-pressure.ts';

const within = (share: number, actual: number, printed: number): void => {
  expect(Math.abs(actual / printed - 1), `${actual} against ${printed}`).toBeLessThanOrEqual(share);
};
const INCH = 0.0254;
const FOOT_PER_MINUTE = (12 * INCH) / 60;
const PSI = 4.4482216152605 / INCH ** 2;

describe('bearing pressure', () => {
  it('a machine-design text, example 6.5 (transcribed): straightening screw 80 × 10, nut 40 mm', () => {
    // Printed with the ring area π (d² − d3²)/4 of four square threads, equal to π d2 P/2 each.
    within(1e-6, bearingPressure({ load: 10000, pitchDiameter: 0.075, pitch: 0.01, flankHeight: 0.005, engagedLength: 0.04 }) / 1e6, 2.122066);
  });

  it('Singh, Machine Design-I, example 9.1, p. 256 (transcribed): threads for 6 MPa', () => {
    // Printed 9 threads; the raw count 10 000/(π · 23.5 · 2.5 · 6) = 9.03 was rounded down.
    const length = lengthForPressure({ load: 10000, pitchDiameter: 0.0235, pitch: 0.005, flankHeight: 0.0025 }, 6e6);
    within(5e-4, length / 0.005, 9.03);
    expect(Math.floor(length / 0.005)).toBe(9);
  });
});

describe('speed and heat', () => {
  it('a bearing maker’s technical page: 5/8 in shaft, 35 lbf, 120 rpm', () => {
    const speed = slidingSpeed(0.625 * INCH, 0, 120 / 60);
    within(1e-4, speed / FOOT_PER_MINUTE, 19.635);
    // Pressure as printed for a journal, load over diameter times length.
    const pressure = 35 / (0.625 * 1.03125);
    within(1e-3, pressure, 54.3);
    within(1e-3, pressureVelocity(pressure * PSI, speed) / (PSI * FOOT_PER_MINUTE), 1066.2);
  });

  it.each([
    ['nylon', 3000, 0.105],
    ['polyurethane', 4000, 0.14],
    ['filled PTFE', 10000, 0.35],
    ['porous bronze with oil', 50000, 1.75],
    ['leaded tin bronze', 75000, 2.625],
    ['aluminium bronze', 125000, 4.375],
  ])('Mott, Table 16-1 (read second-hand): %s, %d psi·ft/min in MPa·m/s', (_, psiFeetPerMinute, printed) => {
    within(1e-3, pressureVelocity(PSI, psiFeetPerMinute * FOOT_PER_MINUTE) / 1e6, printed);
  });
});
