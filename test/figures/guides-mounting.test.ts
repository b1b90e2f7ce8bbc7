/** Rails out of line, and what guides take from the drive. Expected values by hand; the steps stand beside them. */
import { describe, expect, test } from 'vitest';
import { evaluate, figureOf } from '../support/evaluate.ts';

const at = (id: string, changes: Readonly<Record<string, unknown>>): number => figureOf(evaluate('slider', { 'conditions.gravity': '10 m/s²', 'mass.mass': '4 kg', ...changes }), id);
const rail = { 'guides.kind': 'profile-rail', 'guides.bearing': null, 'guides.size': '15' };

describe('what makers permit', () => {
  test('miniature guide, mounting sheet section 15.4.1: 120 mm apart with preload 0.018 mm', () => {
    expect(at('guides.height-permitted', { ...rail, 'guides.size': 'miniature 12', 'guides.preload': 'light' }) * 1e3).toBeCloseTo(0.018, 9);
  });
  test('size 15 (tables of makers): 20 µm without, 8 µm with preload; 0.0012 and 0.00035 of 120 mm; both where nothing is said', () => {
    expect(at('guides.parallelism-permitted', { ...rail, 'guides.preload': 'none' }) * 1e6).toBeCloseTo(20, 9);
    expect(at('guides.height-permitted', { ...rail, 'guides.preload': 'none' }) * 1e3).toBeCloseTo(0.144, 9);
    const open = evaluate('slider', rail).bounds('guides.parallelism-permitted');
    expect([(open?.low ?? 0) * 1e6, (open?.high ?? 0) * 1e6].map(Math.round)).toEqual([8, 20]);
  });
  test('miniature rails have no table of parallelism, and shafts none at all', () => {
    expect(evaluate('slider', { ...rail, 'guides.size': 'miniature 9' }).result('guides.parallelism-permitted').state).toBe('unable');
    expect(evaluate('slider', {}).result('guides.height-permitted').state).toBe('left-out');
    expect(evaluate('slider', { ...rail, 'guides.size': null }).result('guides.height-permitted')).toMatchObject({ state: 'missing', missing: expect.arrayContaining(['guides.size']) as string[] });
  });
});

describe('forces of rails out of line', () => {
  const firm = { ...rail, 'guides.carriage-stiffness': '20 N/µm' };
  test('0.1 mm over two carriages of 20 N/µm on each side: 1e-4/(1/40e6 + 1/40e6) = 2000 N, 1000 N each; none where one rail floats', () => {
    expect(at('guides.mismatch-side-force', { ...firm, 'guides.parallel-within': '0.1 mm' })).toBeCloseTo(1000, 6);
    expect(at('guides.mismatch-side-force', { ...firm, 'guides.parallel-within': '0.1 mm', 'guides.second-rail': 'floating' })).toBe(0);
  });
  test('0.02 mm too high: 20e6 · 2e-5/4 = 100 N; with one carriage on each rail it tilts', () => {
    expect(at('guides.mismatch-height-force', { ...firm, 'guides.level-within': '0.02 mm' })).toBeCloseTo(100, 6);
    expect(at('guides.mismatch-height-force', { ...firm, 'guides.level-within': '0.02 mm', 'guides.carriages': 1, 'guides.carriage-spacing': null })).toBe(0);
  });
  test('drag 2 · 0.01 · 2 · (1000 + 100) = 44 N', () => {
    expect(at('guides.mismatch-drag', { ...firm, 'guides.friction': '0.01', 'guides.parallel-within': '0.1 mm', 'guides.level-within': '0.02 mm' })).toBeCloseTo(44, 6);
  });
  test('they count in what presses the balls: 10 + 1.5 + 1000 + 100, and 1 % of 1 kN as preload', () => {
    const given = { ...firm, 'guides.static-rating': '10 kN', 'guides.dynamic-rating': '1 kN', 'guides.parallel-within': '0.1 mm', 'guides.level-within': '0.02 mm' };
    expect(at('guides.equivalent-load', given)).toBeCloseTo(1111.5, 6);
    expect(at('guides.equivalent-load', { ...given, 'guides.preload': 'light' })).toBeCloseTo(1121.5, 6);
    expect(at('guides.static-safety', given)).toBeCloseTo(10_000 / 1111.5, 6);
  });
  test('round shafts give besides: 12 mm, 640 mm, force 70 mm from an end 3 E I L/(a² b²) = 3 · 209.68 · 0.64/(0.07² · 0.57²) = 252.9e3 N/m; 1e-4/(2/20e6 + 2/252.9e3) = 12.49 N', () => {
    const single = { 'guides.carriages': 1, 'guides.carriage-spacing': null, 'guides.guided-length': '30 mm', 'guides.shaft-diameter': '12 mm', 'guides.carriage-stiffness': '20 N/µm', 'guides.parallel-within': '0.1 mm' };
    expect(at('guides.mismatch-side-force', single)).toBeCloseTo(12.486, 2);
  });
  test('one bushing against the other on a shaft, by the deflection of a supported beam y(x) = F b x (L² − b² − x²)/(6 E I L), x ≤ a (Roark, table of beams)', () => {
    const [length, stiffness, k] = [0.64, 206e9 * (Math.PI * 0.012 ** 4) / 64, 20e6];
    const y = (x: number, a: number): number => (x > a ? y(a, x) : ((length - a) * x * (length ** 2 - (length - a) ** 2 - x ** 2)) / (6 * stiffness * length));
    // At the end of the travel the middle is at 70 mm, the bushings 40 mm to both sides.
    const give = (y(0.03, 0.03) - 2 * y(0.03, 0.11) + y(0.11, 0.11)) / 2;
    expect(at('guides.mismatch-height-force', { 'guides.shaft-diameter': '12 mm', 'guides.carriage-stiffness': '20 N/µm', 'guides.level-within': '0.1 mm' })).toBeCloseTo(1e-4 / 4 / (1 / k + give), 4);
  });
});

describe('friction of guides whose force is not written', () => {
  const open = { 'guides.friction-force': null };
  test('0.01 · 40 N and the seals of four ball bushings, 0.2 to 4 N each (catalogue): 1.2, 4.4, 16.4 N', () => {
    const bounds = evaluate('slider', { 'conditions.gravity': '10 m/s²', 'mass.mass': '4 kg', ...open, 'guides.friction': '0.01' }).bounds('guides.friction-force');
    expect([bounds?.low, bounds?.nominal, bounds?.high].map((value) => Number(value?.toFixed(9)))).toEqual([1.2, 4.4, 16.4]);
  });
  test('upright beside its drive: 40 N take 100 N to move (Beer and Johnston, sample problem 8.3), so 60 N of friction', () => {
    const hung = { ...open, 'axis.direction': 'vertical', 'guides.bearing': 'bronze-bushing', 'guides.friction': '0.2', 'guides.drive-offset': '150 mm', 'guides.guided-length': '100 mm' };
    expect(at('drive.cruising-load', hung)).toBeCloseTo(100, 6);
  });
  test('without a kind of guides as before: 0.3 to 5 % of the weight and up to 10 N', () => {
    const bounds = evaluate('lift', { 'guides.friction-force': null }).bounds('guides.friction-force');
    // 4 kg: 39.227 N.
    expect(bounds?.low).toBeCloseTo(0.1177, 4);
    expect(bounds?.high).toBeCloseTo(11.961, 3);
  });
  test('the other of two axes that share their motors: 0.01 · 22 N and two carriages with 2 N of seal drag', () => {
    const crossed = evaluate('crossed', { 'conditions.gravity': '10 m/s²', 'along.guides': { kind: 'profile-rail', friction: '0.01' } });
    expect(crossed.bounds('partner-guides.friction-force')?.nominal).toBeCloseTo(4.22, 9);
  });
});
