/** Root mean square of the torque against quadrature over instants of the move. */
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { jerkMove, stateAt } from '../../server/src/mechanics/jerk-profile.ts';
import { meanSquareOfMove, rmsTorqueOfCycle } from '../../server/src/mechanics/rms-torque.ts';

/** Torque at an acceleration, written out again. */
const torqueOf = (steady: number, gain: number, loss: number) => (acceleration: number): number => steady + (acceleration > 0 ? gain : loss) * acceleration;

function meanSquare(move: ReturnType<typeof jerkMove>, torque: (acceleration: number) => number): number {
  const instants = 40000;
  let sum = 0;
  for (let i = 0; i < instants; i++) sum += torque(stateAt(move, ((i + 0.5) / instants) * move.time).acceleration) ** 2;
  return sum / instants;
}

test('property: one move', () => {
  const shares = fc.double({ min: 0, max: 1, noNaN: true });
  fc.assert(fc.property(fc.double({ min: 0.05, max: 1, noNaN: true }), fc.double({ min: 0.5, max: 10, noNaN: true }), fc.oneof(fc.double({ min: 5, max: 500, noNaN: true }), fc.constant(Infinity)),
    fc.double({ min: -0.5, max: 0.5, noNaN: true }), shares, shares, (speed, acceleration, jerk, steady, perGain, perLoss) => {
      const move = jerkMove(0.5, speed, acceleration, jerk);
      const counted = meanSquare(move, torqueOf(steady, perGain, perLoss));
      // An instant that straddles a jump of the torque counts wholly on one side of it: at most eight do.
      const greatest = Math.max(...[-1, 0, 1].map((sign) => torqueOf(steady, perGain, perLoss)(sign * move.peakAcceleration) ** 2));
      expect(Math.abs(meanSquareOfMove(move, { steady, perGain, perLoss }) - counted)).toBeLessThan(1e-6 * counted + (8 * greatest) / 40000 + 1e-9);
    }), { numRuns: 25 });
});

test('up, rest, down, rest, instant by instant', () => {
  const move = jerkMove(0.3, 0.25, 3, 40);
  const up = { steady: 0.2, perGain: 0.04, perLoss: 0.03 };
  const down = { steady: -0.08, perGain: 0.03, perLoss: 0.04 };
  const holding = 0.12;
  // Half of the time in motion.
  const instants = 40000;
  let heat = 0;
  for (let i = 0; i < instants; i++) {
    const t = ((i + 0.5) / instants) * 4 * move.time;
    const leg = Math.floor(t / move.time);
    const { acceleration } = stateAt(move, t - leg * move.time);
    const torque = leg === 0 ? torqueOf(0.2, 0.04, 0.03)(acceleration) : leg === 2 ? torqueOf(-0.08, 0.03, 0.04)(acceleration) : holding;
    heat += torque ** 2 / instants;
  }
  const found = rmsTorqueOfCycle({ moves: [{ move, demand: up }, { move, demand: down }], duty: 0.5, holding });
  expect(Math.abs(found / Math.sqrt(heat) - 1)).toBeLessThan(1e-3);
});
