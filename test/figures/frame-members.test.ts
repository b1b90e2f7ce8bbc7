/** A person's own frame from the text to the number. Expected values from beam tables by hand; the steps stand beside them. */
import { describe, expect, test } from 'vitest';
import { Evaluation } from '../../server/src/figures/evaluation.ts';
import { allFigures } from '../../server/src/figures/registry.ts';
import { evaluate, figureOf, subjectsOf } from '../support/evaluate.ts';
import { machineWith, yamlOf } from '../support/machines.ts';

/** A steel column, E 206 GPa (handbook, nominal), I = 1 cm⁴: E I = 2060 N·m²; joints and fasteners do not give. */
const rigid = { 'second-moment-upright': '1 cm⁴', 'second-moment-sideways': '1 cm⁴', 'torsion-constant': '1 cm⁴', area: '1000 cm²', 'mass-per-length': '0 kg/m', material: 'steel', 'joint-stiffness': '1e8 N·m/rad', fastening: '1' };
const foot = (x: string) => ({ at: [x, '0 mm', '0 mm'], held: 'clamped' });
const portal = (beam: Readonly<Record<string, string>> = {}, more: Readonly<Record<string, unknown>> = {}): Evaluation =>
  evaluate('portal', {
    'frame.points': { a: foot('0 mm'), d: foot('600 mm'), b: { at: ['0 mm', '0 mm', '500 mm'] }, c: { at: ['600 mm', '0 mm', '500 mm'] } },
    'frame.members': { left: { from: 'a', to: 'b', ...rigid }, right: { from: 'd', to: 'c', ...rigid }, beam: { from: 'b', to: 'c', ...rigid, ...beam } },
    'frame.tool': 'b', 'frame.joint': null, 'frame.profile': null, 'frame.acceleration': '2 m/s²', 'frame.moving-mass': '1 kg', ...more,
  }, 'machine');
const stiff = { 'second-moment-upright': '100000 cm⁴', 'second-moment-sideways': '100000 cm⁴' };

describe('portal of 500 mm, pushed along x at its top', () => {
  test('rigid beam: k = 24 E I/h³ = 24 · 2060/0.125 = 395520 N/m; 100 N shift it by 0.25283 mm', () => {
    expect(figureOf(portal(stiff), 'frame.give-x') * 1e3).toBeCloseTo(0.25283, 3);
  });
  test('beam on pins: k = 6 E I/h³ = 98880 N/m; 100 N shift it by 1.01133 mm', () => {
    const { 'joint-stiffness': _, ...free } = rigid;
    const evaluation = portal({}, { 'frame.members': { left: { from: 'a', to: 'b', ...rigid }, right: { from: 'd', to: 'c', ...rigid }, beam: { from: 'b', to: 'c', ...free, joint: 'pinned' } } });
    expect(figureOf(evaluation, 'frame.give-x') * 1e3).toBeCloseTo(1.01133, 3);
  });
  test('beam like the columns: ρ = h/L = 0.8333, k = 395520 · (1 + 5)/(4 + 5) = 263680 N/m; 100 N shift it by 0.37925 mm', () => {
    expect(figureOf(portal(), 'frame.give-x') * 1e3).toBeCloseTo(0.37925, 3);
  });
  test('1 kg at 2 m/s² leans it by 2/395520 = 5.0566 µm, and rings at twice that at the most', () => {
    expect(figureOf(portal(stiff), 'frame.swing-x') * 1e6).toBeCloseTo(5.0566, 2);
    const { 'frame.swing-y': y, 'frame.ringing': ringing } = Object.fromEntries(['frame.swing-y', 'frame.ringing'].map((id) => [id, figureOf(portal(stiff), id)]));
    expect(ringing).toBeCloseTo(2 * Math.max(y ?? 0, 5.0566e-6), 9);
  });
  test('a diagonal of 100 mm² with a quarter left by its fasteners adds E A η w²/(w² + h²)^1.5 = 206e9 · 25e-6 · 0.36/0.61^1.5 = 3.8915e6 N/m', () => {
    const bar = { from: 'a', to: 'c', ...rigid, 'second-moment-upright': '1 mm⁴', 'second-moment-sideways': '1 mm⁴', area: '100 mm²', fastening: '0.25' };
    const members = { left: { from: 'a', to: 'b', ...rigid }, right: { from: 'd', to: 'c', ...rigid }, beam: { from: 'b', to: 'c', ...rigid, ...stiff }, brace: bar };
    expect(1e-6 * 100 / figureOf(portal({}, { 'frame.members': members }), 'frame.give-x')).toBeCloseTo(0.39552 + 3.8915, 1);
  });
});

/** One column of 500 mm with a mass at its top; k = 3 E I/h³ = 3 · 2060/0.125 = 49440 N/m. */
const column = (more: Readonly<Record<string, unknown>> = {}, member: Readonly<Record<string, unknown>> = {}): Evaluation =>
  evaluate('portal', {
    'frame.points': { foot: foot('0 mm'), top: { at: ['0 mm', '0 mm', '500 mm'], mass: '2 kg' } },
    'frame.members': { column: { from: 'foot', to: 'top', ...rigid, 'second-moment-upright': '2 cm⁴', ...member } },
    'frame.tool': 'top', 'frame.joint': null, 'frame.profile': null, 'conditions.gravity': '10 m/s²', ...more,
  }, 'machine');

describe('column with 2 kg at its top', () => {
  test('sways first along its weaker side, y: √(49440/2)/2π = 25.02 Hz, then along x with twice the stiffness: 35.39 Hz', () => {
    const first = column().result('frame.first-frequency');
    expect(first).toMatchObject({ state: 'computed', note: 'leans along y, most at "top"' });
    expect(figureOf(column(), 'frame.first-frequency')).toBeCloseTo(25.02, 1);
    expect(figureOf(column(), 'frame.second-frequency')).toBeCloseTo(35.39, 1);
  });
  test('the other way round where its longer side lies along y', () => {
    expect(column({}, { 'longer-side': 'y' }).result('frame.first-frequency')).toMatchObject({ note: 'leans along x, most at "top"' });
  });
  test('is softest along y: 49.44 N/mm', () => {
    expect(figureOf(column(), 'frame.racking-stiffness')).toBeCloseTo(49440, -2);
    expect(column().result('frame.racking-stiffness')).toMatchObject({ note: 'along y, at "top"' });
  });
  test('a foot that gives by 3000 N·m/rad adds h²/k_θ = 0.25/3000 to 1/49440 m/N: 1/(83.333e-6 + 20.2265e-6) = 9656 N/m', () => {
    expect(figureOf(column({}, { 'joint-stiffness': '3000 N·m/rad' }), 'frame.racking-stiffness')).toBeCloseTo(9656, -1);
  });
  test('weighs 2 kg and the member: 2 + 0.5 · 1.2 = 2.6 kg', () => {
    expect(figureOf(column({}, { 'mass-per-length': '1.2 kg/m' }), 'frame.mass')).toBeCloseTo(2.6, 9);
  });
  test('bounds go from the soft to the stiff end: 1000 to 10000 N·m/rad of a corner bracket at a rigid foot', () => {
    const { 'joint-stiffness': _, ...open } = rigid;
    const bounds = column({ 'frame.members': { column: { from: 'foot', to: 'top', ...open, 'second-moment-upright': '2 cm⁴', material: 'steel', joint: 'corner-bracket' } } }).bounds('frame.racking-stiffness');
    // 1/(0.25/1000 + 0.125/(3 · 202e9 · 1e-8)) = 3695 N/m and 1/(0.25/10000 + 0.125/(3 · 210e9 · 1e-8)) = 22340 N/m
    expect(bounds?.low).toBeCloseTo(3695, -1);
    expect((bounds?.high ?? 0) / 22340).toBeCloseTo(1, 2);
  });
});

describe('beam with a point that it runs through', () => {
  /** Welded feet, a beam of 600 mm clamped between them, its middle a point: y = P L³/(192 E I). */
  const beam = (more: Readonly<Record<string, unknown>> = {}): Evaluation =>
    evaluate('portal', {
      'frame.points': { a: foot('0 mm'), b: foot('600 mm'), tool: { at: ['300 mm', '0 mm', '0 mm'] } },
      'frame.members': { beam: { from: 'a', to: 'b', ...rigid, 'mass-per-length': '2 kg/m', ...more } },
      'frame.tool': 'tool', 'frame.joint': null, 'frame.profile': null, 'conditions.gravity': '10 m/s²',
    }, 'machine');
  test('100 N: 100 · 0.216/(192 · 2060) = 54.61 µm', () => {
    expect(figureOf(beam(), 'frame.give-z') * 1e6).toBeCloseTo(54.61, 1);
  });
  test('own weight of 20 N/m: w L⁴/(384 E I) = 20 · 0.1296/(384 · 2060) = 3.277 µm; on ends that turn freely five times as much', () => {
    expect(figureOf(beam(), 'frame.sag') * 1e6).toBeCloseTo(3.277, 2);
    const { 'joint-stiffness': _, ...open } = rigid;
    const pinned = evaluate('portal', {
      'frame.points': { a: foot('0 mm'), b: foot('600 mm'), tool: { at: ['300 mm', '0 mm', '0 mm'] } },
      'frame.members': { beam: { from: 'a', to: 'b', ...open, 'mass-per-length': '2 kg/m', joint: 'pinned' } },
      'frame.tool': 'tool', 'frame.joint': null, 'frame.profile': null, 'conditions.gravity': '10 m/s²',
    }, 'machine');
    expect(figureOf(pinned, 'frame.sag') * 1e6).toBeCloseTo(16.383, 2);
  });
});

describe('what shakes a frame', () => {
  const level = (axes: Readonly<Record<string, unknown>>, frame: Readonly<Record<string, unknown>> = {}): Evaluation => {
    const machine = machineWith('portal', { 'frame.tool': 'tool' });
    Object.assign(machine, { axes, masses: { a: { mass: '3 kg' }, b: { mass: '1 kg' } } });
    Object.assign(machine['frame'] as object, frame);
    const [subject] = subjectsOf(yamlOf(machine));
    if (!subject) throw new Error('no machine');
    return new Evaluation(subject, allFigures());
  };
  const axis = (moves: readonly string[], acceleration: string, more: object = {}) => ({ direction: 'horizontal', travel: '300 mm', moves, motion: { speed: '100 mm/s', acceleration }, ...more });
  test('is the level axis whose mass times acceleration is largest: 4 kg at 2 m/s² before 1 kg at 5 m/s²; lifts do not count', () => {
    const evaluation = level({ x: axis(['a', 'b'], '2 m/s²', { accuracy: '0.2 mm' }), y: axis(['b'], '5 m/s²', { accuracy: '0.1 mm' }), z: { ...axis(['a', 'b'], '9 m/s²', { accuracy: '0.01 mm' }), direction: 'vertical' } });
    expect(evaluation.bounds('frame.acceleration')?.nominal).toBe(2);
    expect(evaluation.bounds('frame.moving-mass')?.nominal).toBe(4);
    expect(evaluation.bounds('frame.tolerance')?.nominal).toBeCloseTo(0.0001, 12);
    expect(evaluation.bounds('frame.height-tolerance')?.nominal).toBeCloseTo(0.00001, 12);
  });
  test('gives way to what the frame itself says', () => {
    expect(level({ x: axis(['a'], '2 m/s²') }, { acceleration: '1 m/s²' }).bounds('frame.acceleration')?.nominal).toBe(1);
  });
  test('counts in its own direction alone where all level axes say theirs', () => {
    const evaluation = level({ x: axis(['a'], '2 m/s²', { along: 'x' }) });
    expect(evaluation.result('frame.ringing')).toMatchObject({ note: 'along x' });
    expect(figureOf(evaluation, 'frame.ringing')).toBeCloseTo(2 * figureOf(evaluation, 'frame.swing-x'), 15);
  });
});

test('names that lead nowhere leave the frame uncomputed, and nothing is guessed', () => {
  const lost = evaluate('portal', { 'frame.members': { left: { from: 'foot left', to: 'nowhere' } } }, 'machine');
  expect(lost.result('frame.first-frequency')).toMatchObject({ state: 'unable', reason: expect.stringContaining('both its points') as string });
});

test('a frame of 20 members is solved within the time of a keystroke', () => {
  const points = Object.fromEntries([0, 1, 2, 3].flatMap((level) => ['a', 'b', 'c', 'd'].map((corner, i) => [`${corner}${level}`, { at: [`${i % 2 * 500} mm`, `${i > 1 ? 400 : 0} mm`, `${level * 300} mm`], ...(level === 0 ? { held: 'placed' } : { mass: '1 kg' }) }])));
  const rings = [1, 2].flatMap((level) => [['a', 'b'], ['b', 'd'], ['d', 'c'], ['c', 'a']].map(([from, to]) => ({ from: `${from}${level}`, to: `${to}${level}` })));
  const columns = [0, 1, 2].flatMap((level) => ['a', 'b', 'c', 'd'].map((corner) => ({ from: `${corner}${level}`, to: `${corner}${level + 1}` })));
  const members = Object.fromEntries([...rings, ...columns].map((member, i) => [`m${i}`, member]));
  expect(Object.keys(members).length).toBe(20);
  const changes = { 'frame.points': points, 'frame.members': members, 'frame.tool': 'a3', 'frame.acceleration': '2 m/s²', 'frame.moving-mass': '1 kg', 'frame.joint': 'corner-bracket' };
  const times = Array.from({ length: 5 }, () => {
    const evaluation = evaluate('portal', changes, 'machine');
    const before = process.cpuUsage();
    for (const { id } of evaluation.figures()) if (id.startsWith('frame.')) evaluation.result(id);
    return process.cpuUsage(before).user / 1000;
  });
  // Our own limit; some tens of milliseconds on a slow machine.
  expect(Math.min(...times)).toBeLessThan(150);
});
