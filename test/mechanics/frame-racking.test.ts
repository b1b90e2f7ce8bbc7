/** Racking by hand and by the frame solver. */
import { describe, expect, test } from 'vitest';
import { braceSwayStiffness, breakEvenJoint, columnSwayStiffness, panelSwayStiffness, portalSwayStiffness, swayFrequency } from '../../server/src/mechanics/frame-racking.ts';
import { PINNED_END, type EndJoint } from '../../server/src/mechanics/frame-element.ts';
import { solidRectangle } from '../../server/src/mechanics/frame-sections.ts';
import { frameModes } from '../../server/src/mechanics/frame-modes.ts';
import { CLAMPED, deflectFrame, divideMember, type Frame, type FrameMember, type Held } from '../../server/src/mechanics/frame-solver.ts';

const section = solidRectangle(0.02, 0.02);
const [e, g, h, w] = [70e9, 26e9, 0.6, 0.5];
const bending = e * section.secondUpright;
const member = (from: string, to: string, more: Partial<FrameMember> = {}): FrameMember => ({ from, to, section, youngsModulus: e, shearModulus: g, massPerLength: 0, ...more });
/** Held to the plane of the portal. */
const plane: Held = [false, true, false, true, false, true];
/** A column or beam that does not stretch. */
const unstretched = { ...section, area: 1e3 * section.area };

function sway(frame: Frame): number {
  const found = deflectFrame(frame, { a: { force: [100, 0, 0] } });
  if (found.kind !== 'deflected') throw new Error(found.kind);
  return 100 / found.motions.get('a')!.shift[0];
}
const portal = (beamSection: typeof section, joint: EndJoint = { bending: Infinity }): Frame => ({
  nodes: { f: [0, 0, 0], a: [0, 0, h], b: [w, 0, h], k: [w, 0, 0] }, feet: { f: CLAMPED, k: CLAMPED, a: plane, b: plane },
  members: [member('f', 'a', { section: unstretched, joints: [joint, joint] }), member('a', 'b', { section: beamSection }), member('k', 'b', { section: unstretched, joints: [joint, joint] })],
});

describe('columns with joints that give', () => {
  test.each([Infinity, 20e3, 4.8e3, 500])('portal with a stiff beam, joints of %d N·m/rad', (joint) => {
    const stiff = { area: 1, secondUpright: 1e-2, secondSideways: 1e-2, torsion: 1e-2 };
    expect(sway(portal(stiff, { bending: joint })) / columnSwayStiffness(2, bending, h, joint)).toBeCloseTo(1, 5);
  });
  // Break-even joints: 20 x 20 of I 0.68 cm⁴, 0.6 m high: 6 · 70e9 · 0.68e-8/0.6 = 4.8 kN·m/rad.
  test('break-even joint halves it', () => {
    expect(breakEvenJoint(70e9 * 0.68e-8, 0.6)).toBeCloseTo(4760, 6);
    expect(columnSwayStiffness(4, bending, h, breakEvenJoint(bending, h)) / columnSwayStiffness(4, bending, h)).toBeCloseTo(0.5, 12);
  });
  // Four rigid-jointed 20 x 20 columns, 0.6 m: 4 · 12 · 70e9 · 0.68e-8/0.216 = 0.106 kN/mm.
  test('four columns: 0.106 kN/mm', () => {
    expect(columnSwayStiffness(4, 70e9 * 0.68e-8, 0.6)).toBeCloseTo(105778, 0);
  });
});

describe('portal', () => {
  test.each([0.2, 1, 5])('beam %d times as stiff as the columns, by the frame solver', (ratio) => {
    const beam = { ...unstretched, secondUpright: ratio * section.secondUpright };
    expect(sway(portal(beam)) / portalSwayStiffness(bending, h, ratio * bending, w)).toBeCloseTo(1, 2);
  });
  test('limits 24 and 6 E I/h³', () => {
    expect((portalSwayStiffness(bending, h, 1e9, w) * h ** 3) / bending).toBeCloseTo(24, 4);
    expect((portalSwayStiffness(bending, h, 0, w) * h ** 3) / bending).toBeCloseTo(6, 12);
  });
});

describe('braces and panels', () => {
  // Flat steel 20 x 3, bay 0.5 m square: E A/L_d cos² = 200e9 · 60e-6/0.7071 · 0.5 = 8.49 N/µm; with E = 205 GPa 8.7.
  test('steel strip in a square bay', () => {
    expect(braceSwayStiffness(200e9 * 60e-6, 0.5, 0.5)).toBeCloseTo(8485281, 0);
    expect(braceSwayStiffness(205e9 * 60e-6, 0.5, 0.5)).toBeCloseTo(8.7e6, -4);
  });
  test('a brace in a pinned frame, by the frame solver', () => {
    const stiff = { area: 1, secondUpright: 1e-6, secondSideways: 1e-6, torsion: 1e-6 };
    const pinned = { joints: [PINNED_END, PINNED_END] as const, section: stiff };
    const frame: Frame = {
      nodes: { f: [0, 0, 0], b: [0, 0, h], a: [w, 0, h], k: [w, 0, 0] }, feet: { f: CLAMPED, k: CLAMPED, a: plane, b: plane },
      members: [member('f', 'b', pinned), member('b', 'a', pinned), member('k', 'a', pinned), member('f', 'a', { joints: [PINNED_END, PINNED_END] })],
    };
    expect(sway(frame) / braceSwayStiffness(e * section.area, w, h)).toBeCloseTo(1, 2);
  });
  // Aluminium 2 mm, 0.5 m square: 26e9 · 2e-3 = 52 kN/mm, of which fasteners leave 5 to 30 %.
  test('aluminium sheet', () => {
    expect(panelSwayStiffness(26e9, 2e-3, 0.5, 0.5, 1)).toBeCloseTo(52e6, 3);
    expect(panelSwayStiffness(26e9, 2e-3, 0.5, 1, 0.3)).toBeCloseTo(7.8e6, 3);
  });
});

test('swaying of a stiff top on two columns with mass of their own, by the frame solver', () => {
  const stiff = { area: 1, secondUpright: 1e-2, secondSideways: 1e-2, torsion: 1e-2 };
  const frame = portal(stiff);
  const heavy: Frame = { ...frame, members: frame.members.map((one, i) => (i === 1 ? one : { ...one, massPerLength: 1.08 })), masses: { a: { mass: 0.6 }, b: { mass: 0.9 } } };
  // Held to the plane by the feet at the top; the nodes between may bulge out, so the swaying mode is picked by its shape.
  const found = frameModes(divideMember(divideMember(heavy, 2, 10, 'r'), 0, 10, 'l'), 6);
  const mode = found.kind === 'modes' ? found.modes.find((one) => Math.abs(one.shape.get('a')?.[0] ?? 0) > 0.5) : undefined;
  const rayleigh = swayFrequency(columnSwayStiffness(2, bending, h), 1.5, 2 * 1.08 * h);
  expect(rayleigh / mode!.angularFrequency).toBeGreaterThan(0.999);
  expect(rayleigh / mode!.angularFrequency).toBeLessThan(1.01);
});
