/** DC, brushless and closed-loop motors, limits of jerk and the move as a whole, end to end, against hand calculations. */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { Evaluation } from '../../server/src/figures/evaluation.ts';
import { evaluate, figureOf } from '../support/evaluate.ts';

/** No friction anywhere and 40 kg: one screw of 3 mm lead takes 40/2·9.81·3 mm/2π = 0.0936777 N·m, up, down and at rest. */
const weight = { 'conditions.gravity': '9.81 m/s²', 'nut.friction': '0', 'thrust-bearing.friction': '0', 'guides.friction-force': '0 N', 'mass.mass': '40 kg' };
const STEADY = 20 * 9.81 * (0.003 / (2 * Math.PI));
const slow = { ...weight, 'motion.acceleration': '1 mm/s²' };
const motor = { kind: 'dc-motor', 'torque-constant': '0.1 N·m/A', resistance: '1 Ω', 'rotor-inertia': '60 g·cm²', 'encoder-counts': 4000 };
const dc = (changes: Readonly<Record<string, unknown>> = {}) => ({ motor: { ...motor, ...changes } });
const brushless = (changes: Readonly<Record<string, unknown>> = {}) => ({ motor: { ...motor, kind: 'brushless', ...changes } });
/** 10 mm/s on 3 mm a turn. */
const SPEED = (2 * Math.PI * 10) / 3;

const noteOf = (evaluation: Evaluation, id: string): string => {
  const result = evaluation.result(id);
  return result.state === 'computed' ? (result.note ?? '') : '';
};
const wordsOf = (evaluation: Evaluation, id: string): string => {
  const result = evaluation.result(id);
  if (result.state !== 'computed') throw new Error(JSON.stringify(result));
  return evaluation.registry.variants(id)[0]?.inWords?.(result) ?? '';
};

describe('torque of a DC motor', () => {
  test('by voltage, hand calculation: 0.1·((24 − 0.1·20.944)/1 − 0.2) = 2.17056 N·m', () => {
    expect(figureOf(evaluate('lift', dc({ 'no-load-current': '0.2 A' })), 'motor.available-torque')).toBeCloseTo(0.1 * (24 - 0.1 * SPEED - 0.2), 9);
  });
  test('by amplifier 0.1·(5 − 0.2) = 0.48 N·m, by peak torque 0.4 N·m, and each says so', () => {
    const amplifier = evaluate('lift', { ...dc({ 'no-load-current': '0.2 A' }), 'drive.current-limit': '5 A' });
    expect(figureOf(amplifier, 'motor.available-torque')).toBeCloseTo(0.48, 12);
    expect(noteOf(amplifier, 'motor.available-torque')).toContain('amplifier');
    const peak = evaluate('lift', { ...dc({ 'peak-torque': '0.4 N·m' }), 'drive.current-limit': '5 A' });
    expect(figureOf(peak, 'motor.available-torque')).toBeCloseTo(0.4, 12);
    expect(noteOf(peak, 'motor.available-torque')).toContain('peak torque');
  });
  test('it ends at (24 − 0.2)/0.1 = 238 rad/s, and at rest gives 0.1·23.8 = 2.38 N·m', () => {
    const evaluation = evaluate('lift', dc({ 'no-load-current': '0.2 A' }));
    expect(figureOf(evaluation, 'motor.no-load-speed')).toBeCloseTo(238, 6);
    expect(figureOf(evaluation, 'motor.standing-torque')).toBeCloseTo(2.38, 9);
  });
  test('what is missing is named; figures of steps are left out', () => {
    const evaluation = evaluate('lift', { motor: { kind: 'dc-motor', resistance: '1 Ω', 'rotor-inertia': '60 g·cm²' } });
    expect(evaluation.result('motor.available-torque')).toEqual({ state: 'missing', missing: ['motor.torque-constant'] });
    expect(evaluation.result('axis.count-travel')).toEqual({ state: 'missing', missing: ['motor.encoder-counts'] });
    for (const id of ['axis.full-step-travel', 'axis.microstep-travel', 'axis.steps-per-length', 'axis.dead-band', 'axis.lag', 'axis.start-speed', 'motor.step-rate', 'motor.corner-speed', 'motor.current-use', 'motor.magnetic-stiffness', 'motor.resonance-speed', 'motor.rest-factor', 'axis.layer-height-steps']) {
      expect(evaluation.result(id).state, id).toBe('left-out');
    }
    for (const id of ['axis.count-travel', 'motor.rms-torque-use', 'motor.speed-use', 'motor.amplifier-use', 'motor.no-load-speed']) expect(evaluate('lift').result(id).state, id).toBe('left-out');
  });
  test('counts: 3 mm over 4000 is 0.75 µm; 1333.3 a millimetre; 20.944/2π·4000 = 13 333 a second', () => {
    const evaluation = evaluate('lift', dc());
    expect(figureOf(evaluation, 'axis.count-travel')).toBeCloseTo(0.75e-6, 12);
    expect(figureOf(evaluation, 'axis.counts-per-length') / 1000).toBeCloseTo(1333.333, 3);
    expect(figureOf(evaluation, 'motor.count-rate')).toBeCloseTo(13333.33, 2);
  });
});

describe('torque of a brushless motor', () => {
  test('an ampere of root mean square is 1.41 of peak: at rest 0.1·(24/√3)/(½·1·√2) = 1.9596 N·m as rms, √2·that as peak', () => {
    // Torque per peak ampere 0.1/√2; peak current (24/√3)/0.5 Ω = 27.713 A.
    expect(figureOf(evaluate('lift', brushless({ 'torque-constant-as': 'rms' })), 'motor.standing-torque')).toBeCloseTo((0.1 / Math.SQRT2) * 27.7128, 4);
    expect(figureOf(evaluate('lift', brushless({ 'torque-constant-as': 'peak' })), 'motor.standing-torque')).toBeCloseTo(2.77128, 4);
  });
  test('taken as root mean square where nothing is said', () => {
    expect(figureOf(evaluate('lift', brushless()), 'motor.standing-torque')).toBeCloseTo((0.1 / Math.SQRT2) * 27.7128, 4);
  });
  test('the amplifier counts the same amperes: 5 A of root mean square give 0.5 N·m, 5 A of peak with a constant of peak too', () => {
    for (const as of ['rms', 'peak']) expect(figureOf(evaluate('lift', { ...brushless({ 'torque-constant-as': as }), 'drive.current-limit': '5 A' }), 'motor.available-torque')).toBeCloseTo(0.5, 12);
  });
  test('inductance and pole pairs take from it, at 20 times the speed', () => {
    const fast = { 'motion.speed': '200 mm/s' };
    const without = figureOf(evaluate('lift', { ...fast, ...brushless({ 'torque-constant-as': 'peak' }) }), 'motor.available-torque');
    const found = figureOf(evaluate('lift', { ...fast, ...brushless({ 'torque-constant-as': 'peak', inductance: '2 mH', 'pole-pairs': 4 }) }), 'motor.available-torque');
    // No inductance: (13.8564 − 0.1·⅔·418.88)/0.5 is negative: nothing left. So at 100 mm/s, by hand:
    expect([without, found]).toEqual([0, 0]);
    const half = { 'motion.speed': '90 mm/s' };
    // 188.496 rad/s: e = 12.5664 V; x = 4·188.496·1 mH = 0.753982 Ω; (0.5 i + 12.5664)² + (0.753982 i)² = 192: i = (−6.2832 + √(39.4786 + 0.818489·34.0863))/0.818489 = 2.3522 A.
    expect(figureOf(evaluate('lift', { ...half, ...brushless({ 'torque-constant-as': 'peak', inductance: '2 mH', 'pole-pairs': 4 }) }), 'motor.available-torque')).toBeCloseTo(0.23522, 4);
    // Without it (13.8564 − 12.5664)/0.5 = 2.58 A.
    expect(figureOf(evaluate('lift', { ...half, ...brushless({ 'torque-constant-as': 'peak' }) }), 'motor.available-torque')).toBeCloseTo(0.258, 3);
  });
});

describe('torque, current and heat over the duty', () => {
  test('weight alone is the same all the time: 0.09368 N·m, 0.9368 A, 0.8776 W; brushless 3/2 of that for amperes of root mean square, 3/4 for peak', () => {
    const evaluation = evaluate('lift', { ...slow, ...dc() });
    expect(figureOf(evaluation, 'motor.rms-torque')).toBeCloseTo(STEADY, 4);
    expect(figureOf(evaluation, 'motor.demanded-current')).toBeCloseTo(STEADY / 0.1, 3);
    expect(figureOf(evaluation, 'motor.copper-loss')).toBeCloseTo(0.8776, 3);
    expect(figureOf(evaluate('lift', { ...slow, ...brushless() }), 'motor.copper-loss')).toBeCloseTo(1.5 * 0.8776, 3);
    expect(figureOf(evaluate('lift', { ...slow, ...brushless({ 'torque-constant-as': 'peak' }) }), 'motor.copper-loss')).toBeCloseTo(0.75 * 0.8776, 3);
  });
  test('a level axis: ramps and rest, by hand', () => {
    // No friction, level: ± T_a in both ramps of 0.25 s each of a move of 300/100 + 0.25 s, nothing else. Half of the time in motion.
    const changes = { ...weight, ...dc(), 'axis.direction': 'horizontal', 'axis.process-force': '0 N', 'motion.speed': '100 mm/s', 'motion.acceleration': '400 mm/s²', 'motion.duty': '50 %' };
    const evaluation = evaluate('lift', changes);
    const ramp = figureOf(evaluation, 'motor.lifting-torque');
    const expected = ramp * Math.sqrt((0.5 * 0.5) / 3.25);
    expect(figureOf(evaluation, 'motor.rms-torque') / expected).toBeCloseTo(1, 6);
    expect(figureOf(evaluation, 'motor.peak-demanded-torque')).toBeCloseTo(ramp, 12);
    // With a limit of jerk that never lets the acceleration arrive, √(0.1·0.4) = 0.2 m/s², half of the torque.
    expect(figureOf(evaluate('lift', { ...changes, 'motion.jerk': '0.4 m/s³' }), 'motor.peak-demanded-torque') / ramp).toBeCloseTo(0.5, 6);
  });
  test('winding at the end of a load, hand calculation: 50 % of 5 min, τ 300 s, held without current in between', () => {
    // 0.8776 W · 50 K/W = 43.88 K, with the growth of copper 43.88/(1 − 43.88/255) = 53.0 K while moving. Level at rest: brake off, no torque. e = exp(−½) = 0.60653.
    // Lift: the weight holds at rest too, so that there is no swing: 20 + 53.0 °C.
    const evaluation = evaluate('lift', { ...slow, 'conditions.ambient-temperature': '20 °C', 'motion.duty': '50 %', ...dc({ 'thermal-resistance': '50 K/W', 'thermal-time-constant': '300 s' }) });
    expect(figureOf(evaluation, 'motor.winding-peak-temperature') - 293.15).toBeCloseTo(53.0, 1);
    expect(figureOf(evaluation, 'motor.winding-temperature') - 293.15).toBeCloseTo(53.0, 1);
    // A process force of 392.4 N is the weight again, but only on the way; back nothing. Mean square of the two ways ½: 0.4388 W, 21.94/(1 − 21.94/255) = 24.0 K, 24.0/(1 + 0.60653) = 14.94 K at the end of the load.
    const level = evaluate('lift', {
      ...slow, 'axis.direction': 'horizontal', 'axis.process-force': '392.4 N', 'conditions.ambient-temperature': '20 °C', 'motion.duty': '50 %', ...dc({ 'thermal-resistance': '50 K/W', 'thermal-time-constant': '300 s' }),
    });
    expect(figureOf(level, 'motor.winding-peak-temperature') - 293.15).toBeCloseTo(14.94, 1);
  });
  test('time that it may move, hand calculation: 110 K over 20 °C; 0.8776·(1 + 110/255)·150 = 188.4 K; 600 s·ln(188.4/78.4) = 526 s', () => {
    const evaluation = evaluate('lift', { ...slow, 'conditions.ambient-temperature': '20 °C', ...dc({ 'thermal-resistance': '150 K/W', 'thermal-time-constant': '600 s' }) });
    expect(Math.abs(figureOf(evaluation, 'motor.overload-time') - 526)).toBeLessThan(1);
    expect(evaluate('lift', { ...slow, ...dc({ 'thermal-resistance': '20 K/W', 'thermal-time-constant': '600 s' }) }).result('motor.overload-time')).toMatchObject({ state: 'unable' });
  });
});

describe('limit of jerk', () => {
  const jerky = { 'motion.speed': '100 mm/s', 'motion.acceleration': '400 mm/s²', 'motion.jerk': '4 m/s³' };
  test('hand calculation: ramp 0.1/0.4 + 0.4/4 = 0.35 s over 17.5 mm; 300/100 + 0.35 = 3.35 s; 100 ms; 265/300 at speed', () => {
    const evaluation = evaluate('lift', jerky);
    expect(figureOf(evaluation, 'axis.ramp-time')).toBeCloseTo(0.35, 12);
    expect(figureOf(evaluation, 'axis.distance-to-speed')).toBeCloseTo(0.0175, 12);
    expect(figureOf(evaluation, 'axis.move-time')).toBeCloseTo(3.35, 12);
    expect(figureOf(evaluation, 'axis.jerk-time')).toBeCloseTo(0.1, 12);
    expect(figureOf(evaluation, 'axis.share-at-speed')).toBeCloseTo(265 / 300, 12);
    expect(figureOf(evaluation, 'axis.peak-acceleration')).toBeCloseTo(0.4, 12);
  });
  test('without one there is no such time, and everything is that of the trapezoid', () => {
    const evaluation = evaluate('lift', { ...jerky, 'motion.jerk': null });
    expect(evaluation.result('axis.jerk-time')).toMatchObject({ state: 'unable' });
    expect(figureOf(evaluation, 'axis.move-time')).toBeCloseTo(3.25, 12);
    expect(figureOf(evaluation, 'axis.peak-acceleration')).toBeCloseTo(0.4, 12);
  });
  test('margin at the worst instant, by walking through the ramp with the torque of the given points', () => {
    const points = [{ speed: '0 rpm', torque: '0.6 N·m' }, { speed: '4000 rpm', torque: '0.2 N·m' }];
    const evaluation = evaluate('lift', { ...weight, ...jerky, 'motor.torque-points': points });
    const [steady, full] = [figureOf(evaluation, 'motor.cruising-torque'), figureOf(evaluation, 'motor.lifting-torque')];
    let [speed, acceleration, least] = [0, 0, Infinity];
    const dt = 1e-5;
    for (let t = 0; t < 0.35; t += dt) {
      acceleration = t < 0.1 ? 4 * t : t < 0.25 ? 0.4 : Math.max(0, 0.4 - 4 * (t - 0.25));
      speed += acceleration * dt;
      const rpm = (speed / 0.003) * 60;
      least = Math.min(least, (0.6 - (0.4 * rpm) / 4000) / (steady + ((full - steady) * acceleration) / 0.4));
    }
    expect(figureOf(evaluation, 'motor.torque-margin') / least).toBeCloseTo(1, 3);
    // And more than with a jump of the acceleration, where full speed and full acceleration come together.
    const abrupt = figureOf(evaluate('lift', { ...weight, ...jerky, 'motion.jerk': null, 'motor.torque-points': points }), 'motor.torque-margin');
    expect(abrupt).toBeCloseTo((0.6 - 0.4 * (2000 / 4000)) / full, 9);
    expect(figureOf(evaluation, 'motor.torque-margin')).toBeGreaterThan(abrupt);
    expect(noteOf(evaluation, 'motor.torque-margin')).toContain('ms into the ramp');
  });
});

describe('the chart of torque over a move', () => {
  const chartOf = (evaluation: Evaluation) => {
    const figure = evaluation.registry.get('motor.stall-verdict');
    const values = figure && (evaluation.valuesAt(figure) as never);
    if (!figure?.chart || !values) throw new Error('the figure has a chart');
    return { chart: figure.chart, values: values };
  };
  test('asks for T₂ in the ramp and T₁ while cruising, and shows the torque available at full speed there', () => {
    const evaluation = evaluate('lift', { 'motion.speed': '50 mm/s', 'motion.acceleration': '50 mm/s²' });
    const { chart, values } = chartOf(evaluation);
    // Ramps of 1 s in 300/50 + 1 = 7 s.
    expect(chart.x.to(values)).toBeCloseTo(7, 12);
    const [asked, available] = chart.curves;
    expect(asked?.y(0.1, values)).toBeCloseTo(figureOf(evaluation, 'motor.lifting-torque'), 12);
    expect(asked?.y(3, values)).toBeCloseTo(figureOf(evaluation, 'motor.cruising-torque'), 12);
    expect(available?.y(3, values)).toBeCloseTo(figureOf(evaluation, 'motor.available-torque'), 12);
    expect(chart.band?.high(3, values)).toBeCloseTo(figureOf(evaluation, 'motor.upper-torque'), 12);
    expect(available?.y(0, values)).toBeCloseTo(figureOf(evaluation, 'motor.standing-torque'), 12);
    expect(chart.alt(values)).toContain('over 7 s of a move up');
  });
  test('ends soon after the ramp where that is short, and says so: 0.25 s of 6.25 s, four times as long', () => {
    const { chart, values } = chartOf(evaluate('lift', { 'motion.speed': '50 mm/s' }));
    expect(chart.x.to(values)).toBeCloseTo(1, 12);
    expect(chart.alt(values)).toContain('the first 1 s of a move up of 6.25 s');
  });
  test('current over a move of a DC motor: 0.9368 A all along, beside the limit', () => {
    const evaluation = evaluate('lift', { ...slow, 'motion.acceleration': '10 mm/s²', ...dc(), 'drive.current-limit': '2 A' });
    const figure = evaluation.registry.get('motor.demanded-current');
    const values = figure && (evaluation.valuesAt(figure) as never);
    expect(figure?.chart?.curves[0]?.y(15, values as never)).toBeCloseTo(STEADY / 0.1, 6);
    expect(figure?.chart?.curves[1]?.y(15, values as never)).toBe(2);
  });
});

describe('whether it keeps up, and with which margin', () => {
  // T at rest 0.3182 N·m, at 200 rpm too: 0.3182/2.342e-3 = 135.9 kg. 0.65·S ≥ 1 up to 88.3 kg; 1.35·S < 1 from 183.4 kg.
  test.each([['80 kg', 'keeps up'], ['100 kg', 'may stall'], ['150 kg', 'may stall'], ['200 kg', 'stalls']])('%s: %s', (mass, words) => {
    expect(wordsOf(evaluate('lift', { ...slow, 'mass.mass': mass }), 'motor.stall-verdict')).toBe(words);
  });
  test('given points leave no range: 100 kg against 0.25 N·m of 0.2342 keeps up, against 0.23 N·m stalls', () => {
    const with_ = (torque: string) => evaluate('lift', { ...slow, 'mass.mass': '100 kg', 'motor.torque-points': [{ speed: '0 rpm', torque }, { speed: '1000 rpm', torque }] });
    expect(wordsOf(with_('0.25 N·m'), 'motor.stall-verdict')).toBe('keeps up');
    expect(wordsOf(with_('0.23 N·m'), 'motor.stall-verdict')).toBe('stalls');
  });
  test('margin wanted: 1.5, with an encoder 1.15, of DC and brushless motors 1.1', () => {
    const wanted = (changes: Readonly<Record<string, unknown>>): number | undefined => evaluate('lift', changes).bounds('motor.margin-wanted')?.nominal;
    expect([wanted({}), wanted({ 'motor.feedback': 'none' }), wanted({ 'motor.feedback': 'encoder' }), wanted(dc()), wanted(brushless())]).toEqual([1.5, 1.5, 1.15, 1.1, 1.1]);
  });
  test('with an encoder the usual margin is kept up to a higher speed: 0.3182·31.125/(1.15·0.18737) = 45.96 mm/s; 45 mm/s are 15 rev/s, where the estimate ends', () => {
    expect(figureOf(evaluate('lift', { ...slow, 'mass.mass': '80 kg', 'motor.feedback': 'encoder' }), 'axis.honest-speed') * 1e3).toBeCloseTo(45, 6);
    // 90 kg: 0.21079: 0.3182·31.125/(1.15·0.21079) = 40.86 mm/s.
    expect(figureOf(evaluate('lift', { ...slow, 'mass.mass': '90 kg', 'motor.feedback': 'encoder' }), 'axis.honest-speed') * 1e3).toBeCloseTo(40.86, 1);
  });
});

describe('shortest move', () => {
  const free = { ...weight, 'mass.mass': '4 kg', 'motion.acceleration': '200 mm/s²', 'screw.unsupported-length': '30 mm', 'motor.torque-points': [{ speed: '0 rpm', torque: '0.3182 N·m' }, { speed: '30000 rpm', torque: '0.3182 N·m' }] };
  test('limited by the step rate: 20 kHz of 3200 microsteps a turn are 6.25 turns, 18.75 mm/s; 300/18.75 = 16 s and a moment', () => {
    const evaluation = evaluate('lift', { ...free, 'controller.step-rate': '20 kHz' });
    expect(figureOf(evaluation, 'axis.shortest-move-time')).toBeGreaterThan(16);
    expect(figureOf(evaluation, 'axis.shortest-move-time')).toBeLessThan(16.05);
    expect(noteOf(evaluation, 'axis.shortest-move-time')).toContain('the step rate of the controller');
  });
  test('limited by the speed limit of the motor: 600 rpm are 30 mm/s, 10 s', () => {
    const evaluation = evaluate('lift', { ...weight, 'mass.mass': '4 kg', 'screw.unsupported-length': '30 mm', ...dc({ 'speed-limit': '600 rpm' }) });
    expect(Math.abs(figureOf(evaluation, 'axis.shortest-move-time') - 10)).toBeLessThan(0.05);
    expect(noteOf(evaluation, 'axis.shortest-move-time')).toContain("the motor's speed limit");
  });
  test('limited by the jerk: 4·∛(h/2j) = 4·∛(0.3/2) = 2.125 s with 1 m/s³, where speed and torque would allow far more', () => {
    const evaluation = evaluate('lift', { ...free, 'controller.step-rate': null, 'motion.jerk': '1 m/s³' });
    expect(figureOf(evaluation, 'axis.shortest-move-time')).toBeCloseTo(4 * Math.cbrt(0.15), 2);
    expect(noteOf(evaluation, 'axis.shortest-move-time')).toContain('the limit of jerk');
  });
});

describe('whatever is written, as long as it is above zero', () => {
  const some = (...texts: string[]) => fc.constantFrom<string | null>(null, ...texts);
  const changes = fc.record({
    'motion.speed': some('1 µm/s', '100 mm/s', '20 m/s'), 'motion.acceleration': some('1 mm/s²', '5 m/s²', '500 m/s²'), 'motion.jerk': some('1 mm/s³', '50 m/s³', '1e6 m/s³'),
    'motion.duty': some('1 %', '100 %'), 'axis.travel': some('1 µm', '300 mm', '50 m'), 'mass.mass': fc.constantFrom('1 g', '40 kg', '5 t'), 'supply.voltage': some('1 V', '48 V'),
    'axis.direction': fc.constantFrom('vertical', 'horizontal', '30°'), 'drive.current-limit': some('1 mA', '10 A'), 'motor.feedback': some('encoder', 'none'),
    motor: fc.record({
      kind: fc.constantFrom('dc-motor', 'brushless', 'stepper'), 'torque-constant': fc.constantFrom('1 mN·m/A', '0.1 N·m/A ± 0.01 N·m/A'), resistance: fc.constantFrom('1 Ω', '100 Ω'),
      inductance: fc.constantFrom('0 mH', '3 mH'), 'pole-pairs': fc.constantFrom(1, 50), 'no-load-current': fc.constantFrom('0 A', '100 A'), 'continuous-torque': fc.constantFrom('1 mN·m', '0.1 N·m'),
      'peak-torque': fc.constantFrom('1 mN·m', '1 N·m'), 'speed-limit': fc.constantFrom('1 rpm', '3000 rpm'), 'rotor-inertia': fc.constantFrom('1 g·cm²', '60 g·cm²'), 'encoder-counts': fc.constantFrom(1, 4000),
      'thermal-resistance': fc.constantFrom('5 K/W', '5000 K/W'), 'thermal-time-constant': fc.constantFrom('1 s', '600 s'),
    }),
  });
  test('property: no figure of motor or axis throws, and none is without end', () => {
    const seen = new Set<string>();
    fc.assert(fc.property(fc.constantFrom('lift', 'router', 'belt', 'rack'), changes, (base, entries) => {
      const evaluation = evaluate(base, entries);
      for (const { id } of evaluation.registry.ofKind('drive').filter((figure) => /^(motor|axis)\./.test(figure.id))) {
        const result = evaluation.result(id);
        if (result.state === 'unable' && result.reason.includes('could not be computed')) seen.add(`${id}: ${result.reason}`);
        if (result.state === 'computed') expect(Number.isFinite(result.low) && Number.isFinite(result.nominal) && Number.isFinite(result.high), id).toBe(true);
      }
    }), { numRuns: 150 });
    expect([...seen].sort()).toEqual([]);
  }, 60_000);
});
