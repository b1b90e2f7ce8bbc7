/**
 * Crossed belts from their geometry in the plane: idlers are points, each belt is a string from clamp to clamp, and everything else
 * (ways of the belts, forces, stiffness, twist) follows from lengths and energy by finite differences.
 */
import { describe, expect, test } from 'vitest';
import { beltForces, beltsFromCarriage, crossCoupling, giveOnCrossedBelts, stiffnessOnCrossedBelts, twistFromLengths, twistFromTensions } from '../../server/src/mechanics/crossed-belts.ts';
import { between, toGround, vibrationModes } from '../../server/src/mechanics/spring-mass-chain.ts';

/** Width across the rails and depth along them, m. */
const WIDTH = 0.42;
const DEPTH = 0.5;

interface Pose {
  /** Carriage across the gantry, from the left rail. */
  readonly across: number;
  /** Gantry along the rails, from the front. */
  readonly along: number;
  /** Turn of the gantry about its middle: its left end goes back, its right end to the front. */
  readonly twist?: number;
}

const length = (points: readonly (readonly [number, number])[]): number =>
  points.slice(1).reduce((sum, [u, v], index) => sum + Math.hypot(u - (points[index]?.[0] ?? NaN), v - (points[index]?.[1] ?? NaN)), 0);

/** Both runs of both belts between the carriage and the motors, which stand in the rear corners: A left, B right. */
function runs({ across, along, twist = 0 }: Pose): { readonly a: readonly [number, number]; readonly b: readonly [number, number] } {
  const on = (u: number): readonly [number, number] => [WIDTH / 2 + (u - WIDTH / 2) * Math.cos(twist), along - (u - WIDTH / 2) * Math.sin(twist)];
  const [left, right, carriage] = [on(0), on(WIDTH), on(across)];
  const [frontLeft, frontRight, motorA, motorB] = [[0, 0], [WIDTH, 0], [0, DEPTH], [WIDTH, DEPTH]] as const;
  return {
    a: [length([carriage, left, frontLeft, motorA]), length([motorA, motorB, right, carriage])],
    b: [length([carriage, right, frontRight, motorB]), length([motorB, motorA, left, carriage])],
  };
}

const home: Pose = { across: 0.17, along: 0.29 };
const shifted = (dx: number, dy: number, twist = 0): Pose => ({ across: home.across + dx, along: home.along + dy, twist });

describe('ways', () => {
  test('each belt keeps its length wherever the carriage goes', () => {
    const whole = ({ a, b }: ReturnType<typeof runs>): readonly number[] => [a[0] + a[1], b[0] + b[1]];
    whole(runs(home)).forEach((value, index) => expect(value).toBeCloseTo(whole(runs(shifted(0.1, -0.13)))[index] ?? NaN, 12));
  });

  test.each([[0.05, 0], [0, 0.05], [0.05, 0.05], [-0.03, 0.11]])('the runs to the motors change by x + y and x − y: %f, %f', (dx, dy) => {
    // Left motor: x + y. Right motor, whose run shortens when the carriage goes right: −x + y, the same as b with its sign turned.
    const [before, after] = [runs(home), runs(shifted(dx, dy))];
    const { a, b } = beltsFromCarriage({ x: dx, y: dy });
    expect(after.a[0] - before.a[0]).toBeCloseTo(a, 12);
    expect(-(after.b[0] - before.b[0])).toBeCloseTo(b, 12);
  });
});

describe('forces', () => {
  test.each([[20, 6], [20, -6], [0, 9]])('pulls on carriage and gantry: the tensions that the motors make add up to %f N and %f N', (x, y) => {
    // Each motor pulls its own run by half the belt force and lets the other off by as much. Virtual work of the tensions by finite differences.
    const force = beltForces({ x, y });
    const work = (pose: Pose): number => {
      const { a, b } = runs(pose);
      // A positive force of the belt lengthens the near run of A and shortens that of B: tension comes off the first and onto the second.
      return (force.a / 2) * (a[0] - a[1]) - (force.b / 2) * (b[0] - b[1]);
    };
    const h = 1e-6;
    expect((work(shifted(h, 0)) - work(shifted(-h, 0))) / (2 * h)).toBeCloseTo(x, 6);
    expect((work(shifted(0, h)) - work(shifted(0, -h))) / (2 * h)).toBeCloseTo(y, 6);
  });
});

/** Elastic energy with the motors held at home; EA and rest tension of each belt. */
function energy(pose: Pose, belts: { readonly a: number; readonly b: number }, tensions: { readonly a: number; readonly b: number }): number {
  const at = runs(pose);
  const rest = runs(home);
  return (['a', 'b'] as const).reduce((sum, belt) => sum + [0, 1].reduce((part, run) => {
    const stretch = (at[belt][run] ?? NaN) - (rest[belt][run] ?? NaN);
    return part + tensions[belt] * stretch + ((belts[belt] / (rest[belt][run] ?? NaN)) * stretch ** 2) / 2;
  }, 0), 0);
}

describe('stiffness', () => {
  const belts = { a: 25e3, b: 18e3 };
  const tensions = { a: 40, b: 40 };
  const stiffness = (belt: 'a' | 'b'): number => belts[belt] * (1 / runs(home)[belt][0] + 1 / runs(home)[belt][1]);

  test('second differences of the energy are the matrix', () => {
    const h = 1e-5;
    const e = (dx: number, dy: number): number => energy(shifted(dx, dy), belts, tensions);
    const second = { xx: (e(h, 0) + e(-h, 0) - 2 * e(0, 0)) / h ** 2, yy: (e(0, h) + e(0, -h) - 2 * e(0, 0)) / h ** 2, xy: (e(h, h) + e(-h, -h) - e(h, -h) - e(-h, h)) / (4 * h ** 2) };
    const { xx, yy, xy } = stiffnessOnCrossedBelts(stiffness('a'), stiffness('b'));
    expect(second.xx / xx).toBeCloseTo(1, 5);
    expect(second.yy / yy).toBeCloseTo(1, 5);
    expect(second.xy / xy).toBeCloseTo(1, 4);
  });

  test('where the energy is least under a pull to the right, the carriage stands off across by the coupling', () => {
    const pull = 15;
    // Newton's method on differences: the energy is a quadratic, one step does.
    const h = 1e-5;
    const e = (dx: number, dy: number): number => energy(shifted(dx, dy), belts, tensions) - pull * dx;
    const [gx, gy] = [(e(h, 0) - e(-h, 0)) / (2 * h), (e(0, h) - e(0, -h)) / (2 * h)];
    const [xx, yy, xy] = [(e(h, 0) + e(-h, 0) - 2 * e(0, 0)) / h ** 2, (e(0, h) + e(0, -h) - 2 * e(0, 0)) / h ** 2, (e(h, h) + e(-h, -h) - e(h, -h) - e(-h, h)) / (4 * h ** 2)];
    const found = { x: -(yy * gx - xy * gy) / (xx * yy - xy ** 2), y: -(xx * gy - xy * gx) / (xx * yy - xy ** 2) };
    const give = giveOnCrossedBelts(stiffness('a'), stiffness('b'), { x: pull, y: 0 });
    expect(found.x / give.x).toBeCloseTo(1, 4);
    expect(found.y / give.y).toBeCloseTo(1, 3);
    expect(Math.abs(found.y / found.x)).toBeCloseTo(crossCoupling(stiffness('a'), stiffness('b')), 4);
  });
});

describe('swinging', () => {
  /** Everything at once: carriage and gantry, both rotors on their fields, both belts, as one system of four coordinates. */
  const whole = (belts: { readonly a: number; readonly b: number }): readonly number[] => {
    const { modes } = vibrationModes(
      [{ name: 'x', mass: 0.8 }, { name: 'y', mass: 2.2 }, { name: 'rotor a', mass: 0.33 }, { name: 'rotor b', mass: 0.33 }],
      [
        toGround('field a', 4.6e5, 'rotor a'), toGround('field b', 4.6e5, 'rotor b'),
        { name: 'belt a', stiffness: belts.a, stretch: { x: 1, y: 1, 'rotor a': -1 } }, { name: 'belt b', stiffness: belts.b, stretch: { x: 1, y: -1, 'rotor b': -1 } },
      ],
    );
    return modes.map((mode) => mode.angularFrequency);
  };
  /** One axis alone: half of its mass on one belt with its motor. */
  const alone = (mass: number, belt: number): readonly number[] =>
    vibrationModes([{ name: 'half', mass: mass / 2 }, { name: 'rotor', mass: 0.33 }], [toGround('field', 4.6e5, 'rotor'), between('belt', belt, 'half', 'rotor')]).modes.map((mode) => mode.angularFrequency);

  test('with equal belts the four modes of the whole are those of both axes alone, each on half of its mass', () => {
    const both = [...alone(0.8, 1.2e5), ...alone(2.2, 1.2e5)].sort((a, b) => a - b);
    whole({ a: 1.2e5, b: 1.2e5 }).forEach((value, index) => expect(value / (both[index] ?? NaN)).toBeCloseTo(1, 9));
  });

  test('with one belt a tenth softer the lowest mode lies between those of two soft and two stiff ones', () => {
    const lowest = whole({ a: 1.2e5, b: 1.08e5 })[0] ?? NaN;
    expect(lowest).toBeGreaterThan(alone(2.2, 1.08e5)[0] ?? NaN);
    expect(lowest).toBeLessThan(alone(2.2, 1.2e5)[0] ?? NaN);
  });
});

describe('twist', () => {
  test.each([0, 800])('least energy with unequal tensions, guides of %f N·m/rad', (guideStiffness) => {
    const belts = { a: 25e3, b: 25e3 };
    const tensions = { a: 30, b: 45 };
    // Slow descent along each coordinate in turn until nothing changes: no derivative of the product's formula is used.
    const e = (p: readonly [number, number, number]): number => energy(shifted(p[0], p[1], p[2]), belts, tensions) + (guideStiffness * p[2] ** 2) / 2;
    const at: [number, number, number] = [0, 0, 0];
    for (let round = 0; round < 400; round++) {
      for (const i of [0, 1, 2]) {
        const h = 1e-5;
        const moved = (d: number): number => e(at.map((value, j) => (j === i ? value + d : value)) as [number, number, number]);
        const [up, here, down] = [moved(h), moved(0), moved(-h)];
        at[i] = (at[i] as number) - ((up - down) / (2 * h)) / ((up + down - 2 * here) / h ** 2);
      }
    }
    const whole = runs(home).a[0] + runs(home).a[1];
    const twist = twistFromTensions({ width: WIDTH, tensionDifference: 30 - 45, specificStiffness: 25e3, pathLength: whole, guideStiffness });
    // A twist to the back on the left lengthens belt A: the tighter belt B turns the gantry that way.
    // What the tensions themselves add to the stiffness, of the order of the strain (T/EA = 0.2 %), is left out of the formula.
    expect(Math.abs(Math.abs(at[2] / twist) - 1)).toBeLessThan(5e-3);
    expect(Math.abs(at[2])).toBeGreaterThan(1e-4);
  });

  test('one belt longer: the twist at which the ways of both belts differ by as much', () => {
    const twist = twistFromLengths(2e-3, WIDTH);
    const { a, b } = runs({ ...home, across: WIDTH / 2, twist });
    expect(Math.abs(a[0] + a[1] - b[0] - b[1])).toBeCloseTo(2e-3, 6);
  });
});
