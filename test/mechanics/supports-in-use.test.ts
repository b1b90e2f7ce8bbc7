import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { reactionExtremes } from '../../server/src/mechanics/support-extremes.ts';
import { distanceToEdge, loadPoint } from '../../server/src/mechanics/support-polygon.ts';
import { supportReactions } from '../../server/src/mechanics/support-reactions.ts';
import { extremeOf, extremeRatio, supportForms, worstLoadPoint, type CommonAcceleration, type LoadForm, type OpenMass } from '../../server/src/mechanics/supports-in-use.ts';

const G = 9.80665;
const REST: CommonAcceleration = { x: 0, y: 0, z: 0 };
/** The nuts of a bed. */
const BED = [{ x: 0, y: 0 }, { x: 0.3, y: 0 }, { x: 0.15, y: 0.3 }];
const still = (mass: number, x: number, y: number, height = 0): OpenMass => ({ mass: [mass, mass], x: [x, x], y: [y, y], height: [height, height] });
const form = (index: number): LoadForm => supportForms(BED)[index] as LoadForm;

describe('supports in use, by hand', () => {
  // The share of the third of (0, 0), (300, 0), (150, 300) mm is y/300 mm.
  it('forms are shares by place', () => {
    expect(form(2).force).toBeCloseTo(0, 12);
    expect(form(2).x).toBeCloseTo(0, 12);
    expect(form(2).y).toBeCloseTo(1 / 0.3, 9);
    expect(supportForms(BED).reduce((sum, { force }) => sum + force, 0)).toBeCloseTo(1, 12);
  });
  // 6 kg at y = 100 mm: 2 kg · g; 2 kg that may be absent, anywhere from y = −50 to 250 mm: −2 · 50/300 = −1/3 kg and 2 · 250/300 = 5/3 kg.
  it('a part that may lie anywhere, or not at all', () => {
    const masses = [still(6, 0.15, 0.1), { mass: [0, 2], x: [0, 0.3], y: [-0.05, 0.25], height: [0, 0] } as const];
    const least = extremeOf(form(2), masses, [REST], G, -1);
    expect(least.value).toBeCloseTo((2 - 1 / 3) * G, 9);
    expect(least.masses[1]).toMatchObject({ mass: 2, y: -0.05 });
    expect(extremeOf(form(2), masses, [REST], G, 1).value).toBeCloseTo((2 + 5 / 3) * G, 9);
  });
  // Two carriages 200 mm apart along x, 10 kg in the middle, 100 mm above the push, 2 m/s²: m a h / s = 10 · 2 · 0.1 / 0.2 = 10 N from the front one to the rear one.
  it('inertia of a high mass goes from one carriage to the other', () => {
    const [, front] = supportForms([{ x: 0, y: 0 }, { x: 0.2, y: 0 }]) as [LoadForm, LoadForm];
    const masses = [still(10, 0.1, 0, 0.1)];
    const both = [REST, { x: 2, y: 0, z: 0 }, { x: -2, y: 0, z: 0 }];
    expect(extremeOf(front, masses, both, G, -1)).toMatchObject({ value: expect.closeTo(5 * G - 10, 9) as number, acceleration: 1 });
    expect(extremeOf(front, masses, both, G, 1)).toMatchObject({ value: expect.closeTo(5 * G + 10, 9) as number, acceleration: 2 });
  });
  // 3 kg of the third at y = 300 mm, and g + a = 9.80665 + 2; pulled down faster than it falls, the sign turns.
  it('lifting adds, falling turns the sign', () => {
    const masses = [still(3, 0.15, 0.3)];
    expect(extremeOf(form(2), masses, [REST, { x: 0, y: 0, z: 2 }], G, 1).value).toBeCloseTo(3 * (G + 2), 9);
    expect(extremeOf(form(2), masses, [REST, { x: 0, y: 0, z: -12 }], G, -1).value).toBeCloseTo(3 * (G - 12), 9);
  });
  // 6 kg at y = 30 mm has a tenth on the third; 2 kg at y = −30 mm makes it (180 − 60)/(8 · 300) = 5 %.
  it('shares: a part that may be absent is there where that is worse', () => {
    const masses = [still(6, 0.15, 0.03), { mass: [0, 2], x: [0.15, 0.15], y: [-0.03, 0.15], height: [0, 0] } as const];
    const least = extremeRatio(form(2), masses, [REST], G, -1);
    expect(least).toMatchObject({ value: expect.closeTo(0.05, 12) as number });
    // Most: (180 + 300)/(8 · 300) = 20 %.
    expect(extremeRatio(form(2), masses, [REST], G, 1)).toMatchObject({ value: expect.closeTo(0.2, 12) as number });
  });
  it('has no share of nothing', () => {
    expect(extremeRatio(form(2), [still(0, 0, 0)], [REST], G, 1)).toBe('no load');
    expect(worstLoadPoint(BED, [still(0, 0, 0)], [REST], G)).toBe('no load');
    expect(() => extremeOf(form(2), [still(1, 0, 0)], [], G, 1)).toThrow(RangeError);
    expect(() => extremeOf(form(2), [still(-1, 0, 0)], [REST], G, 1)).toThrow(RangeError);
    expect(() => extremeOf(form(2), [still(1, Number.NaN, 0)], [REST], G, 1)).toThrow(RangeError);
  });
  // 4 kg, 150 mm high, 3 m/s² towards +x: a h / g = 45.89 mm to the back.
  it('the worst place of the load goes back by a h / g', () => {
    const square = [{ x: 0, y: 0 }, { x: 0.4, y: 0 }, { x: 0.4, y: 0.4 }, { x: 0, y: 0.4 }];
    const worst = worstLoadPoint(square, [still(4, 0.1, 0.2, 0.15)], [REST, { x: 3, y: 0, z: 0 }, { x: -3, y: 0, z: 0 }], G);
    expect(worst).toMatchObject({ value: expect.closeTo(0.1 - (3 * 0.15) / G, 9) as number, acceleration: 1 });
  });
});

const range = (min: number, max: number) => fc.tuple(fc.integer({ min, max }), fc.integer({ min, max })).map(([a, b]) => [Math.min(a, b) / 1000, Math.max(a, b) / 1000] as const);
const openMass = fc.record({ mass: range(0, 5000), x: range(-200, 500), y: range(-200, 500), height: range(-50, 200) });
const layouts = fc.constantFrom(BED, [...BED, { x: 0.3, y: 0.3, stiffness: 3 }], [{ x: 0, y: 0 }, { x: 0.2, y: 0 }]);
const motions = fc.array(fc.record({ x: fc.integer({ min: -4, max: 4 }), y: fc.integer({ min: -4, max: 4 }), z: fc.integer({ min: -4, max: 4 }) }), { minLength: 1, maxLength: 3 });

/** Every choice of a grid of n steps over sizes, places and heights of all masses. */
function* gridOf(masses: readonly OpenMass[], n: number): Generator<readonly { readonly mass: number; readonly x: number; readonly y: number; readonly height: number }[]> {
  const [first, ...others] = masses;
  if (!first) { yield []; return; }
  const steps = ([low, high]: readonly [number, number]): number[] => (low === high ? [low] : Array.from({ length: n + 1 }, (_, i) => low + ((high - low) * i) / n));
  for (const rest of gridOf(others, n)) for (const mass of steps(first.mass)) for (const x of steps(first.x)) for (const y of steps(first.y)) for (const height of steps(first.height)) yield [{ mass, x, y, height }, ...rest];
}

describe('supports in use, by other methods', () => {
  it('agree with the extremes of moving loads at rest', () => {
    fc.assert(fc.property(layouts, fc.array(openMass, { minLength: 1, maxLength: 4 }), (supports, masses) => {
      const other = reactionExtremes(supports, [], masses.map(({ mass, x, y }) => ({ forces: mass.map((one) => one * G), places: x.flatMap((px) => y.map((py) => ({ x: px, y: py }))) })));
      supportForms(supports).forEach((one, i) => {
        expect(extremeOf(one, masses, [REST], G, -1).value).toBeCloseTo(other.least[i]?.reaction ?? NaN, 6);
        expect(extremeOf(one, masses, [REST], G, 1).value).toBeCloseTo(other.most[i]?.reaction ?? NaN, 6);
      });
    }), { numRuns: 60 });
  });
  // The zero-moment point, computed by another module, and the reactions to it on a grid: nothing is beyond the extremes, and corners of the grid reach them.
  it('agree with a grid of zero-moment points', () => {
    fc.assert(fc.property(layouts, fc.array(openMass, { minLength: 1, maxLength: 2 }), motions, (supports, masses, accelerations) => {
      const forms = supportForms(supports);
      const [least, most] = [forms.map(() => Infinity), forms.map(() => -Infinity)];
      const [leastShare, mostShare] = [forms.map(() => Infinity), forms.map(() => -Infinity)];
      let nearest = Infinity;
      for (const acceleration of accelerations) for (const choice of gridOf(masses, 1)) {
        const load = loadPoint(choice.map((one) => ({ ...one, acceleration })), G);
        if (load === 'no load') {
          forms.forEach((_, i) => { [least[i], most[i]] = [Math.min(least[i] ?? 0, 0), Math.max(most[i] ?? 0, 0)]; });
          continue;
        }
        supportReactions(supports, [load]).reactions.forEach((reaction, i) => {
          [least[i], most[i]] = [Math.min(least[i] ?? 0, reaction), Math.max(most[i] ?? 0, reaction)];
          [leastShare[i], mostShare[i]] = [Math.min(leastShare[i] ?? 0, reaction / load.force), Math.max(mostShare[i] ?? 0, reaction / load.force)];
        });
        nearest = Math.min(nearest, distanceToEdge(load, supports));
      }
      forms.forEach((one, i) => {
        expect(extremeOf(one, masses, accelerations, G, -1).value).toBeCloseTo(least[i] ?? NaN, 5);
        expect(extremeOf(one, masses, accelerations, G, 1).value).toBeCloseTo(most[i] ?? NaN, 5);
        const [lowest, highest] = [extremeRatio(one, masses, accelerations, G, -1), extremeRatio(one, masses, accelerations, G, 1)];
        if (lowest === 'no load' || highest === 'no load') expect(leastShare[i]).toBe(Infinity);
        else {
          expect(lowest.value).toBeCloseTo(leastShare[i] ?? NaN, 6);
          expect(highest.value).toBeCloseTo(mostShare[i] ?? NaN, 6);
        }
      });
      const worst = worstLoadPoint(supports, masses, accelerations, G);
      if (worst === 'no load') { expect(nearest).toBe(Infinity); return; }
      // Inside it is exact; outside it lies at least that far out.
      if (supports.length > 2 && nearest >= 0) expect(worst.value).toBeCloseTo(nearest, 6);
      else {
        expect(worst.value).toBeGreaterThanOrEqual(nearest - 1e-9);
        expect(worst.value).toBeLessThanOrEqual(Math.max(0, 0.9 * nearest));
      }
    }), { numRuns: 60 });
  });
  it('are not exceeded inside: a finer grid finds nothing beyond', () => {
    fc.assert(fc.property(openMass, motions, (mass, accelerations) => {
      const [low, high] = [extremeOf(form(2), [mass], accelerations, G, -1).value, extremeOf(form(2), [mass], accelerations, G, 1).value];
      for (const acceleration of accelerations) for (const choice of gridOf([mass], 4)) {
        const load = loadPoint(choice.map((one) => ({ ...one, acceleration })), G);
        const reaction = load === 'no load' ? 0 : (supportReactions(BED, [load]).reactions[2] ?? 0);
        expect(reaction).toBeGreaterThanOrEqual(low - 1e-6);
        expect(reaction).toBeLessThanOrEqual(high + 1e-6);
      }
    }), { numRuns: 30 });
  });
});
