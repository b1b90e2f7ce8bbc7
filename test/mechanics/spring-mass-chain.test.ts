import { describe, expect, test } from 'vitest';
import { between, inertiaAlongAxis, lagUnderUnitAcceleration, toGround, vibrationModes, type Mode } from '../../server/src/mechanics/spring-mass-chain.ts';

const lowest = (modes: readonly Mode[]): Mode => modes[0] as Mode;

describe('modes of masses on springs', () => {
  test('one mass on the ground: ω = √(k/m), 2 kg on 200 N/m swings with 10 rad/s', () => {
    const { modes, floating } = vibrationModes([{ name: 'mass', mass: 2 }], [toGround('spring', 200, 'mass')]);
    expect(floating).toBe(0);
    expect(modes).toHaveLength(1);
    expect(lowest(modes).angularFrequency).toBeCloseTo(10, 12);
    expect(lowest(modes).shape).toEqual({ mass: 1 });
    expect(lowest(modes).participation['mass']).toBeCloseTo(1, 12);
  });

  test('springs beside each other add up, in a row they do not: k/2 of two equal ones', () => {
    const beside = vibrationModes([{ name: 'mass', mass: 1 }], [toGround('one', 8, 'mass'), toGround('other', 8, 'mass')]);
    expect(lowest(beside.modes).angularFrequency).toBeCloseTo(4, 12);
    // A joint without mass between two springs: 8/2 = 4 N/m on 1 kg is 2 rad/s, and the joint goes half way.
    const row = vibrationModes([{ name: 'joint', mass: 0 }, { name: 'mass', mass: 1 }], [toGround('one', 8, 'joint'), between('other', 8, 'mass', 'joint')]);
    expect(row.modes).toHaveLength(1);
    expect(lowest(row.modes).angularFrequency).toBeCloseTo(2, 12);
    expect(lowest(row.modes).shape['joint']).toBeCloseTo(0.5, 12);
    expect(lowest(row.modes).giveShares).toEqual({ one: expect.closeTo(0.5, 12) as number, other: expect.closeTo(0.5, 12) as number });
  });

  test('two masses joined by a spring float: one mode, √(k (1/m1 + 1/m2)), against each other', () => {
    const { modes, floating } = vibrationModes([{ name: 'a', mass: 1 }, { name: 'b', mass: 3 }], [between('spring', 12, 'a', 'b')]);
    expect(floating).toBe(1);
    expect(modes).toHaveLength(1);
    expect(lowest(modes).angularFrequency).toBeCloseTo(4, 12); // √(12 · 4/3)
    expect(lowest(modes).shape['a']).toBe(1);
    expect(lowest(modes).shape['b']).toBeCloseTo(-1 / 3, 12);
    // Kinetic energy 1·1² to 3·(1/3)² is 3 to 1.
    expect(lowest(modes).motionShares['a']).toBeCloseTo(0.75, 12);
    expect(lowest(modes).movesMost).toBe('a');
  });

  test('only as many modes as asked for', () => {
    const parts = [{ name: 'a', mass: 1 }, { name: 'b', mass: 3 }];
    const springs = [toGround('g', 10, 'a'), between('ab', 10, 'a', 'b')];
    const all = vibrationModes(parts, springs).modes;
    expect(vibrationModes(parts, springs, 1).modes).toEqual(all.slice(0, 1));
  });

  test('a spring whose stretch is a sum holds only that sum: the difference floats', () => {
    const { modes, floating } = vibrationModes([{ name: 'x', mass: 1 }, { name: 'y', mass: 1 }], [{ name: 'belt', stiffness: 8, stretch: { x: 1, y: 1 } }]);
    expect(floating).toBe(1);
    // E = ½ 8 (x + y)², with x = y: ½ 8 4 x² on ½ 2 ẋ²: ω² = 32/2.
    expect(lowest(modes).angularFrequency).toBeCloseTo(4, 12);
    // Along x = y = u, a common acceleration moves both alike: φ = (1, 1)/√2, φ·φᵀM1 = 1.
    expect(lowest(modes).participation['x']).toBeCloseTo(1, 12);
  });

  test('the participations of a part add up to 1 over all modes, and with 1/ω² to its static lag', () => {
    const parts = [{ name: 'a', mass: 0.3 }, { name: 'b', mass: 1.7 }, { name: 'c', mass: 0.6 }];
    const springs = [toGround('ground', 900, 'a'), between('ab', 400, 'a', 'b'), between('bc', 250, 'b', 'c')];
    const { modes } = vibrationModes(parts, springs);
    for (const part of ['a', 'b', 'c']) expect(modes.reduce((sum, mode) => sum + (mode.participation[part] ?? NaN), 0)).toBeCloseTo(1, 10);
    // Under 1 m/s² each spring carries all masses beyond it: 2.6/900 + 2.3/400 + 0.6/250 at c, by hand 0.0110389.
    const lag = modes.reduce((sum, mode) => sum + (mode.participation['c'] ?? NaN) / mode.angularFrequency ** 2, 0);
    expect(lag).toBeCloseTo(2.6 / 900 + 2.3 / 400 + 0.6 / 250, 12);
    expect(lagUnderUnitAcceleration(parts, springs)['c']).toBeCloseTo(2.6 / 900 + 2.3 / 400 + 0.6 / 250, 12);
    expect(lagUnderUnitAcceleration(parts, springs)['a']).toBeCloseTo(2.6 / 900, 12);
  });

  test('stiffening one spring by 1 % raises the frequency by half its share of the give', () => {
    const parts = [{ name: 'a', mass: 0.3 }, { name: 'b', mass: 1.7 }];
    const at = (k: number): Mode => lowest(vibrationModes(parts, [toGround('ground', 900, 'a'), between('ab', k, 'a', 'b')]).modes);
    const share = at(400).giveShares['ab'] ?? NaN;
    const slope = (Math.log(at(404).angularFrequency) - Math.log(at(396).angularFrequency)) / (Math.log(404) - Math.log(396));
    expect(slope).toBeCloseTo(share / 2, 4);
  });

  test('all masses double: all frequencies fall by √2; all springs double: they rise by √2', () => {
    const make = (mass: number, stiffness: number): readonly number[] =>
      vibrationModes([{ name: 'a', mass }, { name: 'b', mass: 3 * mass }], [toGround('g', stiffness, 'a'), between('ab', 5 * stiffness, 'a', 'b')]).modes.map((mode) => mode.angularFrequency);
    make(1, 10).forEach((frequency, index) => {
      expect((make(2, 10)[index] ?? NaN) / frequency).toBeCloseTo(Math.SQRT1_2, 12);
      expect((make(1, 20)[index] ?? NaN) / frequency).toBeCloseTo(Math.SQRT2, 12);
    });
  });

  test('stiffnesses nine powers of ten apart leave the slow mode right', () => {
    const { modes } = vibrationModes([{ name: 'a', mass: 1e-3 }, { name: 'b', mass: 1 }], [toGround('stiff', 1e12, 'a'), between('soft', 1e3, 'a', 'b')]);
    // As if hung from the ground: √(1e3/1).
    expect(lowest(modes).angularFrequency).toBeCloseTo(Math.sqrt(1e3), 3);
  });
});

describe('what is refused', () => {
  const one = [{ name: 'mass', mass: 1 }];
  test.each([
    ['no spring', () => vibrationModes(one, [])],
    ['a spring without stiffness', () => vibrationModes(one, [toGround('spring', 0, 'mass')])],
    ['a rigid spring', () => vibrationModes(one, [toGround('spring', Infinity, 'mass')])],
    ['no mass', () => vibrationModes([{ name: 'mass', mass: 0 }], [toGround('spring', 1, 'mass')])],
    ['a negative mass', () => vibrationModes([{ name: 'mass', mass: -1 }], [toGround('spring', 1, 'mass')])],
    ['a part that no spring reaches', () => vibrationModes([...one, { name: 'other', mass: 1 }], [toGround('spring', 1, 'mass')])],
    ['a spring on a part that is not there', () => vibrationModes(one, [between('spring', 1, 'mass', 'other')])],
    ['two parts of one name', () => vibrationModes([...one, ...one], [toGround('spring', 1, 'mass')])],
    ['joints without mass that float', () => vibrationModes([...one, { name: 'a', mass: 0 }, { name: 'b', mass: 0 }], [toGround('spring', 1, 'mass'), between('ab', 1, 'a', 'b')])],
    ['a lag of what floats', () => lagUnderUnitAcceleration([...one, { name: 'b', mass: 1 }], [between('spring', 1, 'mass', 'b')])],
  ])('%s', (_, run) => {
    expect(run).toThrow(RangeError);
  });
});

describe('an inertia along the axis', () => {
  test('100 g·cm² on a pulley of 6.366 mm radius is 0.2467 kg: 1e-5/(6.366e-3)², by hand', () => {
    expect(inertiaAlongAxis(1e-5, 6.366e-3)).toBeCloseTo(0.24675, 4);
  });
  test.each([[-1, 1], [1, 0], [NaN, 1]])('inertia %f over %f is refused', (inertia, lever) => {
    expect(() => inertiaAlongAxis(inertia, lever)).toThrow(RangeError);
  });
});
