/** Frames against the general-purpose finite-element solver. */
import { describe, expect, test } from 'vitest';
import { material } from '../../server/src/catalogue/materials.ts';
import { frameModes } from '../../server/src/mechanics/frame-modes.ts';
import { columnSwayStiffness, portalSwayStiffness } from '../../server/src/mechanics/frame-racking.ts';
import { solidRectangle } from '../../server/src/mechanics/frame-sections.ts';
import { CLAMPED, deflectFrame, divideMember, type Frame } from '../../server/src/mechanics/frame-solver.ts';
import { evaluate, figureOf } from '../support/evaluate.ts';
import { barFrameFrequencies, barFrameShift, type BarFrame } from './frame-beams.ts';
import { findSolver } from './solid-rod.ts';

const solver = findSolver();
const bar = { side: 0.01, youngsModulus: 70e9, poissonRatio: 0.33, density: 2700 };

/** The same frame for us; each bar in parts. */
function ours(frame: BarFrame, parts: number): Frame {
  const section = solidRectangle(frame.side, frame.side);
  const base: Frame = {
    nodes: frame.nodes, feet: Object.fromEntries(frame.clamped.map((name) => [name, CLAMPED])),
    members: frame.bars.map(([from, to]) => ({ from, to, section, youngsModulus: frame.youngsModulus, shearModulus: frame.youngsModulus / 2 / (1 + frame.poissonRatio), massPerLength: frame.density * section.area })),
  };
  return frame.bars.reduceRight((divided, _, i) => divideMember(divided, i, parts, `bar-${i}`), base);
}
function shift(frame: BarFrame, at: string, force: readonly [number, number, number], of: string): readonly [number, number, number] {
  const found = deflectFrame(ours(frame, 1), { [at]: { force } });
  if (found.kind !== 'deflected') throw new Error(found.kind);
  return found.motions.get(of)!.shift;
}
function frequencies(frame: BarFrame, count: number): number[] {
  const found = frameModes(ours(frame, 8), count);
  if (found.kind !== 'modes') throw new Error(found.kind);
  return found.modes.map((mode) => mode.angularFrequency);
}

const portal: BarFrame = { ...bar, nodes: { a: [0, 0, 0], b: [0, 0, 0.6], c: [0.5, 0, 0.6], d: [0.5, 0, 0] }, bars: [['a', 'b'], ['b', 'c'], ['d', 'c']], clamped: ['a', 'd'] };
const box: BarFrame = {
  ...bar,
  nodes: { a: [0, 0, 0], b: [0.5, 0, 0], c: [0.5, 0.35, 0], d: [0, 0.35, 0], e: [0, 0, 0.6], f: [0.5, 0, 0.6], g: [0.5, 0.35, 0.6], h: [0, 0.35, 0.6] },
  bars: [['a', 'e'], ['b', 'f'], ['c', 'g'], ['d', 'h'], ['e', 'f'], ['f', 'g'], ['g', 'h'], ['h', 'e']], clamped: ['a', 'b', 'c', 'd'],
};
const braced: BarFrame = { ...portal, bars: [...portal.bars, ['a', 'c']] };

describe.skipIf(solver === undefined)(solver === undefined ? 'skipped: the solver ccx (Debian package calculix-ccx) is not on the search path' : 'frames of square bars', () => {
  const found = solver as string;
  const near = (one: number, other: number, share: number): void => { expect(Math.abs(one / other - 1)).toBeLessThan(share); };

  test('portal pushed at its corner: racking', () => {
    const theirs = barFrameShift(found, portal, 'b', [100, 0, 0], 'b', 12)[0];
    near(shift(portal, 'b', [100, 0, 0], 'b')[0], theirs, 0.003);
    const bending = 70e9 * solidRectangle(0.01, 0.01).secondUpright;
    near(100 / portalSwayStiffness(bending, 0.6, bending, 0.5), theirs, 0.003);
    expect(100 / columnSwayStiffness(2, bending, 0.6)).toBeLessThan(theirs);
  });

  // Pushed at a corner the box also turns, and its bars twist: one brick across a bar is a stiffer twist than Saint-Venant's, by 19 % for a square without
  // warping (J = b⁴/6 against 0.1406 b⁴). The twist is a small part of the shift.
  test('box pushed at a corner, both ways', () => {
    for (const force of [[50, 0, 0], [0, 50, 0]] as const) {
      const axis = force[0] > 0 ? 0 : 1;
      const theirs = barFrameShift(found, box, 'e', force, 'e', 10);
      near(shift(box, 'e', force, 'e')[axis], theirs[axis], 0.015);
    }
  });

  test('a diagonal brace in the portal', () => {
    const theirs = barFrameShift(found, braced, 'b', [100, 0, 0], 'c', 12)[0];
    near(shift(braced, 'b', [100, 0, 0], 'c')[0], theirs, 0.003);
  });

  test('first modes of portal and box', () => {
    for (const frame of [portal, box]) {
      const theirs = barFrameFrequencies(found, frame, 3, 10);
      frequencies(frame, 2).forEach((value, i) => { near(value, theirs[i]!, 0.005); });
    }
  });

  // End to end, from the text of a description: the same box, its joints and fasteners stiff, through the figures.
  test('figures of a described box: give along x, and stiffness where it is softest', () => {
    const members = Object.fromEntries(box.bars.map(([from, to], i) => [`m${i}`, { from, to, width: '10 mm' }]));
    const points = Object.fromEntries(Object.entries(box.nodes).map(([name, at]) => [name, { at: at.map((value) => `${value * 1000} mm`), ...(box.clamped.includes(name) ? { held: 'clamped' } : {}) }]));
    const evaluation = evaluate('portal', {
      'frame.points': points,
      'frame.members': Object.fromEntries(Object.entries(members).map(([name, member]) => [name, { ...member, material: 'aluminium', 'joint-stiffness': '1e8 N·m/rad', fastening: '1' }])),
      'frame.tool': 'e', 'frame.joint': null, 'frame.profile': null,
    }, 'machine');
    // The handbook's aluminium: its nominal modulus in place of the box's own 70 GPa.
    const aluminium = material('aluminium')!;
    const [young, shear] = [aluminium.youngsModulus.nominal, aluminium.shearModulus.nominal];
    const same: BarFrame = { ...box, youngsModulus: young, poissonRatio: young / 2 / shear - 1, density: aluminium.density.nominal };
    const theirs = barFrameShift(found, same, 'e', [100, 0, 0], 'e', 10)[0];
    near(figureOf(evaluation, 'frame.give-x'), theirs, 0.015);
    // Members' mass at their ends reads low: half of a column counts at its top instead of 13/35 of it.
    const lowest = barFrameFrequencies(found, same, 1, 10)[0]! / (2 * Math.PI);
    expect(figureOf(evaluation, 'frame.first-frequency') / lowest).toBeGreaterThan(0.9);
    expect(figureOf(evaluation, 'frame.first-frequency') / lowest).toBeLessThan(1.01);
  });
});
