/** Figures of frames from the text to the number. Expected values by hand from closed forms; the steps stand beside them. */
import { describe, expect, test } from 'vitest';
import machineSchema from '../../schemas/machine.schema.json' with { type: 'json' };
import { FRAME_JOINTS } from '../../server/src/catalogue/frame-joints.ts';
import { PANEL_MATERIALS } from '../../server/src/catalogue/panel-materials.ts';
import { SLOTTED_PROFILES } from '../../server/src/catalogue/slotted-profiles.ts';
import { evaluate, figureOf } from '../support/evaluate.ts';

const framed = (changes: Readonly<Record<string, unknown>> = {}) => evaluate('framed', { 'conditions.gravity': '10 m/s²', ...changes }, 'machine');
const at = (id: string, changes: Readonly<Record<string, unknown>> = {}): number => figureOf(framed(changes), id);

/** Handbook steel, E 206 GPa, G 79.2 GPa: E I = 206e9 · 1e-7 = 20600 N·m². */
const box = {
  'frame-box.column': null, 'frame-box.second-moment-x': '10 cm⁴', 'frame-box.second-moment-y': '10 cm⁴', 'frame-box.mass-per-length': '2 kg/m', 'frame-box.material': 'steel', 'frame-box.joint': null,
  'frame-box.joint-stiffness': '3000 N·m/rad', 'frame-box.braced-x': 'none',
};

describe('box, 400 mm wide, 500 mm high, 6 kg at the top', () => {
  test('joints that give: 4 · 12 · 20600/0.5³ = 7.9104e6 N/m over 1 + 6 · 20600/(3000 · 0.5) = 83.4: 94849 N/m', () => {
    expect(at('frame-box.racking-stiffness-x', box)).toBeCloseTo(94849, -1);
  });
  test('√(94849/(6 + 13/35 · 4))/2π = 17.915 Hz, and it is the lowest without a brace', () => {
    expect(at('frame-box.sway-frequency-x', box)).toBeCloseTo(17.915, 2);
    expect(at('frame-box.sway-frequency-unbraced', box)).toBeCloseTo(17.915, 2);
  });
  test('a diagonal of 100 mm² held without give adds 206e9 · 1e-4 · 0.4²/(0.4² + 0.5²)^1.5 = 1.25549e7 N/m; two of them twice as much', () => {
    const diagonal = { ...box, 'frame-box.brace-area': '100 mm²', 'frame-box.brace-fastening': '1' };
    expect((at('frame-box.racking-stiffness-x', { ...diagonal, 'frame-box.braced-x': 'one-diagonal' }) - 94849) / 1e7).toBeCloseTo(1.25549, 4);
    expect((at('frame-box.racking-stiffness-x', { ...diagonal, 'frame-box.braced-x': 'two-diagonals' }) - 94849) / 1e7).toBeCloseTo(2.51098, 4);
  });
  test('a steel panel of 1 mm adds 0.15 · 79.2e9 · 0.001 · 0.4/0.5 = 9.504e6 N/m, with half its fastening half of it', () => {
    expect((at('frame-box.racking-stiffness-x', { ...box, 'frame-box.braced-x': 'panel' }) - 94849) / 1e6).toBeCloseTo(9.504, 3);
    expect((at('frame-box.racking-stiffness-x', { ...box, 'frame-box.braced-x': 'panel', 'frame-box.panel-fastening': '0.075' }) - 94849) / 1e6).toBeCloseTo(4.752, 3);
  });
  test('columns on pins lean over without resistance', () => {
    expect(framed({ ...box, 'frame-box.joint-stiffness': '0 N·m/rad' }).bounds('frame-box.sway-frequency-x')).toMatchObject({ nominal: 0, high: 0 });
  });
  test('an oblong profile counts by the way it lies: 30 x 60, sideways 5.0 to 6.2 cm⁴, upright 18 to 22 cm⁴ (catalogue)', () => {
    const oblong = { 'frame-box.column': '30x60', 'frame-box.longer-side': 'x' };
    expect((framed(oblong).bounds('frame-box.second-moment-x')?.nominal ?? 0) * 1e8).toBeCloseTo(20, 9);
    expect((framed(oblong).bounds('frame-box.second-moment-y')?.nominal ?? 0) * 1e8).toBeCloseTo(5.6, 9);
    const either = framed({ 'frame-box.column': '30x60' }).bounds('frame-box.second-moment-x');
    expect([either?.low, either?.high].map((value) => (value ?? 0) * 1e8)).toEqual([expect.closeTo(5, 9), expect.closeTo(22, 9)]);
  });
  test('30 kg with 1 kg thrown at 500 mm: tips at 30 · 10 · 0.2/0.5/1 = 120 m/s², walks on 0.5 at 150 m/s²', () => {
    expect(at('frame-box.tipping-acceleration')).toBeCloseTo(120, 9);
    expect(at('frame-box.walking-acceleration', { 'frame-box.foot-friction': '0.5' })).toBeCloseTo(150, 9);
    expect(at('frame-box.tipping-use')).toBeCloseTo(3 / 120, 12);
  });
});

/** E I = 206e9 · 1e-8 = 2060 N·m², G J = 79.2e9 · 2e-8 = 1584 N·m²; 2 kg at 10 m/s² = 20 N; 600 mm. */
const beam = {
  'frame-gantry.section': null, 'frame-gantry.second-moment-upright': '1 cm⁴', 'frame-gantry.torsion-constant': '2 cm⁴', 'frame-gantry.mass-per-length': '2 kg/m', 'frame-gantry.material': 'steel',
};

describe('gantry beam', () => {
  test('own weight: 5 · 20 · 0.6⁴/(384 · 2060) = 16.383 µm; clamped a fifth', () => {
    expect(at('frame-gantry.own-weight-sag', beam) * 1e6).toBeCloseTo(16.383, 2);
    expect(at('frame-gantry.own-weight-sag', { ...beam, 'frame-gantry.ends': 'clamped' }) * 1e6).toBeCloseTo(3.2767, 3);
  });
  test('tool: 20 · 0.6³/(48 · 2060) = 43.689 µm over all of the span; clamped a quarter', () => {
    expect(at('frame-gantry.sag-variation', beam) * 1e6).toBeCloseTo(43.689, 2);
    expect(at('frame-gantry.sag-variation', { ...beam, 'frame-gantry.ends': 'clamped' }) * 1e6).toBeCloseTo(10.922, 2);
    expect(at('frame-gantry.sag-use', beam)).toBeCloseTo(0.43689, 4);
  });
  test('half of the span travelled: at 150 mm 20 · 0.15² · 0.45²/(3 · 2060 · 0.6) = 24.575 µm, so it varies by 19.114 µm', () => {
    expect(at('frame-gantry.sag-variation', { ...beam, 'frame-gantry.travel': '300 mm' }) * 1e6).toBeCloseTo(19.114, 2);
  });
  test('50 mm in front: 20 · 0.05 · 0.6/(4 · 1584) = 94.697 µrad, which lowers the tool by 4.735 µm more and shifts a tip 100 mm below by 9.4697 µm', () => {
    const front = { ...beam, 'frame-gantry.overhang': '50 mm' };
    expect(at('frame-gantry.tool-tilt', front) * 1e6).toBeCloseTo(94.697, 2);
    expect(at('frame-gantry.sag-variation', front) * 1e6).toBeCloseTo(48.424, 2);
    expect(at('frame-gantry.tool-shift', front) * 1e6).toBeCloseTo(9.4697, 3);
  });
  test('√(48 · 2060/0.6³/(2 + 17/35 · 1.2))/2π = √(457778/2.58286)/2π = 67.00 Hz', () => {
    expect(at('frame-gantry.first-frequency', beam)).toBeCloseTo(67.0, 1);
  });
  test('a travel that is longer than the beam is said', () => {
    expect(framed({ ...beam, 'frame-gantry.travel': '700 mm' }).result('frame-gantry.sag-variation')).toMatchObject({ state: 'unable', reason: expect.stringContaining('longer than the beam') as string });
  });
});

describe('ringing and growth', () => {
  test('box: 2 · 1 kg · 3 m/s²/94849 N/m = 63.26 µm along x', () => {
    expect(at('frame-box.ringing-x', box) * 1e6).toBeCloseTo(63.26, 1);
    expect(at('frame-box.ringing-use', { ...box, 'frame.tolerance': '0.1 mm' })).toBeCloseTo(0.6326, 3);
  });
  test('gantry: 2 · (2 + 5/8 · 1.2) · 3 · 0.6³/(48 · 206e9 · 1e-8) = 36.04 µm; clamped 2 · (2 + 0.6) · 3 · 0.6³/(192 · 2060) = 8.519 µm', () => {
    const sideways = { ...beam, 'frame-gantry.second-moment-sideways': '1 cm⁴', 'frame.acceleration': '3 m/s²' };
    expect(at('frame-gantry.ringing', sideways) * 1e6).toBeCloseTo(36.04, 1);
    expect(at('frame-gantry.ringing', { ...sideways, 'frame-gantry.ends': 'clamped' }) * 1e6).toBeCloseTo(8.519, 2);
  });
  test('500 mm of steel, 11.7e-6 per K, 20 K warmer: 117 µm', () => {
    expect(at('frame.height-growth', { conditions: { 'ambient-temperature': '20 °C', 'machine-temperature': '40 °C', 'frame-material': 'steel' } }) * 1e6).toBeCloseTo(117, 0);
  });
});

test('a machine without a frame shows nothing of one', () => {
  const evaluation = evaluate('lift', {}, 'machine');
  const states = evaluation.figures().filter(({ id }) => id.startsWith('frame')).map(({ id }) => evaluation.result(id).state);
  expect(states.length).toBeGreaterThan(10);
  expect(new Set(states)).toEqual(new Set(['left-out']));
});

test('the schema names what the catalogue has', () => {
  const { box: { properties: boxKeys }, gantry: { properties: gantryKeys } } = machineSchema.properties.frame.properties;
  const profiles = SLOTTED_PROFILES.map(({ name }) => name);
  expect(boxKeys.column.enum).toEqual(profiles);
  expect(gantryKeys.section.enum).toEqual(profiles);
  const { properties: memberKeys } = machineSchema.$defs['frame-member'];
  const { properties: frameKeys } = machineSchema.properties.frame;
  for (const { profile, joint } of [memberKeys, frameKeys]) {
    expect(profile.enum).toEqual(profiles);
    expect(joint.enum).toEqual(FRAME_JOINTS.map(({ name }) => name));
  }
  expect(boxKeys.joint.enum).toEqual(FRAME_JOINTS.map(({ name }) => name));
  expect(boxKeys['panel-material'].enum).toEqual(PANEL_MATERIALS.map(({ name }) => name));
});
