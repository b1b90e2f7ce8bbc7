import { solve, Matrix } from 'ml-matrix';
import { describe, expect, test } from 'vitest';
import { rackingForces, skewFromGive, skewFromPitchErrors, skewFromSlip, skewResonance, worstLoadShare } from '../../server/src/mechanics/gantry.ts';
import { vibrationModes, type Mode } from '../../server/src/mechanics/spring-mass-chain.ts';

describe('sharing', () => {
  test('everything in the middle: half', () => {
    expect(worstLoadShare({ mass: 4, carriageMass: 1, spacing: 0.5, offCentre: 0 })).toBe(0.5);
  });
  test('1 kg of 4 kg, 200 mm off the middle of 500 mm: 0.5 + 0.25·0.4 = 60 %', () => {
    expect(worstLoadShare({ mass: 4, carriageMass: 1, spacing: 0.5, offCentre: 0.2 })).toBeCloseTo(0.6, 12);
  });
  test.each([[3, 1, 0.6, 0.25], [5, 4, 0.3, 0.3]] as const)('reactions of a beam on two supports by elimination: %f kg, %f kg', (mass, carriageMass, spacing, offCentre) => {
    // R1 + R2 = m, (R1 − R2) s/2 = m_c e.
    const reactions = solve(new Matrix([[1, 1], [spacing / 2, -spacing / 2]]), Matrix.columnVector([mass, carriageMass * offCentre]));
    expect(worstLoadShare({ mass, carriageMass, spacing, offCentre })).toBeCloseTo(reactions.get(0, 0) / mass, 12);
  });
});

test('half of a gantry, loaded with the worst share, swings no faster than the whole one: a carriage at one side, by the determinant', () => {
  // Beam of 2 kg and carriage of 1 kg 250 mm off the middle, drives 620 mm apart: (2k − 3λ)(k s²/2 − J λ) − (0.25 λ)² = 0, J = 2·0.62²/12 + 0.25².
  const [k, s] = [50e3, 0.62];
  const inertia = (2 * s ** 2) / 12 + 0.25 ** 2;
  const [a, b, c] = [3 * inertia - 0.25 ** 2, -(2 * k * inertia + (3 * k * s ** 2) / 2), k ** 2 * s ** 2];
  const exact = (-b - Math.sqrt(b * b - 4 * a * c)) / (2 * a);
  const half = k / (3 * worstLoadShare({ mass: 3, carriageMass: 1, spacing: s, offCentre: 0.25 }));
  expect(half).toBeLessThan(exact);
  expect(half).toBeGreaterThan(0.8 * exact);
});

describe('skew', () => {
  test('60 N and 40 N on 50 N/mm each: 0.4 mm over 500 mm', () => {
    const { distance, angle } = skewFromGive([60, 40], [50e3, 50e3], 0.5);
    expect(distance).toBeCloseTo(0.4e-3, 12);
    expect(angle).toBeCloseTo(0.8e-3, 12);
  });
  test('even forces on 50 and 40 N/mm: 50·(1/40 − 1/50) µm·1000 = 0.25 mm', () => {
    expect(skewFromGive([50, 50], [50e3, 40e3], 0.5).distance).toBeCloseTo(0.25e-3, 12);
  });
  test('a slip of a 1.8° motor on 40 mm a turn: 0.8 mm', () => {
    expect(skewFromSlip(0.04, 200, 0.5).distance).toBeCloseTo(0.8e-3, 12);
    expect(skewFromSlip(0.04, 200, 0.5, 2).distance).toBeCloseTo(1.6e-3, 12);
  });
  test('±50 µm on both sides: 0.1 mm', () => {
    expect(skewFromPitchErrors(50e-6, 0.4)).toEqual({ distance: 1e-4, angle: expect.closeTo(0.25e-3, 12) as number });
  });
});

describe('racking', () => {
  const racked = { lead: 0.8e-3, stiffness: 50e3, spacing: 0.5, bearingDistance: 0.1, rails: 2 };
  test('0.8 mm on 50 N/mm: 20 N from each drive, and 50 N across each bearing of two rails', () => {
    // 50·0.4 = 20 N; 20 N · 500 mm/(2 · 100 mm) = 50 N.
    const { driveForce, guideForce } = rackingForces(racked);
    expect(driveForce).toBeCloseTo(20, 10);
    expect(guideForce).toBeCloseTo(50, 10);
  });
  test('virtual work: turning by dφ, the drives do F s dφ and the bearings n N b dφ', () => {
    const { driveForce, guideForce } = rackingForces({ ...racked, rails: 1, bearingDistance: 0.07 });
    expect(driveForce * 0.5).toBeCloseTo(1 * guideForce * 0.07, 10);
  });
});

describe('swing about the middle', () => {
  test('a beam alone on drives at its ends: √(6 k/m), since I = m s²/12', () => {
    expect(skewResonance(30e3, { mass: 2, carriageMass: 0, spacing: 0.5, offCentre: 0 }, 0.5)).toBeCloseTo(Math.sqrt((6 * 30e3) / 2), 9);
  });
  test('the same by parts and springs: a turn scaled to the half spacing', () => {
    const [k, s, w, beam, carriage] = [30e3, 0.5, 0.6, 2, 0.7];
    // z: the middle, t: how far the ends are turned. Ends at z ± t; the beam's m w²/12 at t/(s/2).
    const { modes } = vibrationModes(
      [{ name: 'z', mass: beam + carriage }, { name: 't', mass: (beam * w ** 2) / 12 / (s / 2) ** 2 }],
      [{ name: 'left', stiffness: k, stretch: { z: 1, t: 1 } }, { name: 'right', stiffness: k, stretch: { z: 1, t: -1 } }],
    );
    const turning = modes.find((mode) => mode.movesMost === 't') as Mode;
    expect(skewResonance(k, { mass: beam + carriage, carriageMass: carriage, spacing: s, offCentre: 0 }, w)).toBeCloseTo(turning.angularFrequency, 8);
  });
});

test.each([
  () => worstLoadShare({ mass: 1, carriageMass: 2, spacing: 1, offCentre: 0 }),
  () => worstLoadShare({ mass: 1, carriageMass: 0, spacing: 0, offCentre: 0 }),
  () => skewFromGive([1, 1], [0, 1], 1),
  () => skewFromSlip(0.04, 0, 1),
  () => skewFromPitchErrors(-1, 1),
  () => rackingForces({ lead: 1, stiffness: 1, spacing: 1, bearingDistance: 0, rails: 1 }),
  () => skewResonance(1, { mass: 1, carriageMass: 1, spacing: 1, offCentre: 0 }, 1),
])('out of domain: refused', (run) => {
  expect(run).toThrow(RangeError);
});
