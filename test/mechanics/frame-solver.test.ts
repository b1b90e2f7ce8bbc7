/** The frame solver against beam tables and hand calculation. */
import { describe, expect, test } from 'vitest';
import { PINNED_END } from '../../server/src/mechanics/frame-element.ts';
import { roundSection, solidRectangle, type Section } from '../../server/src/mechanics/frame-sections.ts';
import { assembleFrame, CLAMPED, deflectFrame, divideMember, nodeFlexibilities, PLACED, shiftOfPoint, type Frame, type FrameMember, type NodeLoad } from '../../server/src/mechanics/frame-solver.ts';
import type { Vector3 } from '../../server/src/mechanics/vector3.ts';

const E = 70e9;
const G = 26e9;
/** Unequal both ways: 20 mm wide, 40 mm high. */
const flat: Section = solidRectangle(0.02, 0.04);
const beam = (from: string, to: string, more: Partial<FrameMember> = {}): FrameMember => ({ from, to, section: flat, youngsModulus: E, shearModulus: G, massPerLength: 2, ...more });
function motions(frame: Frame, loads: Readonly<Record<string, NodeLoad>>, pull?: Vector3) {
  const found = deflectFrame(frame, loads, pull);
  if (found.kind !== 'deflected') throw new Error(found.kind);
  return found.motions;
}
const near = (found: number, wanted: number): void => { expect(Math.abs(found - wanted)).toBeLessThan(1e-8 * Math.abs(wanted)); };

describe('cantilever of 0.8 m along X (Roark, beam table, from memory)', () => {
  const frame: Frame = { nodes: { foot: [0, 0, 0], tip: [0.8, 0, 0] }, members: [beam('foot', 'tip')], feet: { foot: CLAMPED } };
  test('100 N down: P L³/(3 E I), tilt P L²/(2 E I) nose down', () => {
    const tip = motions(frame, { tip: { force: [0, 0, -100] } }).get('tip')!;
    near(tip.shift[2], -(100 * 0.8 ** 3) / (3 * E * flat.secondUpright));
    near(tip.turn[1], (100 * 0.8 ** 2) / (2 * E * flat.secondUpright));
  });
  test('100 N sideways bends over the weak way, and turns the tip after the force', () => {
    const tip = motions(frame, { tip: { force: [0, 100, 0] } }).get('tip')!;
    near(tip.shift[1], (100 * 0.8 ** 3) / (3 * E * flat.secondSideways));
    near(tip.turn[2], (100 * 0.8 ** 2) / (2 * E * flat.secondSideways));
  });
  test('own weight of a beam that lies on its side, in one piece: the same as upright with the other second moment', () => {
    const lying = { ...frame, members: [beam('foot', 'tip', { upright: [0, 1, 0] })] };
    const tip = motions(lying, {}, [0, 0, -9.81]).get('tip')!;
    near(tip.shift[2], -(2 * 9.81 * 0.8 ** 4) / (8 * E * flat.secondSideways));
    near(tip.turn[1], (2 * 9.81 * 0.8 ** 3) / (6 * E * flat.secondSideways));
  });
  test('pull and twist', () => {
    const tip = motions(frame, { tip: { force: [5000, 0, 0], moment: [3, 0, 0] } }).get('tip')!;
    near(tip.shift[0], (5000 * 0.8) / (E * flat.area));
    near(tip.turn[0], (3 * 0.8) / (G * flat.torsion));
  });
  test('own weight: w L⁴/(8 E I), in one piece or in seven', () => {
    for (const divided of [frame, divideMember(frame, 0, 7, 'part')]) near(motions(divided, {}, [0, 0, -9.81]).get('tip')!.shift[2], -(2 * 9.81 * 0.8 ** 4) / (8 * E * flat.secondUpright));
  });
  test('a joint of k N·m/rad at the foot adds P L²/k at the tip', () => {
    const k = 4000;
    const soft = { ...frame, members: [beam('foot', 'tip', { joints: [{ bending: k }, { bending: Infinity }] })] };
    near(motions(soft, { tip: { force: [0, 0, -100] } }).get('tip')!.shift[2], -(100 * 0.8 ** 3) / (3 * E * flat.secondUpright) - (100 * 0.8 ** 2) / k);
    // Torsion passes the joint untouched.
    near(motions(soft, { tip: { moment: [3, 0, 0] } }).get('tip')!.turn[0], (3 * 0.8) / (G * flat.torsion));
  });
  test('a point in front of the tip goes down by the tilt as well', () => {
    const tip = motions(frame, { tip: { force: [0, 0, -100] } }).get('tip')!;
    near(shiftOfPoint(tip, [0.1, 0, 0])[2], tip.shift[2] - 0.1 * tip.turn[1]);
  });
});

test('beam between supports: 5 w L⁴/(384 E I) in the middle, and a load at a third P a² b²/(3 E I L)', () => {
  const frame = divideMember({ nodes: { left: [0, 0, 0], right: [1.2, 0, 0] }, members: [beam('left', 'right')], feet: { left: [true, true, true, true, false, false], right: PLACED } }, 0, 6, 'n');
  near(motions(frame, {}, [0, 0, -9.81]).get('n-3')!.shift[2], (-5 * 2 * 9.81 * 1.2 ** 4) / (384 * E * flat.secondUpright));
  near(motions(frame, { 'n-2': { force: [0, 0, -50] } }).get('n-2')!.shift[2], -(50 * 0.4 ** 2 * 0.8 ** 2) / (3 * E * flat.secondUpright * 1.2));
});

test('joints that are pins turn a clamped beam into a supported one: P L³/(48 E I)', () => {
  const frame: Frame = {
    nodes: { left: [0, 0, 0], middle: [0.5, 0, 0], right: [1, 0, 0] }, feet: { left: CLAMPED, right: CLAMPED },
    members: [beam('left', 'middle', { joints: [PINNED_END, { bending: Infinity }] }), beam('middle', 'right', { joints: [{ bending: Infinity }, PINNED_END] })],
  };
  near(motions(frame, { middle: { force: [0, 0, -50] } }).get('middle')!.shift[2], -50 / (48 * E * flat.secondUpright));
});

test('a member askew gives like one along the axes', () => {
  // Along (1, 2, 2)/3, loaded along the member and square to it; round, so that its upright direction does not count.
  const round = roundSection(0.03);
  const frame: Frame = { nodes: { foot: [0, 0, 0], tip: [0.3, 0.6, 0.6] }, members: [beam('foot', 'tip', { section: round })], feet: { foot: CLAMPED } };
  const along: Vector3 = [1 / 3, 2 / 3, 2 / 3];
  const square: Vector3 = [2 / 3, -2 / 3, 1 / 3];
  const dot = (a: Vector3, b: Vector3): number => a[0] * b[0] + a[1] * b[1] + a[2] * b[2];
  const shift = motions(frame, { tip: { force: [90 * along[0] + 30 * square[0], 90 * along[1] + 30 * square[1], 90 * along[2] + 30 * square[2]] } }).get('tip')!.shift;
  near(dot(shift, along), (90 * 0.9) / (E * round.area));
  near(dot(shift, square), (30 * 0.9 ** 3) / (3 * E * round.secondUpright));
});

test('springs from the ground share with a beam: Levinson, Statics and Strength of Materials: parallel stiffnesses, by hand', () => {
  const frame: Frame = { nodes: { foot: [0, 0, 0], tip: [0.5, 0, 0] }, members: [beam('foot', 'tip')], feet: { foot: CLAMPED }, springs: { tip: [0, 0, 2e5, 0, 0, 0] } };
  const own = (3 * E * flat.secondUpright) / 0.5 ** 3;
  near(motions(frame, { tip: { force: [0, 0, -100] } }).get('tip')!.shift[2], -100 / (own + 2e5));
});

describe('what is not held', () => {
  test('a beam on nothing, or on two supports that let it roll, is a mechanism', () => {
    const nodes = { left: [0, 0, 0], right: [1, 0, 0] } as const;
    expect(deflectFrame({ nodes, members: [beam('left', 'right')], feet: {} }, {}).kind).toBe('mechanism');
    expect(deflectFrame({ nodes, members: [beam('left', 'right')], feet: { left: PLACED, right: PLACED } }, {}).kind).toBe('mechanism');
  });
  test('four pinned bars in a square fold; a diagonal holds them', () => {
    const nodes = { a: [0, 0, 0], b: [1, 0, 0], c: [1, 0, 1], d: [0, 0, 1] } as const;
    const bar = (from: string, to: string): FrameMember => beam(from, to, { joints: [PINNED_END, PINNED_END] });
    const plane = [false, true, false, true, true, true] as const;
    const feet = { a: CLAMPED, b: CLAMPED, c: plane, d: plane };
    const square = [bar('a', 'd'), bar('b', 'c'), bar('d', 'c')];
    expect(deflectFrame({ nodes, members: square, feet }, {}).kind).toBe('mechanism');
    // Both posts pinned and no pull in the top bar but the load's: d moves by the diagonal's stretch over cos² 45°, when the load stands at c.
    const braced = motions({ nodes, members: [...square, bar('a', 'c')], feet }, { c: { force: [100, 0, 0] } });
    // Bar a–c takes 100 √2 N and stretches 100 √2 · √2/(E A); the post b–c is pushed by 100 N: c goes down by 100/(E A). Sway = (stretch · √2) + drop.
    near(braced.get('c')!.shift[0], (200 * Math.SQRT2 + 100) / (E * flat.area));
  });
  test('an unknown node is refused', () => {
    expect(() => deflectFrame({ nodes: { a: [0, 0, 0], b: [1, 0, 0] }, members: [beam('a', 'b')], feet: { a: CLAMPED } }, { c: {} })).toThrow(RangeError);
  });
});

describe('own weight of a member whose joints give', () => {
  const span = (joints: readonly [{ bending: number }, { bending: number }]): Frame => ({
    nodes: { a: [0, 0, 0], b: [1.2, 0, 0] }, members: [beam('a', 'b', { joints })], feet: { a: CLAMPED, b: CLAMPED },
  });
  const middle = (frame: Frame, parts: number): number => {
    const divided = divideMember(frame, 0, parts, 'at');
    return motions(divided, {}, [0, 0, -9.81]).get(`at-${parts / 2}`)!.shift[2];
  };
  test('is exact in two parts, as in many: end moment w L²/12 · 1/(1 + 2 E I/(k L)) by slope-deflection, sag 5 w L⁴/(384 E I) − M L²/(8 E I)', () => {
    const [w, length, k, bending] = [2 * 9.81, 1.2, 5000, E * flat.secondUpright];
    const moment = ((w * length ** 2) / 12) / (1 + (2 * bending) / (k * length));
    const sag = (5 * w * length ** 4) / (384 * bending) - (moment * length ** 2) / (8 * bending);
    near(middle(span([{ bending: k }, { bending: k }]), 2), -sag);
    near(middle(span([{ bending: k }, { bending: k }]), 12), -sag);
  });
});

test('flexibilities of nodes are what forces on them give', () => {
  const frame: Frame = { nodes: { foot: [0, 0, 0], tip: [0.8, 0, 0], side: [0.8, 0.3, 0.1] }, members: [beam('foot', 'tip'), beam('tip', 'side')], feet: { foot: CLAMPED } };
  const found = nodeFlexibilities(assembleFrame(frame));
  if (found === 'mechanism') throw new Error(found);
  expect([...found.keys()]).toEqual(['tip', 'side']);
  ([[1, 0, 0], [0, 1, 0], [0, 0, 1]] as const).forEach((force, axis) => {
    const { shift } = motions(frame, { side: { force } }).get('side')!;
    shift.forEach((value, i) => { expect(found.get('side')?.[axis]?.[i]).toBeCloseTo(value, 15); });
  });
});
