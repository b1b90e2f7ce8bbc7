/** Ball screws and nuts, from the designation to life and speed. */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { evaluate, figureOf } from '../support/evaluate.ts';

const number = (e: ReturnType<typeof evaluate>, id: string): { nominal: number; low: number; high: number } => {
  const value = e.bounds(id);
  if (!value) throw new Error(`${id} is unknown`);
  return value;
};

describe('designation', () => {
  test('1605 is 16 mm with a lead of 5 mm, its root a range from the catalogue', () => {
    const e = evaluate('ball-lift');
    expect(e.choice('screw.thread')).toBe('ball');
    expect(number(e, 'screw.major-diameter').nominal).toBeCloseTo(0.016, 12);
    expect(number(e, 'screw.lead').nominal).toBeCloseTo(0.005, 12);
    // Usual range, from memory: 12.8 to 13.6 mm.
    expect(number(e, 'screw.root-diameter').low).toBeCloseTo(12.8e-3, 9);
    expect(number(e, 'screw.root-diameter').high).toBeCloseTo(13.6e-3, 9);
  });
  test('a lead without a row of its own keeps root and balls of its diameter, and asks for its rating', () => {
    const e = evaluate('ball-lift', { 'screw.size': '1616', 'nut.dynamic-rating': null });
    expect(number(e, 'screw.root-diameter').low).toBeCloseTo(12.8e-3, 9);
    expect(e.result('nut.life-turns')).toMatchObject({ state: 'missing', missing: ['nut.dynamic-rating'] });
  });
  test('written dimensions stand in for a size', () => {
    const e = evaluate('ball-lift', { 'screw.size': null, 'screw.thread': 'ball', 'screw.major-diameter': '20 mm', 'screw.lead': '5 mm' });
    expect(number(e, 'screw.root-diameter').low).toBeCloseTo(16.8e-3, 9);
    expect(figureOf(e, 'nut.speed-factor')).toBeGreaterThan(0);
  });
  test('an entry of one’s own replaces the range', () => {
    const e = evaluate('ball-lift', { 'screw.root-diameter': '13.1 mm' });
    expect(number(e, 'screw.root-diameter')).toMatchObject({ low: 0.0131, high: 0.0131 });
  });
  test('a sliding screw has no ball nut figures', () => {
    for (const id of ['nut.mean-load', 'nut.life-turns', 'nut.static-safety', 'nut.speed-factor', 'nut.ball-pass-period']) {
      expect(evaluate('lift').result(id), id).toEqual({ state: 'left-out' });
    }
  });
});

describe('life', () => {
  test('100 kg on 9 kN: turns, travel and hours by hand', () => {
    const e = evaluate('ball-lift', { 'mass.mass': '100 kg', 'nut.load-factor': null, 'nut.dynamic-rating': '9 kN' });
    // Steady loads 980.665 ± 4 N, ramps negligible: F_m = 980.7 N; f_w 1.2: (9000/(1.2 · 980.7))³ · 1e6 = 4.473e8 turns; · 5 mm = 2236 km;
    // a full travel of 60 turns takes 300/10 + 10/200 = 30.05 s: 4.473e8/60 · 30.05 s = 62 230 h.
    expect(figureOf(e, 'nut.mean-load')).toBeCloseTo(980.7, 0);
    expect(Math.abs(figureOf(e, 'nut.life-turns') / 4.473e8 - 1)).toBeLessThan(0.002);
    expect(Math.abs(figureOf(e, 'nut.life-travel') / 2.2365e6 - 1)).toBeLessThan(0.002);
    expect(Math.abs(figureOf(e, 'nut.life-hours') / 3600 / 62230 - 1)).toBeLessThan(0.002);
    expect(e.result('nut.life-turns')).toMatchObject({ note: expect.stringContaining('fatigue') as unknown });
  });
  test('inertia counts by the share of the travel in which it acts', () => {
    // Level, no friction and no process force: only m a = 20 kg · 0.2 m/s² = 4 N on 2 · 0.25 mm of 300 mm at 10 mm/s: F_m = 4 · (0.5/300)^(1/3) = 0.4743 N.
    const e = evaluate('router', { 'mass.mass': '20 kg', 'guides.friction-force': '0 N', 'axis.process-force': '0 N' });
    expect(figureOf(e, 'nut.mean-load')).toBeCloseTo(0.4743, 3);
  });
  test('double the mass, an eighth of the life', () => {
    fc.assert(fc.property(fc.integer({ min: 20, max: 400 }), (mass) => {
      const life = (kg: number): number => figureOf(evaluate('ball-lift', { 'mass.mass': `${kg} kg`, 'guides.friction-force': '0 N', 'motion.acceleration': '0 mm/s²' }), 'nut.life-turns');
      expect(life(mass) / life(2 * mass)).toBeCloseTo(8, 6);
    }), { numRuns: 8 });
  });
  test('the low end of an assumed rating decides', () => {
    const e = evaluate('ball-lift', { 'mass.mass': '100 kg', 'nut.dynamic-rating': null });
    const result = e.result('nut.life-hours');
    if (result.state !== 'computed') throw new Error(JSON.stringify(result));
    // Catalogue range 8 to 14 kN, load factor 1 to 1.5: at least a factor (14/8 · 1.5)³ = 18 between the ends.
    expect(result.high / result.low).toBeGreaterThan(18);
    expect(result.movedBy).toContain('nut.dynamic-rating');
  });
  test('preload shortens it', () => {
    const plain = figureOf(evaluate('ball-lift', { 'mass.mass': '100 kg' }), 'nut.life-turns');
    const preloaded = figureOf(evaluate('ball-lift', { 'mass.mass': '100 kg', 'nut.design': 'preloaded-ball', 'nut.preload': '500 N' }), 'nut.life-turns');
    expect(preloaded).toBeLessThan(plain);
  });
});

describe('balls', () => {
  test('d n: 16 mm at 120 rpm', () => {
    // 10 mm/s on 5 mm: 2 turns a second; 16 · 120 = 1920 mm·rpm = 0.016 · 4 pi m·rad/s.
    expect(figureOf(evaluate('ball-lift'), 'nut.speed-factor')).toBeCloseTo(0.016 * 4 * Math.PI, 9);
  });
  test('ball-pass period with balls of 3.175 mm', () => {
    // Hand calculation, circle 16 + 0.2 · 3.175 = 16.635 mm: Z = sqrt((pi 16.635)² + 25)/3.175 = 16.535; /2 · (1 - 3.175 · 0.70711/16.635) = 7.152; 0.699 mm.
    expect(figureOf(evaluate('ball-lift'), 'nut.ball-pass-period') * 1000).toBeCloseTo(0.699, 3);
  });
  test('lift-off at 2.83 times the preload', () => {
    const e = evaluate('ball-lift', { 'nut.design': 'preloaded-ball', 'nut.preload': '300 N' });
    expect(figureOf(e, 'nut.lift-off-load')).toBeCloseTo(848.5, 1);
  });
});
