import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { movingTorque } from '../../server/src/mechanics/driven-screw.ts';

// Tr8x8(P2), µ 0.15 by hand: tan λ = 0.363783, µ′ = 0.154684; per 100 N 192.3 N·mm up, −69.3 N·mm down (test/figures/screws-and-nuts).
const contact = { pitchDiameter: 7e-3, leadAngle: Math.atan(8 / (7 * Math.PI)), effectiveFriction: 0.154684 };

describe('moving torque', () => {
  it('against the load, with it, and without any', () => {
    expect((movingTorque(100, contact) ?? NaN) * 1000).toBeCloseTo(192.3, 1);
    expect((movingTorque(-100, contact) ?? NaN) * 1000).toBeCloseTo(-69.3, 1);
    expect(movingTorque(0, contact, 0.02)).toBeCloseTo(0.02, 12);
  });

  it('drag always resists', () => {
    fc.assert(
      fc.property(fc.double({ min: -500, max: 500, noNaN: true }), fc.double({ min: 0, max: 1, noNaN: true }), (load, drag) =>
        Math.abs((movingTorque(load, contact, drag) ?? NaN) - (movingTorque(load, contact) ?? NaN) - drag) < 1e-9,
      ),
    );
  });

  it('does not exist where the flank jams', () => {
    expect(movingTorque(10, { ...contact, leadAngle: 0.8, effectiveFriction: 1.2 })).toBeUndefined();
    expect(movingTorque(-10, { ...contact, leadAngle: 0.8, effectiveFriction: 1.2 })).toBeGreaterThan(0);
  });

  it('throws for what cannot be', () => {
    expect(() => movingTorque(NaN, contact)).toThrow(RangeError);
    expect(() => movingTorque(1, contact, -1)).toThrow(RangeError);
  });
});
