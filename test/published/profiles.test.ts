/** Moves with limited jerk, and the trapezoid as their limit, against printed examples and the usual table of constants. */
import { describe, expect, test } from 'vitest';
import { jerkMove } from '../../server/src/mechanics/jerk-profile.ts';
import { meanSquareOfMove } from '../../server/src/mechanics/rms-torque.ts';
import { demandAt } from '../../server/src/mechanics/worst-instant.ts';
import { kilometresPerHour } from '../mechanics/units.ts';

/** Two unequal ramps take as long and as far as two equal ones of their harmonic mean. */
const even = (up: number, down: number): number => 2 / (1 / kilometresPerHour(up) + 1 / kilometresPerHour(down));

describe('without a limit of jerk', () => {
  test('Theraja, Textbook of Electrical Technology, vol. III, example 43.1, p. 1716: 2 km at an average of 36 km/h, 39.2 km/h at the top', () => {
    expect(jerkMove(2000, kilometresPerHour(39.2), even(1.8, 3.6)).time).toBeCloseTo(200, 1);
  });
  test('Theraja, example 43.2, p. 1716: 1.7 km/h/s for a top speed of 1.25 times the average, 125 s on the way', () => {
    // 1.7 is printed to two figures: half of the last one is 3 % of v/2a = 15.9 s.
    expect(Math.abs(jerkMove(1500, 15, even(1.7, 3)).time - 125)).toBeLessThan(0.5);
  });
  test('Theraja, example 43.3, p. 1716: a schedule of 38.7 km/h with stops of 21 s', () => {
    const running = 1500 / kilometresPerHour(38.7) - 21;
    expect(Math.abs(jerkMove(1500, (1.25 * 1500) / running, even(1.8, 3.6)).time - running)).toBeLessThan(0.1);
  });
});

/**
 * Highest speed, highest and root mean square acceleration of a move of 1 m in 1 s. Derived by hand, and as in the tables of the motion
 * handbooks (Biagiotti and Melchiorri, Trajectory Planning for Automatic Machines and Robots, chapter 3, from memory):
 * triangle: v = 2, a = 2/0.5 = 4, the same all the time;
 * thirds: v = 1/(2/3) = 1.5, a = 1.5·3 = 4.5, √(2/3)·4.5 = 3.674;
 * jerk without a part of even acceleration, four quarters: v = 2, a = 2·2/0.5 = 8, a triangle all the time: 8/√3 = 4.619.
 */
test.each([
  ['triangle', jerkMove(1, 10, 4), 2, 4, 4],
  ['thirds', jerkMove(1, 1.5, 4.5), 1.5, 4.5, 4.5 * Math.sqrt(2 / 3)],
  ['jerk all the time', jerkMove(1, 10, 100, 32), 2, 8, 8 / Math.sqrt(3)],
])('constants of a profile: %s', (_name, move, speed, acceleration, meanSquareRoot) => {
  expect(move.time).toBeCloseTo(1, 12);
  expect(move.peakSpeed).toBeCloseTo(speed, 12);
  expect(move.peakAcceleration).toBeCloseTo(acceleration, 12);
  expect(Math.sqrt(meanSquareOfMove(move, { steady: 0, perGain: 1, perLoss: 1 }))).toBeCloseTo(meanSquareRoot, 12);
});

test('Burman, Special Electrical Machines, example 3.12, p. 195: 200 to 300 rad/s in 0.2 s, 1e-4 kg·m² against 0.06 N·m: 0.11 N·m', () => {
  expect(demandAt({ steady: 0.06, perGain: 1e-4, perLoss: 1e-4 }, (300 - 200) / 0.2)).toBeCloseTo(0.11, 12);
});
