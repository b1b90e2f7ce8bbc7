import { expect, test } from 'vitest';
import { carriageLoads, carriagesOnRails, gravityOfRails, tableWrench } from '../../server/src/mechanics/carriage-loads.ts';

const at = (values: readonly number[], expected: readonly number[]): void => values.forEach((value, i) => expect(value).toBeCloseTo(expected[i] as number, 9));
const held = (result: ReturnType<typeof carriageLoads>) => {
  if (result === 'not held') throw new Error('expected to be held');
  return result;
};

test('four carriages on the floor, by hand: W/4 ± W x/(2 l) ± W y/(2 b)', () => {
  // 10 kg, g = 10: 100 N at x 0.05, y 0.03 with l = 0.2, b = 0.3: 25 ± 12.5 ± 5 N, all pressing down.
  const wrench = tableWrench({ masses: [{ mass: 10, at: [0.05, 0.03, 0.1] }], gravity: gravityOfRails('floor', 10), acceleration: [0, 0, 0], drive: { y: 0, z: 0 } });
  const loads = held(carriageLoads(carriagesOnRails(2, 2, 0.3, 0.2), wrench));
  at(loads.map(({ fz }) => fz), [-(25 - 12.5 - 5), -(25 + 12.5 - 5), -(25 - 12.5 + 5), -(25 + 12.5 + 5)]);
  expect(wrench.driveForce).toBeCloseTo(0, 12);
});

test('accelerating along x at a height, driven below: m a (h - z_d)/(2 l) on each, pressing behind', () => {
  // 10 kg, 4 m/s², h 0.1 over a drive 0.02 below the rails: 40·0.12 = 4.8 N·m; 4.8/(2·0.2) = 12 N: the rear pair is pressed, the front pair lifted.
  const wrench = tableWrench({ masses: [{ mass: 10, at: [0, 0, 0.1] }], gravity: [0, 0, -10], acceleration: [4, 0, 0], drive: { y: 0, z: -0.02 } });
  expect(wrench.driveForce).toBeCloseTo(40, 12);
  const loads = held(carriageLoads(carriagesOnRails(2, 2, 0.3, 0.2), wrench));
  at(loads.map(({ fz }) => fz), [-37, -13, -37, -13]);
});

test('a drive beside the middle presses sideways: F e/(2 l) on each', () => {
  // 40 N at y 0.05, l 0.2: 2 N·m; 2/(2·0.2) = 5 N.
  const wrench = tableWrench({ masses: [{ mass: 10, at: [0, 0, 0] }], gravity: [0, 0, 0], acceleration: [4, 0, 0], drive: { y: 0.05, z: 0 } });
  const loads = held(carriageLoads(carriagesOnRails(2, 2, 0.3, 0.2), wrench));
  at(loads.map(({ fy }) => Math.abs(fy)), [5, 5, 5, 5]);
  expect(loads[0]?.fy).toBeCloseTo(-(loads[1]?.fy as number), 9);
});

test('vertical axis, one rail, two carriages: F a/l', () => {
  // 6 kg 80 mm in front of the rail, drive in the plane of the rail, carriages 120 mm apart: 60·0.08/0.12 = 40 N: the upper one is pulled, the lower pressed.
  const wrench = tableWrench({ masses: [{ mass: 6, at: [0, 0, 0.08] }], gravity: gravityOfRails('vertical', 10), acceleration: [0, 0, 0], drive: { y: 0, z: 0 } });
  expect(wrench.driveForce).toBeCloseTo(60, 12);
  const loads = held(carriageLoads(carriagesOnRails(1, 2, 0, 0.12), wrench));
  at(loads.map(({ fz }) => fz), [-40, 40]);
});

test('on a wall the weight goes sideways and rolls the table', () => {
  // 10 kg 0.1 m off the wall: 100 N down the wall, roll 10 N·m: 10/(2·0.25) = 20 N: the upper rail is pulled, the lower pressed.
  const wrench = tableWrench({ masses: [{ mass: 10, at: [0, 0, 0.1] }], gravity: gravityOfRails('wall', 10), acceleration: [0, 0, 0], drive: { y: 0, z: 0 } });
  const loads = held(carriageLoads(carriagesOnRails(2, 2, 0.25, 0.2), wrench));
  at(loads.map(({ fy }) => fy), [-25, -25, -25, -25]);
  at(loads.map(({ fz }) => fz), [-20, -20, 20, 20]);
  expect(gravityOfRails('ceiling', 10)).toEqual([0, 0, 10]);
});

test('one carriage takes everything, if it has a length and rows; without it is not held', () => {
  const wrench = { fy: 1, fz: 2, mx: 3, my: 4, mz: 5 };
  const [only] = held(carriageLoads([{ x: 0, y: 0, length: 0.04, rowSpacing: 0.02 }], wrench));
  at([only?.fy, only?.fz, only?.mx, only?.my, only?.mz].map((value) => value ?? NaN), [1, 2, 3, 4, 5]);
  expect(carriageLoads([{ x: 0, y: 0 }], wrench)).toBe('not held');
  expect(carriageLoads(carriagesOnRails(1, 2, 0, 0.1), wrench)).toBe('not held');
  at(held(carriageLoads([{ x: 0, y: 0 }], { ...wrench, mx: 0, my: 0, mz: 0 })).map(({ fz }) => fz), [2]);
});

test('two carriages with a length of their own share a pitch moment by stiffness: spacing l and length c, l²/2 against c²/6', () => {
  // k l²/2 from the pair, 2·k c²/12 from both: l = 0.1, c = 0.06: 0.005 to 0.0006: by spacing 12·0.005/0.0056 = 10.714 N·m, on 0.1 m: 107.14 N.
  const loads = held(carriageLoads(carriagesOnRails(1, 2, 0, 0.1, { length: 0.06 }), { fy: 0, fz: 0, mx: 0, my: 12, mz: 0 }));
  expect(Math.abs(loads[0]?.fz ?? NaN)).toBeCloseTo((12 * 0.005) / 0.0056 / 0.1, 6);
  expect(loads[0]?.my).toBeCloseTo((12 * 0.0006) / 0.0056 / 2, 9);
});

test('what a caller cannot mean throws', () => {
  expect(() => carriageLoads([], { fy: 0, fz: 0, mx: 0, my: 0, mz: 0 })).toThrow(RangeError);
  expect(() => carriagesOnRails(2, 1, 0, 0)).toThrow(RangeError);
  expect(() => tableWrench({ masses: [{ mass: -1, at: [0, 0, 0] }], gravity: [0, 0, 0], acceleration: [0, 0, 0], drive: { y: 0, z: 0 } })).toThrow(RangeError);
});
