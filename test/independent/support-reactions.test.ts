/** Reactions of supports by complementary energy (forces as unknowns, where the product has displacements) and by trying every set of touching supports. */
import fc from 'fast-check';
import { Matrix, solve } from 'ml-matrix';
import { expect, test } from 'vitest';
import { reactionBounds, reactionExtremes, rectangleCorners } from '../../server/src/mechanics/support-extremes.ts';
import { distanceToEdge } from '../../server/src/mechanics/support-polygon.ts';
import { lyingPlateReactions, resultantLoad, supportReactions, type PlateLoad, type PlateSupport } from '../../server/src/mechanics/support-reactions.ts';

interface Found { readonly reactions: readonly number[]; readonly sunk: readonly [number, number, number] }

/** Least of sum R²/(2k) + R gap under three balances: reactions and multipliers (the plate's movement) in one system. */
function byForces(supports: readonly PlateSupport[], loads: readonly PlateLoad[]): Found {
  const n = supports.length;
  const system = Matrix.zeros(n + 3, n + 3);
  const right = new Array<number>(n + 3).fill(0);
  supports.forEach(({ x, y, stiffness = 1, gap = 0 }, i) => {
    system.set(i, i, -1 / stiffness);
    right[i] = gap;
    [1, x, y].forEach((value, a) => {
      system.set(i, n + a, value);
      system.set(n + a, i, value);
    });
  });
  for (const { x, y, force } of loads) [1, x, y].forEach((value, a) => { right[n + a] = (right[n + a] as number) + force * value; });
  const found = solve(system, Matrix.columnVector(right)).to1DArray();
  return { reactions: found.slice(0, n), sunk: found.slice(n) as unknown as [number, number, number] };
}

const number = (min: number, max: number): fc.Arbitrary<number> => fc.double({ min, max, noNaN: true });
const support = fc.record({ x: number(-1, 1), y: number(-1, 1), stiffness: number(0.2, 5) });
/** A square of supports, a little moved, and some more: never in line. */
const supportsOf = (most: number): fc.Arbitrary<readonly PlateSupport[]> =>
  fc.tuple(fc.array(fc.record({ dx: number(-0.3, 0.3), dy: number(-0.3, 0.3), stiffness: number(0.2, 5) }), { minLength: 4, maxLength: 4 }), fc.array(support, { maxLength: most - 4 }))
    .map(([square, more]) => [...square.map(({ dx, dy, stiffness }, i) => ({ x: (i % 2 === 0 ? -1 : 1) + dx, y: (i < 2 ? -1 : 1) + dy, stiffness })), ...more]);
const loadsIn = fc.array(fc.record({ x: number(-0.6, 0.6), y: number(-0.6, 0.6), force: number(1, 100) }), { minLength: 1, maxLength: 3 });

test('supports that hold in both directions: the same as by forces', () => {
  fc.assert(fc.property(supportsOf(7), loadsIn, (supports, loads) => {
    const { reactions } = supportReactions(supports, loads);
    const expected = byForces(supports, loads).reactions;
    const scale = loads.reduce((sum, { force }) => sum + force, 0);
    reactions.forEach((r, i) => expect(Math.abs(r - (expected[i] as number))).toBeLessThan(1e-9 * scale));
  }));
});

/** Whether no triangle of these supports has an area to speak of. */
const inLine = (some: readonly PlateSupport[]): boolean =>
  some.every((a) => some.every((b) => some.every((c) => Math.abs((b.x - a.x) * (c.y - a.y) - (b.y - a.y) * (c.x - a.x)) < 1e-4)));

/** Every set of three and more supports: the one whose supports all push and whose others all stand clear. */
function byTrying(supports: readonly PlateSupport[], loads: readonly PlateLoad[]): readonly number[] | undefined {
  for (let set = 1; set < 1 << supports.length; set++) {
    const inside = supports.map((_, i) => i).filter((i) => set & (1 << i));
    // Supports in line leave the plate free to turn about that line: their equations have no one solution.
    if (inside.length < 3 || inLine(inside.map((i) => supports[i] as PlateSupport))) continue;
    let found: Found;
    try {
      found = byForces(inside.map((i) => supports[i] as PlateSupport), loads);
    } catch {
      continue;
    }
    const { reactions, sunk } = found;
    if (reactions.some((r) => !(r >= -1e-9))) continue;
    const clear = supports.every(({ x, y, gap = 0 }, i) => inside.includes(i) || sunk[0] + sunk[1] * x + sunk[2] * y - gap <= 1e-9);
    if (clear) return supports.map((_, i) => (inside.includes(i) ? (reactions[inside.indexOf(i)] as number) : 0));
  }
  return undefined;
}

test('a plate that only lies on its supports: the same as by trying every set of them, with uneven supports too', () => {
  const gaps = fc.array(number(-20, 20), { minLength: 7, maxLength: 7 });
  fc.assert(fc.property(supportsOf(7), loadsIn, gaps, (flat, loads, uneven) => {
    const supports = flat.map((one, i) => ({ ...one, gap: uneven[i] as number }));
    const found = lyingPlateReactions(supports, loads);
    const resultant = resultantLoad(loads);
    if (resultant === 'no load' || distanceToEdge(resultant, supports) < 1e-3) return;
    const expected = byTrying(supports, loads);
    expect(found.kind).toBe('rests');
    if (found.kind !== 'rests' || expected === undefined) throw new Error('expected to rest');
    found.reactions.forEach((r, i) => expect(Math.abs(r - (expected[i] as number))).toBeLessThan(1e-5 * resultant.force));
  }), { numRuns: 300 });
});

test('whatever the stiffness and the unevenness, each reaction stays within its bounds', () => {
  const gaps = fc.array(number(-20, 20), { minLength: 6, maxLength: 6 });
  fc.assert(fc.property(supportsOf(6), loadsIn, gaps, (flat, loads, uneven) => {
    const supports = flat.map((one, i) => ({ ...one, gap: uneven[i] as number }));
    const found = lyingPlateReactions(supports, loads);
    const bounds = reactionBounds(supports, loads);
    if (found.kind === 'tips' || bounds === 'tips') return;
    const scale = loads.reduce((sum, { force }) => sum + force, 0);
    found.reactions.forEach((r, i) => {
      expect(r).toBeGreaterThanOrEqual((bounds[i]?.least ?? NaN) - 1e-9 * scale);
      expect(r).toBeLessThanOrEqual((bounds[i]?.most ?? NaN) + 1e-9 * scale);
    });
  }));
});

test('the bounds are reached: four supports with a twist as large as the plate can take', () => {
  // All solutions of four supports are one of them plus a multiple of the one set of forces without resultant; the multiple goes as far as no support pulls.
  fc.assert(fc.property(supportsOf(4), loadsIn, (supports, loads) => {
    const bounds = reactionBounds(supports, loads);
    if (bounds === 'tips') return;
    const start = byForces(supports, loads).reactions;
    // Forces in balance with themselves: signed areas of the triangles of the other three.
    const area = (a: number, b: number, c: number): number => {
      const [p, q, r] = [supports[a], supports[b], supports[c]] as [PlateSupport, PlateSupport, PlateSupport];
      return (q.x - p.x) * (r.y - p.y) - (q.y - p.y) * (r.x - p.x);
    };
    const twist = [area(1, 2, 3), -area(0, 2, 3), area(0, 1, 3), -area(0, 1, 2)];
    let [low, high] = [-Infinity, Infinity];
    twist.forEach((t, i) => {
      const limit = -(start[i] as number) / t;
      if (t > 0) low = Math.max(low, limit);
      if (t < 0) high = Math.min(high, limit);
    });
    const scale = loads.reduce((sum, { force }) => sum + force, 0);
    twist.forEach((t, i) => {
      const ends = [low, high].map((x) => (start[i] as number) + x * t);
      expect(Math.abs((bounds[i]?.least ?? NaN) - Math.min(...ends))).toBeLessThan(1e-6 * scale);
      expect(Math.abs((bounds[i]?.most ?? NaN) - Math.max(...ends))).toBeLessThan(1e-6 * scale);
    });
  }));
});

test('extremes over a rectangle are at its corners: a fine grid finds nothing beyond', () => {
  const supports = [{ x: 0, y: 0 }, { x: 1, y: 0.1, stiffness: 3 }, { x: 0.2, y: 0.9 }, { x: 1.1, y: 1, stiffness: 0.5 }];
  const fixed = [{ x: 0.5, y: 0.4, force: 80 }];
  const { least, most } = reactionExtremes(supports, fixed, [{ forces: [0, 30], places: rectangleCorners([0.1, 1.3], [-0.2, 0.8]) }]);
  const grid = Array.from({ length: 41 }, (_, i) => i / 40);
  supports.forEach((_, i) => {
    let [low, high] = [Infinity, -Infinity];
    for (const force of [0, 10, 20, 30]) for (const u of grid) for (const v of grid) {
      const reaction = byForces(supports, [...fixed, { x: 0.1 + 1.2 * u, y: -0.2 + v, force }]).reactions[i] as number;
      [low, high] = [Math.min(low, reaction), Math.max(high, reaction)];
    }
    expect(least[i]?.reaction).toBeCloseTo(low, 8);
    expect(most[i]?.reaction).toBeCloseTo(high, 8);
  });
});
