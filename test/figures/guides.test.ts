/** Figures of guides from the text to the number. Expected values by hand from closed forms; the steps stand beside them. */
import { describe, expect, test } from 'vitest';
import { evaluate, figureOf } from '../support/evaluate.ts';

const at = (id: string, changes: Readonly<Record<string, unknown>> = {}): number => figureOf(evaluate('slider', { 'conditions.gravity': '10 m/s²', 'mass.mass': '4 kg', ...changes }), id);

/** One bushing on each of two shafts of 12 mm, 640 mm free, travel 500 mm; 4 kg at 10 m/s²: 20 N on each. */
const single = { 'guides.carriages': 1, 'guides.carriage-spacing': null, 'guides.shaft-diameter': '12 mm' };

describe('bending shafts, handbook steel E 206 GPa, 7850 kg/m³, E I = 206e9 · π 0.012⁴/64 = 209.68 N·m², weight 8.8781 N/m', () => {
  test('middle: 20 · 0.64³/(48 · 209.68) + 5 · 8.8781 · 0.64⁴/(384 · 209.68) = 0.52092 + 0.09250 mm', () => {
    expect(at('guides.sag-lowest', single) * 1e3).toBeCloseTo(0.61341, 4);
  });
  test('70 mm from an end: 20 · 0.07² · 0.57²/(3 · 209.68 · 0.64) + 8.8781 · 0.07 (0.64³ − 2 · 0.64 · 0.07² + 0.07³)/(24 · 209.68) = 0.1107 mm; so it varies by 0.5027 mm', () => {
    expect(at('guides.sag-variation', single) * 1e3).toBeCloseTo(0.50268, 4);
    expect(at('guides.sag-use', { ...single, 'axis.accuracy': '0.5 mm' })).toBeCloseTo(1.00536, 4);
  });
  test('clamped ends would sag a quarter of the force\'s part and a fifth of the weight\'s: 0.52092/4 + 0.09250/5 = 0.14873 mm; long holders lie between', () => {
    const { low, nominal, high } = evaluate('slider', { 'conditions.gravity': '10 m/s²', 'mass.mass': '4 kg', ...single, 'guides.shaft-ends': null }).bounds('guides.sag-lowest') ?? { low: 0, nominal: 0, high: 0 };
    // The low end has the stiffest steel too: 206/212 of the sag.
    expect(low * 1e3).toBeGreaterThan(0.14873 * (206 / 212) * 0.99);
    expect(low * 1e3).toBeLessThan(0.14873);
    expect(nominal * 1e3).toBeCloseTo(0.61341, 4);
    expect(high).toBeGreaterThan(nominal);
  });
  test('stress: 20 · 0.64/4 + 8.8781 · 0.64²/8 = 3.6546 N·m over π 0.012³/32: 21.54 MPa', () => {
    expect(at('guides.shaft-stress', single) / 1e6).toBeCloseTo(21.542, 2);
  });
  test('tilt: slope F x (L − x)(L − 2x)/(3 E I L) under the force is largest at 0.2113 L: 0.03208 F L²/(E I) = 1.2534 mrad, where the weight adds 8.8781 (L³ − 6 L x² + 4 x³)/(24 E I) = 0.3560 mrad', () => {
    expect(at('guides.tilt', single) * 1e3).toBeGreaterThan(1.609);
    // Nearer to the end the weight slopes more and the force less: at most 0.4316 mrad from the weight at the end of the travel.
    expect(at('guides.tilt', single) * 1e3).toBeLessThan(1.2534 + 0.4316);
  });
  test('two bushings, half the force on each, 80 mm apart: y in the middle of them with a = (640 − 80)/2: F a (3 L² − 4 a²)/(48 E I) at the forces', () => {
    // Each 10 N at 0.28 m from its end: y(a) = F a² (3 L − 4 a)/(6 E I) = 10 · 0.28² · (1.92 − 1.12)/(6 · 209.68) = 0.49853 mm; weight there 8.8781 · 0.28 (0.64³ − 2 · 0.64 · 0.28² + 0.28³)/(24 · 209.68) = 0.09076 mm.
    expect(at('guides.sag-lowest', { 'guides.shaft-diameter': '12 mm' }) * 1e3).toBeCloseTo(0.58929, 4);
  });
  test('an upright axis has no weight across its guides, and a travel that does not fit is said', () => {
    expect(evaluate('slider', { 'axis.direction': 'vertical' }).result('guides.sag-lowest')).toMatchObject({ state: 'unable', reason: expect.stringContaining('upright') as string });
    expect(evaluate('slider', { 'axis.travel': '600 mm' }).result('guides.sag-lowest')).toMatchObject({ state: 'unable', reason: expect.stringContaining('longer than the free length') as string });
  });
  test('a shaft on a support along its length has no such sag', () => {
    expect(evaluate('slider', { 'guides.kind': 'supported-shaft' }).result('guides.sag-lowest').state).toBe('left-out');
  });
});

describe('friction', () => {
  const bronze = { 'guides.bearing': 'bronze-bushing', 'guides.friction': '0.2', 'guides.drive-offset': '150 mm', 'guides.guided-length': '100 mm' };
  test('2 · 0.2 · 150/100 = 60 %; wanted are 2 · 2 · 0.2 · 150 = 120 mm', () => {
    expect(at('guides.jamming-ratio', bronze)).toBeCloseTo(0.6, 12);
    expect(at('guides.guided-length-needed', bronze) * 1e3).toBeCloseTo(120, 9);
  });
  test('force of a rising slider: 40 N/(1 − 0.6) = 100 N (Beer and Johnston, sample problem 8.3, with a load in the middle of the guide)', () => {
    expect(at('guides.driving-force', { ...bronze, 'axis.direction': 'vertical' })).toBeCloseTo(100, 6);
  });
  test('beyond 100 % it locks', () => {
    const evaluation = evaluate('slider', { ...bronze, 'guides.drive-offset': '260 mm' });
    expect(figureOf(evaluation, 'guides.jamming-ratio')).toBeCloseTo(1.04, 9);
    expect(evaluation.result('guides.driving-force')).toMatchObject({ state: 'unable', reason: expect.stringContaining('locks') as string });
  });
  test('bronze 0.1 to 0.2 where nothing is written (catalogue); a plain slide without a bearing can be any, 0.04 to 0.4', () => {
    expect(evaluate('slider', { 'guides.bearing': 'bronze-bushing' }).bounds('guides.friction')).toMatchObject({ low: 0.1, nominal: 0.15, high: 0.2 });
    expect(evaluate('slider', { 'guides.kind': 'plain', 'guides.bearing': null }).bounds('guides.friction')).toMatchObject({ low: 0.04, high: 0.4 });
  });
});

describe('carriages', () => {
  // 40 N on four: 10 N up each. Drive 4 kg · 2 m/s² = 8 N at 30 mm: 0.24 N·m over two pairs 80 mm apart: 0.24/(2 · 0.08) = 1.5 N sideways.
  test('√(10² + 1.5²) = 10.112 N on each', () => {
    expect(at('guides.carriage-load-most')).toBeCloseTo(10.112, 3);
    expect(at('guides.carriage-load-least')).toBeCloseTo(10.112, 3);
  });
  test('bushings feel the resultant: 1000 N over 10.112 N; life 50 km (1000/10.112)³', () => {
    const given = { 'guides.static-rating': '1 kN', 'guides.dynamic-rating': '1 kN', 'guides.rated-travel': '50 km', 'motion.speed': '100 mm/s' };
    expect(at('guides.static-safety', given)).toBeCloseTo(98.9, 1);
    // Load factor 1.2 at 0.1 m/s: 50 · (98.89/1.2)³ = 2.798e7 km.
    expect(at('guides.life-travel', given) / 1e3 / 1e7).toBeCloseTo(2.798, 2);
  });
  test('one carriage on one rail takes the moment: 40 + C0/M0 · 0.24 = 40 + 1000/10 · 0.24 = 64 N', () => {
    const one = { 'guides.kind': 'profile-rail', 'guides.bearing': null, 'guides.rails': 1, 'guides.carriages': 1, 'guides.carriage-spacing': null, 'guides.static-rating': '1 kN', 'guides.moment-limit': '10 N·m' };
    expect(at('guides.equivalent-load', one)).toBeCloseTo(64, 9);
  });
  test('without a rating for it, there is a reason', () => {
    expect(evaluate('slider', single).result('guides.equivalent-load')).toMatchObject({ state: 'unable', reason: expect.stringContaining('take a moment, for which no rating') as string });
  });
  test('plain bushing: 10.112 N/(16 mm · 30 mm) = 0.02107 MPa', () => {
    expect(at('guides.bushing-pressure', { 'guides.bearing': 'bronze-bushing', 'guides.carriage-length': '30 mm' }) / 1e6).toBeCloseTo(0.02107, 5);
  });
});

describe('profile rails by size', () => {
  const rail = { 'guides.kind': 'profile-rail', 'guides.bearing': null };
  test.each([['15', 8e3], ['miniature 12', 1e3]])('size %s gives a rating of some kN', (size, least) => {
    const bounds = evaluate('slider', { ...rail, 'guides.size': size }).bounds('guides.dynamic-rating');
    expect(bounds?.nominal).toBeGreaterThan(least);
    expect(bounds?.high).toBeGreaterThan(bounds?.low ?? Infinity);
  });
});
