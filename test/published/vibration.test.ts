/** Systems of masses and springs, and pulses on them, against textbooks. All but two from memory, marked so; each was recomputed by hand. */
import { describe, expect, test } from 'vitest';
import { ringingAmplitude } from '../../server/src/mechanics/ringing.ts';
import { between, inertiaAlongAxis, toGround, vibrationModes, type Mode } from '../../server/src/mechanics/spring-mass-chain.ts';

const frequencies = (modes: readonly Mode[]): readonly number[] => modes.map((mode) => mode.angularFrequency);
/** A shape with the first part as 1, as books print it. */
const ratios = (mode: Mode, names: readonly string[]): readonly number[] => names.map((name) => (mode.shape[name] ?? NaN) / (mode.shape[names[0] ?? ''] ?? NaN));

describe('one mass', () => {
  test('Meriam and Kraige, Dynamics, sample problem 8/1, p. 592 (answers from memory): 25 lb on 160 lb/ft, 14.36 rad/s', () => {
    // In pounds and feet: k in lb/ft over m in slugs.
    const { modes } = vibrationModes([{ name: 'body', mass: 25 / 32.2 }], [toGround('spring', 160, 'body')]);
    expect(frequencies(modes)[0]).toBeCloseTo(14.36, 2);
  });
});

describe('two masses', () => {
  test('Thomson, Theory of Vibration, example 5.1-1 (from memory): m, 2m on k, k, k', () => {
    const { modes } = vibrationModes([{ name: '1', mass: 1 }, { name: '2', mass: 2 }], [toGround('left', 1, '1'), between('middle', 1, '1', '2'), toGround('right', 1, '2')]);
    // ω² = 0.634 and 2.366 k/m; amplitudes A1/A2 = 0.731 and −2.73.
    expect(frequencies(modes).map((value) => value ** 2)[0]).toBeCloseTo(0.634, 3);
    expect(frequencies(modes).map((value) => value ** 2)[1]).toBeCloseTo(2.366, 3);
    expect(1 / (ratios(modes[0] as Mode, ['1', '2'])[1] ?? NaN)).toBeCloseTo(0.732, 3);
    expect(1 / (ratios(modes[1] as Mode, ['1', '2'])[1] ?? NaN)).toBeCloseTo(-2.732, 3);
  });

  test('Rao, Mechanical Vibrations, chapter 5, k = 30, 5 and m = 10, 1 (from memory): 1.5811 and 2.4495 rad/s, ratios 2 and −5', () => {
    const { modes } = vibrationModes([{ name: '1', mass: 10 }, { name: '2', mass: 1 }], [toGround('k1', 30, '1'), between('k2', 5, '1', '2')]);
    expect(frequencies(modes)[0]).toBeCloseTo(1.5811, 4);
    expect(frequencies(modes)[1]).toBeCloseTo(2.4495, 4);
    expect(ratios(modes[0] as Mode, ['1', '2'])[1]).toBeCloseTo(2, 9);
    expect(ratios(modes[1] as Mode, ['1', '2'])[1]).toBeCloseTo(-5, 9);
  });

  test('Den Hartog, Mechanical Vibrations, chapter 3 (from memory): equal masses between three equal springs, √(k/m) and √(3 k/m)', () => {
    const { modes } = vibrationModes([{ name: '1', mass: 2 }, { name: '2', mass: 2 }], [toGround('left', 8, '1'), between('middle', 8, '1', '2'), toGround('right', 8, '2')]);
    expect(frequencies(modes)[0]).toBeCloseTo(2, 12);
    expect(frequencies(modes)[1]).toBeCloseTo(Math.sqrt(12), 12);
  });

  test('Rao, chapter 5, semi-definite systems (from memory): two discs on a shaft that turns freely, √(k (J1 + J2)/(J1 J2)), and a node between', () => {
    const { modes, floating } = vibrationModes([{ name: 'J1', mass: 3 }, { name: 'J2', mass: 6 }], [between('shaft', 50, 'J1', 'J2')]);
    expect(floating).toBe(1);
    expect(frequencies(modes)[0]).toBeCloseTo(Math.sqrt((50 * 9) / 18), 12);
    expect(ratios(modes[0] as Mode, ['J1', 'J2'])[1]).toBeCloseTo(-0.5, 12);
  });
});

describe('three masses', () => {
  const parts = ['1', '2', '3'].map((name) => ({ name, mass: 1 }));
  const chain = [toGround('k1', 1, '1'), between('k2', 1, '1', '2'), between('k3', 1, '2', '3')];

  test('Rao, chapter 6, equal masses and springs held at one end (from memory): 0.44504, 1.2471 and 1.8025 √(k/m)', () => {
    const { modes } = vibrationModes(parts, chain);
    // Printed 1.8025; exact 2 sin(5π/14) = 1.80194.
    [0.44504, 1.2471, 1.8025].forEach((printed, index) => expect(Math.abs((frequencies(modes)[index] ?? NaN) / printed - 1)).toBeLessThan(4e-4));
    // Printed shapes 1 : 1.8019 : 2.2470, 1 : 0.4450 : −0.8020, 1 : −1.2468 : 0.5544.
    const printed = [[1, 1.8019, 2.247], [1, 0.445, -0.802], [1, -1.2468, 0.5544]];
    printed.forEach((shape, index) => shape.forEach((value, part) => expect(Math.abs((ratios(modes[index] as Mode, ['1', '2', '3'])[part] ?? NaN) - value)).toBeLessThan(1e-3)));
  });

  test('closed form of such a chain of n, 2 √(k/m) sin((2 i − 1) π/(2 (2 n + 1))), for n = 8', () => {
    const names = Array.from({ length: 8 }, (_, i) => String(i));
    const { modes } = vibrationModes(names.map((name) => ({ name, mass: 1 })), names.map((name, i) => (i === 0 ? toGround('k0', 1, name) : between(`k${i}`, 1, name, String(i - 1)))));
    modes.forEach((mode, i) => expect(mode.angularFrequency).toBeCloseTo(2 * Math.sin(((2 * i + 1) * Math.PI) / 34), 10));
  });
});

describe('inertia along the axis', () => {
  test('Gupta and Singhal, example 3.6, p. 36: what a belt of 100 t/h carries over 200 m at 1.2 m/s is 0.4222 kg·m² at 1200 rpm', () => {
    const travelPerRadian = 1.2 / ((1200 * 2 * Math.PI) / 60);
    const carried = ((100e3 / 3600) * 200) / 1.2;
    // The other way round: that inertia through the same lever is what the belt carries.
    expect(inertiaAlongAxis(0.4222, travelPerRadian) / carried).toBeCloseTo(1, 3);
  });
});

describe('pulses', () => {
  const period = 0.5;
  const omega = (2 * Math.PI) / period;
  const steady = 3 / omega ** 2;

  test.each([0.125, 0.25, 0.5, 0.75, 1.3])('Chopra, Dynamics of Structures, chapter 4, rectangular pulse (from memory): 2 |sin(π t/T)| after it, t = %f T', (share) => {
    expect(ringingAmplitude({ acceleration: 3, length: share * period, rise: 0 }, omega) / steady).toBeCloseTo(2 * Math.abs(Math.sin(Math.PI * share)), 10);
  });

  test.each([0.25, 0.5, 1, 1.5, 2.2])('Chopra, chapter 4, step with a finite rise (from memory): the swing upon the plateau is |sin(π t/T)|/(π t/T), t = %f T', (share) => {
    // A plateau of n and a half periods: rise and fall leave equal swings that add up to twice that of the rise alone.
    const rise = share * period;
    const length = (Math.ceil(share) + 3.5) * period;
    const expected = Math.abs(Math.sin(Math.PI * share)) / (Math.PI * share);
    expect(ringingAmplitude({ acceleration: 3, length, rise }, omega) / steady / 2).toBeCloseTo(expected, 10);
  });
});
