/** Load on each carriage from where the masses lie. By hand from R = W/4 ± W x/(2 l) ± W y/(2 b) ± m a h/(2 l) (common in the trade; balance of a rigid table on four like springs). */
import { describe, expect, test } from 'vitest';
import { evaluate, figureOf } from '../support/evaluate.ts';

/** Four bushings, 80 mm apart along and 120 mm across, their middle at (200, 100, 50) mm; 4 kg at 10 m/s². */
const base = {
  'conditions.gravity': '10 m/s²', 'mass.mass': '4 kg', 'motion.acceleration': null, 'guides.drive-offset': null, 'axis.along': 'x', 'guides.at': ['200 mm', '100 mm', '50 mm'],
};
const result = (changes: Readonly<Record<string, unknown>>) => evaluate('slider', { ...base, ...changes }).result('guides.carriage-load-most');
const at = (changes: Readonly<Record<string, unknown>>, id = 'guides.carriage-load-most'): number => figureOf(evaluate('slider', { ...base, ...changes }), id);
const note = (changes: Readonly<Record<string, unknown>>): string => {
  const found = result(changes);
  return found.state === 'computed' ? (found.note ?? '') : found.state;
};

describe('level', () => {
  test('20 mm along and 30 mm across from the middle: 10 + 40 · 20/160 + 40 · 30/240 = 20 N, least 10 − 5 − 5 = 0 N', () => {
    const place = { 'mass.at': ['220 mm', '130 mm', '50 mm'] };
    expect(at(place)).toBeCloseTo(20, 9);
    expect(at(place, 'guides.carriage-load-least')).toBeCloseTo(0, 9);
    expect(note(place)).toBe('on the carriage towards +x and +y');
    expect(note({ 'mass.at': ['180 mm', '130 mm', '50 mm'] })).toBe('on the carriage towards −x and +y');
  });
  test('along y, 20 mm along and 30 mm across is at (230, 120)', () => {
    const place = { 'axis.along': 'y', 'mass.at': ['230 mm', '120 mm', '50 mm'] };
    expect(at(place)).toBeCloseTo(20, 9);
    expect(note(place)).toBe('on the carriage towards +y and +x');
  });
  test('60 mm above the rails at 2 m/s² adds 4 · 2 · 60/160 = 3 N; 8 N driven in the middle, 30 mm beside the mass, turn it with 0.24 N·m: 1.5 N sideways', () => {
    expect(at({ 'motion.acceleration': '2 m/s²', 'mass.at': ['220 mm', '130 mm', '110 mm'] })).toBeCloseTo(Math.hypot(23, 1.5), 9);
  });
  test('driven 30 mm beside the middle, to one side or the other: at worst 60 mm from the mass, 3 N sideways', () => {
    expect(at({ 'motion.acceleration': '2 m/s²', 'guides.drive-offset': '30 mm', 'mass.at': ['220 mm', '130 mm', '110 mm'] })).toBeCloseTo(Math.hypot(23, 3), 9);
  });
  test('a height that is not written is taken as that of the rails, and that is said', () => {
    const flat = { 'motion.acceleration': '2 m/s²', 'mass.at': ['220 mm', '130 mm'] };
    expect(at(flat)).toBeCloseTo(Math.hypot(20, 1.5), 9);
    expect(note(flat)).toContain('heights that are not written');
  });
  test('anywhere in 40 by 60 mm about the middle: the worst corner is as far off as above', () => {
    const open = { 'mass.at': ['200 mm', '100 mm', '50 mm'], 'mass.area': ['40 mm', '60 mm'] };
    expect(at(open)).toBeCloseTo(20, 9);
    expect(note(open)).toMatch(/^on the carriage towards [+−]x and [+−]y, with plate at (?:180|220) mm, (?:70|130) mm$/);
  });
  test('two masses in their areas add up: each 2 kg, 20 + 20 N, at its own worst corner', () => {
    const two = { 'mass.mass': '2 kg', 'mass.at': ['200 mm', '100 mm', '50 mm'], 'mass.area': ['40 mm', '60 mm'], beam: { mass: '2 kg', at: ['200 mm', '100 mm', '50 mm'], area: ['40 mm', '0 mm'] }, 'axis.moves': ['plate', 'beam'] };
    // 10 + (20 + 20) · 20/160 + 20 · 30/240 = 17.5 N.
    expect(at(two)).toBeCloseTo(17.5, 9);
  });
  test('a mass that has a range is taken where the moved mass stands: 4 kg to 8 kg at (20, 30) mm gives 20 to 40 N', () => {
    const found = result({ 'mass.mass': '4 kg to 8 kg', 'mass.at': ['220 mm', '130 mm', '50 mm'] });
    expect(found).toMatchObject({ state: 'computed' });
    if (found.state === 'computed') expect([found.low, found.high].map((value) => Number(value.toFixed(6)))).toEqual([20, 40]);
  });
});

describe('upright', () => {
  const upright = { 'axis.direction': 'vertical', 'axis.along': null };
  test('40 N hung 100 mm beside the rails: 4 N·m over two pairs 80 mm apart, 25 N each', () => {
    expect(at({ ...upright, 'mass.at': ['300 mm', '100 mm'] })).toBeCloseTo(25, 9);
    expect(at({ ...upright, 'mass.at': ['200 mm', '0 mm'] })).toBeCloseTo(25, 9);
  });
  test('driven 30 mm from the middle, in a direction that is not known: at worst 130 mm from the weight, 32.5 N', () => {
    expect(at({ ...upright, 'guides.drive-offset': '30 mm', 'mass.at': ['300 mm', '100 mm'] })).toBeCloseTo(32.5, 9);
  });
  test('a nut that is written on the side of the weight tells that side: 40 · 70 mm/(2 · 80 mm) = 17.5 N; on the other side 40 · 130/160 = 32.5 N', () => {
    const nutAt = (x: string) => ({ ...upright, 'guides.drive-offset': '30 mm', 'mass.at': ['300 mm', '100 mm'], supports: { rail: { joint: 'rail-carriage', at: ['200 mm', '100 mm'] }, screw: { joint: 'nut-decoupled', at: [x, '100 mm'] } } });
    expect(at(nutAt('230 mm'))).toBeCloseTo(17.5, 9);
    expect(at(nutAt('170 mm'))).toBeCloseTo(32.5, 9);
  });
  test('one carriage takes it by its moment rating: 1000 N/10 N·m · 4 N·m = 400 N', () => {
    const one = { 'guides.kind': 'profile-rail', 'guides.bearing': null, 'guides.rails': 1, 'guides.carriages': 1, 'guides.carriage-spacing': null, 'guides.static-rating': '1 kN', 'guides.moment-limit': '10 N·m' };
    expect(at({ ...upright, ...one, 'mass.at': ['300 mm', '100 mm'] }, 'guides.equivalent-load')).toBeCloseTo(400, 6);
  });
  const support = (joint: string, x: number, y: number) => ({ joint, at: [`${x} mm`, `${y} mm`] });
  /** Two rails at x 0 and 300, their carriages 80 mm apart along them. */
  const guides = { left: support('rail-carriage', 0, 100), right: support('rail-carriage', 300, 100) };
  test('two screws 300 mm apart along x hold what tilts it about y; the offset along y is left to the carriages: 40 · 60 mm/(2 · 80 mm) = 15 N', () => {
    const two = { ...upright, 'guides.at': null, 'mass.at': ['250 mm', '160 mm'], supports: { ...guides, 'screw 1': support('nut-decoupled', 0, 100), 'screw 2': support('nut-decoupled', 300, 100) } };
    expect(at(two)).toBeCloseTo(15, 6);
  });
  test('three screws that are not in line hold all of it', () => {
    const three = { ...upright, 'guides.at': null, 'mass.at': ['250 mm', '160 mm'], supports: { ...guides, 'screw 1': support('nut-decoupled', 0, 0), 'screw 2': support('nut-decoupled', 300, 0), 'screw 3': support('nut-decoupled', 150, 300) } };
    expect(at(three)).toBeCloseTo(0, 9);
  });
});

describe('inclined', () => {
  test('a weight right above the middle turns nothing, however high: 40 · cos 30°/4 = 8.660 N on each', () => {
    const high = { 'axis.direction': '30°', 'mass.at': ['200 mm', '100 mm', '110 mm'] };
    expect(at(high)).toBeCloseTo(8.66025, 4);
    expect(at(high, 'guides.carriage-load-least')).toBeCloseTo(8.66025, 4);
  });
});

describe('what is not known', () => {
  test('without places, masses are midway and that is said', () => {
    expect(at({})).toBeCloseTo(10, 9);
    expect(note({})).toBe('masses taken midway');
  });
  test('without the middle of the carriages, or the direction of a level axis', () => {
    expect(note({ 'mass.at': ['220 mm', '130 mm'], 'guides.at': null })).toContain('where the carriages are');
    expect(note({ 'mass.at': ['220 mm', '130 mm'], 'axis.along': null })).toContain('along which direction');
  });
  test('a weight beside two rails of unknown spacing has no number', () => {
    expect(result({ 'mass.at': ['220 mm', '130 mm'], 'guides.rail-spacing': null })).toMatchObject({ state: 'unable', reason: 'the spacing of the rails is not given' });
  });
  test('beside a single round shaft it would turn over; a single profile rail holds it', () => {
    const single = { 'mass.at': ['220 mm', '130 mm'], 'guides.rails': 1, 'guides.rail-spacing': null };
    expect(result(single)).toMatchObject({ state: 'unable', reason: expect.stringContaining('round its single shaft') as string });
    // 40 N on two carriages, 40 · 20/80 = 10 N more on the one towards +x.
    expect(at({ ...single, 'guides.kind': 'profile-rail', 'guides.bearing': null })).toBeCloseTo(30, 6);
  });
});
