/** Sag of a gantry by the frame solver and by hand. */
import { describe, expect, test } from 'vitest';
import { ownWeightSag, sagAtLoad, sagOverTravel, twistAtTorque } from '../../server/src/mechanics/gantry-sag.ts';
import { rectangularTube } from '../../server/src/mechanics/frame-sections.ts';
import { CLAMPED, deflectFrame, divideMember, PLACED, shiftOfPoint, type Frame, type Held } from '../../server/src/mechanics/frame-solver.ts';

const section = rectangularTube(0.02, 0.04, 0.002);
const [e, g, length] = [200e9, 77e9, 0.8];
const hinged: Held = [true, true, true, true, false, false];
const frames = {
  supported: { left: hinged, right: [false, true, true, true, false, false] as Held },
  clamped: { left: CLAMPED, right: CLAMPED },
};
const frameAt = (ends: keyof typeof frames, at: number): Frame => ({
  nodes: { left: [0, 0, 0], tool: [at, 0, 0], right: [length, 0, 0] }, feet: frames[ends],
  members: [['left', 'tool'], ['tool', 'right']].map(([from, to]) => ({ from: from!, to: to!, section, youngsModulus: e, shearModulus: g, massPerLength: 1.68 })),
});
function tip(frame: Frame, force: number, overhang: number) {
  const found = deflectFrame(frame, { tool: { force: [0, 0, -force], moment: [overhang * force, 0, 0] } });
  if (found.kind !== 'deflected') throw new Error(found.kind);
  return found.motions.get('tool')!;
}

describe.each(['supported', 'clamped'] as const)('%s', (ends) => {
  test('sag and twist under the tool', () => {
    for (const at of [0.1, 0.4, 0.55]) {
      const found = tip(frameAt(ends, at), 15, 0.06);
      expect(-found.shift[2] / sagAtLoad(ends, 15, at, length, e * section.secondUpright)).toBeCloseTo(1, 8);
      expect(Math.abs(found.turn[0]) / twistAtTorque(15 * 0.06, at, length, g * section.torsion)).toBeCloseTo(1, 8);
    }
  });
  test('own weight', () => {
    const found = deflectFrame(divideMember({ ...frameAt(ends, 0.4) }, 0, 2, 'x'), {}, [0, 0, -9.81]);
    if (found.kind !== 'deflected') throw new Error(found.kind);
    expect(-found.motions.get('tool')!.shift[2] / ownWeightSag(ends, 1.68 * 9.81, length, e * section.secondUpright)).toBeCloseTo(1, 8);
  });
  test('variation of the tip: the frame at many places, most less least', () => {
    const tool = { load: 15, overhang: 0.06, reach: 0.06, from: 0.08, to: 0.65 };
    const heights: number[] = [];
    for (let i = 0; i <= 57; i++) {
      // The tool hangs in front, along −Y of a beam along X: a turn about X lifts what lies along +Y, so in front goes down.
      const node = tip(frameAt(ends, 0.08 + i / 100), 15, 0.06);
      heights.push(shiftOfPoint(node, [0, -0.06, 0])[2]);
    }
    const found = sagOverTravel(ends, tool, length, e * section.secondUpright, g * section.torsion);
    expect((Math.max(...heights) - Math.min(...heights)) / found.variation).toBeCloseTo(1, 6);
    expect(found.variation).toBeGreaterThan(found.bendingVariation);
  });
});

// 1.5 kg on an aluminium profile 20 x 40 upright, I 5 cm⁴, supported, full travel: 1.5 · 9.81 L³/(48 · 70e9 · 5e-8), by hand.
test.each([[0.5, 10.95e-6], [0.8, 44.8e-6], [1.2, 151.4e-6]])('1.5 kg on %d m', (span, wanted) => {
  const found = sagOverTravel('supported', { load: 1.5 * 9.81, overhang: 0, reach: 0, from: 0, to: span }, span, 70e9 * 5e-8, 1);
  expect(Math.abs(found.variation / wanted - 1)).toBeLessThan(2e-3);
});

test('a travel on one side of the middle counts from its own ends', () => {
  const at = (a: number): number => sagAtLoad('supported', 10, a, 1, 100);
  expect(sagOverTravel('supported', { load: 10, overhang: 0, reach: 0, from: 0.1, to: 0.3 }, 1, 100, 1).variation).toBeCloseTo(at(0.3) - at(0.1), 15);
  expect(sagOverTravel('supported', { load: 10, overhang: 0, reach: 0, from: 0.6, to: 0.9 }, 1, 100, 1).variation).toBeCloseTo(at(0.6) - at(0.9), 15);
});
test('supports not used in the travel are refused', () => {
  expect(() => sagAtLoad('supported', 1, 1.1, 1, 1)).toThrow(RangeError);
  expect(PLACED[0]).toBe(true);
});
