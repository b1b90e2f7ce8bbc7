/** Steps, moves, heat, supply and coupling, end to end, against hand calculations. */
import { describe, expect, test } from 'vitest';
import { evaluate, figureOf } from '../support/evaluate.ts';

const frictionless = {
  'conditions.gravity': '9.81 m/s²', 'nut.friction': '0', 'thrust-bearing.friction': '0', 'guides.friction-force': '0 N', 'motion.acceleration': '1 mm/s²',
};
const boundsOf = (evaluation: ReturnType<typeof evaluate>, id: string) => {
  const bounds = evaluation.bounds(id);
  if (!bounds) throw new Error(`${id}: ${JSON.stringify(evaluation.result(id))}`);
  return bounds;
};

describe('steps', () => {
  test('hand calculation: 3 mm in 200 steps is 15 µm; 16 microsteps are 0.9375 µm and 1066.7 a millimetre', () => {
    const evaluation = evaluate('lift');
    expect(figureOf(evaluation, 'axis.full-step-travel')).toBeCloseTo(15e-6, 12);
    expect(figureOf(evaluation, 'axis.microstep-travel')).toBeCloseTo(0.9375e-6, 12);
    expect(figureOf(evaluation, 'axis.steps-per-length') / 1000).toBeCloseTo(1066.667, 3);
    expect(figureOf(evaluation, 'motor.step-rate')).toBeCloseTo(10666.67, 2);
  });
  test('Groover, open-loop positioning example (from memory): 6 mm, 5 : 1, 48 steps: 40 pulses a millimetre, 333.33 a second at 500 mm/min', () => {
    const evaluation = evaluate('lift', {
      'screw.size': null, 'screw.thread': 'trapezoidal', 'screw.major-diameter': '30 mm', 'screw.pitch': '6 mm', 'screw.starts': 1, 'motor.step-angle': '7.5°',
      'drive.reduction': [{ kind: 'spur', ratio: '5' }], 'controller.microsteps': 1, 'motion.speed': '500 mm/min',
    });
    expect(figureOf(evaluation, 'axis.steps-per-length') / 1000).toBeCloseTo(40, 9);
    expect((figureOf(evaluation, 'motor.speed') * 60) / (2 * Math.PI)).toBeCloseTo(416.67, 2);
    expect(figureOf(evaluation, 'motor.step-rate')).toBeCloseTo(333.33, 2);
  });
  test('layers on whole full steps, hand calculation: 0.25 mm on 15 µm is 16.67 steps, between 0.24 and 0.255 mm', () => {
    const evaluation = evaluate('lift', { 'axis.layer-height': '0.25 mm' });
    expect(figureOf(evaluation, 'axis.layer-height-steps')).toBeCloseTo(16.667, 3);
    expect(figureOf(evaluation, 'axis.layer-height-below')).toBeCloseTo(0.24e-3, 12);
    expect(figureOf(evaluation, 'axis.layer-height-above')).toBeCloseTo(0.255e-3, 12);
    expect(figureOf(evaluate('lift', { 'axis.layer-height': '0.24 mm' }), 'axis.layer-height-above')).toBeCloseTo(0.24e-3, 12);
  });
  test('the step angle of the sheet is taken, 1.8° where it is silent', () => {
    expect(figureOf(evaluate('lift', { 'motor.step-angle': '0.9°' }), 'axis.full-step-travel')).toBeCloseTo(7.5e-6, 12);
    expect(figureOf(evaluate('lift', { 'motor.step-angle': null }), 'axis.full-step-travel')).toBeCloseTo(15e-6, 12);
  });
  test('without microsteps the figures that need them say so', () => {
    expect(evaluate('lift', { 'controller.microsteps': null }).result('axis.steps-per-length')).toEqual({ state: 'missing', missing: ['controller.microsteps'] });
  });
  test('torque behind a microstep, hand calculation: 0.3182·sin(90°/16) = 0.3182·0.098017 = 31.19 N·mm', () => {
    expect(figureOf(evaluate('lift'), 'motor.incremental-torque')).toBeCloseTo(31.19e-3, 5);
  });
  test('lag under load, hand calculation: asin(0.1171/0.3182) = 0.37695; /(2π·50)·3 mm = 3.600 µm (50 kg)', () => {
    expect(figureOf(evaluate('lift', { ...frictionless, 'mass.mass': '50 kg' }), 'axis.lag') * 1e6).toBeCloseTo(3.6, 2);
  });
});

describe('move', () => {
  test('hand calculation: 300 mm at 10 mm/s and 200 mm/s²: 30 s + 0.05 s; one ramp 0.25 mm', () => {
    const evaluation = evaluate('lift');
    expect(figureOf(evaluation, 'axis.move-time')).toBeCloseTo(30.05, 9);
    expect(figureOf(evaluation, 'axis.distance-to-speed')).toBeCloseTo(0.25e-3, 12);
    expect(figureOf(evaluation, 'axis.share-at-speed')).toBeCloseTo(1 - 0.5 / 300, 9);
  });
  test('shortest move with even torque at every speed: 2·√(h/a), a = (T − T₁)/(m/2·l/2π + J·2π/l)', () => {
    const changes = {
      ...frictionless, 'motion.acceleration': '200 mm/s²', 'mass.mass': '100 kg',
      // Nothing but the torque limits it: no step rate is given, and a short free length does not whirl.
      'controller.step-rate': null, 'screw.unsupported-length': '30 mm',
      'motor.torque-points': [{ speed: '0 rpm', torque: '0.3182 N·m' }, { speed: '30000 rpm', torque: '0.3182 N·m' }],
    };
    const evaluation = evaluate('lift', changes);
    const inertia = 6.8e-6 + figureOf(evaluation, 'screw.inertia');
    const a = (0.3182 - 490.5 * 0.477465e-3) / (50 * 0.477465e-3 + (inertia * 2 * Math.PI) / 0.003);
    expect(figureOf(evaluation, 'axis.shortest-move-time')).toBeCloseTo(2 * Math.sqrt(0.3 / a), 3);
  });
  test('a motor that cannot lift has no shortest move', () => {
    expect(evaluate('lift', { ...frictionless, 'mass.mass': '150 kg' }).result('axis.shortest-move-time')).toMatchObject({ state: 'unable' });
  });
  test('start without a ramp, hand calculation without load: ½·2·√(T/(N J)) = √(0.3182/(50·J)) rad/s', () => {
    const evaluation = evaluate('router', { ...frictionless, 'axis.process-force': '0 N' });
    const inertia = 6.8e-6 + figureOf(evaluation, 'motor.reflected-inertia');
    expect(figureOf(evaluation, 'motor.start-speed')).toBeCloseTo(Math.sqrt(0.3182 / (50 * inertia)), 2);
  });
});

describe('rest, detent and spring', () => {
  test('hand calculation: half the current leaves 0.1591 N·m; magnetic spring 50·0.3182 = 15.91 N·m/rad', () => {
    const evaluation = evaluate('lift', { 'drive.rest-current': '50 %' });
    expect(figureOf(evaluation, 'motor.rest-torque')).toBeCloseTo(0.1591, 4);
    expect(figureOf(evaluation, 'motor.magnetic-stiffness')).toBeCloseTo(15.91, 2);
  });
  test('natural frequency, hand calculation with a large rotor: √(15.91/J)/2π', () => {
    const evaluation = evaluate('lift', { 'motor.rotor-inertia': '1000 g·cm²' });
    const inertia = 1e-4 + figureOf(evaluation, 'motor.reflected-inertia');
    expect(figureOf(evaluation, 'motor.natural-frequency')).toBeCloseTo(Math.sqrt(15.91 / inertia) / (2 * Math.PI), 1);
  });
  test('detent at the screw, hand calculation: 15 N·mm · 3, shared by two screws of one motor', () => {
    const reduction = [{ kind: 'belt', ratio: '3' }];
    expect(figureOf(evaluate('lift', { 'drive.reduction': reduction }), 'motor.detent-at-screw')).toBeCloseTo(0.045, 12);
    expect(figureOf(evaluate('lift', { 'drive.reduction': reduction, 'drive.motors': 'shared' }), 'motor.detent-at-screw')).toBeCloseTo(0.0225, 12);
  });
  test('detent not given: 3 % to 10 % of the holding torque, the low end nominal', () => {
    const bounds = boundsOf(evaluate('lift', { 'motor.detent-torque': null }), 'motor.detent-at-screw');
    expect(bounds.nominal).toBeCloseTo(0.03 * 0.45, 12);
    expect(bounds.low).toBeCloseTo(0.03 * 0.45, 12);
    expect(bounds.high).toBeCloseTo(0.1 * 0.45, 12);
  });
});

describe('heat and supply', () => {
  test('hand calculation: 4.5 W; R_th bound from the sheet 80/(9·(1 + 80/255)) = 6.766 K/W; rise 30.45/(1 − 30.45/255) = 34.58 K', () => {
    const evaluation = evaluate('lift');
    expect(figureOf(evaluation, 'motor.copper-loss')).toBeCloseTo(4.5, 12);
    expect(boundsOf(evaluation, 'motor.thermal-resistance').nominal).toBeCloseTo(6.766, 3);
    expect(figureOf(evaluation, 'motor.winding-rise')).toBeCloseTo(34.58, 2);
  });
  test('at the rating as root mean square the winding rises by the 80 K of its class', () => {
    expect(figureOf(evaluate('lift', { 'drive.current-setting-as': 'rms' }), 'motor.winding-rise')).toBeCloseTo(80, 6);
  });
  test('too much current never settles', () => {
    expect(evaluate('lift', { 'drive.current-setting': '4.5 A', 'drive.current-setting-as': 'peak' }).result('motor.winding-rise')).toMatchObject({ state: 'unable' });
  });
  test('hand calculation: two motors, (0.196 W + 4.5 W)/0.85/24 V each, 0.460 A together; one for both screws 0.240 A', () => {
    expect(figureOf(evaluate('lift', frictionless), 'drive.supply-current')).toBeCloseTo(0.4604, 3);
    // One motor: (0.392 + 4.5)/0.85/24.
    expect(figureOf(evaluate('lift', { ...frictionless, 'drive.motors': 'shared' }), 'drive.supply-current')).toBeCloseTo(0.2398, 3);
  });
  test('hand calculation: 20 kg lowered at 0.1 m/s return 19.62 − 4.5 W', () => {
    const evaluation = evaluate('ball-lift', { ...frictionless, 'mass.mass': '20 kg', 'motion.speed': '100 mm/s' });
    expect(figureOf(evaluation, 'drive.returned-power')).toBeCloseTo(15.12, 2);
  });
  test('a locking thread returns nothing', () => {
    expect(figureOf(evaluate('lift'), 'drive.returned-energy')).toBe(0);
  });
  test('pushed by hand, hand calculation: 0.45/(√2·1.5)·20.944 rad/s = 4.443 V', () => {
    expect(figureOf(evaluate('lift'), 'motor.hand-pushed-voltage')).toBeCloseTo(4.443, 3);
  });
});

describe('reduction put together from its stages', () => {
  const two = [{ kind: 'belt', 'driving-teeth': 20, 'driven-teeth': 50, efficiency: '0.96', backlash: '0.2°', 'rotational-inertia': '10 g·cm²' }, { kind: 'planetary', ratio: '4', efficiency: '0.9', backlash: '0.5°', 'rotational-inertia': '50 g·cm²' }];
  test('hand calculation: 2.5·4 = 10; 0.96·0.9; 0.96·(2 − 1/0.9); 0.2°/4 + 0.5°; 10 + 50/6.25 g·cm²', () => {
    const evaluation = evaluate('lift', { 'drive.reduction': two });
    expect(boundsOf(evaluation, 'drive.reduction-ratio').nominal).toBeCloseTo(10, 12);
    expect(boundsOf(evaluation, 'drive.reduction-efficiency').nominal).toBeCloseTo(0.864, 12);
    expect(boundsOf(evaluation, 'drive.reduction-reverse-efficiency').nominal).toBeCloseTo(0.96 * (2 - 1 / 0.9), 12);
    expect((boundsOf(evaluation, 'drive.reduction-backlash').nominal * 180) / Math.PI).toBeCloseTo(0.55, 12);
    expect(boundsOf(evaluation, 'drive.reduction-inertia').nominal * 1e7).toBeCloseTo(18, 9);
  });
  test('efficiency not given: the usual range of the kind, marked as such', () => {
    const evaluation = evaluate('lift', { 'drive.reduction': [{ kind: 'belt', ratio: '2' }] });
    expect(boundsOf(evaluation, 'drive.reduction-efficiency')).toMatchObject({ low: 0.95, nominal: 0.965, high: 0.98 });
    const input = evaluation.input('drive.reduction-efficiency');
    expect(input.state === 'known' && input.origin).toMatchObject({ from: 'several', parts: [{ origin: { from: 'handbook', weak: true } }] });
  });
  test('a stage whose ratio is not known makes the ratio missing, never 1', () => {
    expect(evaluate('lift', { 'drive.reduction': [{ kind: 'belt' }] }).result('motor.speed')).toEqual({ state: 'missing', missing: ['drive.reduction-ratio'] });
  });
  test('without a reduction the motor drives directly', () => {
    expect(boundsOf(evaluate('lift'), 'drive.reduction-ratio').nominal).toBe(1);
    expect(boundsOf(evaluate('lift'), 'drive.reduction-backlash').nominal).toBe(0);
  });
});

describe('coupling', () => {
  test('hand calculation: 19.62 N · 0.477465 mm and J·2.094 rad/s² twist 50 N·m/rad by 0.19 mrad, 0.09 µm', () => {
    const evaluation = evaluate('lift', { ...frictionless, 'coupling.torsional-stiffness': '50 N·m/rad' });
    expect(figureOf(evaluation, 'coupling.wind-up') * 1e6).toBeCloseTo((9.376e-3 / 50 / (2 * Math.PI)) * 3000, 3);
  });
  test('bores are read in their order, the motor first', () => {
    const evaluation = evaluate('lift', { 'coupling.bores': ['6.35 mm', '10 mm'] });
    expect(boundsOf(evaluation, 'coupling.motor-bore').nominal).toBeCloseTo(6.35e-3, 12);
    expect(boundsOf(evaluation, 'coupling.screw-bore').nominal).toBeCloseTo(10e-3, 12);
    expect(figureOf(evaluation, 'coupling.motor-bore-play')).toBeCloseTo(1.35e-3, 12);
    expect(figureOf(evaluation, 'coupling.screw-bore-play')).toBeCloseTo(-2e-3, 12);
  });
  test('behind a reduction the motor side is not the motor', () => {
    expect(evaluate('lift', { 'drive.reduction': [{ kind: 'belt', ratio: '2' }] }).result('coupling.motor-bore-play')).toMatchObject({ state: 'unable' });
  });
  test('without a coupling its figures are left out', () => {
    expect(evaluate('lift', { coupling: null }).result('coupling.torque')).toEqual({ state: 'left-out' });
  });
});
