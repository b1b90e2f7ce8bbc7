/** Who is named in a conflict: by reasoning about each layout. */
import { describe, expect, test } from 'vitest';
import { conflictInWords, conflictsOf, gatherConflicts } from '../../server/src/mechanics/constraint-conflicts.ts';
import { countConstraints, scaleOf } from '../../server/src/mechanics/constraint-rank.ts';
import { wrenchesOf, type DriveState, type Joint } from '../../server/src/mechanics/constraint-wrenches.ts';
import type { Vector3 } from '../../server/src/mechanics/vector3.ts';
import { fourPlaces, HAND_COUNTS, jammingBed, rails, screws, shafts, Z } from './constraint-layouts.ts';

function conflicts(joints: readonly Joint[], state: DriveState) {
  const scale = scaleOf(joints.map((joint) => joint.at));
  const wrenches = wrenchesOf(joints, state);
  return { found: conflictsOf(wrenches, scale), count: countConstraints(wrenches, scale), scale };
}
const words = (joints: readonly Joint[], state: DriveState): string[] => conflicts(joints, state).found.map(conflictInWords);

describe.each(HAND_COUNTS.flatMap(({ name, joints, counts }) => Object.keys(counts).map((state) => ({ name, joints, state: state as DriveState }))))('$name, $state', ({ joints, state }) => {
  test('as many conflicts as redundant constraints, each in balance', () => {
    const { found, count } = conflicts(joints, state);
    expect(found.length).toBe(count.redundant);
    for (const { parts } of found) {
      for (const what of ['force', 'moment'] as const) {
        for (const i of [0, 1, 2] as const) expect(Math.abs(parts.reduce((sum, part) => sum + part[what][i], 0))).toBeLessThan(1e-9);
      }
    }
  });
});

test('two rails side by side fight over everything but the slide', () => {
  expect(words(rails(2), 'guides alone')).toEqual(['X', 'Y'].map((axis) => `rail A and rail B both fix shift along ${axis}`).concat(['tilt about X', 'tilt about Y', 'turn about Z'].map((what) => `rail A and rail B both fix ${what}`)));
});

test('two shafts fight over the distance between them and over both tilts, not over the turn, which only both together fix', () => {
  // Apart along X: a change of the distance along X is what both feel.
  expect(words(shafts(2), 'guides alone')).toEqual(['shift along X', 'tilt about X', 'tilt about Y'].map((what) => `shaft A and shaft B both fix ${what}`));
});

test('a rail holds the tilt that two decoupled screws hold by the difference of their heights', () => {
  const joints = [...rails(1), ...screws('nut-decoupled', [[0.2, 0, 0], [-0.2, 0, 0]])];
  expect(words(joints, 'drives held')).toEqual(['rail A fixes tilt about Y, which screw 1 and screw 2 fix together']);
  expect(words(joints, 'drives running')).toEqual([]);
});

test('a third rail repeats the tilt that three screws own', () => {
  // Screws first in the list: they own height and both tilts; the rail comes later and repeats both tilts.
  const joints = [...screws('nut-decoupled', [[0.2, 0.15, 0], [-0.2, 0.15, 0], [0, -0.15, 0]]), ...rails(1)];
  const found = conflicts(joints, 'drives held').found;
  expect(found.map((one) => one.later)).toEqual(['rail A', 'rail A']);
  expect(found.every((one) => one.held.startsWith('tilt about'))).toBe(true);
});

test('four feet: one height too many, and it pulls up where its neighbours push', () => {
  const joints = fourPlaces.map((at, i): Joint => ({ owner: `foot ${i + 1}`, kind: 'flat', at, axis: Z }));
  const { found } = conflicts(joints, 'guides alone');
  expect(found.map(conflictInWords)).toEqual(['foot 1, foot 2, foot 3 and foot 4 together fix shift along Z once too often']);
  const push = Object.fromEntries(found[0]!.parts.map((part) => [part.owner, part.force[2]]));
  // Opposite corners alike, neighbours against each other, all equal on a rectangle.
  expect(push['foot 1']! / push['foot 3']!).toBeCloseTo(1, 9);
  expect(push['foot 2']! / push['foot 1']!).toBeCloseTo(-1, 9);
});

test('the jamming bed: each screw fights the first rail over two shifts and two tilts, and the first screw over the height', () => {
  const found = conflicts(jammingBed, 'drives held').found.filter((one) => one.later.startsWith('screw'));
  expect(found.length).toBe(14);
  for (const screw of ['screw 1', 'screw 2', 'screw 3']) {
    const own = found.filter((one) => one.later === screw);
    expect(own.filter((one) => one.earlier[0] === 'rail A').map((one) => one.held)).toEqual(['shift along X', 'shift along Y', 'tilt about X', 'tilt about Y']);
    expect(own.filter((one) => one.earlier[0] === 'screw 1').map((one) => one.held)).toEqual(screw === 'screw 1' ? [] : ['shift along Z']);
  }
});

test('joints of one name that repeat each other', () => {
  const joints = [-0.1, 0.1].map((z): Joint => ({ ...rails(1)[0]!, at: [0, 0, z] as Vector3 }));
  expect(words(joints, 'guides alone')[0]).toBe('rail A fixes shift along X twice');
  expect(words(joints, 'guides alone').length).toBe(5);
});

test('what a single bushing holds only by its play is marked soft', () => {
  const joints: Joint[] = [0.04, -0.04].map((z, i) => ({ owner: `bushing ${i + 1}`, kind: 'one-bushing', at: [0, 0, z], axis: Z }));
  const { found } = conflicts(joints, 'guides alone');
  // 8 rows, a cylinder joint of rank 4. The forces of the two hold both tilts already: all four that are too many are tilts or hang on them.
  expect(found.map((one) => one.soft)).toEqual([true, true, true, true]);
});

test('gathered: in the jamming bed all five hold both level shifts and both tilts, the screws the height, the rails the turn', () => {
  const { found, count } = conflicts(jammingBed, 'drives held');
  const { shared, others } = gatherConflicts(found);
  const all = ['rail A', 'rail B', 'screw 1', 'screw 2', 'screw 3'];
  expect(others).toEqual([]);
  expect(Object.fromEntries(shared.map((one) => [one.held, one.owners]))).toEqual({
    'shift along X': all, 'shift along Y': all, 'tilt about X': all, 'tilt about Y': all, 'turn about Z': ['rail A', 'rail B'], 'shift along Z': ['screw 1', 'screw 2', 'screw 3'],
  });
  expect(shared.reduce((sum, one) => sum + one.tooMany, 0)).toBe(count.redundant);
});

test('gathered: a conflict between one and several stays by itself', () => {
  const { shared, others } = gatherConflicts(conflicts([...rails(1), ...screws('nut-decoupled', [[0.2, 0, 0], [-0.2, 0, 0]])], 'drives held').found);
  expect([shared.length, others.length]).toEqual([0, 1]);
});

test('sixty feet: fifty-seven heights too many, each named with three others', () => {
  const joints = Array.from({ length: 60 }, (_, i): Joint => ({ owner: `foot ${i}`, kind: 'flat', at: [Math.cos(i), Math.sin(i), 0], axis: Z }));
  const { found } = conflicts(joints, 'guides alone');
  expect(found.length).toBe(57);
  for (const one of found) expect(one.earlier.length).toBe(3);
});
