import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { counterbalanceForce, energyGivenOut, loadAtEnds, unbalancedForce } from '../../server/src/mechanics/counterbalance.ts';

describe('counterbalance over the travel', () => {
  it('a weight pulls the same everywhere', () => {
    expect(counterbalanceForce({ force: 40, rate: 0, travel: 0.3 })).toEqual({ bottom: 40, top: 40 });
  });

  it('a spring of 100 N/m over 0.3 m: 40 N ± 15 N, drawn farthest at the bottom', () => {
    expect(counterbalanceForce({ force: 40, rate: 100, travel: 0.3 })).toEqual({ bottom: 55, top: 25 });
    // A weight of 40 N: pulled up with 15 N at the bottom, 15 N hang on the drive at the top.
    const loads = loadAtEnds(40, { force: 40, rate: 100, travel: 0.3 });
    expect(loads).toEqual({ bottom: -15, top: 15 });
    expect(Math.abs(unbalancedForce(loads))).toBe(15);
    expect(unbalancedForce(loadAtEnds(45, { force: 40, rate: 100, travel: 0.3 }))).toBe(20);
    expect(unbalancedForce(loadAtEnds(35, { force: 40, rate: 100, travel: 0.3 }))).toBe(-20);
  });

  it('a spring that goes slack does not push', () => {
    expect(counterbalanceForce({ force: 10, rate: 200, travel: 0.3 })).toEqual({ bottom: 40, top: 0 });
  });

  it('energy is the sum of force times small steps, slack or not', () => {
    fc.assert(
      fc.property(fc.double({ min: 1, max: 100, noNaN: true }), fc.double({ min: 0, max: 500, noNaN: true }), fc.double({ min: 0.05, max: 1, noNaN: true }), (force, rate, travel) => {
        const steps = 4000;
        let sum = 0;
        const bottom = force + (rate * travel) / 2;
        for (let i = 0; i < steps; i++) sum += (Math.max(0, bottom - (rate * travel * (i + 0.5)) / steps) * travel) / steps;
        return Math.abs(energyGivenOut({ force, rate, travel }) / sum - 1) < 1e-4;
      }),
    );
  });

  it('refuses negative values', () => {
    expect(() => counterbalanceForce({ force: -1, rate: 0, travel: 1 })).toThrow(RangeError);
    expect(() => energyGivenOut({ force: 1, rate: -1, travel: 1 })).toThrow(RangeError);
    expect(() => loadAtEnds(NaN, { force: 1, rate: 0, travel: 1 })).toThrow(RangeError);
  });
});
