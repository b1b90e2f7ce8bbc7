import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { driveForce, motorTorque } from '../../server/src/mechanics/axis-torque.ts';
import type { AxisLoad, DriveChain } from '../../server/src/mechanics/axis-torque.ts';
import { jerkMove } from '../../server/src/mechanics/jerk-profile.ts';
import { demandAt, quickestMove, worstInstant } from '../../server/src/mechanics/worst-instant.ts';

const level = { steady: 0.1, perGain: 0.05, perLoss: 0.05 };

describe('worst instant', () => {
  test('trapezoid, hand calculation: at the end of the ramp, T_a(v)/(0.1 + 0.05·2) = 0.3/0.2 = 1.5', () => {
    const worst = worstInstant(jerkMove(1, 0.5, 2), level, (speed) => 0.6 - 0.6 * speed);
    expect(worst.ratio).toBeCloseTo(1.5, 12);
    expect(worst.time).toBeCloseTo(0.25, 12);
    expect(worst.speed).toBeCloseTo(0.5, 12);
    expect(worst.acceleration).toBe(2);
  });
  test('even torque: any instant of full acceleration; steady only where there is no acceleration to speak of', () => {
    expect(worstInstant(jerkMove(1, 0.5, 2), level, () => 0.5).ratio).toBeCloseTo(2.5, 12);
    expect(worstInstant(jerkMove(1, 0.5, 1e-9), level, () => 0.5).ratio).toBeCloseTo(5, 6);
  });
  test('limited jerk, hand calculation: on the falling part a = 2 − 20 t, v = 0.4 + 2t − 10t²; (0.6 − 0.6 v)/(0.1 + 0.05 a) is least at its start, 0.36/0.2', () => {
    // Slope at t = 0: d/dt of the numerator −0.6·2 = −1.2, of the denominator −1: ratio 1.8 changes by (−1.2 + 1.8)/0.2 = +3 > 0.
    const worst = worstInstant(jerkMove(1, 0.5, 2, 20), level, (speed) => 0.6 - 0.6 * speed);
    expect(worst.ratio).toBeCloseTo(1.8, 9);
    expect(worst.time).toBeCloseTo(0.25, 9);
  });
  test('a load that drives is worst in braking', () => {
    const worst = worstInstant(jerkMove(1, 0.5, 2), { steady: -0.2, perGain: 0.05, perLoss: 0.05 }, () => 0.6);
    expect(worst.demanded).toBeCloseTo(-0.3, 12);
    expect(worst.ratio).toBeCloseTo(2, 12);
    expect(worst.acceleration).toBeLessThan(0);
  });
  test('property: a hundred times finer grid finds nothing more than 0.2 % worse', () => {
    const torque = (speed: number): number => 0.8 * Math.min(1, 0.2 / Math.max(speed, 1e-9));
    fc.assert(fc.property(fc.double({ min: 0.05, max: 1, noNaN: true }), fc.double({ min: 0.5, max: 10, noNaN: true }), fc.double({ min: 5, max: 500, noNaN: true }), (speed, acceleration, jerk) => {
      const move = jerkMove(2, speed, acceleration, jerk);
      const found = worstInstant(move, level, torque).ratio;
      for (const segment of move.segments) {
        for (let i = 0; i <= 4800; i++) {
          const t = (segment.duration * i) / 4800;
          const ratio = torque(segment.speed + segment.acceleration * t + (segment.jerk * t * t) / 2) / Math.abs(demandAt(level, segment.acceleration + segment.jerk * t));
          if (ratio < found * 0.998) throw new Error(`${ratio} < ${found}`);
        }
      }
    }), { numRuns: 20 });
  });
});

test('the demand is linear on either side of zero acceleration, as the drive chain reckons it', () => {
  const chain: DriveChain = { travelPerTurn: 0.04, efficiency: 0.9, reverseEfficiency: 0.85, dragTorque: 0.01, screwInertia: 1e-5, stages: [], motorInertia: 5e-6 };
  const load: AxisLoad = { mass: 2, slope: Math.PI / 2, gravity: 9.81, friction: 3, process: 0, counterbalance: 0 };
  const at = (acceleration: number): number => motorTorque(chain, driveForce(load, 1, acceleration), 1, acceleration).torque;
  const steady = at(0);
  const demand = { steady, perGain: at(1) - steady, perLoss: steady - at(-1) };
  for (const acceleration of [-6, -2, -0.5, 0, 0.5, 3, 20]) expect(demandAt(demand, acceleration)).toBeCloseTo(at(acceleration), 12);
});

describe('quickest move', () => {
  const free = [{ name: 'none', speed: 50 }];
  const force = { steady: 0, perGain: 1, perLoss: 1 };
  test('even torque: the triangle, 2·√(s/a) = 2·√(0.5/2) = 1 s, by torque', () => {
    expect(quickestMove(0.5, free, force, () => 2)).toMatchObject({ kind: 'moves', limitedBy: 'torque', time: expect.closeTo(1, 6) as number });
  });
  test('even torque, speed limited: 0.5/0.5 + 0.5/2 = 1.25 s, by the lower of two limits', () => {
    const found = quickestMove(0.5, [{ name: 'steps', speed: 0.5 }, { name: 'whirl', speed: 0.7 }], force, () => 2);
    expect(found).toMatchObject({ limitedBy: 'speed', limit: 'steps', time: expect.closeTo(1.25, 9) as number });
  });
  test('even power T = c/v: t = s/v + v²/c is least at v = (s c/2)^⅓; s = 1, c = 0.25: v = 0.5, t = 3 s', () => {
    const found = quickestMove(1, [{ name: 'none', speed: 20 }], force, (v) => 0.25 / v);
    expect(found).toMatchObject({ limitedBy: 'torque', time: expect.closeTo(3, 5) as number });
  });
  test('limited jerk, even torque: 0.1 m, 2 m/s², 20 m/s³ is the move reckoned by hand above, 0.558258 s, by the jerk', () => {
    // Without a limit of jerk 2·√(0.1/2) = 0.447 s, a fifth less.
    const found = quickestMove(0.1, free, force, () => 2, 20);
    expect(found).toMatchObject({ limitedBy: 'jerk', time: expect.closeTo(0.558258, 4) as number });
  });
  test('too little torque to keep moving: it cannot', () => {
    expect(quickestMove(1, free, { steady: 3, perGain: 1, perLoss: 1 }, () => 2)).toEqual({ kind: 'cannot-move' });
    expect(quickestMove(1, free, { steady: 3, perGain: 1, perLoss: 1 }, () => 2, 100)).toEqual({ kind: 'cannot-move' });
  });
  test('property: no move on a grid of speed and acceleration that the torque allows at every instant is quicker by 3 %', () => {
    fc.assert(fc.property(fc.double({ min: 0.02, max: 1, noNaN: true }), fc.double({ min: 0.3, max: 3, noNaN: true }), fc.double({ min: 5, max: 300, noNaN: true }), (distance, strength, jerk) => {
      const torque = (v: number): number => strength * Math.min(1, 0.3 / Math.max(v, 1e-9));
      const demand = { steady: 0.1, perGain: 0.2, perLoss: 0.2 };
      const found = quickestMove(distance, [{ name: 'none', speed: 3 }], demand, torque, jerk);
      if (found.kind !== 'moves') throw new Error('it moves');
      for (let i = 1; i <= 40; i++) {
        for (let k = 1; k <= 40; k++) {
          const move = jerkMove(distance, (3 * i) / 40, (strength * 5 * k) / 40, jerk);
          if (worstInstant(move, demand, torque).ratio >= 1) expect(found.time).toBeLessThanOrEqual(move.time * 1.03);
        }
      }
    }), { numRuns: 15 });
  });
});

test('a move without any limit of speed, or one that is not a number, is refused', () => {
  expect(() => quickestMove(1, [], level, () => 1)).toThrow(RangeError);
  expect(() => quickestMove(1, [{ name: 'none', speed: Number.POSITIVE_INFINITY }], level, () => 1)).toThrow(RangeError);
});
