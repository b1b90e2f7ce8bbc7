import { describe, expect, test } from 'vitest';
import { beltAxisLag, beltAxisModes, softestAndStiffest, type BeltAxis } from '../../server/src/mechanics/belt-axis-modes.ts';
import type { Mode } from '../../server/src/mechanics/spring-mass-chain.ts';

/** 0.5 kg on a belt of 25 kN, 20 teeth of 2 mm, motor 0.4 N·m with 50 pole pairs. Invented. */
const axis: BeltAxis = {
  arrangement: 'loop', specificStiffness: 25e3, freeLength: 1.6, carriageMass: 0.5, pulleyRadius: 0.04 / (2 * Math.PI), pulleyInertia: 1e-7,
  rotorInertia: 5.4e-6, hold: { kind: 'magnetic', stiffness: 20 },
};
const clamped: BeltAxis = { ...axis, hold: { kind: 'clamped' } };
const slowest = (of: BeltAxis, position: number): Mode => beltAxisModes(of, position).modes[0] as Mode;
const hertz = (mode: Mode): number => mode.angularFrequency / (2 * Math.PI);

describe('with the rotor clamped', () => {
  test('loop: 25 kN over 0.4 m and 1.2 m is 83.3 N/mm, and 0.5 kg swings at 65 Hz (dossier, belts 2.3)', () => {
    expect(hertz(slowest(clamped, 0.4))).toBeCloseTo(Math.sqrt(25e3 * (1 / 0.4 + 1 / 1.2) / 0.5) / (2 * Math.PI), 9);
    expect(hertz(slowest(clamped, 0.4))).toBeCloseTo(65, 0);
  });

  test('a loop is softest at the far end, where both runs are half the path: 4 E A/L', () => {
    expect(softestAndStiffest(1.6, 0.1, 0.8)).toEqual({ softest: 0.8, stiffest: 0.1 });
    expect(slowest(clamped, 0.8).angularFrequency).toBeCloseTo(Math.sqrt((4 * 25e3) / 1.6 / 0.5), 9);
  });

  test('a belt with anchored ends is softest in the middle, and alike on both sides', () => {
    const anchored: BeltAxis = { ...clamped, arrangement: 'anchored-ends', freeLength: 1 };
    expect(softestAndStiffest(1, 0.1, 0.95)).toEqual({ softest: 0.5, stiffest: 0.95 });
    expect(slowest(anchored, 0.3).angularFrequency).toBeCloseTo(slowest(anchored, 0.7).angularFrequency, 9);
    expect(slowest(anchored, 0.5).angularFrequency).toBeCloseTo(Math.sqrt(4 * 25e3 / 0.5), 9);
  });

  test('a reduction in a row with the belt: 1/k adds up', () => {
    const lever = clamped.pulleyRadius;
    const withReduction: BeltAxis = { ...clamped, pulleyInertia: 0, reductionStiffness: 3 };
    const belt = 25e3 * (1 / 0.4 + 1 / 1.2);
    const whole = 1 / (1 / belt + lever ** 2 / 3);
    expect(slowest(withReduction, 0.4).angularFrequency).toBeCloseTo(Math.sqrt(whole / 0.5), 8);
  });
});

describe('with the motor', () => {
  test('no mass in the motor: its magnetic spring in a row with the belt, through the ratio', () => {
    const light: BeltAxis = { ...axis, rotorInertia: 0, pulleyInertia: 0, ratio: 3 };
    const magnetic = (20 * 9) / axis.pulleyRadius ** 2;
    const belt = 25e3 * (1 / 0.4 + 1 / 1.2);
    expect(slowest(light, 0.4).angularFrequency).toBeCloseTo(Math.sqrt(1 / (1 / magnetic + 1 / belt) / 0.5), 7);
  });

  test('two masses by the quadratic: rotor and carriage', () => {
    // m1 = J/r², k1 = k/r², m2, k2: m1 m2 λ² − (m1 k2 + m2 (k1 + k2)) λ + k1 k2 = 0.
    const r2 = axis.pulleyRadius ** 2;
    const [m1, k1, m2, k2] = [(5.4e-6 + 1e-7) / r2, 20 / r2, 0.5, 25e3 * (1 / 0.4 + 1 / 1.2)];
    const b = m1 * k2 + m2 * (k1 + k2);
    const root = Math.sqrt(b * b - 4 * m1 * m2 * k1 * k2);
    const { modes } = beltAxisModes(axis, 0.4);
    expect(modes.map((mode) => mode.angularFrequency ** 2 / ((b - root) / (2 * m1 * m2)))[0]).toBeCloseTo(1, 9);
    expect(modes.map((mode) => mode.angularFrequency ** 2 / ((b + root) / (2 * m1 * m2)))[1]).toBeCloseTo(1, 9);
  });

  test('a free rotor lets carriage and rotor swing against each other: √(k (1/m + r²/J)), above the clamped frequency', () => {
    const free = beltAxisModes({ ...axis, hold: { kind: 'free' } }, 0.4);
    expect(free.floating).toBe(1);
    const k = 25e3 * (1 / 0.4 + 1 / 1.2);
    const rotor = 5.5e-6 / axis.pulleyRadius ** 2;
    expect((free.modes[0] as Mode).angularFrequency).toBeCloseTo(Math.sqrt(k * (1 / 0.5 + 1 / rotor)), 8);
    expect((free.modes[0] as Mode).angularFrequency).toBeGreaterThan(slowest(clamped, 0.4).angularFrequency);
  });

  test('a very stiff magnetic field is the same as a clamped rotor', () => {
    const ratio = slowest({ ...axis, hold: { kind: 'magnetic', stiffness: 20e6 } }, 0.4).angularFrequency / slowest(clamped, 0.4).angularFrequency;
    expect(ratio).toBeCloseTo(1, 5);
  });

  test('more mass anywhere, a softer belt or motor: never a higher frequency', () => {
    const now = slowest(axis, 0.4).angularFrequency;
    for (const change of [
      { carriageMass: 0.6 }, { rotorInertia: 8e-6 }, { pulleyInertia: 1e-6 }, { specificStiffness: 20e3 }, { massPerLength: 0.01 }, { hold: { kind: 'magnetic', stiffness: 15 } as const },
      { reductionStiffness: 50 }, { centerDistance: 0.79, idlerMasses: [0.02] },
    ]) expect(slowest({ ...axis, ...change }, 0.4).angularFrequency).toBeLessThan(now);
  });
});

describe('lag', () => {
  test('the magnetic spring carries everything, the belt the carriage alone: by hand', () => {
    // 1 m/s²: (0.5 kg + J/r²)/(k/r²) and 0.5/(25 kN (1/0.4 + 1/1.2)).
    const r2 = axis.pulleyRadius ** 2;
    expect(beltAxisLag(axis, 0.4)).toBeCloseTo((0.5 + 5.5e-6 / r2) / (20 / r2) + 0.5 / (25e3 * (1 / 0.4 + 1 / 1.2)), 12);
  });
  test('a clamped rotor leaves the belt; a free one holds nothing', () => {
    expect(beltAxisLag(clamped, 0.4)).toBeCloseTo(0.5 / (25e3 * (1 / 0.4 + 1 / 1.2)), 12);
    expect(() => beltAxisLag({ ...axis, hold: { kind: 'free' } }, 0.4)).toThrow(RangeError);
  });
});

describe('idlers and the belt itself', () => {
  test('idlers without mass change nothing', () => {
    const idle: BeltAxis = { ...axis, centerDistance: 0.78, idlerMasses: [0, 0, 0] };
    expect(slowest(idle, 0.4).angularFrequency).toBeCloseTo(slowest(axis, 0.4).angularFrequency, 7);
  });

  test('a belt of 8 g/m adds half its mass to a clamped axis: 0.5 kg and 6.4 g', () => {
    expect(slowest({ ...clamped, massPerLength: 0.008 }, 0.4).angularFrequency).toBeCloseTo(Math.sqrt(25e3 * (1 / 0.4 + 1 / 1.2) / (0.5 + 0.8 * 0.008)), 8);
  });

  test('on a riding motor the idlers turn with the pulley', () => {
    const anchored: BeltAxis = { ...axis, arrangement: 'anchored-ends', freeLength: 1 };
    const asPulley = slowest({ ...anchored, pulleyInertia: 1e-7 + 0.04 * axis.pulleyRadius ** 2 }, 0.4);
    expect(slowest({ ...anchored, idlerMasses: [0.02, 0.02] }, 0.4).angularFrequency).toBeCloseTo(asPulley.angularFrequency, 9);
  });

  test('the worst and the best place are those of a fine scan', () => {
    const idle: BeltAxis = { ...axis, freeLength: 1.7, centerDistance: 0.82, idlerMasses: [0.03], massPerLength: 0.01, reductionStiffness: 30 };
    const scanned = Array.from({ length: 301 }, (_, i) => slowest(idle, 0.1 + (0.7 * i) / 300).angularFrequency);
    const { softest, stiffest } = softestAndStiffest(idle.freeLength, 0.1, 0.8);
    expect(slowest(idle, softest).angularFrequency / Math.min(...scanned)).toBeCloseTo(1, 4);
    expect(slowest(idle, stiffest).angularFrequency / Math.max(...scanned)).toBeCloseTo(1, 4);
  });
});

test.each<[string, BeltAxis, number]>([
  ['a carriage upon the pulley', axis, 0],
  ['beyond the belt', axis, 1.6],
  ['no mass', { ...axis, carriageMass: 0 }, 0.4],
  ['a belt that gives without end', { ...axis, specificStiffness: 0 }, 0.4],
  ['an idler so far that no belt is left', { ...axis, centerDistance: 1.6, idlerMasses: [0.01] }, 0.4],
  ['a carriage beyond the idler', { ...axis, centerDistance: 0.3, idlerMasses: [0.01] }, 0.4],
])('%s is refused', (_, of, position) => {
  expect(() => beltAxisModes(of, position)).toThrow(RangeError);
});
