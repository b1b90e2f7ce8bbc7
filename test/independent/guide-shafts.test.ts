/** Guide shafts by beam elements that share no code with the product. */
import { Matrix, solve } from 'ml-matrix';
import { describe, expect, test } from 'vitest';
import { bendShaft, supportedRailGive } from '../../server/src/mechanics/guide-shaft.ts';
import { beamCompliance } from './beam-elements.ts';

const EI = 206e9 * (Math.PI / 64) * 0.012 ** 4;

describe('deflection under a force of 1 N', () => {
  const springs = [0, 30, 300, 3000, Infinity];
  for (const left of springs) {
    for (const at of [0.11, 0.2, 0.33]) {
      test(`tilt springs of ${left} and 120 N·m/rad, at ${at} m`, () => {
        const expected = beamCompliance(
          { length: 0.4, elements: 40, bendingStiffness: () => EI, massPerLength: 1, supports: [{ at: 0, lateral: Infinity, tilt: left }, { at: 0.4, lateral: Infinity, tilt: 120 }] }, at,
        );
        const found = bendShaft({ left: { tiltStiffness: left }, right: { tiltStiffness: 120 }, length: 0.4, bendingStiffness: EI }, [{ at, force: 1 }]).at(at).deflection;
        expect(Math.abs(found / expected - 1)).toBeLessThan(1e-7);
      });
    }
  }

  test('with shear, between clamps, L/d = 8 (element error of a shear-flexible beam: none for end loads)', () => {
    const shearStiffness = 2e6;
    const expected = beamCompliance(
      { length: 0.1, elements: 40, bendingStiffness: () => EI, massPerLength: 1, shearStiffness, supports: [{ at: 0, lateral: Infinity, tilt: Infinity }, { at: 0.1, lateral: Infinity, tilt: Infinity }] }, 0.03,
    );
    const found = bendShaft({ left: 'fixed', right: 'fixed', length: 0.1, bendingStiffness: EI, shearFlexibility: 1 / shearStiffness }, [{ at: 0.03, force: 1 }]).at(0.03).deflection;
    expect(Math.abs(found / expected - 1)).toBeLessThan(1e-7);
  });

  test('with a rigid and an elastic support between the ends', () => {
    const expected = beamCompliance(
      {
        length: 1, elements: 60, bendingStiffness: () => EI, massPerLength: 1,
        supports: [{ at: 0, lateral: Infinity, tilt: 0 }, { at: 0.35, lateral: Infinity, tilt: 0 }, { at: 0.7, lateral: 2e4, tilt: 0 }, { at: 1, lateral: Infinity, tilt: Infinity }],
      },
      0.55,
    );
    const shaft = { left: 'supported', right: 'fixed', length: 1, bendingStiffness: EI, middleSupports: [{ at: 0.35 }, { at: 0.7, stiffness: 2e4 }] } as const;
    expect(Math.abs(bendShaft(shaft, [{ at: 0.55, force: 1 }]).at(0.55).deflection / expected - 1)).toBeLessThan(1e-7);
  });
});

/** Deflection and slope at every node of a uniform beam under forces at nodes and an even load, on springs at the nodes where it lies on its length: Hermite cubics, dense. */
function nodalBeam(length: number, count: number, held: readonly number[], q: number, forces: ReadonlyMap<number, number>, foundation = 0): readonly number[] {
  const h = length / count;
  const k = EI / h ** 3;
  const size = 2 * (count + 1);
  const stiffness = Matrix.zeros(size, size);
  const load = new Array<number>(size).fill(0);
  const element = [[12, 6 * h, -12, 6 * h], [6 * h, 4 * h * h, -6 * h, 2 * h * h], [-12, -6 * h, 12, -6 * h], [6 * h, 2 * h * h, -6 * h, 4 * h * h]];
  const even = [h / 2, (h * h) / 12, h / 2, (-h * h) / 12];
  for (let e = 0; e < count; e++) {
    for (let i = 0; i < 4; i++) {
      load[2 * e + i] = (load[2 * e + i] as number) + q * (even[i] as number);
      for (let j = 0; j < 4; j++) stiffness.set(2 * e + i, 2 * e + j, stiffness.get(2 * e + i, 2 * e + j) + k * ((element[i] as number[])[j] as number));
    }
  }
  for (let node = 0; node <= count; node++) stiffness.set(2 * node, 2 * node, stiffness.get(2 * node, 2 * node) + foundation * h * (node % count === 0 ? 0.5 : 1));
  for (const [node, force] of forces) load[2 * node] = (load[2 * node] as number) + force;
  const free = Array.from({ length: size }, (_, i) => i).filter((i) => !held.includes(i));
  const moved = solve(stiffness.selection(free, free), Matrix.columnVector(free.map((i) => load[i] as number))).to1DArray();
  const all = new Array<number>(size).fill(0);
  free.forEach((i, a) => { all[i] = moved[a] as number; });
  return all;
}

test.each([
  ['supported', 'supported', [0, 40]],
  ['fixed', 'supported', [0, 1, 40]],
  ['fixed', 'fixed', [0, 1, 40, 41]],
  ['fixed', 'free', [0, 1]],
  ['free', 'fixed', [40, 41]],
] as const)('deflection and slope everywhere under two forces and own weight, ends %s and %s', (left, right, held) => {
  // 20 elements over 0.5 m, forces at nodes 6 and 13; cubics are exact at nodes.
  const expected = nodalBeam(0.5, 20, held, 12, new Map([[6, 30], [13, -8]]));
  const bent = bendShaft({ left, right, length: 0.5, bendingStiffness: EI, loadPerLength: 12 }, [{ at: 0.15, force: 30 }, { at: 0.325, force: -8 }]);
  const size = Math.max(...expected.map(Math.abs));
  for (let node = 0; node <= 20; node++) {
    const { deflection, slope } = bent.at(Math.min(0.5, node * 0.025));
    expect(Math.abs(deflection - (expected[2 * node] as number))).toBeLessThan(1e-8 * size);
    expect(Math.abs(slope - (expected[2 * node + 1] as number))).toBeLessThan(1e-8 * size);
  }
});

test('a long rail on a bed of springs: F b/(2 k)', () => {
  // 0.8 m in steps of 5 mm; it bends over 64 mm, so springs at the nodes stand in for an even bed.
  const moved = nodalBeam(0.8, 160, [], 0, new Map([[80, 1]]), 5e7);
  const { deflection, reach } = supportedRailGive(1, 5e7, EI);
  expect(reach).toBeLessThan(0.4);
  expect(Math.abs(deflection / (moved[160] as number) - 1)).toBeLessThan(0.002);
});
