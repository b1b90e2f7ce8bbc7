/** Freedoms of printed linkages by counting. */
import { expect, test } from 'vitest';
import { mobility } from '../../server/src/mechanics/constraint-mobility.ts';

const joints = (one: number, two: number, three: number): number[] => [...Array<number>(one).fill(1), ...Array<number>(two).fill(2), ...Array<number>(three).fill(3)];

// University notes on kinematics, "Notes_01_02", pages 4 to 6: numbers of links and of joints with 1, 2 and 3 freedoms.
test.each([
  ['six-leg platform with hydraulic legs', 14, joints(0, 18, 0), 6],
  ['six-leg platform with motors and screws', 20, joints(12, 12, 0), 6],
  ['four-bar linkage in a plane, counted in space', 4, joints(4, 0, 0), -2],
])('%s', (_, links, freedoms, printed) => {
  expect(mobility(links, freedoms)).toBe(printed);
});
