/** Figures of belts from the text to the number. Expected values by hand; the steps stand beside them. */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { evaluate, figureOf } from '../support/evaluate.ts';

const mm = 1e-3;

/** Exact entries, so that hand calculations meet one number: 80 kN, 23 g/m. */
const exact = { 'belt.specific-stiffness': '80 kN', 'belt.mass-per-length': '23 g/m' };
const at = (id: string, changes: Readonly<Record<string, unknown>> = {}, base = 'belt'): number => figureOf(evaluate(base, { ...exact, ...changes }), id);

/** As in the base machine, its tension left to the list of the layout. */
const crossedDrive = {
  motor: 'lift-motor', supply: 'main', 'current-setting': '2.8 A', 'current-setting-as': 'peak',
  belt: { profile: 'AT3', width: '10 mm', cord: 'steel', body: 'polyurethane', 'center-distance': '700 mm', 'nearest-distance': '80 mm', 'path-length': '2.4 m' },
  pulley: { teeth: 20, wrap: '180°' },
};

describe('a hanging belt that is pushed by its work', () => {
  // 1.5 kg · 9.8 m/s² = 14.7 N; 1.5 kg · 0.8 m/s² = 1.2 N; friction 4 N; 40 N of the work. Up 14.7 + 4 + 40 + 1.2 = 59.9 N; down 1.2 + 4 + 40 − 14.7 = 30.5 N.
  const worked = { 'conditions.gravity': '9.8 m/s²', 'axis.process-force': '40 N', 'drive.motor-position': 'above' };
  test('up 59.9 N towards a motor above, down 30.5 N away from it', () => {
    expect(at('belt.force-towards', worked, 'belt-lift')).toBeCloseTo(59.9, 9);
    expect(at('belt.force-away', worked, 'belt-lift')).toBeCloseTo(30.5, 9);
  });
  test('without work the weight brings it down by itself: 1.2 + 4 N are less than 14.7 N', () => {
    expect(at('belt.force-away', { ...worked, 'axis.process-force': '0 N' }, 'belt-lift')).toBe(0);
  });
});

describe('a level loop: 700 mm between axes, clamp at 80 mm, travel 500 mm, 20 teeth of 3 mm', () => {
  test('geometry: 60 mm a turn; 60/π = 19.10 mm; ten teeth in half a turn; 2 · 700 + 60 − 30 = 1430 mm', () => {
    expect(at('drive.travel-per-shaft-turn') / mm).toBeCloseTo(60, 9);
    expect(at('pulley.pitch-diameter') / mm).toBeCloseTo(19.099, 3);
    expect(at('pulley.teeth-in-mesh')).toBeCloseTo(10, 9);
    expect(at('belt.free-length') / mm).toBeCloseTo(1430, 6);
    expect(at('belt.room-left') / mm).toBeCloseTo(120, 9);
  });
  test('stiffness: near 80 kN (1/0.08 + 1/1.35) = 1059.3 N/mm, far 80 kN (1/0.58 + 1/0.85) = 232.05 N/mm; the far end is softest', () => {
    expect(at('belt.span-stiffness-near') / 1e3).toBeCloseTo(1059.26, 2);
    expect(at('belt.span-stiffness-far') / 1e3).toBeCloseTo(232.05, 2);
    expect(at('belt.span-stiffness-least')).toBe(at('belt.span-stiffness-far'));
    expect(at('belt.softest-place') / mm).toBeCloseTo(580, 6);
    // 80 kN/1.35 m with the short span slack.
    expect(at('belt.slack-stiffness') / 1e3).toBeCloseTo(59.26, 2);
  });
  test('give: 7 N of 232.05 N/mm: 30.2 µm while speeding up, 4 N: 17.2 µm at speed', () => {
    expect(at('belt.stretch-under-load') * 1e6).toBeCloseTo(30.17, 2);
    expect(at('belt.stretch-at-speed') * 1e6).toBeCloseTo(17.24, 2);
  });
  test('give with 3 N set: at the near end, pushed away, (7 − 3) N · 1.35 m/80 kN = 67.5 µm', () => {
    expect(at('belt.stretch-under-load', { 'belt.tension': '3 N' }) * 1e6).toBeCloseTo(67.5, 6);
  });
  test('tensions: needed 7 · 1350/1430 = 6.608 N; largest 86.61 N, least 73.39 N; across the shaft 160 + 7 · 1270/1430 = 166.2 N', () => {
    expect(at('belt.tension-needed')).toBeCloseTo(6.608, 3);
    expect(at('belt.slack-factor')).toBeCloseTo(80 / 6.6084, 3);
    expect(at('belt.tight-tension')).toBeCloseTo(86.608, 3);
    expect(at('belt.slack-tension')).toBeCloseTo(73.392, 3);
    expect(at('motor.radial-load')).toBeCloseTo(166.217, 3);
    // 0.4 % of 80 kN; a quarter of at least 900 N is less than nothing here: 1300 N nominal gives 325 N.
    expect(at('belt.tension-allowed')).toBeCloseTo(320, 9);
    expect(at('belt.tension-use')).toBeCloseTo(86.608 / 320, 4);
    expect(at('belt.tension-highest')).toBeCloseTo(320 - 6.608, 3);
  });
  test('notes: √(80/0.023) = 58.98 m/s; over 2 · 620 mm 47.6 Hz, 2 · 580 mm 50.8 Hz, 2 · 80 mm 369 Hz, 2 · 120 mm 246 Hz, 2 · 700 mm 42.1 Hz', () => {
    expect(at('belt.strum-frequency-near')).toBeCloseTo(47.56, 2);
    expect(at('belt.strum-frequency-far')).toBeCloseTo(50.84, 2);
    expect(at('belt.strum-frequency-near-short')).toBeCloseTo(368.6, 1);
    expect(at('belt.strum-frequency-far-short')).toBeCloseTo(245.7, 1);
    expect(at('belt.strum-frequency-return')).toBeCloseTo(42.13, 2);
    const result = evaluate('belt', exact).result('belt.strum-frequency-near-short');
    expect(result.state === 'computed' && result.note).toContain('too short for its width');
  });
  test('errors: pulley 2 · 20 µm · 1270/1430 = 35.5 µm near it; idler 4 · 10 µm · 580/1430 = 16.2 µm far from it; 0.5 mm/m over 0.5 m', () => {
    expect(at('pulley.eccentricity-error', { 'pulley.eccentricity': '0.02 mm' }) * 1e6).toBeCloseTo(35.52, 2);
    expect(at('idlers.eccentricity-error', { 'idlers.eccentricity': '0.01 mm' }) * 1e6).toBeCloseTo(16.22, 2);
    expect(at('belt.length-error', { 'belt.length-tolerance': '0.05 %' }) / mm).toBeCloseTo(0.25, 9);
  });
  test('shaft: 7 N · 60 mm/(2π · 0.97) = 68.91 N·mm; an idler that takes 5 N·mm adds as much, being as large as the pulley', () => {
    expect(at('drive.shaft-lifting-torque', { 'belt.efficiency': '97 %' }) * 1e3).toBeCloseTo(68.91, 2);
    expect(at('drive.shaft-lifting-torque', { 'belt.efficiency': '97 %', 'idlers.friction-torque': '5 N·mm' }) * 1e3).toBeCloseTo(73.91, 2);
    // Driven back: −(−4) N the other way, 4 N of friction: 4 · 60/(2π · 0.97).
    expect(at('drive.shaft-lowering-torque', { 'belt.efficiency': '97 %' }) * 1e3).toBeCloseTo(39.38, 2);
  });
  test('inertia: 20 + 10 g·cm² and 23 g/m · 1.46 m · (9.549 mm)² = 30.62 g·cm²', () => {
    const wheels = { 'pulley.rotational-inertia': '20 g·cm²', 'idlers.rotational-inertia': '10 g·cm²' };
    expect(at('drive.shaft-inertia', wheels) * 1e7).toBeCloseTo(60.62, 2);
    // An idler of half the diameter turns twice as fast: four times its inertia.
    expect(at('drive.shaft-inertia', { ...wheels, 'idlers.teeth': 10, 'belt.path-length': '1460 mm' }) * 1e7).toBeCloseTo(90.62, 2);
  });
  test('chain: 232.05 N/mm of belt, and a coupling of 100 N·m/rad · (2π/60 mm)² = 1096.6 N/mm: 191.5 N/mm', () => {
    const changes = { 'drive.motor': null, coupling: { form: 'bellows', bores: ['8 mm', '8 mm'], 'torsional-stiffness': '100 N·m/rad' } };
    expect(at('drive.axial-stiffness', changes) / 1e3).toBeCloseTo(191.52, 1);
    const result = evaluate('belt', { ...exact, ...changes }).result('drive.axial-stiffness');
    expect(result.state === 'computed' && result.note).toContain('without the motor');
  });
});

describe('other arrangements', () => {
  test('between two anchors: softest in the middle, 4 · 80 kN/0.7 m = 457 N/mm; the belt stands still', () => {
    const anchored = { 'belt.arrangement': 'anchored-ends', idlers: null, 'pulley.rotational-inertia': '20 g·cm²' };
    expect(at('belt.span-stiffness-least', anchored) / 1e3).toBeCloseTo(457.14, 2);
    expect(at('belt.softest-place', anchored) / mm).toBeCloseTo(350, 6);
    const still = at('drive.shaft-inertia', anchored);
    expect(at('drive.shaft-inertia', { ...anchored, 'belt.mass-per-length': '230 g/m' })).toBe(still);
    expect(evaluate('belt', anchored).result('belt.strum-frequency-return').state).toBe('left-out');
  });
  test('unequal pulleys: 20 and 40 teeth of 3 mm, 700 mm apart: wrap 180° − 2 asin(19.1/1400) = 178.4°', () => {
    expect(at('pulley.teeth-in-mesh', { 'pulley.wrap': null, 'idlers.teeth': 40 })).toBeCloseTo((20 * 178.437) / 360, 3);
  });
  test('the distance of the axes follows from the length of the loop: (1460 − 60)/2 = 700 mm', () => {
    const changes = { 'belt.center-distance': null, 'belt.path-length': '1460 mm' };
    expect(evaluate('belt', changes).bounds('belt.center-distance')!.nominal / mm).toBeCloseTo(700, 6);
    expect(at('belt.room-left', changes) / mm).toBeCloseTo(120, 6);
  });
  test('a weight of 14.71 N lifted with 19.91 N: motor above, far end, 19.91 · 580/1430 = 8.08 N; below, near end, 18.80 N', () => {
    expect(at('belt.tension-needed', { 'drive.motor-position': 'above' }, 'belt-lift')).toBeCloseTo(8.076, 2);
    expect(at('belt.tension-needed', { 'drive.motor-position': 'below' }, 'belt-lift')).toBeCloseTo(18.796, 1);
    expect(at('belt.tension-needed', {}, 'belt-lift')).toBe(at('belt.tension-needed', { 'drive.motor-position': 'below' }, 'belt-lift'));
    // From its place at rest it gives 5.2 N (1.2 of acceleration, 4 of friction) either way: 22.4 µm.
    expect(at('belt.stretch-under-load', { 'drive.motor-position': 'above' }, 'belt-lift') * 1e6).toBeCloseTo(22.41, 1);
  });
  test('behind a reduction, a coupling or outer bearings the motor shaft bears nothing', () => {
    for (const changes of [{ 'drive.shaft-support': 'outboard' }, { 'drive.reduction': [{ kind: 'belt', ratio: 2 }] }, { coupling: { form: 'bellows' } }]) {
      expect(evaluate('belt', changes).result('motor.radial-load').state).toBe('left-out');
    }
    // Said outright, it bears it even behind a coupling.
    expect(evaluate('belt', { coupling: { form: 'bellows' }, 'drive.shaft-support': 'motor' }).result('motor.radial-load').state).toBe('computed');
  });
  test('radial limit: 200 N at 15 mm; at 10 mm 300 N, at 30 mm 100 N', () => {
    expect(at('motor.radial-limit')).toBeCloseTo(300, 9);
    expect(at('motor.radial-limit', { 'pulley.overhang': '30 mm' })).toBeCloseTo(100, 9);
  });
  test('crossed belts: the carriage moves along its belt by both travels, 80 to 1080 mm of 2370 mm', () => {
    // 80 kN (1/1.08 + 1/1.29) at the far end: 136.1 N/mm.
    const evaluation = evaluate('crossed');
    expect(evaluation.bounds('belt.softest-place')!.nominal / mm).toBeCloseTo(1080, 6);
  });
});

describe('what is not known', () => {
  test.each([
    ['belt.nearest-distance', 'belt.span-stiffness-near', 'belt.nearest-distance'],
    ['belt.tension', 'belt.tight-tension', 'belt.tension'],
    ['pulley.teeth', 'pulley.pitch-diameter', 'pulley.teeth'],
    ['belt.width', 'belt.tooth-use', 'belt.tooth-capacity'],
  ])('without %s, %s is missing and says so', (entry, id, missing) => {
    const result = evaluate('belt', { [entry]: null }).result(id);
    expect(result.state).toBe('missing');
    expect(result.state === 'missing' && result.missing).toContain(missing);
  });
  test('needs, allowed and stiffness are there without a tension', () => {
    const evaluation = evaluate('belt', { 'belt.tension': null });
    for (const id of ['belt.tension-needed', 'belt.tension-allowed', 'belt.span-stiffness-least', 'belt.strum-frequency-least']) expect(evaluation.result(id).state, id).toBe('computed');
  });
  test('a travel that does not fit makes no number', () => {
    // 80 + 1400 mm is more than the 1430 mm of free belt.
    const result = evaluate('belt', { 'axis.travel': '1400 mm' }).result('belt.span-stiffness-least');
    expect(result).toMatchObject({ state: 'unable', reason: 'the travel is longer than the belt allows' });
  });
  test('a drive with a screw has no figure of a belt', () => {
    const evaluation = evaluate('lift');
    expect(evaluation.figures().filter(({ id }) => /^(belt|pulley|idlers)\./.test(id)).every(({ id }) => evaluation.result(id).state === 'left-out')).toBe(true);
  });
  test('the range of a handbook reaches the figure: 5000 to 11 000 N for a millimetre, 10 mm wide', () => {
    const { low, nominal, high } = evaluate('belt').bounds('belt.span-stiffness-far')!;
    const inverse = 1 / 0.58 + 1 / 0.85;
    expect(low / inverse).toBeCloseTo(50e3, 3);
    expect(nominal / inverse).toBeCloseTo(80e3, 3);
    expect(high / inverse).toBeCloseTo(110e3, 3);
  });
});

describe('what stands in for an entry', () => {
  test('cord and body follow from the profile, and stiffness with them', () => {
    const rubber = evaluate('belt', { 'belt.profile': 'curvilinear 2 mm', 'belt.cord': null, 'belt.body': null, 'belt.width': '6 mm' });
    expect(rubber.choice('belt.body')).toBe('rubber');
    expect(rubber.choice('belt.cord')).toBe('glass');
    // Reference dossier 2.2: 2000 to 4500 N for a millimetre of width.
    expect(rubber.bounds('belt.specific-stiffness')).toMatchObject({ low: 12e3, high: 27e3 });
    expect(evaluate('belt', { 'belt.profile': 'AT5', 'belt.cord': null, 'belt.body': null }).choice('belt.cord')).toBe('steel');
  });
  test('a cord that the profile is not made with has no handbook range: the stiffness is asked for', () => {
    const result = evaluate('belt', { 'belt.cord': 'reinforced-steel' }).result('belt.span-stiffness-least');
    expect(result).toMatchObject({ state: 'missing', missing: ['belt.specific-stiffness'] });
  });
  test('a belt without a standard profile: pitch alone gives travel, its own entries the rest', () => {
    const own = { 'belt.profile': null, 'belt.pitch': '4 mm', 'belt.specific-stiffness': '80 kN', 'belt.breaking-force': '2 kN' };
    expect(at('drive.travel-per-shaft-turn', own) / mm).toBeCloseTo(80, 9);
    expect(at('belt.tension-allowed', own)).toBeCloseTo(320, 9);
    expect(evaluate('belt', own).result('pulley.teeth-over-least').state).toBe('missing');
  });
  test('two crossed belts that differ make a range: 60 and 100 N', () => {
    const text = { 'layout.path-tensions': ['60 N', '100 N'], 'layout.drive': { ...crossedDrive } };
    expect(evaluate('crossed', text).bounds('belt.tension')).toMatchObject({ low: 60, nominal: 80, high: 100 });
  });
});

describe('charts', () => {
  test.each(['belt.span-stiffness-least', 'belt.stretch-under-load'])('%s is drawn from one end of the travel to the other', (id) => {
    const evaluation = evaluate('belt', exact);
    const figure = evaluation.figure(id)!;
    const chart = figure.chart!;
    const values = evaluation.valuesAt(figure) as never;
    expect(chart.x.to(values)).toBeCloseTo(0.5, 9);
    for (const curve of chart.curves) for (const x of [0, 0.1, 0.25, 0.4, 0.5]) expect(curve.y(x, values)).toBeGreaterThan(0);
    // The point stands upon the first curve, at the far end of a loop.
    const [point] = chart.points!;
    expect(point!.x(values)).toBeCloseTo(0.5, 9);
    expect(point!.y(values)).toBeCloseTo(chart.curves[0]!.y(0.5, values), 9);
    expect(chart.alt(values)).toMatch(/\d/);
  });
});

describe('properties', () => {
  test('twice the specific stiffness gives half; the tensions do not change', () => {
    expect(at('belt.stretch-under-load', { 'belt.specific-stiffness': '160 kN' }) / at('belt.stretch-under-load')).toBeCloseTo(0.5, 9);
    expect(at('belt.tight-tension', { 'belt.specific-stiffness': '160 kN' })).toBeCloseTo(at('belt.tight-tension'), 9);
  });
  test('more acceleration never asks for less tension; more tension never leaves less slack and never spares the shaft', () => {
    fc.assert(fc.property(fc.integer({ min: 1, max: 20 }), fc.integer({ min: 1, max: 150 }), (acceleration, tension) => {
      const changes = { 'motion.acceleration': `${acceleration} m/s²`, 'belt.tension': `${tension} N` };
      const more = { 'motion.acceleration': `${acceleration + 1} m/s²`, 'belt.tension': `${tension} N` };
      const tighter = { 'motion.acceleration': `${acceleration} m/s²`, 'belt.tension': `${tension + 5} N` };
      expect(at('belt.tension-needed', more)).toBeGreaterThan(at('belt.tension-needed', changes));
      expect(at('belt.slack-tension', tighter)).toBeGreaterThanOrEqual(at('belt.slack-tension', changes));
      expect(at('motor.radial-load', tighter)).toBeGreaterThan(at('motor.radial-load', changes));
      expect(at('belt.stretch-under-load', tighter)).toBeLessThanOrEqual(at('belt.stretch-under-load', changes) * (1 + 1e-9));
    }), { numRuns: 25 });
  });
});
