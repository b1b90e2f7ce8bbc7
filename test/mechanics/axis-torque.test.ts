import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  accelerationAvailable, driveForce, motorTorque, reflectedInertia, roundBarInertia, runDownAcceleration, travelPerMotorTurn,
} from '../../server/src/mechanics/axis-torque.ts';
import type { AxisLoad, DriveChain } from '../../server/src/mechanics/axis-torque.ts';
import { degrees } from './units.ts';

const vertical: AxisLoad = { mass: 10, slope: Math.PI / 2, gravity: 9.81, friction: 0, process: 0, counterbalance: 0 };
/** 8 mm lead, friction 0.15: efficiencies from the thread itself, see below. */
const coarse: DriveChain = {
  travelPerTurn: 0.008, efficiency: 0.66, reverseEfficiency: 0.54, dragTorque: 0, screwInertia: 0, stages: [], motorInertia: 0,
};
const locking: DriveChain = { ...coarse, travelPerTurn: 0.002, efficiency: 0.36, reverseEfficiency: -0.75 };

describe('force', () => {
  test('hand calculation, vertical: up 10·(9.81 + 2) = 118.1 N; braking on the way up 78.1 N; cruising down with 5 N friction 93.1 N', () => {
    expect(driveForce(vertical, 1, 2)).toBeCloseTo(118.1, 9);
    expect(driveForce(vertical, 1, -2)).toBeCloseTo(78.1, 9);
    expect(driveForce({ ...vertical, friction: 5 }, -1, 0)).toBeCloseTo(93.1, 9);
  });
  test('hand calculation, slope of 30° with a process force and a counterbalance: 10·9.81·0.5 + 20 − 30 = 39.05 N', () => {
    expect(driveForce({ ...vertical, slope: degrees(30), process: 20, counterbalance: 30 }, 0, 0)).toBeCloseTo(39.05, 9);
  });
  test('property: twice the mass, twice the static force', () => {
    fc.assert(fc.property(fc.double({ min: 0.1, max: 100, noNaN: true }), fc.double({ min: -1.5, max: 1.5, noNaN: true }), (mass, slope) => {
      const one = driveForce({ ...vertical, mass, slope }, 0, 0);
      expect(driveForce({ ...vertical, mass: 2 * mass, slope }, 0, 0)).toBeCloseTo(2 * one, 6);
    }));
  });
});

describe('torque at the motor', () => {
  test('hand calculation: 98.1 N up on 8 mm: 98.1·0.008/(2π·0.66) = 0.18925 N·m, the motor drives', () => {
    const up = motorTorque(coarse, 98.1, 1, 0);
    expect(up.torque).toBeCloseTo(0.18925, 5);
    expect(up.driver).toBe('motor');
  });
  test('hand calculation: down 98.1·0.008/2π·0.54 = 0.06745 N·m, the load drives and the motor brakes', () => {
    const down = motorTorque(coarse, 98.1, -1, 0);
    expect(down.torque).toBeCloseTo(0.06745, 5);
    expect(down.driver).toBe('load');
  });
  test('hand calculation: a locking 2 mm thread must be driven down: 98.1·0.002/2π·(−0.75) = −0.02342 N·m', () => {
    const down = motorTorque(locking, 98.1, -1, 0);
    expect(down.torque).toBeCloseTo(-0.02342, 5);
    expect(down.driver).toBe('motor');
    expect(motorTorque(locking, 98.1, 0, 0)).toMatchObject({ torque: 0, driver: 'neither' });
    expect(motorTorque(coarse, 98.1, 0, 0).driver).toBe('load');
  });
  test('hand calculation of inertia: 2 m/s² on 8 mm is 1570.8 rad/s²; 1e-5 kg·m² take 0.015708 N·m', () => {
    const chain = { ...coarse, screwInertia: 0.4e-5, motorInertia: 0.6e-5 };
    expect(motorTorque(chain, 0, 1, 2).torque).toBeCloseTo(0.015708, 6);
    expect(motorTorque(chain, 0, -1, -2).torque).toBeCloseTo(-0.015708, 6);
  });
  test('hand calculation through 3 : 1 at 96 %: 0.18925/(3·0.96) = 0.065712 N·m; driven backwards 0.06745·0.95/3 = 0.021359', () => {
    const stages = [{ ratio: 3, efficiency: 0.96, reverseEfficiency: 0.95, fastInertia: 0, slowInertia: 0, backlash: 0 }];
    expect(motorTorque({ ...coarse, stages }, 98.1, 1, 0).torque).toBeCloseTo(0.065712, 5);
    expect(motorTorque({ ...coarse, stages }, 98.1, -1, 0).torque).toBeCloseTo(0.021359, 5);
    expect(travelPerMotorTurn({ ...coarse, stages })).toBeCloseTo(0.008 / 3, 12);
  });
  test('drag opposes the turning either way and is left out at rest', () => {
    const chain = { ...coarse, dragTorque: 0.01 };
    expect(motorTorque(chain, 0, 1, 0).torque).toBeCloseTo(0.01, 12);
    expect(motorTorque(chain, 0, -1, 0).torque).toBeCloseTo(-0.01, 12);
    expect(motorTorque(chain, 0, 0, 0).torque).toBe(0);
  });
  test('against the textbook torque of a square thread, T = F·d/2·tan(λ ± φ), both ways', () => {
    const diameter = 0.02;
    for (const [lead, friction] of [[0.004, 0.15], [0.02, 0.1], [0.002, 0.05]] as const) {
      const angle = Math.atan(lead / (Math.PI * diameter));
      const cone = Math.atan(friction);
      const chain = {
        ...coarse, travelPerTurn: lead, efficiency: Math.tan(angle) / Math.tan(angle + cone), reverseEfficiency: Math.tan(angle - cone) / Math.tan(angle),
      };
      expect(motorTorque(chain, 500, 1, 0).torque).toBeCloseTo(500 * (diameter / 2) * Math.tan(angle + cone), 9);
      expect(motorTorque(chain, 500, -1, 0).torque).toBeCloseTo(500 * (diameter / 2) * Math.tan(angle - cone), 9);
    }
  });
  test('property: without inertia, twice the force gives twice the torque in every phase', () => {
    fc.assert(fc.property(
      fc.double({ min: -500, max: 500, noNaN: true }), fc.constantFrom<1 | 0 | -1>(1, 0, -1), fc.double({ min: 0.2, max: 1, noNaN: true }),
      (force, direction, efficiency) => {
        const chain = { ...coarse, efficiency, reverseEfficiency: 2 - 1 / efficiency };
        expect(motorTorque(chain, 2 * force, direction, 0).torque).toBeCloseTo(2 * motorTorque(chain, force, direction, 0).torque, 9);
      },
    ));
  });
});

describe('inertia', () => {
  test('hand calculation: 10 kg on 8 mm: 10·(0.008/2π)² = 1.6211e-5 kg·m² (162 g·cm²); through 2 : 1 a quarter', () => {
    expect(reflectedInertia(coarse, 10)).toBeCloseTo(1.6211e-5, 9);
    const stages = [{ ratio: 2, efficiency: 0.9, reverseEfficiency: 0.9, fastInertia: 0, slowInertia: 0, backlash: 0 }];
    expect(reflectedInertia({ ...coarse, stages }, 10)).toBeCloseTo(0.4053e-5, 9);
  });
  test('hand calculation: round bar is ½ m r²: 8 mm by 500 mm, 0.19729 kg, 1.578e-6 kg·m²', () => {
    const mass = 7850 * Math.PI * 0.004 ** 2 * 0.5;
    expect(mass).toBeCloseTo(0.19729, 5);
    expect(roundBarInertia(0.008, 0.5)).toBeCloseTo((mass * 0.004 ** 2) / 2, 12);
  });
});

describe('acceleration available', () => {
  const chain: DriveChain = { ...coarse, dragTorque: 0.01, screwInertia: 2e-6, motorInertia: 8e-6 };
  test('closed form going up: a = [2π η (T − T_drag)/p − F]/(m + 4π² J η/p²)', () => {
    const { efficiency, travelPerTurn: p } = chain;
    const closed = ((2 * Math.PI * efficiency * (0.4 - 0.01)) / p - 98.1) / (10 + (4 * Math.PI ** 2 * 1e-5 * efficiency) / p ** 2);
    const found = accelerationAvailable(chain, vertical, 1, 1, 'gain', 0.4);
    expect(found.kind === 'accelerates' ? found.acceleration : NaN).toBeCloseTo(closed, 6);
  });
  test('a motor that cannot even lift says so; two of them can', () => {
    expect(accelerationAvailable(chain, vertical, 1, 1, 'gain', 0.19).kind).toBe('cannot');
    expect(accelerationAvailable(chain, vertical, 2, 1, 'gain', 0.19).kind).toBe('accelerates');
  });
  test('property: at what it finds, the torque is the limit', () => {
    const limits = fc.double({ min: 0.25, max: 3, noNaN: true });
    fc.assert(fc.property(limits, fc.constantFrom<1 | -1>(1, -1), fc.constantFrom<'gain' | 'lose'>('gain', 'lose'), fc.boolean(), (limit, direction, effect, locks) => {
      const used: DriveChain = { ...chain, ...(locks ? { travelPerTurn: 0.002, efficiency: 0.36, reverseEfficiency: -0.75 } : {}) };
      const found = accelerationAvailable(used, vertical, 1, direction, effect, limit);
      if (found.kind !== 'accelerates' || found.acceleration === 1e6) return;
      const a = (effect === 'gain' ? 1 : -1) * direction * found.acceleration;
      expect(Math.abs(motorTorque(used, driveForce(vertical, direction, a), direction, a).torque)).toBeCloseTo(limit, 6);
    }));
  });
});

test('running down: without friction and inertia it falls freely', () => {
  const ideal: DriveChain = { ...coarse, efficiency: 1, reverseEfficiency: 1 };
  const found = runDownAcceleration(ideal, vertical, 1);
  expect(found.kind === 'accelerates' ? found.acceleration : NaN).toBeCloseTo(9.81, 6);
});

test('programmer errors throw', () => {
  expect(() => driveForce({ ...vertical, mass: 0 }, 1, 0)).toThrow(RangeError);
  expect(() => driveForce({ ...vertical, slope: 2 }, 1, 0)).toThrow(RangeError);
  expect(() => motorTorque({ ...coarse, efficiency: 1.1 }, 1, 1, 0)).toThrow(RangeError);
  expect(() => motorTorque(coarse, Number.NaN, 1, 0)).toThrow(RangeError);
  expect(() => roundBarInertia(0, 1)).toThrow(RangeError);
});
