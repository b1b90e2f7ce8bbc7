/** Modes of frames against the roots of beam theory. */
import { describe, expect, test } from 'vitest';
import { frequencyForSwing, loadedBeamFrequency, type LoadedBeam } from '../../server/src/mechanics/beam-modes.ts';
import { frameModes } from '../../server/src/mechanics/frame-modes.ts';
import { solidRectangle } from '../../server/src/mechanics/frame-sections.ts';
import { CLAMPED, divideMember, PLACED, type Frame, type Held } from '../../server/src/mechanics/frame-solver.ts';

const section = solidRectangle(0.02, 0.04);
const [e, perLength, length] = [70e9, 2.16, 1];
const hinged: Held = [true, true, true, true, false, false];
function frequencies(frame: Frame, count: number): number[] {
  const found = frameModes(frame, count);
  if (found.kind !== 'modes') throw new Error(found.kind);
  return found.modes.map((mode) => mode.angularFrequency);
}
const beam = (feet: Frame['feet'], parts: number, masses: Frame['masses'] = {}): Frame => divideMember({
  nodes: { left: [0, 0, 0], right: [length, 0, 0] }, members: [{ from: 'left', to: 'right', section, youngsModulus: e, shearModulus: 26e9, massPerLength: perLength }], feet, masses,
}, 0, parts, 'n');
/** Roots β L of beam theory give ω = (β L)² √(E I/(m L⁴)). */
const root = (beta: number, second: number): number => beta ** 2 * Math.sqrt((e * second) / (perLength * length ** 4));

// Blevins, Formulas for Natural Frequency and Mode Shape, table 8-1 (from memory).
test.each<[string, Frame['feet'], number, number]>([
  ['one end clamped', { left: CLAMPED }, 1.87510407, 4.69409113],
  ['both ends supported', { left: hinged, right: PLACED }, Math.PI, 2 * Math.PI],
  ['both ends clamped', { left: CLAMPED, right: CLAMPED }, 4.73004074, 7.85320462],
])('%s: first modes both ways within 1 %% with 12 parts', (_, feet, one, two) => {
  const [found = 0, upright = 0, second = 0] = frequencies(beam(feet, 12), 3);
  const low = (value: number, beta: number, about: number): number => 1 - value / root(beta, about);
  for (const [share, most] of [[low(found, one, section.secondSideways), 0.005], [low(upright, one, section.secondUpright), 0.005], [low(second, two, section.secondSideways), 0.015]] as const) {
    expect(share).toBeGreaterThan(-1e-9);
    expect(share).toBeLessThan(most);
  }
});

test('finer parts come closer', () => {
  const exact = root(1.87510407, section.secondSideways);
  const error = (parts: number): number => Math.abs(frequencies(beam({ left: CLAMPED }, parts), 1)[0]! / exact - 1);
  expect(error(8)).toBeLessThan(error(4) / 3);
});

describe('a mass on the beam: Rayleigh is an upper bound, and close', () => {
  test.each<[LoadedBeam, Frame['feet'], string]>([
    ['one end clamped, mass at the free end', { left: CLAMPED }, 'right'],
    ['both ends supported, mass in the middle', { left: hinged, right: PLACED }, 'n-8'],
    ['both ends clamped, mass in the middle', { left: CLAMPED, right: CLAMPED }, 'n-8'],
  ])('%s', (kind, feet, node) => {
    for (const mass of [1, 3]) {
      const rayleigh = loadedBeamFrequency(kind, e * section.secondSideways, length, mass, perLength * length);
      const found = frequencies(beam(feet, 16, { [node]: { mass } }), 1)[0]!;
      expect(found).toBeLessThan(rayleigh * 1.0002);
      expect(rayleigh / found - 1).toBeLessThan(0.01);
    }
  });
});

test('two masses on one cantilever: the quadratic of the flexibility, by hand', () => {
  // Masses 3 and 2 kg at half and full length of a massless beam: flexibilities in units of L³/(48 E I): 2, 5, 16.
  const unit = length ** 3 / (48 * e * section.secondSideways);
  const [a, b, c] = [3 * 2 * unit, Math.sqrt(6) * 5 * unit, 2 * 16 * unit];
  const largest = (a + c) / 2 + Math.sqrt(((a - c) / 2) ** 2 + b ** 2);
  const frame: Frame = {
    nodes: { foot: [0, 0, 0], middle: [0.5, 0, 0], tip: [1, 0, 0] }, feet: { foot: CLAMPED }, masses: { middle: { mass: 3 }, tip: { mass: 2 } },
    members: [['foot', 'middle'], ['middle', 'tip']].map(([from, to]) => ({ from: from!, to: to!, section, youngsModulus: e, shearModulus: 26e9, massPerLength: 0 })),
  };
  expect(frequencies(frame, 1)[0]! / Math.sqrt(1 / largest)).toBeCloseTo(1, 9);
});

test('mode shape: the tip of a cantilever moves most, sideways', () => {
  const found = frameModes(beam({ left: CLAMPED }, 6), 1);
  const tip = found.kind === 'modes' ? found.modes[0]!.shape.get('right')! : [0, 0, 0];
  expect(Math.abs(tip[1])).toBeCloseTo(1, 9);
});

test('nothing holds it, or nothing has mass', () => {
  expect(frameModes(beam({}, 2), 1).kind).toBe('mechanism');
  const massless = beam({ left: CLAMPED }, 1);
  expect(frameModes({ ...massless, members: massless.members.map((member) => ({ ...member, massPerLength: 0 })) }, 1).kind).toBe('no mass');
});

test('3 m/s² and 0.05 mm: 55 Hz, by hand √(2 · 3/0.05e-3)/(2π)', () => {
  expect(frequencyForSwing(3, 0.05e-3) / (2 * Math.PI)).toBeCloseTo(55.13, 2);
});
