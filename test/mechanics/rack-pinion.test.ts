import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  barthVelocityFactor, contactRatio, eccentricityError, leastTeethWithoutUndercut, lewisFormFactor, lewisStress, meshStiffness, pitchRadius, playFromGap, toothForces, transversePressureAngle,
  travelOfTwist, travelPerPinionTurn, type RackMesh,
} from '../../server/src/mechanics/rack-pinion.ts';
import { degrees } from './units.ts';

/** Module 1, 20 teeth, straight. */
const straight: RackMesh = { module: 0.001, teeth: 20, pressureAngle: degrees(20), helixAngle: 0 };
/** Module 2, 25 teeth, helical: 19.5283° makes the transverse pitch 20/3 mm for 2 mm (a usual choice: tan-free round pitch 2π/cos β = 6.667). */
const helical: RackMesh = { module: 0.002, teeth: 25, pressureAngle: degrees(20), helixAngle: Math.acos((2 * Math.PI) / (20 / 3)) };

describe('travel', () => {
  it('module 1 with 20 teeth: π · 20 mm = 62.832 mm a turn, radius 10 mm', () => {
    expect(travelPerPinionTurn(straight)).toBeCloseTo(0.0628319, 7);
    expect(pitchRadius(straight)).toBeCloseTo(0.01, 12);
  });

  it('25 helical teeth on a transverse pitch of 20/3 mm: 166.67 mm a turn', () => {
    expect(travelPerPinionTurn(helical)).toBeCloseTo(25 * (20e-3 / 3), 10);
  });

  it('0.1° of twist on 10 mm: 10 mm · 0.0017453 = 17.5 µm', () => {
    expect(travelOfTwist(straight, degrees(0.1))).toBeCloseTo(17.453e-6, 9);
  });
});

describe('forces', () => {
  it('100 N straight: 36.397 N apart (tan 20°), 106.418 N on the flank and across the shaft (1/cos 20°)', () => {
    const forces = toothForces(straight, 100);
    expect(forces.separating).toBeCloseTo(36.397, 3);
    expect(forces.normal).toBeCloseTo(106.418, 3);
    expect(forces.radialOnShaft).toBeCloseTo(106.418, 3);
    expect(forces.axial).toBe(0);
  });

  it('the three parts make up the force on the flank, whatever the teeth', () => {
    fc.assert(
      fc.property(fc.double({ min: 0.25, max: 0.5, noNaN: true }), fc.double({ min: 0, max: 0.6, noNaN: true }), (pressureAngle, helixAngle) => {
        const { tangential, separating, axial, normal } = toothForces({ ...straight, pressureAngle, helixAngle }, 50);
        return Math.abs(Math.hypot(tangential, separating, axial) / normal - 1) < 1e-12;
      }),
    );
  });

  it('refuses what no mesh can be', () => {
    expect(() => toothForces(straight, -1)).toThrow(RangeError);
    expect(() => toothForces({ ...straight, teeth: 12.5 }, 1)).toThrow(RangeError);
    expect(() => toothForces({ ...straight, pressureAngle: 1 }, 1)).toThrow(RangeError);
    expect(() => toothForces({ ...straight, module: 0 }, 1)).toThrow(RangeError);
    expect(() => contactRatio(straight, 0)).toThrow(RangeError);
  });
});

describe('teeth', () => {
  it('17 straight teeth are undercut by the rack, 18 are not; 15 are enough at a helix of 19.53°', () => {
    // By hand: 2/sin² 20° = 17.097. Helical: tan α_t = 0.36397/0.94248 = 0.38619, sin² α_t = 0.12979; 2 · 0.94248/0.12979 = 14.52.
    expect(leastTeethWithoutUndercut(degrees(20), 0)).toBeCloseTo(17.097, 3);
    expect(leastTeethWithoutUndercut(degrees(20), helical.helixAngle)).toBeCloseTo(14.52, 2);
    expect(transversePressureAngle(helical)).toBeCloseTo(Math.atan(0.38619), 5);
  });

  it('form factor: rows of the table, straight between, smaller for fewer teeth and flatter angles', () => {
    expect(lewisFormFactor(straight)).toBeCloseTo(0.322, 6);
    expect(lewisFormFactor({ ...straight, teeth: 23 })).toBeCloseTo((0.331 + 0.337) / 2, 6);
    for (let teeth = 6; teeth < 500; teeth++) {
      expect(lewisFormFactor({ ...straight, teeth: teeth + 1 })).toBeGreaterThanOrEqual(lewisFormFactor({ ...straight, teeth }));
      expect(lewisFormFactor({ ...straight, teeth, pressureAngle: degrees(14.5) })).toBeLessThanOrEqual(lewisFormFactor({ ...straight, teeth }));
    }
    expect(() => lewisFormFactor({ ...straight, pressureAngle: degrees(12) })).toThrow(RangeError);
  });

  it('stress by hand: 100 N on 10 mm of module 1 with Y 0.322: 31.06 MPa', () => {
    expect(lewisStress(100, 0.01, 0.001, 0.322)).toBeCloseTo(31.056e6, -4);
    // At 0.61 m/s a tenth more.
    expect(lewisStress(100, 0.01, 0.001, 0.322, barthVelocityFactor(0.61))).toBeCloseTo(1.1 * 31.0559e6, -4);
    expect(() => lewisStress(100, 0.01, 0.001, 0.322, 0.9)).toThrow(RangeError);
  });

  it('contact ratio grows with the teeth and with the helix', () => {
    for (let teeth = 18; teeth < 60; teeth++) expect(contactRatio({ ...straight, teeth: teeth + 1 }, 0.01)).toBeGreaterThan(contactRatio({ ...straight, teeth }, 0.01));
    // Overlap by hand: 20 mm · sin 19.53° / (π · 2 mm) = 20 · 0.33427/6.2832 = 1.064.
    const flat = contactRatio({ ...helical, helixAngle: 1e-9 }, 0.02);
    expect(contactRatio(helical, 0.02)).toBeGreaterThan(flat + 0.8);
  });
});

describe('errors and give', () => {
  it('play of a gap of 0.05 mm at 20°: 2 · 0.05 · 0.36397 = 36.4 µm', () => {
    expect(playFromGap(straight, 0.05e-3)).toBeCloseTo(36.397e-6, 9);
  });

  it('an eccentricity of 20 µm: 20/0.93969 = 21.3 µm', () => {
    expect(eccentricityError(straight, 20e-6)).toBeCloseTo(21.284e-6, 9);
  });

  it('steel on steel, 10 mm wide: 200 N/µm · cos² 20° = 176.6 N/µm; acetal on steel about 1 %·2.6 of it', () => {
    expect(meshStiffness(0.01, 206e9, 206e9, degrees(20))).toBeCloseTo(176.6e6, -5);
    // 2 · 2.8 · 206/(208.8) = 5.525 GPa: 2.68 % of 206.
    expect(meshStiffness(0.01, 2.8e9, 206e9, degrees(20)) / 176.6e6).toBeCloseTo(0.02682, 4);
  });
});
