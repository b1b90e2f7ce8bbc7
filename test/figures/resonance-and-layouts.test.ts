/** Resonance, ringing, crossed belts and gantries end to end: expected values by hand, or by another way to the same number. */
import { describe, expect, test } from 'vitest';
import { evaluate, figureOf, subjectsOf } from '../support/evaluate.ts';
import { Evaluation } from '../../server/src/figures/evaluation.ts';
import { allFigures } from '../../server/src/figures/registry.ts';
import { machineWith, yamlOf } from '../support/machines.ts';

/** Everything exact, and what swings besides the plate made small: 20 kN belt, 1.5 kg, 0.08 + 0.5 m of 1.43 m. */
const bare = {
  'belt.specific-stiffness': '20 kN', 'belt.mass-per-length': '0.001 g/m', 'pulley.rotational-inertia': '0.01 g·cm²', 'idlers.rotational-inertia': '0.01 g·cm²',
  'motor.rotor-inertia': '0.01 g·cm²', 'motor.holding-torque': '60000 N·m',
};
const radius = 0.06 / (2 * Math.PI);

describe('resonance of a belt axis', () => {
  test('by hand: 20 kN (1/0.58 m + 1/0.85 m) on 1.5 kg is 31.30 Hz, at the far end', () => {
    const e = evaluate('belt', bare);
    expect(figureOf(e, 'axis.resonance')).toBeCloseTo(Math.sqrt((20e3 * (1 / 0.58 + 1 / 0.85)) / 1.5) / (2 * Math.PI), 3);
    const result = e.result('axis.resonance');
    expect(result.state === 'computed' ? result.note : '').toContain('far end');
  });

  test('best over lowest: √ of the stiffness at 80 mm over that at 580 mm', () => {
    const k = (x: number): number => 1 / x + 1 / (1.43 - x);
    expect(figureOf(evaluate('belt', bare), 'axis.resonance-span')).toBeCloseTo(Math.sqrt(k(0.08) / k(0.58)), 4);
  });

  test('the field of the motor, by the determinant of two masses: rotor and plate', () => {
    const e = evaluate('belt', { ...bare, 'motor.rotor-inertia': '300 g·cm²', 'motor.holding-torque': '1.2 N·m' });
    // 50 pole pairs, 1.2/√2 N·m at the rated current as a peak.
    const field = (50 * 1.2 * Math.SQRT1_2) / radius ** 2;
    const belt = 20e3 * (1 / 0.58 + 1 / 0.85);
    const [rotor, plate] = [3e-5 / radius ** 2, 1.5];
    const lowest = figureOf(e, 'axis.resonance') * 2 * Math.PI;
    const determinant = (field + belt - rotor * lowest ** 2) * (belt - plate * lowest ** 2) - belt ** 2;
    expect(Math.abs(determinant) / (field * belt)).toBeLessThan(1e-3);
  });

  test('the stiffness of a reduction lowers it', () => {
    const geared = (stiffness: string): number =>
      figureOf(evaluate('belt', { ...bare, 'drive.reduction': [{ kind: 'belt', ratio: 3, 'torsional-stiffness': stiffness }] }), 'axis.resonance');
    // 1/k = 1/58.0 kN/m + r²/k_i: 10 N·m/rad on 9.549 mm is 109.7 kN/m.
    const belt = 20e3 * (1 / 0.58 + 1 / 0.85);
    expect(geared('10 N·m/rad')).toBeCloseTo(Math.sqrt(1 / (1 / belt + radius ** 2 / 10) / 1.5) / (2 * Math.PI), 2);
    expect(geared('100 N·m/rad')).toBeGreaterThan(geared('10 N·m/rad'));
  });

  test('two motors on one axis: half of the mass each, √2 higher', () => {
    const one = figureOf(evaluate('belt', bare), 'axis.resonance');
    expect(figureOf(evaluate('belt', { ...bare, 'drive.units': 2, 'drive.motors': 'one-each' }), 'axis.resonance') / one).toBeCloseTo(Math.SQRT2, 4);
  });

  test('an uncertain belt: the bounds are those of both ends', () => {
    const result = evaluate('belt', { ...bare, 'belt.specific-stiffness': '15 kN to 25 kN' }).result('axis.resonance');
    const at = (c: number): number => Math.sqrt((c * (1 / 0.58 + 1 / 0.85)) / 1.5) / (2 * Math.PI);
    expect(result.state === 'computed' ? result.low : NaN).toBeCloseTo(at(15e3), 2);
    expect(result.state === 'computed' ? result.high : NaN).toBeCloseTo(at(25e3), 2);
  });

  test('a belt with anchored ends is softest in the middle: 4 c/L', () => {
    const e = evaluate('belt', { ...bare, 'belt.arrangement': 'anchored-ends', 'belt.center-distance': '700 mm', 'belt.nearest-distance': '80 mm' });
    expect(figureOf(e, 'axis.resonance')).toBeCloseTo(Math.sqrt((4 * 20e3) / 0.7 / 1.5) / (2 * Math.PI), 3);
  });

  test('a missing distance is asked for; a travel beyond the belt has no value', () => {
    const missing = evaluate('belt', { 'belt.nearest-distance': null }).result('axis.resonance');
    expect(missing).toEqual({ state: 'missing', missing: ['belt.nearest-distance'] });
    expect(evaluate('belt', { 'axis.travel': '1.5 m' }).result('axis.resonance').state).toBe('unable');
  });
});

describe('resonance of other drives', () => {
  test('a rack with a stepper: two masses by the quadratic, from its own stiffnesses', () => {
    const e = evaluate('rack');
    const k = figureOf(e, 'drive.axial-stiffness');
    const field = ((figureOf(e, 'motor.magnetic-stiffness') * 25) / figureOf(e, 'drive.travel-per-shaft-turn') ** 2) * (2 * Math.PI) ** 2;
    const mechanics = 1 / (1 / k - 1 / field);
    const lever2 = (figureOf(e, 'drive.travel-per-shaft-turn') / (2 * Math.PI)) ** 2;
    const turning = (3e-5 * 25 + figureOf(e, 'drive.shaft-inertia')) / lever2;
    const [a, b, c] = [turning * 1.5, -(turning * mechanics + 1.5 * (field + mechanics)), field * mechanics];
    const squared = (-b - Math.sqrt(b * b - 4 * a * c)) / (2 * a);
    expect(figureOf(e, 'axis.resonance')).toBeCloseTo(Math.sqrt(squared) / (2 * Math.PI), 6);
  });

  test('a screw: never above the axis with its rotor held, nor above rotor and load taken as rigidly joined', () => {
    for (const base of ['lift', 'ball-lift', 'router']) {
      const e = evaluate(base);
      expect(figureOf(e, 'axis.resonance')).toBeLessThan(figureOf(e, 'drive.axial-resonance'));
      expect(figureOf(e, 'axis.resonance')).toBeLessThanOrEqual(figureOf(e, 'motor.natural-frequency') * (1 + 1e-9));
    }
  });

  test('nothing is told twice: a belt has no axial resonance beside it', () => {
    expect(evaluate('belt').result('drive.axial-resonance').state).toBe('left-out');
    expect(evaluate('lift').result('axis.resonance-span').state).toBe('left-out');
  });
});

describe('lag and ringing', () => {
  const stiffness = 20e3 * (1 / 0.58 + 1 / 0.85);

  test('lag: m a/k, 1.5 kg · 2 m/s² on 58 N/mm is 51.7 µm', () => {
    expect(figureOf(evaluate('belt', bare), 'axis.acceleration-error')).toBeCloseTo((1.5 * 2) / stiffness, 8);
  });

  test('the field carries the rotor too: lag by springs in a row', () => {
    const e = evaluate('belt', { ...bare, 'motor.rotor-inertia': '300 g·cm²', 'motor.holding-torque': '1.2 N·m' });
    const field = (50 * 1.2 * Math.SQRT1_2) / radius ** 2;
    expect(figureOf(e, 'axis.acceleration-error')).toBeCloseTo((1.5 * 2) / stiffness + ((1.5 + 3e-5 / radius ** 2) * 2) / field, 7);
  });

  test('a low jerk keeps the acceleration down: 100 mm/s by 20 m/s³ only reaches √2 = 1.414 m/s²', () => {
    const e = evaluate('belt', { ...bare, 'motion.speed': '100 mm/s', 'motion.jerk': '20 m/s³' });
    expect(figureOf(e, 'axis.acceleration-error')).toBeCloseTo((1.5 * Math.SQRT2) / stiffness, 7);
  });

  test('ringing: twice the lag without jerk; with a rise of 0.1 s 2/(ω 0.1 s) of that', () => {
    const lag = (1.5 * 2) / stiffness;
    expect(figureOf(evaluate('belt', bare), 'axis.ringing-amplitude')).toBeCloseTo(2 * lag, 7);
    const omega = Math.sqrt(stiffness / 1.5);
    expect(figureOf(evaluate('belt', { ...bare, 'motion.jerk': '20 m/s³' }), 'axis.ringing-amplitude')).toBeCloseTo((2 * lag * 2) / (omega * 0.1), 7);
  });

  test('remarks tell lengths as one reads them, without powers of ten', () => {
    const result = evaluate('belt', { ...bare, 'mass.mass': '40 kg', 'motion.jerk': '20 m/s³' }).result('axis.ringing-amplitude');
    // Twice 40 kg · 2 m/s² over the stiffness: more than half a millimetre.
    expect(result.state === 'computed' && result.note).toContain(`it would be ${Number(((1000 * 2 * 40 * 2) / stiffness).toPrecision(2))} mm`);
  });

  test('ringing over the accuracy, periods of the ramp, and the jerk of one period', () => {
    const e = evaluate('belt', { ...bare, 'axis.accuracy': '0.1 mm' });
    const frequency = Math.sqrt(stiffness / 1.5) / (2 * Math.PI);
    expect(figureOf(e, 'axis.ringing-use')).toBeCloseTo((2 * 1.5 * 2) / stiffness / 1e-4, 3);
    expect(figureOf(e, 'axis.ramp-periods')).toBeCloseTo((0.25 / 2) * frequency, 3);
    expect(figureOf(e, 'axis.quiet-jerk')).toBeCloseTo(2 * frequency, 2);
  });

  test('for a finer accuracy the rise must be slower than a period: j = ε ω/(4 m/k), and with it the ringing is the accuracy', () => {
    const omega = Math.sqrt(stiffness / 1.5);
    const jerk = (1e-5 * omega) / ((4 * 1.5) / stiffness);
    expect(figureOf(evaluate('belt', { ...bare, 'axis.accuracy': '10 µm' }), 'axis.quiet-jerk')).toBeCloseTo(jerk, 2);
    expect(figureOf(evaluate('belt', { ...bare, 'axis.accuracy': '10 µm', 'motion.jerk': `${jerk} m/s³` }), 'axis.ringing-use')).toBeCloseTo(1, 3);
  });

  test('a ramp that is too short for its acceleration: v f², and with it the rise √(v/j) is one period', () => {
    const frequency = Math.sqrt(stiffness / 1.5) / (2 * Math.PI);
    const jerk = 0.05 * frequency ** 2;
    expect(figureOf(evaluate('belt', { ...bare, 'motion.speed': '50 mm/s' }), 'axis.quiet-jerk')).toBeCloseTo(jerk, 2);
    expect(figureOf(evaluate('belt', { ...bare, 'motion.speed': '50 mm/s', 'motion.jerk': `${jerk} m/s³` }), 'axis.ramp-periods')).toBeCloseTo(1, 3);
  });

  test.each([['motion.acceleration', '2 m/s²', '4 m/s²', 2], ['mass.mass', '1.5 kg', '3 kg', 2], ['belt.specific-stiffness', '20 kN', '40 kN', 0.5]] as const)(
    'ringing goes with acceleration and mass, against stiffness: %s', (entry, from, to, times) => {
      const at = (value: string): number => figureOf(evaluate('belt', { ...bare, [entry]: value }), 'axis.ringing-amplitude');
      expect(at(to) / at(from)).toBeCloseTo(times, 3);
    },
  );
});

describe('plots over the travel', () => {
  test.each(['axis.resonance', 'axis.acceleration-error'])('%s: from end to end of the travel, and the point on the curve is the figure', (id) => {
    const e = evaluate('belt', bare);
    const figure = e.figure(id);
    const values = figure && e.valuesAt(figure);
    if (!figure?.chart || !values) throw new Error('no plot');
    // The plot takes what the figure's own compute got.
    const { chart } = figure;
    const given = values as never;
    expect(chart.x.from(given)).toBe(0);
    expect(chart.x.to(given)).toBeCloseTo(0.5, 12);
    const [curve, point] = [chart.curves[0], chart.points?.[0]];
    expect(point?.x(given)).toBeCloseTo(0.5, 12);
    expect(point?.y(given)).toBeCloseTo(figureOf(e, id), 9);
    expect(curve?.y(0.5, given)).toBeCloseTo(figureOf(e, id), 9);
    // Nearer to the motor the belt is stiffer: √(k(80 mm)/k(580 mm)) for the frequency, the inverse square for the lag.
    const k = (x: number): number => 1 / x + 1 / (1.43 - x);
    const power = id === 'axis.resonance' ? 0.5 : -1;
    expect((curve?.y(0, given) ?? NaN) / (curve?.y(0.5, given) ?? NaN)).toBeCloseTo((k(0.08) / k(0.58)) ** power, 3);
    expect(chart.alt(given)).toMatch(/\d/);
  });
});

describe('crossed belts', () => {
  test('the diagonal: 250 mm/s twice on 60 mm a turn is 500 rpm', () => {
    expect((figureOf(evaluate('crossed'), 'layout.diagonal-speed') * 60) / (2 * Math.PI)).toBeCloseTo(500, 6);
  });

  test('steps: 8.33 turns a second of 3200 microsteps are 26.7 kHz', () => {
    expect(figureOf(evaluate('crossed'), 'layout.diagonal-step-rate')).toBeCloseTo((0.5 / 0.06) * 3200, 6);
    expect(figureOf(evaluate('crossed'), 'layout.diagonal-step-use')).toBeCloseTo(((0.5 / 0.06) * 3200) / 200e3, 9);
  });

  test('a servo motor: 500 of 400 rpm, torque by V = R I + K ω, and its rotor held', () => {
    const servo = { kind: 'dc-motor', 'torque-constant': '0.1 N·m/A', resistance: '1 Ω', 'rotor-inertia': '300 g·cm²', 'speed-limit': '400 rpm' };
    const machine = { ...machineWith('crossed'), parts: { 'lift-motor': servo } };
    const subject = subjectsOf(yamlOf(machine)).find((candidate) => candidate.kind === 'drive');
    if (!subject) throw new Error('no drive');
    const e = new Evaluation(subject, allFigures());
    expect(figureOf(e, 'layout.diagonal-speed-use')).toBeCloseTo(1.25, 9);
    // 0.1 (36 − 0.1 · 52.36)/1.
    expect(figureOf(e, 'layout.diagonal-available-torque')).toBeCloseTo(0.1 * (36 - 0.1 * ((500 * 2 * Math.PI) / 60)), 6);
    expect(e.result('layout.diagonal-step-rate').state).toBe('left-out');
    const result = e.result('axis.resonance');
    expect(result.state === 'computed' ? result.note : '').toContain('held');
  });

  test('torque: half of 0.8·2 + 4 and of 2.2·2 + 4 N on 9.549 mm, and its own inertia under twice the acceleration', () => {
    const e = evaluate('crossed');
    // 7 N over the efficiency of the belt, 0.97; rotor and what is on the shaft.
    const turning = 4 / radius;
    const expected = (7 * radius) / 0.97 + (3e-5 + figureOf(e, 'drive.shaft-inertia')) * turning;
    expect(figureOf(e, 'layout.diagonal-torque')).toBeCloseTo(expected, 9);
  });

  test('energy: on the diagonal one motor brings the power that both axes take', () => {
    // Losses aside (efficiency 0.97 on the load): T ω = Σ (m a + F) v + rotors.
    const e = evaluate('crossed');
    const speed = figureOf(e, 'layout.diagonal-speed');
    const inertia = 3e-5 + figureOf(e, 'drive.shaft-inertia');
    const loads = ((0.8 * 2 + 4) + (2.2 * 2 + 4)) * 0.25;
    expect(figureOf(e, 'layout.diagonal-torque') * speed).toBeCloseTo(loads / 0.97 + inertia * (4 / radius) * speed, 8);
  });

  test('the standing motor holds half of the difference: (8.4 − 5.6)/2 = 1.4 N', () => {
    expect(figureOf(evaluate('crossed'), 'layout.standing-torque-needed')).toBeCloseTo(1.4 * radius, 9);
  });

  test('told once: of the first axis only, and of no machine without such a layout', () => {
    const subjects = subjectsOf(yamlOf(machineWith('crossed'))).filter((subject) => subject.kind === 'drive');
    const states = subjects.map((subject) => new Evaluation(subject, allFigures()).result('layout.diagonal-torque').state);
    expect(states.sort()).toEqual(['computed', 'left-out']);
    expect(evaluate('belt').result('layout.diagonal-torque').state).toBe('left-out');
  });

  test('unequal tensions: ends apart by 10 N · 2.4 m/(2 c)', () => {
    const e = evaluate('crossed', { 'layout.path-tensions': ['80 N', '90 N'] });
    const stiffness = e.bounds('belt.specific-stiffness')?.nominal ?? NaN;
    expect(figureOf(e, 'layout.twist-offset')).toBeCloseTo((10 * 2.4) / (2 * stiffness), 10);
    expect(figureOf(e, 'layout.tension-difference')).toBeCloseTo(10 / 85, 12);
  });

  test('unequal paths: coupling without the motor is their difference over their sum', () => {
    const e = evaluate('crossed', { 'layout.path-lengths': ['2.4 m', '2.6 m'], 'motor.holding-torque': '60000 N·m' });
    expect(figureOf(e, 'layout.cross-coupling')).toBeCloseTo(0.2 / 5, 5);
    // The heavier axis: 2.2 kg · 2 m/s² = 4.4 N; k = 4 c/L: δ = F (L_B − L_A)/(16 c).
    const stiffness = e.bounds('belt.specific-stiffness')?.nominal ?? NaN;
    expect(figureOf(e, 'layout.coupling-error') / ((4.4 * 0.2) / (16 * stiffness))).toBeCloseTo(1, 4);
  });

  test('the paths of both belts stand in for the length of a belt, one at either end of its range', () => {
    const machine = machineWith('crossed', { 'layout.path-lengths': ['2.4 m', '2.6 m'] }) as { layout: { drive: { belt: Record<string, unknown> } } } & Record<string, unknown>;
    delete machine.layout.drive.belt['path-length'];
    const subject = subjectsOf(yamlOf(machine)).find((candidate) => candidate.kind === 'drive');
    if (!subject) throw new Error('no drive');
    expect(new Evaluation(subject, allFigures()).bounds('belt.path-length')).toMatchObject({ low: 2.4, nominal: 2.5, high: 2.6 });
  });

  test('an axis that is not level is not reckoned with', () => {
    const machine = machineWith('crossed');
    ((machine['axes'] as Record<string, Record<string, unknown>>)['along'] ?? {})['direction'] = 'vertical';
    const subject = subjectsOf(yamlOf(machine)).find((candidate) => candidate.kind === 'drive' && candidate.id.includes('lift'));
    if (!subject) throw new Error('no drive');
    expect(new Evaluation(subject, allFigures()).result('layout.diagonal-torque').state).toBe('unable');
  });
});

describe('a gantry on two drives', () => {
  test('share: 0.5 + (1/3)(0.25/0.62), and the loads follow', () => {
    const e = evaluate('gantry');
    expect(figureOf(e, 'drive.load-share')).toBeCloseTo(0.5 + (1 / 3) * (0.25 / 0.62), 12);
    // 3 kg · 2 m/s² + 4 N of friction.
    expect(figureOf(e, 'drive.lifting-load')).toBeCloseTo(10 * (0.5 + (1 / 3) * (0.25 / 0.62)), 9);
  });

  test('skew: the difference of the loads over the stiffness, and twice the tolerance', () => {
    const e = evaluate('gantry', { 'belt.length-tolerance': '0.01 %' });
    expect(figureOf(e, 'drive.skew-from-load') * figureOf(e, 'drive.axial-stiffness')).toBeCloseTo((2 / 3) * (0.25 / 0.62) * 6, 9);
    expect(figureOf(e, 'drive.skew-from-pitch')).toBeCloseTo(1e-4, 12);
    expect(figureOf(e, 'drive.skew')).toBeCloseTo(1e-4 + figureOf(e, 'drive.skew-from-load'), 12);
  });

  test('one slip: four full steps of 0.3 mm', () => {
    expect(figureOf(evaluate('gantry'), 'drive.skew-from-slip')).toBeCloseTo(1.2e-3, 9);
  });

  test('the work is done where the carriage stands: ½ + 250/620 = 90.3 % of 30 N, and ½ + ⅓ · 250/620 = 63.4 % of 4 N of friction, are 29.63 N', () => {
    const e = evaluate('gantry', { 'axis.process-force': '30 N', 'axis.moves': ['plate', 'carriage'] });
    expect(figureOf(e, 'drive.process-share')).toBeCloseTo(0.5 + 250 / 620, 9);
    expect(figureOf(e, 'drive.cruising-load')).toBeCloseTo(29.634, 3);
    // Without a word of what rides on it both drives take half.
    expect(figureOf(evaluate('gantry', { 'axis.process-force': '30 N', 'drive.carries': null }), 'drive.cruising-load')).toBeCloseTo(17, 9);
  });
  test('the weight of a vertical gantry counts too', () => {
    const level = evaluate('gantry');
    const upright = evaluate('gantry', { 'axis.direction': 'vertical' });
    expect(figureOf(upright, 'drive.skew-from-load') / figureOf(level, 'drive.skew-from-load')).toBeCloseTo((2 + 9.80665) / 2, 6);
  });

  test('without what rides on it the load is shared alike', () => {
    expect(figureOf(evaluate('gantry', { 'drive.carries': null }), 'drive.load-share')).toBe(0.5);
    expect(evaluate('gantry', { 'drive.carries': null }).result('drive.skew').state).toBe('left-out');
  });

  test('the heavier part across, the more one side carries; the farther apart the drives, the less', () => {
    const share = (changes: Record<string, unknown>): number => figureOf(evaluate('gantry', changes), 'drive.load-share');
    expect(share({ 'carriage-mass.mass': '1.5 kg' })).toBeGreaterThan(share({}));
    expect(share({ 'drive.unit-spacing': '800 mm' })).toBeLessThan(share({}));
  });

  test('an overhanging carriage puts more than the whole load on one side, and says so', () => {
    const result = evaluate('gantry', { 'drive.unit-spacing': '150 mm' }).result('drive.load-share');
    expect(result.state === 'computed' ? result.nominal : 0).toBeCloseTo(0.5 + (1 / 3) * (0.25 / 0.15), 12);
    expect(result.state === 'computed' ? result.note : '').toContain('beyond its drives');
  });
});
