import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { evaluate, figureOf } from '../support/evaluate.ts';

/** Base machine `belt-lift`: 1.5 kg on a belt of 60 mm a turn (9.549 mm a radian) behind 3 : 1, 0.5 m, guide friction 4 N, detent 40 N·mm, a rail brake. */
const lift = (changes: Readonly<Record<string, unknown>> = {}) => evaluate('belt-lift', { 'conditions.gravity': '9.81 m/s²', ...changes });
const bare = (changes: Readonly<Record<string, unknown>> = {}) => lift({ brake: null, ...changes });

describe('a belt with power off', () => {
  it('turns its motor with 1.5 · 9.81 N · 9.549 mm / 3 = 46.8 N·mm', () => {
    expect(figureOf(bare(), 'motor.run-back-torque') * 1000).toBeCloseTo(46.84, 2);
  });

  it('is held by detent and half its friction 0.99 times: it drops', () => {
    // (40 N·mm · 3/9.5493 mm + 2 N)/14.715 N = (12.566 + 2)/14.715
    expect(figureOf(bare(), 'drive.holding-factor')).toBeCloseTo(0.98990, 4);
    expect(figureOf(bare(), 'drive.holding-verdict')).toBe(0);
  });

  it.each([
    // 60 N·mm at the pulley: 6.283 N; at the motor three times that; 30 N on the rail as they are.
    ['shaft', { 'holding-torque': '60 N·mm', at: 'shaft' }, 6.2832],
    ['motor', { 'holding-torque': '60 N·mm', at: 'motor' }, 18.850],
    ['rail', { 'holding-force': '30 N', at: 'rail' }, 30],
    ['rail, not said', { 'holding-force': '30 N' }, 30],
    ['shaft, not said', { 'holding-torque': '60 N·mm' }, 6.2832],
  ])('a brake at the %s', (_, brake, force) => {
    expect(figureOf(lift({ brake }), 'drive.brake-force')).toBeCloseTo(force, 3);
    expect(figureOf(lift({ brake }), 'drive.brake-factor')).toBeCloseTo(force / 14.715, 3);
  });

  it('one brake for two belts on one motor holds half as much on each', () => {
    const brake = { 'holding-torque': '60 N·mm', at: 'motor' };
    expect(figureOf(lift({ brake, 'drive.units': 2, 'drive.motors': 'shared' }), 'drive.brake-force')).toBeCloseTo(9.425, 3);
  });

  it('falls with its rotor: by hand', () => {
    // η 97 % and 96.5 %: (14.715 − 2) · 0.93605 / (1.5 · 0.93605 + J_w · 0.965/r² + 300 g·cm² · 9/r²), r = 9.5493 mm: 3e-5 · 9/9.1189e-5 = 2.9609 kg.
    const evaluation = bare({ 'belt.efficiency': '97 %', 'drive.reduction': [{ kind: 'belt', ratio: 3, efficiency: '96.5 %' }] });
    const shaft = figureOf(evaluation, 'drive.shaft-inertia');
    const byHand = (12.715 * 0.93605) / (1.404075 + (shaft * 0.965) / 9.11891e-5 + 2.96088);
    expect(figureOf(evaluation, 'drive.fall-acceleration')).toBeCloseTo(byHand, 3);
    expect(figureOf(evaluation, 'drive.fall-speed')).toBeCloseTo(Math.sqrt(2 * byHand * 0.5), 3);
  });

  it('a level belt has nothing to hold', () => {
    expect(evaluate('belt').result('drive.holding-verdict')).toMatchObject({ state: 'unable' });
    expect(evaluate('belt').result('drive.broken-belt-verdict')).toEqual({ state: 'left-out' });
  });

  it('what is missing is named: without pulley there is no verdict', () => {
    expect(bare({ 'pulley.teeth': null }).result('drive.holding-verdict')).toEqual({ state: 'missing', missing: ['pulley.teeth'] });
  });

  it('double the mass, half the factor; more of anything that holds never makes it worse', () => {
    const factor = (mass: number, brake: number): number => figureOf(lift({ 'mass.mass': `${mass} kg`, brake: { 'holding-force': `${brake} N`, at: 'rail' } }), 'drive.holding-factor');
    fc.assert(
      fc.property(fc.double({ min: 0.5, max: 20, noNaN: true }), fc.double({ min: 1, max: 400, noNaN: true }), (mass, brake) => {
        const one = factor(mass, brake);
        // Where the brake alone holds, only the brake is counted, so that the factor steps down there: compared within one regime.
        const regime = (m: number, b: number): boolean => b / (m * 9.81) >= 1.5;
        if (regime(mass, brake) !== regime(2 * mass, brake) || regime(mass, brake) !== regime(mass, brake + 1)) return true;
        return Math.abs(factor(2 * mass, brake) / one - 0.5) < 1e-9 && factor(mass, brake + 1) > one;
      }),
      { numRuns: 60 },
    );
  });
});

describe('a rack with power off', () => {
  it('falls faster the less its teeth lose: reverse efficiency 2 − 1/0.9 = 0.8889', () => {
    const evaluation = evaluate('rack', { 'axis.direction': 'vertical', 'conditions.gravity': '9.81 m/s²', 'drive.reduction': null, 'rack.efficiency': '90 %', 'pinion.rotational-inertia': '15 g·cm²' });
    // (14.715 − 2) · 0.88889/(1.5 · 0.88889 + (1.5e-6 + 3e-5)/1e-4) = 11.3022/1.64833
    expect(figureOf(evaluation, 'drive.fall-acceleration')).toBeCloseTo(6.8568, 3);
  });
});

describe('a screw', () => {
  it('may have a brake on the rail: 100 N on a lead of 3 mm are 47.7 N·mm', () => {
    expect(figureOf(evaluate('lift', { brake: { 'holding-force': '100 N', at: 'rail' } }), 'drive.brake-at-screw') * 1000).toBeCloseTo(47.746, 3);
  });

  it('has no belt that could break', () => {
    expect(evaluate('lift').result('drive.broken-belt-verdict').state).toBe('left-out');
  });
});

describe('a broken belt', () => {
  it('lets the carriage fall freely: 1.5 · 9.81 · 0.5 = 7.36 J, √(2 · 8.4767 · 0.5) = 2.911 m/s', () => {
    expect(figureOf(bare(), 'drive.broken-belt-verdict')).toBe(0);
    expect(figureOf(bare(), 'drive.broken-belt-energy')).toBeCloseTo(7.3575, 4);
    // (14.715 − 2)/1.5 m/s²
    expect(figureOf(bare(), 'drive.broken-belt-speed')).toBeCloseTo(2.9115, 3);
    // With the rotor the same axis falls slower while the belt holds.
    expect(figureOf(bare(), 'drive.fall-speed')).toBeLessThan(figureOf(bare(), 'drive.broken-belt-speed'));
  });

  it('makes a brake at the motor useless, and one on the rail decisive', () => {
    const strong = lift({ brake: { 'holding-torque': '5 N·m', at: 'motor' } });
    expect(figureOf(strong, 'drive.holding-verdict')).toBe(2);
    expect(figureOf(strong, 'drive.broken-belt-verdict')).toBe(0);
    expect(figureOf(lift(), 'drive.broken-belt-verdict')).toBe(1);
  });

  it('of two belts leaves the other the whole load: 80 + 14.715 + 7.3575 = 102.1 N', () => {
    const two = bare({ 'drive.units': 2, 'belt.breaking-force': '1 kN' });
    expect(figureOf(two, 'belt.pull-after-break')).toBeCloseTo(102.07, 2);
    expect(figureOf(two, 'drive.broken-belt-verdict')).toBe(1);
    // A belt that cannot bear it breaks too.
    expect(figureOf(bare({ 'drive.units': 2, 'belt.breaking-force': '100 N' }), 'drive.broken-belt-verdict')).toBe(0);
  });

  it('of two crossed belts is no rescue', () => {
    const upright = { 'axis.direction': 'vertical' };
    expect(figureOf(evaluate('crossed', upright), 'drive.broken-belt-verdict')).toBe(0);
  });
});

describe('a counterbalance', () => {
  const carried = (counterbalance: object) => lift({ brake: null, counterbalance }).bounds('counterbalance.carried-force');

  it('a spring of 0.02 N/mm over 500 mm: 10 N ± 5 N', () => {
    const { low, nominal, high } = carried({ kind: 'spring', force: '10 N', rate: '0.02 N/mm' }) ?? { low: 0, nominal: 0, high: 0 };
    expect([low, nominal, high]).toEqual([expect.closeTo(5, 9), 10, expect.closeTo(15, 9)]);
  });

  it('goes slack, and does not push: 10 N ± 25 N is 0 to 35 N', () => {
    const { low, high } = carried({ kind: 'spring', force: '10 N', rate: '0.1 N/mm' }) ?? { low: -1, high: 0 };
    expect([low, high]).toEqual([0, expect.closeTo(35, 9)]);
  });

  it('a weight pulls the same everywhere; a rolled strip within 10 %', () => {
    expect(carried({ kind: 'weight', force: '10 N', mass: '1.02 kg' })).toMatchObject({ low: 10, high: 10 });
    const { low, high } = carried({ kind: 'constant-force-spring', force: '10 N' }) ?? { low: 0, high: 0 };
    expect([low, high]).toEqual([expect.closeTo(9, 9), expect.closeTo(11, 9)]);
  });

  it('leaves the worse end of its travel to be held', () => {
    // 14.715 N less 10 N ± 5 N: 4.715 nominal, 9.715 N at the top of the travel.
    const load = lift({ brake: null, counterbalance: { kind: 'spring', force: '10 N', rate: '0.02 N/mm' } }).bounds('drive.gravity-load');
    expect(load?.nominal).toBeCloseTo(4.715, 9);
    expect(load?.high).toBeCloseTo(9.715, 9);
  });

  it('tells what is left at the worse end: 14.715 − 10 + 5 N at the top; 14.715 − 18 − 5 N at the bottom', () => {
    const left = (force: string) => lift({ counterbalance: { kind: 'spring', force, rate: '0.02 N/mm' } }).result('counterbalance.unbalanced-force');
    expect(left('10 N')).toMatchObject({ nominal: expect.closeTo(9.715, 9) as number, note: 'at the top of the travel' });
    expect(left('18 N')).toMatchObject({ nominal: expect.closeTo(-8.285, 9) as number, note: 'at the bottom of the travel' });
  });

  it('gives out force times travel: 10 N · 0.5 m; a slack spring (10 + 25)²/(2 · 100)', () => {
    expect(figureOf(lift({ counterbalance: { force: '10 N' } }), 'counterbalance.energy')).toBeCloseTo(5, 12);
    expect(figureOf(lift({ counterbalance: { kind: 'spring', force: '10 N', rate: '0.1 N/mm' } }), 'counterbalance.energy')).toBeCloseTo(6.125, 9);
  });
});
