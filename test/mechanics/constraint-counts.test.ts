/** Layouts counted by hand, with the reasoning, before the program ran. */
import { describe, expect, test } from 'vitest';
import { countConstraints, scaleOf } from '../../server/src/mechanics/constraint-rank.ts';
import { motionInWords } from '../../server/src/mechanics/constraint-names.ts';
import { wrenchesOf, type DriveState, type Joint } from '../../server/src/mechanics/constraint-wrenches.ts';
import { HAND_COUNTS, Z } from './constraint-layouts.ts';

const count = (joints: readonly Joint[], state: DriveState) => countConstraints(wrenchesOf(joints, state), scaleOf(joints.map((joint) => joint.at)));

const rows = HAND_COUNTS.flatMap(({ name, joints, counts, reasoning }) => Object.entries(counts).map(([state, hand]) => ({ name, joints, state: state as DriveState, hand, reasoning })));

test.each(rows)('$name, $state: $reasoning', ({ joints, state, hand }) => {
  const found = count(joints, state);
  expect({ wrenches: found.wrenches, rank: found.rank, redundant: found.redundant }).toEqual({ wrenches: hand.wrenches, rank: hand.rank, redundant: hand.redundant });
  // Where the axis of a tilt lies beside the slides that are free too is no matter.
  const named = found.free.map((twist) => motionInWords(twist, found.scale, joints));
  expect(named.length).toBe(hand.free.length);
  hand.free.forEach((words, i) => expect(named[i]?.startsWith(words), `${named[i] ?? ''} / ${words}`).toBe(true));
});

describe('what does not matter', () => {
  test.each(rows)('$name, $state: turning and moving the whole layout leaves the counts', ({ joints, state, hand }) => {
    // A turn about (1, 2, 2)/3 by 1 rad, by the formula of Rodrigues, and a shift of metres.
    const k = [1 / 3, 2 / 3, 2 / 3] as const;
    const turn = (v: readonly [number, number, number]): [number, number, number] => {
      const dot = k[0] * v[0] + k[1] * v[1] + k[2] * v[2];
      const cross = [k[1] * v[2] - k[2] * v[1], k[2] * v[0] - k[0] * v[2], k[0] * v[1] - k[1] * v[0]] as const;
      return [0, 1, 2].map((i) => (v[i] as number) * Math.cos(1) + (cross[i] as number) * Math.sin(1) + (k[i] as number) * dot * (1 - Math.cos(1))) as [number, number, number];
    };
    const moved = joints.map((joint): Joint => {
      const at = turn(joint.at);
      return { ...joint, at: [at[0] + 3, at[1] - 2, at[2] + 5], axis: turn(joint.axis), ...(joint.across === undefined ? {} : { across: turn(joint.across) }) };
    });
    const found = count(moved, state);
    expect(found.rank).toBe(hand.rank);
    expect(found.redundant).toBe(hand.redundant);
  });

  test('positions written to the micrometre count like exact ones', () => {
    for (const { joints, state, hand } of rows) {
      const rounded = joints.map((joint): Joint => ({ ...joint, at: joint.at.map((value) => Math.round(value * 1e6) / 1e6) as unknown as Joint['at'] }));
      expect(count(rounded, state).rank).toBe(hand.rank);
    }
  });
});

describe('single bushings', () => {
  // Two short bushings on each of two shafts: 16 rows, of which 8 are tilts held only by play. Rank 5 either way: 11 and, stiffly, 8 − 5 = 3.
  const joints = [-0.2, 0.2].flatMap((x) => [0.04, -0.04].map((z): Joint => ({ owner: `shaft at ${x}`, kind: 'one-bushing', at: [x, 0, z], axis: Z })));
  test('11 redundant, 3 of them stiff', () => {
    const found = count(joints, 'guides alone');
    expect([found.rank, found.redundant, found.redundantStiff]).toEqual([5, 11, 3]);
  });
});

describe('conditioning', () => {
  const stool = (spread: number): Joint[] => [[0.2, 0], [-0.2, 0], [0, spread]].map(([x = 0, y = 0], i): Joint => ({ owner: `foot ${i}`, kind: 'flat', at: [x, y, 0], axis: Z }));
  test('three feet almost in line hold one tilt badly, and the tilt is named', () => {
    const good = count(stool(0.3), 'guides alone');
    const bad = count(stool(0.004), 'guides alone');
    expect(bad.rank).toBe(3);
    expect(good.conditioning).toBeGreaterThan(0.3);
    expect(bad.conditioning).toBeLessThan(0.05);
    expect(motionInWords(bad.weakest!, bad.scale)).toContain('tilts about X');
  });
  test('in line they leave it free', () => {
    expect(count(stool(0), 'guides alone').rank).toBe(2);
  });
});

test('a held screw alone leaves the helix of its thread: 8 mm a turn', () => {
  const joints: Joint[] = [{ owner: 'screw', kind: 'nut-rigid', at: [0, 0, 0], axis: Z, lead: 0.008 }];
  const found = count(joints, 'drives held');
  expect(found.free.map((twist) => motionInWords(twist, found.scale, joints))).toEqual(['turns about Z and slides along it, 8 mm a turn']);
  // Right-handed: as it turns counterclockwise seen from above, the nut on a held screw climbs.
  expect(Math.sign(found.free[0]!.turn[2] * found.free[0]!.slide[2])).toBe(1);
});

test('two balls leave the turn about the line through them', () => {
  const joints: Joint[] = [{ owner: 'left', kind: 'ball', at: [0, 0, 0], axis: Z }, { owner: 'right', kind: 'ball', at: [0.3, 0.1, 0.2], axis: Z }];
  const found = count(joints, 'guides alone');
  expect(found.free.map((twist) => motionInWords(twist, found.scale, joints))).toEqual(['turns about the line through left and right']);
});

// A turn of 1 rad about an axis 27 m away moves supports that stand 0.4 m apart by 27 m each, and turns them by next to nothing.
test('a turn about an axis far off, or one that slides far in a turn, is told as a slide', () => {
  const scale = { centre: [0, 0, 0], length: 0.4 } as const;
  expect(motionInWords({ turn: [1, 0, 0], slide: [0, 27, 0] }, scale)).toBe('slides along Y');
  expect(motionInWords({ turn: [0, 0, 1], slide: [0, 0, 20] }, scale)).toBe('slides along Z');
  // 4 m off, ten times their distance, it is still a tilt: u = r × ω with r = (0, 0, −4).
  expect(motionInWords({ turn: [1, 0, 0], slide: [0, 4, 0] }, scale)).toMatch(/^tilts about X through /);
});
