import { describe, expect, it } from 'vitest';
import { evaluate, figureOf } from '../support/evaluate.ts';

/** Base machine `rack`: module 1 mm, 20 teeth, straight, 12 mm wide, behind 5 : 1; 1.5 kg, 4 N of guide friction, 2 m/s², 0.25 m/s, level. */
const level = (changes: Readonly<Record<string, unknown>> = {}) => evaluate('rack', changes);
const upright = (changes: Readonly<Record<string, unknown>> = {}) => evaluate('rack', { 'axis.direction': 'vertical', 'conditions.gravity': '9.81 m/s²', ...changes });

describe('travel and torques of a rack', () => {
  it('π · 20 mm a turn of the pinion, a fifth a turn of the motor', () => {
    expect(figureOf(level(), 'drive.travel-per-shaft-turn') * 1000).toBeCloseTo(62.8319, 4);
    expect(figureOf(level(), 'axis.travel-per-turn') * 1000).toBeCloseTo(12.5664, 4);
    // 19.5283°: transverse module 1/cos = 1.06103 mm, which makes the turn 66.667 mm.
    expect(figureOf(level({ 'rack.helix-angle': '19.5283°' }), 'drive.travel-per-shaft-turn') * 1000).toBeCloseTo(66.6667, 3);
  });

  it('torque is force times 10 mm: 7 N / 0.9 up, 18.72 N driving a lift backwards at 90 %', () => {
    const losses = { 'rack.efficiency': '90 %' };
    // (4 + 1.5 · 2) N · 10 mm / 0.9
    expect(figureOf(level(losses), 'drive.shaft-lifting-torque')).toBeCloseTo((7 * 0.01) / 0.9, 9);
    // 1.5 · 9.81 − 4 = 10.715 N drive the pinion down.
    expect(figureOf(upright(losses), 'drive.shaft-lowering-torque')).toBeCloseTo(-10.715 * 0.01 * 0.9, 9);
    expect(figureOf(upright(losses), 'drive.shaft-holding-torque')).toBeCloseTo(14.715 * 0.01, 9);
  });

  it('inertia of a steel disc 20 mm by 12 mm: 7850 · π · 0.02⁴ · 0.012/32 = 14.8 g·cm²', () => {
    expect(figureOf(level(), 'drive.shaft-inertia') * 1e7).toBeCloseTo(14.8, 1);
  });

  it('has nothing to say of screws, nuts and belts', () => {
    const ids = level().figures().filter(({ id }) => ['screw', 'nut', 'belt', 'pulley'].some((scope) => id.startsWith(`${scope}.`)) && level().result(id).state !== 'left-out');
    expect(ids).toEqual([]);
  });
});

describe('forces on the teeth', () => {
  it('7 N along the rack part the teeth with 7 · tan 20° = 2.548 N; 40 N of spring are 15.7 times that', () => {
    expect(figureOf(level(), 'rack.tooth-force')).toBeCloseTo(7, 12);
    expect(figureOf(level(), 'rack.separating-force')).toBeCloseTo(2.5478, 4);
    expect(figureOf(level(), 'rack.preload-reserve')).toBeCloseTo(15.7, 1);
    expect(level({ 'rack.preload': null }).result('rack.preload-reserve').state).toBe('missing');
  });

  it('on a lift the way up decides: 14.715 + 4 + 3 N', () => {
    expect(figureOf(upright(), 'rack.tooth-force')).toBeCloseTo(21.715, 9);
    // A counterbalance of 60 N turns it round: down is harder, 14.715 − 60 − 4 = −49.285 N, and 3 N to speed up.
    expect(figureOf(upright({ counterbalance: { force: '60 N' } }), 'rack.tooth-force')).toBeCloseTo(52.285, 9);
  });

  it('a spring of 40 N presses both flanks: (40/tan 20° + 7)/2 = 58.45 N on one, 15.75 MPa', () => {
    // 1.04098 · 58.450 N/(12 mm · 1 mm · 0.322)
    expect(figureOf(level(), 'pinion.root-stress') / 1e6).toBeCloseTo(15.747, 2);
    // Without spring 7 N: 1.886 MPa, and in the rack 0.322/0.485 of that.
    const loose = level({ 'rack.preload': null });
    expect(figureOf(loose, 'pinion.root-stress') / 1e6).toBeCloseTo(1.8859, 3);
    expect(figureOf(loose, 'rack.root-stress') / 1e6).toBeCloseTo(1.2521, 3);
  });

  it('twice the width, half the stress; the narrower part counts', () => {
    const at = (rack: string, pinion: string): number => figureOf(level({ 'rack.face-width': rack, 'pinion.face-width': pinion }), 'pinion.root-stress');
    expect(at('24 mm', '24 mm')).toBeCloseTo(at('12 mm', '12 mm') / 2, 6);
    expect(at('24 mm', '12 mm')).toBe(at('12 mm', '12 mm'));
  });

  it('teeth that cannot mesh are refused, not guessed', () => {
    expect(level({ 'rack.pressure-angle': '12°' }).result('pinion.root-stress')).toMatchObject({ state: 'unable' });
    expect(level({ 'rack.pressure-angle': '14.5°' }).result('pinion.root-stress')).toMatchObject({ state: 'computed' });
    expect(level({ 'rack.pressure-angle': '60°' }).result('rack.separating-force')).toMatchObject({ state: 'unable' });
  });

  it('names the entry that is missing', () => {
    expect(level({ 'rack.module': null }).result('pinion.pitch-diameter')).toEqual({ state: 'missing', missing: ['rack.module'] });
    expect(level({ 'pinion.material': null }).result('pinion.stress-use')).toMatchObject({ state: 'missing' });
  });
});

describe('a pinion on the shaft of the motor', () => {
  it('pulls with force, separation and spring: √(7² + 40²) = 40.6 N; 200 N at 15 mm are 200 N at 15 mm', () => {
    const direct = level({ 'drive.reduction': null });
    expect(figureOf(direct, 'motor.radial-load')).toBeCloseTo(Math.hypot(7, 40), 9);
    expect(figureOf(direct, 'motor.radial-load-use')).toBeCloseTo(Math.hypot(7, 40) / 200, 9);
    // Behind a gear head its bearings take it.
    expect(level().result('motor.radial-load').state).toBe('left-out');
  });
});

describe('stiffness of a rack drive', () => {
  it('by hand: reduction 700 N·m/rad on 10 mm: 7 N/µm; teeth written 50 N/µm; no motor spring: 1/(1/7 + 1/50) = 6.140 N/µm', () => {
    const evaluation = level({ 'rack.stiffness': '50 N/µm', 'motor.holding-torque': null });
    expect(figureOf(evaluation, 'drive.axial-stiffness') / 1e6).toBeCloseTo(6.1404, 4);
    expect(evaluation.result('drive.softest-share')).toMatchObject({ note: 'the twist of the reduction' });
  });

  it('two stages: 100 N·m/rad before 5 : 1 are 2500 behind it; with 400 there 344.8 N·m/rad', () => {
    const reduction = [{ kind: 'spur', ratio: 3, 'torsional-stiffness': '100 N·m/rad' }, { kind: 'planetary', ratio: 5, 'torsional-stiffness': '400 N·m/rad' }];
    expect(level({ 'drive.reduction': reduction }).bounds('drive.reduction-stiffness')?.nominal).toBeCloseTo(344.83, 2);
    // One that is not known leaves the whole unknown, and the stiffness says so.
    const half = level({ 'drive.reduction': [reduction[0], { kind: 'planetary', ratio: 5 }] });
    expect(half.bounds('drive.reduction-stiffness')).toBeUndefined();
    expect(half.result('drive.axial-stiffness')).toMatchObject({ state: 'computed', note: expect.stringContaining('without the reduction') as string });
  });

  it('a belt stage of AT3, 10 mm, steel, 20 to 60 teeth, 60 mm apart: 2 c_sp r²/L from the catalogue’s range', () => {
    // Radii 9.549 and 28.648 mm, free span √(60² − 19.099²) = 56.879 mm; 2 · (28.648 mm)²/56.879 mm = 0.028858 m per unit of c_sp.
    const stage = { kind: 'belt', 'driving-teeth': 20, 'driven-teeth': 60, profile: 'AT3', width: '10 mm', cord: 'steel', 'center-distance': '60 mm' };
    const taut = level({ 'drive.reduction': [{ ...stage, tension: '50 N' }] }).bounds('drive.reduction-stiffness');
    const unsaid = level({ 'drive.reduction': [stage] }).bounds('drive.reduction-stiffness');
    // The same belt as a drive of its own names its c_sp.
    const specific = evaluate('belt', { 'belt.profile': 'AT3', 'belt.width': '10 mm', 'belt.cord': 'steel' }).bounds('belt.specific-stiffness');
    expect(taut?.nominal).toBeCloseTo((specific?.nominal ?? 0) * 0.028858, 0);
    expect((unsaid?.low ?? 0) / (taut?.low ?? 1)).toBeCloseTo(0.5, 6);
    expect(unsaid?.nominal).toBe(taut?.nominal);
  });

  it('a screw counts its reduction too', () => {
    // 30 N·m/rad on a lead of 3 mm: (2π/3 mm)² · 30 = 131.6 N/µm. By hand: the give rises by 1/131.59 µm/N.
    const give = (reduction: readonly object[]): number => 1e6 / figureOf(evaluate('lift', { 'drive.reduction': reduction }), 'drive.axial-stiffness');
    expect(give([{ kind: 'spur', ratio: 2, 'torsional-stiffness': '30 N·m/rad' }]) - give([{ kind: 'spur', ratio: 2 }])).toBeCloseTo(1 / 131.595, 6);
  });
});

describe('play and errors of a rack', () => {
  it('set fast: backlash, gap of the run-out, and 0.1° of the gear head', () => {
    // 0.1 mm + 2 · 20 µm · tan 20° = 14.56 µm + 17.45 µm.
    const fast = level({ 'rack.preload': null, 'rack.backlash': '0.1 mm', 'pinion.eccentricity': '0.01 mm' });
    expect(figureOf(fast, 'rack.play') * 1e6).toBeCloseTo(132.01, 1);
    expect(figureOf(level({ 'pinion.eccentricity': '0.01 mm' }), 'rack.play') * 1e6).toBeCloseTo(17.453, 2);
  });

  it('a weight closes it while it is larger than friction and inertia', () => {
    expect(upright().result('rack.lost-motion')).toMatchObject({ note: expect.stringContaining('weight') as string });
    // The work may push up: 14.715 − 4 − 3 − 8 < 0.
    const worked = upright({ 'axis.process-force': '8 N' }).result('rack.lost-motion');
    expect('note' in worked ? worked.note : undefined).toBeUndefined();
    // 14.715 − 4 − 1.5 · 8 < 0
    const quick = upright({ 'motion.acceleration': '8 m/s²' }).result('rack.lost-motion');
    expect('note' in quick ? quick.note : undefined).toBeUndefined();
  });

  it('errors add up: 0.05 mm + 10 µm/cos 20° + 0.1° · 10 mm', () => {
    const reduction = [{ kind: 'planetary', ratio: 5, backlash: '0°', 'position-error': '0.1°' }];
    expect(figureOf(level({ 'pinion.eccentricity': '0.01 mm', 'drive.reduction': reduction }), 'rack.tooth-error') * 1e6).toBeCloseTo(50 + 10.642 + 17.453, 2);
  });

  it('contact ratio of 20 teeth at 20°: by hand 1.769', () => {
    // r_a 11, r_b 9.3969: √(121 − 88.302) = 5.7182; r sin α = 3.4202; m/sin α = 2.9238; (5.7182 − 3.4202 + 2.9238)/(π · 0.93969) = 5.2218/2.9521.
    expect(figureOf(level(), 'rack.contact-ratio')).toBeCloseTo(1.7689, 3);
  });
});
