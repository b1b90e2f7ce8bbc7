/** The screw's body, its stiffness chain, thermal growth, lead accuracy and run-out. */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { axialResonance, magneticSpring, screwAxialStiffness, shaftTorsionStiffness, stiffnessInSeries, torsionAlongAxis } from '../../server/src/mechanics/axial-stiffness.ts';
import { travelDeviation } from '../../server/src/mechanics/lead-accuracy.ts';
import { lateralStiffness, runOutOfDecoupledNut, runOutOfRigidNut } from '../../server/src/mechanics/run-out.ts';
import { diametersOfBallScrew, refinedDiametersOfTrapezoidalScrew, safeDiametersOfTrapezoidalScrew, screwBody } from '../../server/src/mechanics/screw-body.ts';
import { whirlSpeed } from '../../server/src/mechanics/whirl.ts';
import { blockedGrowthForce, growthAgainstFrame, pretension, thermalGrowth } from '../../server/src/mechanics/thermal-growth.ts';

const steel = { youngsModulus: 206e9, shearModulus: 79e9, density: 7850 };
const spring = fc.double({ min: 1e3, max: 1e9, noNaN: true });

describe('body', () => {
  // Our second reading of the screws 3.1, from ring-groove finite elements: d_b/d_m/(d_b²/d_m) of three threads.
  test.each([[6.2, 7.25, 1.5, 6.38, 7.19, 5.69], [7.5, 9, 2, 7.74, 8.94, 6.78], [15.5, 18, 4, 15.98, 17.94, 14.24]])('root %f, pitch diameter %f, pitch %f', (d3, d2, p, db, dm, result) => {
    const found = refinedDiametersOfTrapezoidalScrew(d3 / 1e3, d2 / 1e3, p / 1e3);
    expect(found.bending * 1e3).toBeCloseTo(db, 2);
    expect(found.mass * 1e3).toBeCloseTo(dm, 2);
    expect(Math.abs((found.bending ** 2 / found.mass) * 1e3 - result)).toBeLessThan(0.08);
    // The simple rule stays 5 to 12 % on the safe side.
    const safe = safeDiametersOfTrapezoidalScrew(d3 / 1e3, d2 / 1e3);
    const ratio = safe.bending ** 2 / safe.mass / (found.bending ** 2 / found.mass);
    expect(ratio).toBeGreaterThan(0.88);
    expect(ratio).toBeLessThan(0.96);
  });
  // Whirl table of our reference 3.1 (written there from the same constant 1.223e7 d3²/d2, rpm and mm): Tr10x2, supported, 600 mm, 0.8: 1677 rpm.
  test('Tr10x2, 600 mm, supported: 0.8 n1 = 1676 rpm', () => {
    const body = screwBody(safeDiametersOfTrapezoidalScrew(7.5e-3, 9e-3), steel);
    const rpm = (whirlSpeed('supported-supported', 0.6, body.bendingStiffness, body.massPerLength) * 60) / (2 * Math.PI);
    expect(Math.abs(0.8 * rpm - 1676)).toBeLessThan(2);
  });
  test('ball screws: safe below refined', () => {
    fc.assert(fc.property(fc.double({ min: 2e-3, max: 40e-3, noNaN: true }), fc.double({ min: 1e-5, max: 5e-3, noNaN: true }), (root, depth) => {
      const safe = diametersOfBallScrew(root, root + depth, 'safe');
      const refined = diametersOfBallScrew(root, root + depth, 'refined');
      expect(refined.mass).toBeGreaterThan(refined.bending);
      expect(safe.bending ** 2 / safe.mass).toBeLessThan(refined.bending ** 2 / refined.mass);
    }));
  });
  test('a bore saves mass and hardly stiffness; a core of the same material is no bore at all', () => {
    const diameters = { bending: 20e-3, mass: 22e-3 };
    const solid = screwBody(diameters, steel);
    const hollow = screwBody(diameters, steel, 10e-3);
    // (10/20)^4 = 1/16 of the stiffness; (10/22)² = 20.7 % of the mass.
    expect(hollow.bendingStiffness / solid.bendingStiffness).toBeCloseTo(15 / 16, 12);
    expect(hollow.massPerLength / solid.massPerLength).toBeCloseTo(1 - (10 / 22) ** 2, 12);
    expect(screwBody(diameters, steel, 10e-3, steel).bendingStiffness).toBeCloseTo(solid.bendingStiffness, 9);
    expect(screwBody(diameters, steel, 10e-3, steel).tensionStiffness).toBeCloseTo(solid.tensionStiffness, 3);
    expect(() => screwBody(diameters, steel, 20e-3)).toThrow(RangeError);
  });
});

describe('stiffness chain', () => {
  test('the total is below the softest link, and the shares add up', () => {
    fc.assert(fc.property(fc.array(spring, { minLength: 1, maxLength: 7 }), (values) => {
      const chain = stiffnessInSeries(values.map((stiffness, i) => ({ name: `link ${i}`, stiffness })));
      expect(chain.total).toBeLessThanOrEqual(Math.min(...values) * (1 + 1e-12));
      expect(chain.shares.reduce((sum, one) => sum + one.share, 0)).toBeCloseTo(1, 9);
      expect(chain.softest).toBe(chain.shares[0]?.name);
    }));
    expect(stiffnessInSeries([{ name: 'rigid', stiffness: Infinity }]).total).toBe(Infinity);
    expect(() => stiffnessInSeries([])).toThrow(RangeError);
  });
  test('both ends held: 4 E A/L at mid-span, least there', () => {
    expect(screwAxialStiffness(1, 0.5, 1)).toBeCloseTo(4, 12);
    fc.assert(fc.property(fc.double({ min: 0.01, max: 0.99, noNaN: true }), (x) => {
      expect(screwAxialStiffness(1, x, 1)).toBeGreaterThanOrEqual(4 - 1e-9);
      expect(screwAxialStiffness(1, x, 1)).toBeGreaterThan(screwAxialStiffness(1, x));
    }));
    // 8 mm pitch 2 screw, d_b 5.76 mm, 300 mm: 206000 · 26.06/300 = 17.9 N/µm by hand.
    const body = screwBody({ bending: 5.76e-3, mass: 7e-3 }, steel);
    expect(screwAxialStiffness(body.tensionStiffness, 0.3) / 1e6).toBeCloseTo(17.9, 1);
  });
  // Hand calculation: 50 · 0.4 · (2 pi/0.008)² = 12.3 N/µm; at 2 mm 197; at 40 mm/turn 0.49.
  test.each([[0.008, 12.3], [0.002, 197.4], [0.04, 0.493]])('magnetic spring of 0.4 N·m at %f m a turn: %f N/µm', (lead, expected) => {
    const found = torsionAlongAxis(magneticSpring(0.4, 50), lead) / 1e6;
    expect(Math.abs(found / expected - 1)).toBeLessThan(0.005);
  });
  // Hand calculation: G pi d^4/(32 x) (2 pi/l)² = 79000 · pi · 7.77^4/(32 · 500) · (2 pi/4)² = 139 N/µm (Tr10, lead 4, 500 mm).
  test('torsion of the screw', () => {
    const body = screwBody({ bending: 7.77e-3, mass: 8.9e-3 }, steel);
    expect(torsionAlongAxis(shaftTorsionStiffness(body.torsionStiffness, 0.5), 4e-3) / 1e6).toBeCloseTo(139.5, 0);
  });
  // Meriam and Kraige, Dynamics, sample problem 8/1 (answer from memory): 25 lb on 160 lb/ft: 14.36 rad/s.
  test('Meriam and Kraige, sample problem 8/1: 14.36 rad/s', () => {
    expect(axialResonance(160, 25 / 32.2)).toBeCloseTo(14.36, 2);
  });
});

describe('thermal growth', () => {
  test('one metre of steel by one kelvin: 11.7 µm; against an equally warm aluminium frame 12 µm shorter', () => {
    expect(thermalGrowth(11.7e-6, 1, 1)).toBeCloseTo(11.7e-6, 12);
    expect(growthAgainstFrame(1, { expansion: 11.7e-6, temperatureRise: 1 }, { expansion: 23.5e-6, temperatureRise: 1 })).toBeCloseTo(-11.8e-6, 12);
  });
  test('blocked: rigid ends give E A alpha dT, soft ends less, within the give nothing', () => {
    // 16 mm ball screw, A 150 mm², 3 K: 206000 · 150 · 11.7e-6 · 3 = 1085 N.
    const ea = 206e9 * 150e-6;
    expect(pretension(ea, 11.7e-6, 3)).toBeCloseTo(1084.6, 1);
    const growth = thermalGrowth(11.7e-6, 0.5, 3);
    expect(blockedGrowthForce(growth, 0.5, ea)).toBeCloseTo(1084.6, 1);
    expect(blockedGrowthForce(growth, 0.5, ea, 0, ea / 0.5)).toBeCloseTo(1084.6 / 2, 1);
    expect(blockedGrowthForce(growth, 0.5, ea, 1e-3)).toBe(0);
    expect(blockedGrowthForce(-growth, 0.5, ea)).toBeCloseTo(-1084.6, 1);
  });
});

describe('lead accuracy', () => {
  const grade = { kind: 'positioning', bands: [{ upTo: 0.315, meanTravel: 12e-6, variation: 12e-6 }, { upTo: 0.4, meanTravel: 13e-6 }], variationPer300: 12e-6 } as const;
  test('bands: at, just above, and beyond', () => {
    expect(travelDeviation(grade, 0.315)).toMatchObject({ meanTravel: 12e-6, afterCalibration: 6e-6 });
    expect(travelDeviation(grade, 0.316)).toMatchObject({ meanTravel: 13e-6, afterCalibration: 6e-6 });
    expect(travelDeviation(grade, 0.401)).toEqual({ kind: 'beyond the table', longest: 0.4 });
  });
  test('transport and unclassed screws scale', () => {
    fc.assert(fc.property(fc.double({ min: 0.01, max: 3, noNaN: true }), (travel) => {
      const transport = travelDeviation({ kind: 'transport', variationPer300: 52e-6 }, travel);
      const rolled = travelDeviation({ kind: 'per length', deviationPer300: 2e-4 }, travel);
      expect(transport.kind === 'deviation' && transport.worst / travel).toBeCloseTo((2 * 52e-6) / 0.3, 9);
      expect(rolled.kind === 'deviation' && rolled.worst / travel).toBeCloseTo(2e-4 / 0.3, 9);
    }));
  });
});

describe('run-out', () => {
  test('displacement lies between nothing and the eccentricity; decoupling never makes it larger', () => {
    fc.assert(fc.property(fc.double({ min: 0, max: 1e-3, noNaN: true }), spring, spring, spring, fc.double({ min: 0, max: 100, noNaN: true }), (e, screw, guide, element, slide) => {
      const rigid = runOutOfRigidNut(e, screw, guide);
      const loose = runOutOfDecoupledNut(e, screw, guide, { stiffness: element, slidingForce: slide });
      expect(rigid.displacement).toBeLessThanOrEqual(e * (1 + 1e-12));
      expect(loose.displacement).toBeLessThanOrEqual(rigid.displacement * (1 + 1e-12));
      expect(loose.force).toBeLessThanOrEqual(slide * (1 + 1e-12));
    }));
  });
  test('at a bearing the guide takes all of it', () => {
    const atBearing = runOutOfRigidNut(1e-4, Infinity, 1e6);
    expect(atBearing.force).toBeCloseTo(100, 9);
    expect(atBearing.displacement).toBeCloseTo(1e-4, 12);
    expect(lateralStiffness('supported-supported', 1, 0, 1)).toBe(Infinity);
    expect(lateralStiffness('supported-supported', 1, 0.5, 1)).toBeCloseTo(48, 9);
    expect(lateralStiffness('fixed-fixed', 1, 0.5, 1)).toBeCloseTo(192, 9);
    expect(lateralStiffness('fixed-free', 1, 1, 1)).toBeCloseTo(3, 9);
  });
});
