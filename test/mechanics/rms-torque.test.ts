import { expect, test } from 'vitest';
import { jerkMove } from '../../server/src/mechanics/jerk-profile.ts';
import { meanSquareOfMove, rmsTorqueOfCycle } from '../../server/src/mechanics/rms-torque.ts';

const demand = { steady: 0.1, perGain: 0.05, perLoss: 0.05 };

test('trapezoid, hand calculation: 0.25 s at 0.2, 1.75 s at 0.1, 0.25 s at 0 N·m: (0.01 + 0.0175 + 0)/2.25 = 0.0122222', () => {
  expect(meanSquareOfMove(jerkMove(1, 0.5, 2), demand)).toBeCloseTo(0.012222222, 9);
});
test('a tenth of the time in motion and holding 0.05 N·m: √(0.1·0.0122222 + 0.9·0.0025) = 0.0589255', () => {
  expect(rmsTorqueOfCycle({ moves: [{ move: jerkMove(1, 0.5, 2), demand }], duty: 0.1, holding: 0.05 })).toBeCloseTo(0.05892557, 8);
});
test('moves weigh by their time: 2.25 s and 4.25 s of steady torque 0.1 and 0.2: √((2.25·0.01 + 4.25·0.04)/6.5) = 0.172091', () => {
  const steadily = (steady: number) => ({ steady, perGain: 0, perLoss: 0 });
  const moves = [{ move: jerkMove(1, 0.5, 2), demand: steadily(0.1) }, { move: jerkMove(2, 0.5, 2), demand: steadily(0.2) }];
  expect(rmsTorqueOfCycle({ moves, duty: 1, holding: 0 })).toBeCloseTo(Math.sqrt(0.1925 / 6.5), 12);
});
test('refuses a duty that is none', () => {
  const moves = [{ move: jerkMove(1, 0.5, 2), demand }];
  expect(() => rmsTorqueOfCycle({ moves, duty: 0, holding: 0 })).toThrow(RangeError);
  expect(() => rmsTorqueOfCycle({ moves, duty: 1.1, holding: 0 })).toThrow(RangeError);
  expect(() => rmsTorqueOfCycle({ moves: [], duty: 1, holding: 0 })).toThrow(RangeError);
});
