import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { gravityPreloadLimit, lostMotion, reversalForce, springDragTorque } from '../../server/src/mechanics/backlash.ts';

describe('lost motion', () => {
  it('by hand: 0.1 mm play, 20 N turning round on 2 N/µm', () => {
    // 0.1 mm + 2 · 20 N / 2e6 N/m = 0.12 mm
    expect(lostMotion(1e-4, 20, 2e6)).toBeCloseTo(1.2e-4, 12);
    expect(lostMotion(1e-4, 20)).toBe(1e-4);
  });
});

describe('sprung nut', () => {
  it('reversal force by hand: 4 kg at 1.5 m/s², 12 N friction, 30 N tool', () => {
    expect(reversalForce(4, 1.5, 12, 30)).toBeCloseTo(48, 12);
  });

  it('drags by about F d2 µ′ on a flat thread', () => {
    // 40 N on d2 7 mm, λ = 0: 40 · 3.5 mm · 2 · 0.15 = 0.042 N·m
    expect(springDragTorque(40, 7e-3, 0, 0.15)).toBeCloseTo(0.042, 9);
  });

  it('never helps, and is free without friction', () => {
    fc.assert(
      fc.property(fc.double({ min: 0, max: 0.7, noNaN: true }), fc.double({ min: 0, max: 0.5, noNaN: true }), (angle, friction) => (springDragTorque(40, 7e-3, angle, friction) ?? 0) >= -1e-12),
    );
    expect(springDragTorque(40, 7e-3, 0.35, 0)).toBeCloseTo(0, 12);
  });

  it('jams where the thread jams', () => {
    expect(springDragTorque(40, 7e-3, Math.PI / 4, 1.01)).toBeUndefined();
  });
});

describe('gravity as preload', () => {
  it('by hand: 8 kg with 20 N friction keeps its flank up to 7.31 m/s²', () => {
    expect(gravityPreloadLimit(9.81, 8, 20, 0)).toBeCloseTo(7.31, 9);
  });

  it('a tool that lifts more than the weight opens the flank', () => {
    expect(gravityPreloadLimit(9.81, 3, 5, 60)).toBeLessThan(0);
  });
});

it('throws for what cannot be', () => {
  expect(() => lostMotion(-1e-6, 0)).toThrow(RangeError);
  expect(() => lostMotion(0, 1, 0)).toThrow(RangeError);
  expect(() => reversalForce(-1, 0, 0, 0)).toThrow(RangeError);
  expect(() => springDragTorque(-1, 0.01, 0.1, 0.1)).toThrow(RangeError);
  expect(() => gravityPreloadLimit(9.81, 0, 0, 0)).toThrow(RangeError);
});
