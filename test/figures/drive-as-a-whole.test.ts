import { describe, expect, it } from 'vitest';
import { evaluate, figureOf } from '../support/evaluate.ts';

describe('stiffness of a drive whose motor turns several screws', () => {
  // The magnetic spring alone: 0.45 N·m at 1.5 A rms (the whole holding torque), 50 pole pairs: 22.5 N·m/rad. Tr12x3: (2π/3 mm)² = 4.38649e6 1/m²: 98.696 N/µm for one screw.
  // One motor for two screws has the torque of both on it: 49.348 N/µm for each. By hand: the give of the chain rises by 1/49.348 − 1/98.696 = 1/98.696 µm/N.
  it('shares the one magnetic spring among them', () => {
    const shared = evaluate('lift', { 'drive.motors': 'shared', 'drive.current-setting-as': 'rms' });
    const own = evaluate('lift', { 'drive.motors': 'one-each', 'drive.current-setting-as': 'rms' });
    const give = (evaluation: ReturnType<typeof evaluate>): number => 1e6 / figureOf(evaluation, 'drive.axial-stiffness');
    expect(give(shared) - give(own)).toBeCloseTo(1 / 98.696, 5);
  });
});

describe('lost motion', () => {
  it('holds the play of a reduction, through the lead', () => {
    // 0.6° on a lead of 3 mm: 3 · 0.6/360 = 0.005 mm. No guide friction, play of the nut closed by the weight.
    const geared = { 'drive.reduction': [{ kind: 'spur', ratio: '2', backlash: '0.6°' }], 'guides.friction-force': '0 N' };
    expect(figureOf(evaluate('lift', geared), 'nut.lost-motion') * 1000).toBeCloseTo(0.005, 9);
    // Level, the play of the nut of 0.1 mm is on top.
    expect(figureOf(evaluate('lift', { ...geared, 'axis.direction': 'horizontal', 'nut.backlash': '0.1 mm' }), 'nut.lost-motion') * 1000).toBeCloseTo(0.105, 9);
  });
});

describe('a rotor whose inertia is not written', () => {
  it('is guessed from frame and holding torque together', () => {
    // 20 000 to 120 000 rad/s² of holding torque over inertia (from memory): 0.45 N·m is 37.5 to 225 g·cm²; a size 17 motor 20 to 110 g·cm² (from memory). Both: 37.5 to 110.
    const { low, high, nominal } = evaluate('lift', { 'motor.rotor-inertia': null }).bounds('motor.rotor-inertia') ?? { low: 0, high: 0, nominal: 0 };
    expect([low * 1e7, high * 1e7]).toEqual([expect.closeTo(37.5, 6), expect.closeTo(110, 6)]);
    expect(nominal).toBeCloseTo(Math.sqrt(low * high), 12);
  });
  it('is guessed from the torque alone where no frame is named', () => {
    const bounds = evaluate('lift', { 'motor.rotor-inertia': null, 'motor.frame': null }).bounds('motor.rotor-inertia');
    expect([(bounds?.low ?? 0) * 1e7, (bounds?.high ?? 0) * 1e7]).toEqual([expect.closeTo(37.5, 6), expect.closeTo(225, 6)]);
  });
});

describe('the highest speed of the axis', () => {
  it('is the lowest of its limits, and says which', () => {
    // A controller of 4 kHz at 200 · 16/3 mm = 1066.7 steps/mm gives 3.75 mm/s: by hand.
    const slow = evaluate('lift', { 'controller.step-rate': '4 kHz' });
    expect(figureOf(slow, 'axis.speed-limit') * 1000).toBeCloseTo(3.75, 9);
    expect(slow.result('axis.speed-limit')).toMatchObject({ note: 'set by the step rate of the controller' });
    // A maker's 100 rpm on a lead of 3 mm: 5 mm/s.
    const kept = evaluate('lift', { 'screw.speed-limit': '100 rpm' });
    expect(figureOf(kept, 'axis.speed-limit') * 1000).toBeCloseTo(5, 9);
    expect(kept.result('axis.speed-limit')).toMatchObject({ note: "set by the screw's maker" });
  });
});

describe('sizes that the standard does not list', () => {
  it('have diameters of ± 0.2 mm, and say so; listed ones are exact', () => {
    // ISO 2904 lists 8 mm with a pitch of 1.5 mm only: d2 of Tr8x2 is 8 − 1 = 7 mm by the relations of ISO 2901.
    const unlisted = evaluate('lift', { 'screw.size': 'Tr8x2' });
    const pitch = unlisted.bounds('screw.pitch-diameter');
    expect([pitch?.low, pitch?.nominal, pitch?.high]).toEqual([expect.closeTo(6.8e-3, 9), expect.closeTo(7e-3, 9), expect.closeTo(7.2e-3, 9)]);
    expect(JSON.stringify(unlisted.input('screw.pitch-diameter'))).toContain('± 0.2 mm');
    // Root: 5.5 mm by the relations; class 7e lets it down to 5.5 − 0.071 − 1.25 · 0.190 = 5.1915 mm, further than 0.2 mm.
    const root = unlisted.bounds('screw.root-diameter');
    expect([root?.low, root?.high]).toEqual([expect.closeTo(5.1915e-3, 7), expect.closeTo(5.7e-3, 9)]);
    const listed = evaluate('lift', { 'screw.size': 'Tr8x1.5' }).bounds('screw.pitch-diameter');
    expect([listed?.low, listed?.high]).toEqual([expect.closeTo(7.25e-3, 9), expect.closeTo(7.25e-3, 9)]);
  });
});
