/**
 * Modes by the eigenvalue solver against two other methods that share nothing with it: a count of the sign changes of leading minors
 * (Sturm) with halving, written here with plain elimination, and an integration in time whose zero crossings are counted.
 */
import { describe, expect, test } from 'vitest';
import { beltAxisModes } from '../../server/src/mechanics/belt-axis-modes.ts';
import { between, toGround, vibrationModes, type Part, type Spring } from '../../server/src/mechanics/spring-mass-chain.ts';

/** Numbers that look random and are the same every time. */
function numbers(seed: number): () => number {
  let state = seed;
  return () => {
    state = (state * 1664525 + 1013904223) % 2 ** 32;
    return state / 2 ** 32;
  };
}

/** K straight from the forces: moves one part by 1 and sums the pulls of the springs. */
function stiffnessByForces(parts: readonly Part[], springs: readonly Spring[]): number[][] {
  return parts.map((row) => parts.map((column) => springs.reduce((sum, spring) => sum + spring.stiffness * (spring.stretch[column.name] ?? 0) * (spring.stretch[row.name] ?? 0), 0)));
}

/** How many eigenvalues of K φ = λ M φ lie below λ: negative pivots of K − λ M (Sylvester's law of inertia). */
function below(stiffness: readonly (readonly number[])[], masses: readonly number[], eigenvalue: number): number {
  const a = stiffness.map((row, i) => row.map((value, j) => value - (i === j ? eigenvalue * (masses[i] as number) : 0)));
  let negative = 0;
  for (let i = 0; i < a.length; i++) {
    const pivotRow = a[i] as number[];
    const pivot = pivotRow[i] as number;
    if (pivot < 0) negative++;
    for (let row = i + 1; row < a.length; row++) {
      const target = a[row] as number[];
      const factor = (target[i] as number) / pivot;
      for (let column = i; column < a.length; column++) target[column] = (target[column] as number) - factor * (pivotRow[column] as number);
    }
  }
  return negative;
}

/** The n-th eigenvalue, from 1 up, by halving. */
function eigenvalue(stiffness: readonly (readonly number[])[], masses: readonly number[], n: number): number {
  let low = 0;
  let high = 1;
  while (below(stiffness, masses, high) < n) high *= 2;
  for (let i = 0; i < 200; i++) {
    const middle = (low + high) / 2;
    if (below(stiffness, masses, middle) >= n) high = middle;
    else low = middle;
  }
  return (low + high) / 2;
}

describe('Sturm counts', () => {
  test.each(Array.from({ length: 40 }, (_, seed) => seed))('a random chain with cross springs, %i', (seed) => {
    const next = numbers(seed + 1);
    const count = 2 + Math.floor(next() * 5);
    const parts = Array.from({ length: count }, (_, i) => ({ name: `p${i}`, mass: 10 ** (2 * next() - 1) }));
    const springs = parts.map((part, i) => (i === 0 ? toGround('k0', 10 ** (2 + 2 * next()), part.name) : between(`k${i}`, 10 ** (2 + 2 * next()), part.name, `p${i - 1}`)));
    springs.push({ name: 'cross', stiffness: 10 ** (2 + next()), stretch: { p0: 1, [`p${count - 1}`]: 2 * next() - 1 } });
    const stiffness = stiffnessByForces(parts, springs);
    const { modes, floating } = vibrationModes(parts, springs);
    expect(floating).toBe(0);
    expect(modes).toHaveLength(count);
    modes.forEach((mode, index) => expect(mode.angularFrequency ** 2 / eigenvalue(stiffness, parts.map((part) => part.mass), index + 1)).toBeCloseTo(1, 9));
  });

  test('parts without mass: as if they weighed next to nothing', () => {
    const make = (light: number): { readonly parts: readonly Part[]; readonly springs: readonly Spring[] } => ({
      parts: [{ name: 'rotor', mass: 0.2 }, { name: 'joint', mass: light }, { name: 'carriage', mass: 0.6 }, { name: 'idler', mass: light }],
      springs: [toGround('g', 4e5, 'rotor'), between('shaft', 2e5, 'rotor', 'joint'), between('near', 6e4, 'joint', 'carriage'), between('far', 9e4, 'carriage', 'idler'), between('back', 3e4, 'idler', 'joint')],
    });
    const almost = make(1e-6);
    const stiffness = stiffnessByForces(almost.parts, almost.springs);
    const { modes } = vibrationModes(make(0).parts, make(0).springs);
    expect(modes).toHaveLength(2);
    modes.forEach((mode, index) => expect(mode.angularFrequency ** 2 / eigenvalue(stiffness, almost.parts.map((part) => part.mass), index + 1)).toBeCloseTo(1, 4));
  });
});

describe('in time', () => {
  /** A belt axis written out as forces: rotor, pulley, carriage, idler, in metres of belt. Returns the frequency of the carriage after a steady pull is let go. */
  function frequencyInTime(position: number): number {
    const r = 0.04 / (2 * Math.PI);
    const c = 25e3;
    const mass = { rotor: (5.4e-6 * 9) / r ** 2, pulley: 4e-6 / r ** 2, carriage: 3, idler: 0.02 };
    const k = { field: (20 * 9) / r ** 2, reduction: 40 / r ** 2, near: c / position, far: c / (0.8 - position), back: c / 0.85 };
    const x = { rotor: 0, pulley: 0, carriage: 0, idler: 0 };
    // The shape of a steady pull on the carriage holds almost nothing but the lowest mode; found by letting everything sink in heavy damping.
    const v = { rotor: 0, pulley: 0, carriage: 0, idler: 0 };
    const step = (dt: number, damping: number, pull: number): void => {
      const force = {
        rotor: -k.field * x.rotor + k.reduction * (x.pulley - x.rotor),
        pulley: k.reduction * (x.rotor - x.pulley) + k.near * (x.carriage - x.pulley) + k.back * (x.idler - x.pulley),
        carriage: k.near * (x.pulley - x.carriage) + k.far * (x.idler - x.carriage) + pull,
        idler: k.far * (x.carriage - x.idler) + k.back * (x.pulley - x.idler),
      };
      for (const part of ['rotor', 'pulley', 'carriage', 'idler'] as const) {
        v[part] = (v[part] + (force[part] / mass[part]) * dt) * damping;
        x[part] += v[part] * dt;
      }
    };
    const dt = 2e-6; // the fastest mode has a period of about 1.5 ms
    for (let i = 0; i < 60_000; i++) step(dt, 0.9995, 10);
    for (const part of ['rotor', 'pulley', 'carriage', 'idler'] as const) v[part] = 0;
    const crossings: number[] = [];
    let before = x.carriage;
    for (let i = 1; crossings.length < 41; i++) {
      step(dt, 1, 0);
      if (before > 0 !== x.carriage > 0) crossings.push((i - 1 + before / (before - x.carriage)) * dt);
      before = x.carriage;
    }
    return 20 / ((crossings[40] as number) - (crossings[0] as number));
  }

  test.each([0.15, 0.4, 0.75])('belt axis with stepper, reduction and idler, carriage at %f m: within 0.2 per cent', (position) => {
    const { modes } = beltAxisModes({
      arrangement: 'loop', specificStiffness: 25e3, freeLength: 0.8 + 0.85, centerDistance: 0.8, carriageMass: 3, pulleyRadius: 0.04 / (2 * Math.PI), pulleyInertia: 4e-6,
      idlerMasses: [0.02], ratio: 3, reductionStiffness: 40, rotorInertia: 5.4e-6, hold: { kind: 'magnetic', stiffness: 20 },
    }, position);
    expect(Math.abs(frequencyInTime(position) / ((modes[0]?.angularFrequency ?? NaN) / (2 * Math.PI)) - 1)).toBeLessThan(2e-3);
  });
});
