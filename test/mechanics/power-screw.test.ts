import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  bodyStress,
  collarMeanDiameter,
  collarTorque,
  effectiveFriction,
  forwardEfficiency,
  frictionHolder,
  largestLockingLeadAngle,
  loweringTorque,
  normalFlankAngle,
  raisingTorque,
  reverseEfficiency,
  runDownFriction,
  selfLockingFactor,
} from '../../server/src/mechanics/power-screw.ts';

const contacts = fc.record({
  load: fc.double({ min: 1, max: 1e4, noNaN: true }),
  pitchDiameter: fc.double({ min: 3e-3, max: 0.1, noNaN: true }),
  leadAngle: fc.double({ min: 0.02, max: 0.8, noNaN: true }),
  effectiveFriction: fc.double({ min: 0, max: 0.5, noNaN: true }),
});
const close = (a: number, b: number): boolean => Math.abs(a - b) <= 1e-9 * Math.max(1, Math.abs(a), Math.abs(b));

describe('flank', () => {
  it('a square thread has no flank angle and keeps its friction', () => {
    expect(normalFlankAngle(0, 0.3)).toBe(0);
    expect(effectiveFriction(0.15, 0, 0.3)).toBe(0.15);
  });

  it('15° at lead angle 0: 1.0353 times', () => {
    // 1 / cos 15° = 1.035276
    expect(effectiveFriction(1, (15 * Math.PI) / 180, 0)).toBeCloseTo(1.035276, 6);
  });

  it('the run-down friction gives a factor of exactly 1', () => {
    fc.assert(
      fc.property(fc.double({ min: 0, max: 0.6, noNaN: true }), fc.double({ min: 0.02, max: 1, noNaN: true }), (flank, angle) =>
        close(selfLockingFactor(effectiveFriction(runDownFriction(flank, angle), flank, angle), angle), 1),
      ),
    );
  });

  it('the largest locking lead angle, put back, has the wanted factor', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0.01, max: 0.6, noNaN: true }),
        fc.double({ min: 0, max: 0.6, noNaN: true }),
        fc.double({ min: 0.5, max: 3, noNaN: true }),
        (friction, flank, factor) => {
          const angle = largestLockingLeadAngle(friction, flank, factor);
          return Math.abs(selfLockingFactor(effectiveFriction(friction, flank, angle), angle) - factor) < 1e-6;
        },
      ),
    );
  });
});

describe('torques', () => {
  it('without friction raising and lowering are F l/(2π) and its opposite', () => {
    // 100 N, lead 8 mm on 7 mm: 100 · 0.008 / 6.283185 = 0.127324 N·m.
    const contact = { load: 100, pitchDiameter: 7e-3, leadAngle: Math.atan(8 / (7 * Math.PI)), effectiveFriction: 0 };
    expect(raisingTorque(contact)).toBeCloseTo(0.127324, 6);
    expect(loweringTorque(contact)).toBeCloseTo(-0.127324, 6);
    expect(forwardEfficiency(contact)).toBeCloseTo(1, 12);
    expect(reverseEfficiency(contact)).toBeCloseTo(1, 12);
  });

  it('twice the load, twice the torque; more friction, more torque both ways', () => {
    fc.assert(
      fc.property(contacts, (contact) => {
        const up = raisingTorque(contact) ?? NaN;
        const slippery = { ...contact, effectiveFriction: contact.effectiveFriction * 0.9 };
        return (
          close(raisingTorque({ ...contact, load: 2 * contact.load }) ?? NaN, 2 * up) &&
          close(loweringTorque({ ...contact, load: 2 * contact.load }), 2 * loweringTorque(contact)) &&
          (raisingTorque(slippery) ?? NaN) <= up &&
          loweringTorque(slippery) <= loweringTorque(contact)
        );
      }),
    );
  });

  it('the friction lost going up and coming down is never negative', () => {
    fc.assert(fc.property(contacts, (contact) => (raisingTorque(contact) ?? NaN) + loweringTorque(contact) >= -1e-9));
  });

  it('a flank that is too steep and too rough jams', () => {
    // µ′ tan λ = 1.2 · tan 45° > 1.
    const contact = { load: 10, pitchDiameter: 0.01, leadAngle: Math.PI / 4, effectiveFriction: 1.2 };
    expect(raisingTorque(contact)).toBeUndefined();
    expect(forwardEfficiency(contact)).toBe(0);
  });

  it('a collar adds its friction both ways', () => {
    // 200 N · 0.1 · 20 mm / 2 = 0.2 N·m.
    const collar = { friction: 0.1, meanDiameter: 0.02 };
    expect(collarTorque(200, collar)).toBeCloseTo(0.2, 12);
    fc.assert(
      fc.property(contacts, (contact) => {
        const extra = collarTorque(contact.load, collar);
        return (
          close((raisingTorque({ ...contact, collar }) ?? NaN) - (raisingTorque(contact) ?? NaN), extra) &&
          close(loweringTorque({ ...contact, collar }) - loweringTorque(contact), extra)
        );
      }),
    );
  });

  it('mean diameters of a ring and of a solid face', () => {
    expect(collarMeanDiameter(0.05, 0.02)).toBeCloseTo(0.035, 12);
    expect(collarMeanDiameter(0.03, 0)).toBeCloseTo(0.02, 12);
  });
});

describe('what holds', () => {
  it('agrees with the signs of the lowering torque', () => {
    fc.assert(
      fc.property(contacts, fc.double({ min: 0, max: 0.2, noNaN: true }), (contact, friction) => {
        const collar = { friction, meanDiameter: contact.pitchDiameter * 1.5 };
        const holder = frictionHolder({ ...contact, collar });
        if (loweringTorque(contact) >= 0) return holder === 'thread';
        return holder === (loweringTorque({ ...contact, collar }) >= 0 ? 'collar' : 'nothing');
      }),
    );
  });
});

describe('body stress', () => {
  it('by hand: 300 N and 0.4 N·m on a core of 5.192 mm', () => {
    // σ = 4 · 300/(π 5.192²) = 14.17 MPa; τ = 16 · 400/(π 5.192³) = 14.56 MPa; σv = √(14.170² + 3 · 14.556²) = 28.92 MPa.
    const stress = bodyStress(300, 0.4, 5.192e-3);
    expect(stress.axial / 1e6).toBeCloseTo(14.17, 2);
    expect(stress.shear / 1e6).toBeCloseTo(14.56, 2);
    expect(stress.equivalent / 1e6).toBeCloseTo(28.92, 2);
    expect(bodyStress(-300, -0.4, 5.192e-3)).toEqual(stress);
  });
});

it('throws for arguments that no screw can have', () => {
  const contact = { load: 1, pitchDiameter: 0.01, leadAngle: 0.1, effectiveFriction: 0.1 };
  expect(() => raisingTorque({ ...contact, pitchDiameter: 0 })).toThrow(RangeError);
  expect(() => raisingTorque({ ...contact, load: -1 })).toThrow(RangeError);
  expect(() => loweringTorque({ ...contact, leadAngle: 2 })).toThrow(RangeError);
  expect(() => effectiveFriction(-0.1, 0, 0.1)).toThrow(RangeError);
  expect(() => selfLockingFactor(0.1, 0)).toThrow(RangeError);
  expect(() => reverseEfficiency({ ...contact, leadAngle: 0 })).toThrow(RangeError);
  expect(() => collarMeanDiameter(0.02, 0.03)).toThrow(RangeError);
  expect(() => bodyStress(1, 1, -1)).toThrow(RangeError);
});
