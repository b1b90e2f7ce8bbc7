/** Torques at the motor, end to end: from a description to the figure, against hand calculations. */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { motorTorque } from '../../server/src/mechanics/axis-torque.ts';
import { allFigures } from '../../server/src/figures/registry.ts';
import { evaluate, figureOf } from '../support/evaluate.ts';

/** Without friction the torque of a screw is F·l/2π. Tr12x3: 0.477465 mm; 1605: 0.795775 mm. */
const frictionless = {
  'conditions.gravity': '9.81 m/s²', 'nut.friction': '0', 'thrust-bearing.friction': '0', 'guides.friction-force': '0 N', 'motion.acceleration': '1 mm/s²',
};
const boundsOf = (evaluation: ReturnType<typeof evaluate>, id: string) => {
  const bounds = evaluation.bounds(id);
  if (!bounds) throw new Error(`${id}: ${JSON.stringify(evaluation.result(id))}`);
  return bounds;
};

describe('demanded torque', () => {
  test('hand calculation: 4 kg on two screws, 19.62 N · 0.477465 mm = 9.368 N·mm at steady speed', () => {
    expect(figureOf(evaluate('lift', frictionless), 'motor.cruising-torque')).toBeCloseTo(9.368e-3, 6);
  });
  test('hand calculation: one motor for both screws gives twice that; through 2 : 1 at 95 % a half and a nineteenth more', () => {
    expect(figureOf(evaluate('lift', { ...frictionless, 'drive.motors': 'shared' }), 'motor.cruising-torque')).toBeCloseTo(18.736e-3, 6);
    const reduced = evaluate('lift', { ...frictionless, 'drive.reduction': [{ kind: 'belt', 'driving-teeth': 20, 'driven-teeth': 40, efficiency: '0.95' }] });
    expect(figureOf(reduced, 'motor.cruising-torque')).toBeCloseTo(9.368e-3 / (2 * 0.95), 6);
    expect(figureOf(reduced, 'motor.speed')).toBeCloseTo((2 * 10 * 2 * Math.PI) / 3, 9);
    expect(figureOf(reduced, 'axis.travel-per-turn')).toBeCloseTo(1.5e-3, 12);
  });
  test('hand calculation of acceleration: 0.2 m/s² adds 2 kg·0.2·0.477465e-3 and J·418.88 rad/s² (rotor 6.8e-6, screw as figured)', () => {
    const evaluation = evaluate('lift', { ...frictionless, 'motion.acceleration': '200 mm/s²' });
    const screw = figureOf(evaluation, 'screw.inertia');
    expect(figureOf(evaluation, 'motor.lifting-torque')).toBeCloseTo(9.368e-3 + 0.4 * 0.477465e-3 + (6.8e-6 + screw) * 418.879, 6);
  });
  test('signs on the way down: a ball screw is driven by its load (−), a locking thread must be pushed (+)', () => {
    const ball = evaluate('ball-lift', frictionless);
    // 39.24 N · 0.795775 mm = 31.23 N·mm, without friction all of it comes back.
    expect(figureOf(ball, 'motor.lowering-torque')).toBeCloseTo(-31.226e-3, 5);
    expect(figureOf(ball, 'motor.holding-torque-needed')).toBeCloseTo(31.226e-3, 5);
    const locking = evaluate('lift', { ...frictionless, 'nut.friction': '0.15' });
    expect(figureOf(locking, 'motor.lowering-torque')).toBeGreaterThan(0);
    expect(figureOf(locking, 'motor.holding-torque-needed')).toBe(0);
  });
  test('a reduction driven backwards gives less: 31.226 N·mm · 0.95/2 through a belt of 2 : 1', () => {
    const ball = evaluate('ball-lift', { ...frictionless, 'drive.reduction': [{ kind: 'belt', ratio: '2', efficiency: '0.95' }] });
    expect(figureOf(ball, 'motor.lowering-torque')).toBeCloseTo((-31.226e-3 * 0.95) / 2, 5);
  });
  test('a worm with 40 % driven backwards locks: 2 − 1/0.4 = −0.5, and the motor pushes 31.226·0.5/20 down', () => {
    const ball = evaluate('ball-lift', { ...frictionless, 'drive.reduction': [{ kind: 'worm', ratio: '20', efficiency: '0.4' }] });
    expect(figureOf(ball, 'motor.lowering-torque')).toBeCloseTo((31.226e-3 * 0.5) / 20, 6);
    expect(figureOf(ball, 'motor.holding-torque-needed')).toBe(0);
  });
  test('stopping on the way down, hand calculation: (9.81 + 1)·4 kg · 0.795775e-3 and the inertia at 1256.6 rad/s² on top', () => {
    const ball = evaluate('ball-lift', { ...frictionless, 'motion.acceleration': '1 m/s²' });
    const screw = figureOf(ball, 'screw.inertia');
    expect(figureOf(ball, 'motor.stopping-torque')).toBeCloseTo(-(4 * 10.81 * 0.795775e-3 + (6.8e-6 + screw) * 1256.64), 5);
    expect(figureOf(ball, 'motor.starting-down-torque')).toBeCloseTo(-(4 * 8.81 * 0.795775e-3 - (6.8e-6 + screw) * 1256.64), 5);
  });
  test('against the chain of efficiencies, reckoned from the masses without the torques of the screw', () => {
    for (const base of ['lift', 'ball-lift']) {
      const evaluation = evaluate(base, {
        'thrust-bearing.friction': '0', 'nut.friction': base === 'lift' ? '0.12' : '0.005', 'motion.acceleration': '1.5 m/s²', 'conditions.gravity': '9.81 m/s²',
        'drive.reduction': [{ kind: 'belt', ratio: '1.5', efficiency: '0.96', 'rotational-inertia': '8 g·cm²' }],
      });
      const chain = {
        travelPerTurn: base === 'lift' ? 0.003 : 0.005, efficiency: figureOf(evaluation, 'screw.efficiency'), reverseEfficiency: figureOf(evaluation, 'screw.reverse-efficiency'),
        dragTorque: 0, screwInertia: figureOf(evaluation, 'screw.inertia'), motorInertia: 6.8e-6,
        stages: [{ ratio: 1.5, efficiency: 0.96, reverseEfficiency: 0.96, fastInertia: 8e-7, slowInertia: 0, backlash: 0 }],
      };
      const units = base === 'lift' ? 2 : 1;
      const force = (a: number, direction: number): number => (4 * (9.81 + a) + 4 * direction) / units;
      expect(figureOf(evaluation, 'motor.lifting-torque')).toBeCloseTo(motorTorque(chain, force(1.5, 1), 1, 1.5).torque, 7);
      expect(figureOf(evaluation, 'motor.lowering-torque')).toBeCloseTo(-motorTorque(chain, force(0, -1), -1, 0).torque, 7);
      expect(figureOf(evaluation, 'motor.stopping-torque')).toBeCloseTo(-motorTorque(chain, force(1.5, -1), -1, 1.5).torque, 7);
      expect(figureOf(evaluation, 'motor.starting-down-torque')).toBeCloseTo(-motorTorque(chain, force(-1.5, -1), -1, -1.5).torque, 7);
    }
  });
  test('property: twice the mass, twice the torque at steady speed, in either direction and at rest', () => {
    fc.assert(fc.property(fc.integer({ min: 1, max: 100 }), fc.constantFrom('lift', 'ball-lift'), (mass, base) => {
      const one = evaluate(base, { ...frictionless, 'nut.friction': '0.1', 'mass.mass': `${mass} kg` });
      const two = evaluate(base, { ...frictionless, 'nut.friction': '0.1', 'mass.mass': `${2 * mass} kg` });
      for (const id of ['motor.cruising-torque', 'motor.lowering-torque', 'motor.holding-torque-needed']) {
        expect(figureOf(two, id)).toBeCloseTo(2 * figureOf(one, id), 9);
      }
    }), { numRuns: 15 });
  });
  test('reflected inertia, hand calculation: 10 kg on one screw of 8 mm: 162.1 g·cm² and the screw; a quarter of both through 2 : 1', () => {
    const direct = evaluate('lift', { 'drive.units': 1, 'screw.size': 'Tr8x8(P2)', 'mass.mass': '10 kg' });
    const screw = figureOf(direct, 'screw.inertia');
    expect(figureOf(direct, 'motor.reflected-inertia')).toBeCloseTo(1.6211e-5 + screw, 9);
    const reduced = evaluate('lift', { 'drive.units': 1, 'screw.size': 'Tr8x8(P2)', 'mass.mass': '10 kg', 'drive.reduction': [{ kind: 'spur', ratio: '2', 'rotational-inertia': '20 g·cm²' }] });
    expect(figureOf(reduced, 'motor.reflected-inertia')).toBeCloseTo((1.6211e-5 + screw) / 4 + 2e-6, 9);
  });
});

describe('torque available', () => {
  test('hand calculation below the corner: 0.45 N·m/√2 = 0.3182 at the rated current as peak; all of it as root mean square', () => {
    expect(figureOf(evaluate('lift'), 'motor.available-torque')).toBeCloseTo(0.3182, 4);
    expect(figureOf(evaluate('lift', { 'drive.current-setting-as': 'rms' }), 'motor.available-torque')).toBeCloseTo(0.45, 4);
  });
  test('not said whether peak or rms: torque from the peak on, heat up to the root mean square', () => {
    const evaluation = evaluate('lift', { 'drive.current-setting-as': null });
    const standing = boundsOf(evaluation, 'motor.standing-torque');
    expect(standing.nominal).toBeCloseTo(0.3182, 4);
    expect(standing.low).toBeCloseTo(0.3182, 4);
    expect(standing.high).toBeCloseTo(0.45, 4);
    // I_p² R: 2.25·2 = 4.5 W as peak, 9 W as root mean square.
    expect(boundsOf(evaluation, 'motor.copper-loss').high).toBeCloseTo(9, 9);
    expect(boundsOf(evaluation, 'motor.current-use').high).toBeCloseTo(1, 9);
  });
  test('no credit beyond 1.2 times the rated current: 0.45·1.2 = 0.54 N·m at 2 A rms', () => {
    const evaluation = evaluate('lift', { 'drive.current-setting': '2 A', 'drive.current-setting-as': 'rms' });
    expect(figureOf(evaluation, 'motor.standing-torque')).toBeCloseTo(0.54, 9);
    const result = evaluation.result('motor.standing-torque');
    expect(result.state === 'computed' && result.note).toContain('saturates');
  });
  test('hand calculation beyond the corner of 31.125 mm/s: 0.3182·31.125/62.25 = 0.1591 N·m, and the bound is above', () => {
    const evaluation = evaluate('lift', { 'motion.speed': '62.25 mm/s' });
    expect(figureOf(evaluation, 'motor.available-torque')).toBeCloseTo(0.1591, 4);
    expect(figureOf(evaluation, 'motor.upper-torque')).toBeGreaterThan(0.1591);
    const result = evaluation.result('motor.available-torque');
    expect(result.state === 'computed' && result.note).toContain('estimate');
  });
  test('given points go before the estimate: between 100 rpm (0.3) and 300 rpm (0.2 N·m) there are 0.25 at 200 rpm', () => {
    const points = [{ speed: '300 rpm', torque: '0.2 N·m' }, { speed: '100 rpm', torque: '0.3 N·m' }];
    expect(figureOf(evaluate('lift', { 'motor.torque-points': points }), 'motor.available-torque')).toBeCloseTo(0.25, 9);
    // Taken at 48 V, used at 24 V: 200 rpm here is 400 rpm there, beyond the points.
    const halved = evaluate('lift', { 'motor.torque-points': points, 'motor.torque-points-voltage': '48 V' });
    expect(halved.result('motor.available-torque')).toMatchObject({ state: 'unable' });
    // Points need no winding data.
    expect(figureOf(evaluate('lift', { 'motor.torque-points': points, 'motor.inductance': null }), 'motor.available-torque')).toBeCloseTo(0.25, 9);
  });
  test('an uncertain torque of a point counts with its low end', () => {
    const points = [{ speed: '0 rpm', torque: '0.3 N·m ± 0.05 N·m' }, { speed: '300 rpm', torque: '0.3 N·m ± 0.05 N·m' }];
    expect(figureOf(evaluate('lift', { 'motor.torque-points': points }), 'motor.available-torque')).toBeCloseTo(0.25, 9);
  });
  test('what is missing is named', () => {
    const evaluation = evaluate('lift', { 'motor.inductance': null });
    expect(evaluation.result('motor.estimated-torque')).toEqual({ state: 'missing', missing: ['motor.inductance'] });
    const available = evaluation.result('motor.available-torque');
    expect(available.state === 'unable' && available.reason).toContain('inductance');
    expect(evaluate('lift', { 'motion.acceleration': null }).result('motor.lifting-torque')).toEqual({ state: 'missing', missing: ['motion.acceleration'] });
    expect(evaluate('lift', { 'motor.holding-torque': null }).result('motor.standing-torque')).toEqual({ state: 'missing', missing: ['motor.holding-torque'] });
  });
  test('a step angle that is not two-phase is refused', () => {
    expect(evaluate('lift', { 'motor.step-angle': '1.7°' }).result('motor.corner-speed')).toMatchObject({ state: 'unable' });
    // 7.5° are 48 steps, 12 pole pairs: a two-phase can-stack motor.
    expect(evaluate('lift', { 'motor.step-angle': '7.5°' }).result('motor.corner-speed').state).toBe('computed');
  });
  test('its chart: the curve meets the figure at the working point, the band lies around it', () => {
    const evaluation = evaluate('lift', { 'motion.speed': '50 mm/s' });
    const figure = allFigures().get('motor.available-torque');
    const values = figure && evaluation.valuesAt(figure);
    const chart = figure?.chart;
    if (!chart || !values) throw new Error('the figure has a chart');
    const speed = figureOf(evaluation, 'motor.speed');
    const at = values as never;
    expect(chart.curves[0]?.y(speed, at)).toBeCloseTo(figureOf(evaluation, 'motor.available-torque'), 12);
    expect(chart.band?.high(speed, at)).toBeCloseTo(figureOf(evaluation, 'motor.upper-torque'), 12);
    expect(chart.points?.[0]?.x(at)).toBe(speed);
    expect(chart.points?.[0]?.y(at)).toBeCloseTo(figureOf(evaluation, 'motor.lifting-torque'), 12);
    expect(chart.x.to(at)).toBeGreaterThan(speed);
    expect(chart.alt(at)).toContain('1000 rpm');
  });
});

describe('margin and speeds', () => {
  test('hand calculation: 0.3182/(2.342e-3·90) = 1.51 with 90 kg', () => {
    expect(figureOf(evaluate('lift', { ...frictionless, 'mass.mass': '90 kg' }), 'motor.torque-margin')).toBeCloseTo(1.509, 2);
  });
  test('hand calculation: torque used up where 0.3182·31.125/v = 0.1171 (50 kg): 84.6 mm/s, but the estimate ends at 25 rev/s, 75 mm/s', () => {
    const evaluation = evaluate('lift', { ...frictionless, 'mass.mass': '50 kg' });
    expect(figureOf(evaluation, 'axis.torque-speed-limit')).toBeCloseTo(0.075, 9);
    // 100 kg: 0.2342 N·m: 42.3 mm/s; with a margin of 1.5 (0.3513) not even at rest.
    const heavy = evaluate('lift', { ...frictionless, 'mass.mass': '100 kg' });
    expect(figureOf(heavy, 'axis.torque-speed-limit') * 1e3).toBeCloseTo(42.3, 1);
    expect(heavy.result('axis.honest-speed')).toMatchObject({ state: 'unable' });
    // 80 kg: 1.5·0.18737 = 0.28106 N·m: 35.2 mm/s.
    expect(figureOf(evaluate('lift', { ...frictionless, 'mass.mass': '80 kg' }), 'axis.honest-speed') * 1e3).toBeCloseTo(35.2, 1);
  });
  test('bounds: the margin with an uncertain mass lies between those of its ends', () => {
    const margin = boundsOf(evaluate('lift', { ...frictionless, 'mass.mass': '80 kg to 100 kg' }), 'motor.torque-margin');
    expect(margin.low).toBeCloseTo(0.3182 / 0.2342, 2);
    expect(margin.high).toBeCloseTo(0.3182 / 0.18737, 2);
  });
});
