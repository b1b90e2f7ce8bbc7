import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  freeRunningFallAcceleration, judgeBrokenBelt, judgeFreeRunningHolding, loadTorqueAtMotor, pullOfBeltsLeft, releasedAcceleration, type FreeRunningFall, type FreeRunningSituation,
} from '../../server/src/mechanics/free-running-drive.ts';

/** 1 kg on a belt: 9.81 N. */
const hanging: FreeRunningSituation = { load: 9.81, guideFriction: 0, detentForce: 0, brakeForce: 0, reductionLocks: false };

describe('verdict on a drive that runs back', () => {
  it('nothing holds a bare belt', () => {
    expect(judgeFreeRunningHolding(hanging)).toMatchObject({ verdict: 'drops', holder: 'nothing', factor: 0 });
  });

  it('half of the guide friction is counted: 10 N of friction hold 5 of 9.81 N, 51 %', () => {
    const judged = judgeFreeRunningHolding({ ...hanging, guideFriction: 10 });
    expect(judged.verdict).toBe('drops');
    expect(judged.factor).toBeCloseTo(0.5097, 4);
  });

  it('friction alone holds from twice the load, and that is friction: 40 N · ½ / 9.81 = 2.04', () => {
    expect(judgeFreeRunningHolding({ ...hanging, guideFriction: 40 })).toMatchObject({ verdict: 'holds', holder: 'guides', vibrationCaveat: true });
    expect(judgeFreeRunningHolding({ ...hanging, guideFriction: 39 })).toMatchObject({ verdict: 'may-creep', holder: 'guides' });
    expect(judgeFreeRunningHolding({ ...hanging, guideFriction: 19 })).toMatchObject({ verdict: 'drops' });
  });

  it('a detent of 15 N·mm through 5 : 1 on 6.37 mm: 11.8 N, more than the load, and still no brake', () => {
    const detentForce = (0.015 * 5) / 6.3662e-3;
    expect(judgeFreeRunningHolding({ ...hanging, detentForce })).toMatchObject({ verdict: 'may-creep', holder: 'detent', vibrationCaveat: true });
    expect(judgeFreeRunningHolding({ ...hanging, detentForce: 1000 }).verdict).toBe('may-creep');
  });

  it('a brake from 1.5 times the load: 14.72 N hold, 14.7 N may creep', () => {
    expect(judgeFreeRunningHolding({ ...hanging, brakeForce: 14.72 })).toMatchObject({ verdict: 'holds', holder: 'brake', vibrationCaveat: false });
    expect(judgeFreeRunningHolding({ ...hanging, brakeForce: 14.7 })).toMatchObject({ verdict: 'may-creep', holder: 'brake', vibrationCaveat: false });
    expect(judgeFreeRunningHolding({ ...hanging, brakeForce: 9 })).toMatchObject({ verdict: 'drops' });
  });

  it('a worm that locks may creep, not hold', () => {
    expect(judgeFreeRunningHolding({ ...hanging, reductionLocks: true })).toMatchObject({ verdict: 'may-creep', holder: 'reduction', factor: 1 });
  });

  it('several together', () => {
    expect(judgeFreeRunningHolding({ ...hanging, guideFriction: 12, detentForce: 5 })).toMatchObject({ verdict: 'may-creep', holder: 'several' });
  });

  it('a counterbalance that is too strong drives upwards just as well', () => {
    expect(judgeFreeRunningHolding({ ...hanging, load: -9.81 }).verdict).toBe('drops');
    expect(judgeFreeRunningHolding({ ...hanging, load: 0 })).toMatchObject({ verdict: 'holds', holder: 'balance' });
  });

  it('never improves when something that holds is taken away', () => {
    const rank = { drops: 0, 'may-creep': 1, holds: 2 };
    const force = fc.double({ min: 0, max: 50, noNaN: true });
    fc.assert(
      fc.property(force, force, force, fc.boolean(), (guideFriction, detentForce, brakeForce, reductionLocks) => {
        const full = { ...hanging, guideFriction, detentForce, brakeForce, reductionLocks };
        const better = rank[judgeFreeRunningHolding(full).verdict];
        return [{ guideFriction: 0 }, { detentForce: 0 }, { brakeForce: 0 }, { reductionLocks: false }].every((less) => rank[judgeFreeRunningHolding({ ...full, ...less }).verdict] <= better);
      }),
    );
  });
});

describe('torque at the motor', () => {
  it('1 kg on 20 teeth of 2 mm: 9.81 N · 40 mm/2π = 62.45 N·mm; through 5 : 1 a fifth', () => {
    expect(loadTorqueAtMotor(9.81, 0.04 / (2 * Math.PI), 1)).toBeCloseTo(0.06245, 5);
    expect(loadTorqueAtMotor(9.81, 0.04 / (2 * Math.PI), 5)).toBeCloseTo(0.01249, 5);
    expect(loadTorqueAtMotor(9.81, 0.04 / (2 * Math.PI), 5, -0.3)).toBe(0);
    expect(() => loadTorqueAtMotor(1, 0.01, 1, 1.1)).toThrow(RangeError);
  });
});

const fall: FreeRunningFall = {
  mass: 2, pull: 19.62, friction: 0, radius: 0.01, reverseEfficiency: 1, shaftInertia: 0, ratio: 1, reductionEfficiency: 1, motorInertia: 0,
};

describe('fall', () => {
  it('with nothing that turns it is a free fall', () => {
    expect(freeRunningFallAcceleration(fall)).toBeCloseTo(9.81, 12);
  });

  it('a rotor of 100 g·cm² at 10 mm adds 0.1 kg; through 4 : 1 1.6 kg', () => {
    expect(freeRunningFallAcceleration({ ...fall, motorInertia: 1e-5 })).toBeCloseTo(19.62 / 2.1, 10);
    expect(freeRunningFallAcceleration({ ...fall, motorInertia: 1e-5, ratio: 4 })).toBeCloseTo(19.62 / 3.6, 10);
  });

  it('friction of 5 N and 90 % through the belt: (19.62 − 5) · 0.9/(1.8 + 0.1) = 6.925', () => {
    expect(freeRunningFallAcceleration({ ...fall, friction: 5, reverseEfficiency: 0.9, motorInertia: 1e-5 })).toBeCloseTo(6.9253, 4);
  });

  it('does not start against larger friction or a stage that locks', () => {
    expect(freeRunningFallAcceleration({ ...fall, friction: 20 })).toBe(0);
    expect(freeRunningFallAcceleration({ ...fall, reductionEfficiency: -0.2 })).toBe(0);
    expect(() => freeRunningFallAcceleration({ ...fall, mass: 0 })).toThrow(RangeError);
  });
});

describe('a broken belt', () => {
  const broken = { pull: 40, guideFriction: 4, belts: 1, railBrakeForce: 0 };

  it('one belt: nothing is left but the friction, 2 of 40 N', () => {
    expect(judgeBrokenBelt(broken)).toEqual({ verdict: 'falls', holder: 'nothing', factor: 0.05 });
    // (40 − 4)/4 kg
    expect(releasedAcceleration(40, 4, 4)).toBeCloseTo(9, 12);
    expect(releasedAcceleration(3, 4, 4)).toBe(0);
  });

  it('a second belt, a brake on the rail or a full balance hold', () => {
    expect(judgeBrokenBelt({ ...broken, belts: 2 })).toMatchObject({ verdict: 'held', holder: 'other-belts' });
    expect(judgeBrokenBelt({ ...broken, railBrakeForce: 60 })).toMatchObject({ verdict: 'held', holder: 'rail-brake', factor: 1.5 });
    expect(judgeBrokenBelt({ ...broken, railBrakeForce: 59 })).toMatchObject({ verdict: 'falls' });
    expect(judgeBrokenBelt({ ...broken, guideFriction: 160 })).toMatchObject({ verdict: 'held', holder: 'guides' });
    expect(judgeBrokenBelt({ ...broken, pull: 0 })).toMatchObject({ verdict: 'rests' });
  });

  it('one of two belts breaks: 20 N become 40 N, 60 N at the first swing', () => {
    expect(pullOfBeltsLeft(40, 2)).toEqual({ before: 20, settled: 40, peak: 60 });
    // Four: 10 N become 13.33, peak 16.67.
    expect(pullOfBeltsLeft(40, 4).peak).toBeCloseTo(16.667, 3);
    expect(() => pullOfBeltsLeft(40, 1)).toThrow(RangeError);
  });
});
