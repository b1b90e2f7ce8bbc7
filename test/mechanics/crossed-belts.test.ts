import { describe, expect, test } from 'vitest';
import {
  beltForces, beltsFromCarriage, carriageFromBelts, crossCoupling, giveOnCrossedBelts, pulleyDuties, rotorsAlongAxis, stiffnessOnCrossedBelts, twistFromLengths, twistFromTensions,
  type MovingAxis,
} from '../../server/src/mechanics/crossed-belts.ts';

describe('ways and forces', () => {
  test('along one axis both belts run alike far; on the diagonal one stands', () => {
    expect(beltsFromCarriage({ x: 10, y: 0 })).toEqual({ a: 10, b: 10 });
    expect(beltsFromCarriage({ x: 0, y: 10 })).toEqual({ a: 10, b: -10 });
    expect(beltsFromCarriage({ x: 10, y: 10 })).toEqual({ a: 20, b: 0 });
  });
  test('there and back', () => {
    expect(carriageFromBelts(beltsFromCarriage({ x: 0.37, y: -1.9 }))).toEqual({ x: expect.closeTo(0.37, 12) as number, y: expect.closeTo(-1.9, 12) as number });
  });
  test('20 N along x and 6 N along y: 13 N and 7 N', () => {
    expect(beltForces({ x: 20, y: 6 })).toEqual({ a: 13, b: 7 });
  });
});

describe('a move along both axes', () => {
  const x: MovingAxis = { mass: 1.2, acceleration: 4, speed: 0.3, resistance: 5 };
  const y: MovingAxis = { mass: 0.5, acceleration: 2, speed: 0.1, resistance: 3 };
  test('by hand: F_x = 9.8 N, F_y = 4 N, r = 8 mm, J = 6e-6 kg·m²', () => {
    const { a, b } = pulleyDuties(x, y, 0.008, 6e-6);
    // a: 6.9 N · 8 mm = 55.2 N·mm, and 6e-6 · 6/0.008 = 4.5 N·mm; 0.4/0.008 = 50 rad/s.
    expect(a.torque).toBeCloseTo(0.0597, 10);
    expect(a.speed).toBeCloseTo(50, 10);
    // b: 2.9 N · 8 mm = 23.2 N·mm, and 6e-6 · 2/0.008 = 1.5 N·mm; 25 rad/s.
    expect(b.torque).toBeCloseTo(0.0247, 10);
    expect(b.speed).toBeCloseTo(25, 10);
  });
  test('the motors bring exactly the power that masses, rotors and friction take', () => {
    const { a, b } = pulleyDuties(x, y, 0.008, 6e-6);
    const rotors = rotorsAlongAxis(6e-6, 0.008);
    const taken = [x, y].reduce((sum, { mass, acceleration, speed, resistance }) => sum + ((mass + rotors) * acceleration + resistance) * speed, 0);
    expect(a.torque * a.speed + b.torque * b.speed).toBeCloseTo(taken, 12);
  });
  test('on the diagonal with even axes the standing motor has nothing to hold', () => {
    const { a, b } = pulleyDuties(x, x, 0.008, 6e-6);
    expect(b).toEqual({ speed: 0, torque: 0 });
    expect(a.torque).toBeCloseTo((9.8 * 0.008) + (6e-6 * 8) / 0.008, 12);
  });
  test('rotors: 2 J/r², 6e-6 on 8 mm is 0.1875 kg', () => {
    expect(rotorsAlongAxis(6e-6, 0.008)).toBeCloseTo(0.1875, 12);
  });
});

describe('give', () => {
  test('equal belts: 2 k along both axes, nothing across', () => {
    expect(stiffnessOnCrossedBelts(60e3, 60e3)).toEqual({ xx: 120e3, xy: 0, yy: 120e3 });
    expect(giveOnCrossedBelts(60e3, 60e3, { x: 12, y: 0 })).toEqual({ x: 1e-4, y: expect.closeTo(0, 15) as number });
  });
  test('60 and 40 N/mm: a fifth as much across as along, towards the softer belt', () => {
    expect(crossCoupling(60e3, 40e3)).toBeCloseTo(0.2, 12);
    const give = giveOnCrossedBelts(60e3, 40e3, { x: 12, y: 0 });
    expect(give.y / give.x).toBeCloseTo(-0.2, 12);
  });
  test('the give put back into the stiffness gives the force', () => {
    const give = giveOnCrossedBelts(55e3, 31e3, { x: 12, y: -7 });
    const { xx, xy, yy } = stiffnessOnCrossedBelts(55e3, 31e3);
    expect(xx * give.x + xy * give.y).toBeCloseTo(12, 10);
    expect(xy * give.x + yy * give.y).toBeCloseTo(-7, 10);
  });
});

describe('twist', () => {
  const gantry = { width: 0.4, tensionDifference: 10, specificStiffness: 25e3, pathLength: 2, guideStiffness: 0 };
  test('no help from the guides: ends apart by ΔT L/(2 E A), 10 N · 2 m/50 kN = 0.4 mm', () => {
    expect(twistFromTensions(gantry) * 0.4).toBeCloseTo(0.4e-3, 12);
  });
  test('guides of 2 E A w²/L = 4000 N·m/rad halve it', () => {
    expect(twistFromTensions({ ...gantry, guideStiffness: 4000 }) * 0.4).toBeCloseTo(0.2e-3, 12);
  });
  test('a belt 1 mm longer lets the ends stand 0.5 mm apart', () => {
    expect(twistFromLengths(1e-3, 0.4) * 0.4).toBeCloseTo(0.5e-3, 12);
  });
});

test.each([
  () => beltsFromCarriage({ x: NaN, y: 0 }),
  () => stiffnessOnCrossedBelts(0, 1),
  () => rotorsAlongAxis(1, 0),
  () => twistFromTensions({ width: 0, tensionDifference: 1, specificStiffness: 1, pathLength: 1, guideStiffness: 0 }),
  () => twistFromLengths(1, -1),
])('out of domain: refused', (run) => {
  expect(run).toThrow(RangeError);
});
