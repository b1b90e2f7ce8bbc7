import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { dropEnergy, fallAcceleration, fallFromRest, judgeHolding, torqueThroughReduction, type HoldingSituation } from '../../server/src/mechanics/unpowered-holding.ts';

/** A Tr8x8(P2) under 100 N at µ 0.10: by hand 100 N · 8 mm/(2π) = 0.1273 N·m frictionless and 0.0880 N·m driving (thread alone), s = 0.283. */
const runsDown: HoldingSituation = {
  load: 100,
  frictionlessTorque: 0.1273,
  drivingTorque: 0.088,
  kineticFactor: 0.283,
  staticFactor: 0.31,
  collarTorque: 0,
  detentTorque: 0,
};

describe('verdict', () => {
  it('nothing holds a coarse thread', () => {
    expect(judgeHolding(runsDown)).toMatchObject({ verdict: 'drops', holder: 'nothing', factor: 0 });
  });

  it('a detent below the load torque does not hold', () => {
    // 0.017 / 0.088 = 0.193
    const judged = judgeHolding({ ...runsDown, detentTorque: 0.017 });
    expect(judged.verdict).toBe('drops');
    expect(judged.factor).toBeCloseTo(0.193, 3);
  });

  it('a detent far above the load torque still is no brake', () => {
    expect(judgeHolding({ ...runsDown, detentTorque: 1 })).toMatchObject({ verdict: 'may-creep', holder: 'detent' });
  });

  it('a reduction that locks holds, as little to be relied on as a thread', () => {
    expect(judgeHolding({ ...runsDown, reductionLocks: true })).toMatchObject({ verdict: 'may-creep', holder: 'reduction', factor: 1, vibrationCaveat: true });
    expect(judgeHolding({ ...runsDown, reductionLocks: false })).toMatchObject({ verdict: 'drops' });
    // 0.1273 · 1.5 = 0.19095: a brake that holds by itself is named before it.
    expect(judgeHolding({ ...runsDown, reductionLocks: true, brakeTorque: 0.2 })).toMatchObject({ verdict: 'holds', holder: 'brake' });
  });

  it('a plain collar that holds is named and never earns "holds"', () => {
    expect(judgeHolding({ ...runsDown, collarTorque: 0.3 })).toMatchObject({ verdict: 'may-creep', holder: 'collar' });
  });

  it('collar and detent together are "several"', () => {
    expect(judgeHolding({ ...runsDown, collarTorque: 0.05, detentTorque: 0.05 })).toMatchObject({ verdict: 'may-creep', holder: 'several' });
  });

  it('a brake from 1.5 times the frictionless torque holds', () => {
    // 1.5 · 0.1273 = 0.19095
    expect(judgeHolding({ ...runsDown, brakeTorque: 0.191 })).toMatchObject({ verdict: 'holds', holder: 'brake', vibrationCaveat: false });
    expect(judgeHolding({ ...runsDown, brakeTorque: 0.19 })).toMatchObject({ verdict: 'may-creep', holder: 'brake' });
    expect(judgeHolding({ ...runsDown, brakeTorque: 0.08 })).toMatchObject({ verdict: 'drops' });
  });

  it('a thread from 1.5 holds, from 1 may creep, both with the vibration caveat', () => {
    const locks = { ...runsDown, drivingTorque: -0.03 };
    expect(judgeHolding({ ...locks, kineticFactor: 1.5, staticFactor: 2 })).toMatchObject({ verdict: 'holds', holder: 'thread', vibrationCaveat: true });
    expect(judgeHolding({ ...locks, kineticFactor: 1.499, staticFactor: 2 })).toMatchObject({ verdict: 'may-creep', holder: 'thread', vibrationCaveat: true });
    expect(judgeHolding({ ...locks, kineticFactor: 1, staticFactor: 1.3 })).toMatchObject({ verdict: 'may-creep', factor: 1 });
  });

  it('friction at rest that holds while moving friction does not: stays until knocked, and counts as dropping', () => {
    const judged = judgeHolding({ ...runsDown, drivingTorque: 0.004, kineticFactor: 0.92, staticFactor: 1.2 });
    expect(judged).toMatchObject({ verdict: 'drops', holdsOnlyAtRest: true, vibrationCaveat: true });
  });

  it('a balanced load does not move', () => {
    expect(judgeHolding({ ...runsDown, load: 0, frictionlessTorque: 0, drivingTorque: 0 })).toMatchObject({ verdict: 'holds', holder: 'balance' });
  });

  it('never improves when something that holds is taken away', () => {
    const rank = { drops: 0, 'may-creep': 1, holds: 2 };
    const amount = fc.double({ min: 0, max: 1, noNaN: true });
    fc.assert(
      fc.property(amount, amount, amount, fc.double({ min: 0.2, max: 2, noNaN: true }), (collarTorque, detentTorque, brakeTorque, s) => {
        const situation = { ...runsDown, kineticFactor: s, staticFactor: s * 1.3, drivingTorque: 0.1273 * (1 - s), collarTorque, detentTorque, brakeTorque };
        const full = rank[judgeHolding(situation).verdict];
        return (['collarTorque', 'detentTorque', 'brakeTorque'] as const).every((name) => rank[judgeHolding({ ...situation, [name]: 0 }).verdict] <= full);
      }),
    );
  });

  it('throws for negative torques', () => {
    expect(() => judgeHolding({ ...runsDown, detentTorque: -1 })).toThrow(RangeError);
    expect(() => judgeHolding({ ...runsDown, drivingTorque: NaN })).toThrow(RangeError);
  });
});

describe('through a reduction', () => {
  it('a motor-side detent counts by the ratio', () => {
    expect(torqueThroughReduction(0.017, 3)).toBeCloseTo(0.051, 12);
  });
});

describe('drop', () => {
  it('energy, by hand: 8.6 kg over 0.36 m at 9.80665 m/s² = 30.36 J', () => {
    expect(dropEnergy(8.6, 0.36, 9.80665)).toBeCloseTo(30.361, 3);
  });

  it('without friction and inertia it falls freely', () => {
    const drive = { mass: 3, pull: 3 * 9.81, lead: 0.01, reverseEfficiency: 1, rotatingInertia: 0, resistingTorque: 0 };
    expect(fallAcceleration(drive)).toBeCloseTo(9.81, 12);
  });

  it('ball screw of lead 5 mm, 5 kg, rotor 6e-6 kg·m², ηr 0.9, by hand', () => {
    // (2π/0.005)² · 6e-6 = 9.475 kg; (5 · 9.81 · 0.9)/(5 · 0.9 + 9.475) = 44.145/13.975 = 3.159 m/s²; 0.3 m in √(0.6/3.159) = 0.436 s at 1.377 m/s.
    const acceleration = fallAcceleration({ mass: 5, pull: 5 * 9.81, lead: 0.005, reverseEfficiency: 0.9, rotatingInertia: 6e-6, resistingTorque: 0 });
    expect(acceleration).toBeCloseTo(3.159, 3);
    const fall = fallFromRest(acceleration, 0.3);
    expect(fall?.time).toBeCloseTo(0.436, 3);
    expect(fall?.speed).toBeCloseTo(1.377, 3);
  });

  it('does not start when it is held', () => {
    const drive = { mass: 5, pull: 49, lead: 0.005, reverseEfficiency: 0.2, rotatingInertia: 0, resistingTorque: 0 };
    expect(fallAcceleration({ ...drive, reverseEfficiency: -0.1 })).toBe(0);
    expect(fallAcceleration({ ...drive, resistingTorque: 1 })).toBe(0);
    expect(fallFromRest(0, 0.3)).toBeUndefined();
    expect(fallFromRest(0, 0)).toEqual({ time: 0, speed: 0 });
  });

  it('never brings more energy down than the load had', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0.1, max: 100, noNaN: true }),
        fc.double({ min: 0.05, max: 1, noNaN: true }),
        fc.double({ min: 0, max: 1e-4, noNaN: true }),
        (mass, reverseEfficiency, rotatingInertia) => {
          const acceleration = fallAcceleration({ mass, pull: mass * 9.81, lead: 0.008, reverseEfficiency, rotatingInertia, resistingTorque: 0 });
          const speed = fallFromRest(acceleration, 0.5)?.speed ?? 0;
          const kinetic = 0.5 * (mass + rotatingInertia * ((2 * Math.PI) / 0.008) ** 2) * speed ** 2;
          return kinetic <= dropEnergy(mass, 0.5, 9.81) * (1 + 1e-9);
        },
      ),
    );
  });

  it('throws for what cannot be', () => {
    expect(() => dropEnergy(-1, 1, 9.81)).toThrow(RangeError);
    expect(() => fallAcceleration({ mass: 5, pull: 49, lead: 0.005, reverseEfficiency: 1.1, rotatingInertia: 0, resistingTorque: 0 })).toThrow(RangeError);
  });
});
