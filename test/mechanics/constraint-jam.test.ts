/** Jam forces by hand and by another formula. */
import { describe, expect, test } from 'vitest';
import { growthMisfits, jamDrag, jamForces, jointLoads, slideAt } from '../../server/src/mechanics/constraint-jam.ts';
import { scaleOf } from '../../server/src/mechanics/constraint-rank.ts';
import { wrenchesOf, type Joint, type Wrench } from '../../server/src/mechanics/constraint-wrenches.ts';
import { dot3, type Vector3 } from '../../server/src/mechanics/vector3.ts';
import { exactBed, fourPlaces, jammingBed, rails, threePlaces, Z } from './constraint-layouts.ts';

/** What joints out of their place, by index, do along each wrench: m, rad for couples; by definition. */
const placeMisfits = (wrenches: readonly Wrench[], misfits: ReadonlyMap<number, { readonly offset: Vector3; readonly tilt: Vector3 }>): number[] =>
  wrenches.map((one) => {
    const misfit = misfits.get(one.joint);
    return misfit === undefined ? 0 : dot3(one.holds === 'couple' ? misfit.tilt : misfit.offset, one.direction);
  });

const stiff = { force: 1e8, couple: 5e4 };
function loads(joints: readonly Joint[], misfit: (wrenches: ReturnType<typeof wrenchesOf>) => number[]) {
  const wrenches = wrenchesOf(joints, 'drives held');
  const forces = jamForces(wrenches, misfit(wrenches), wrenches.map(() => stiff), scaleOf(joints.map((joint) => joint.at)));
  return { wrenches, forces, loads: jointLoads(wrenches, forces) };
}

describe('a plate that grows between two rails', () => {
  // Aluminium on steel, 40 K warmer together: (23.6 − 12)e-6 · 40 = 0.464e-3. Rails 0.5 m apart, 100 N/µm each:
  // 0.232 mm of growth against two springs in series, 50 N/µm: 11 600 N.
  const found = loads(rails(2), (wrenches) => growthMisfits(wrenches, (23.6e-6 - 12e-6) * 40)).loads;
  test('presses each rail with growth over both compliances: 11 600 N, inwards on the plate', () => {
    expect(found.map((one) => one.force[0])).toEqual([expect.closeTo(11600, 6), expect.closeTo(-11600, 6)]);
    expect(found.every((one) => Math.abs(one.force[1]) < 1e-6 && Math.abs(one.couple[1]) < 1e-6)).toBe(true);
  });
});

test('an exactly constrained bed grows and takes any misplacement without force', () => {
  expect(Math.max(...loads(exactBed, (wrenches) => growthMisfits(wrenches, 1e-3)).forces.map(Math.abs))).toBeLessThan(1e-6);
  const off = new Map([[3, { offset: [1e-3, 2e-3, 3e-3], tilt: [0.01, 0, 0] } as const]]);
  expect(Math.max(...loads(exactBed, (wrenches) => placeMisfits(wrenches, off)).forces.map(Math.abs))).toBeLessThan(1e-6);
});

test('four feet, one 0.1 mm too high: the rigid plate rocks, a quarter of the springs work each way', () => {
  // Least energy: the warp pattern (1, −1, 1, −1) takes a quarter of the misfit: F = k z/4 = 1e8 · 1e-4/4 = 2500 N.
  const joints = fourPlaces.map((at, i): Joint => ({ owner: `foot ${i + 1}`, kind: 'flat', at, axis: Z }));
  const found = loads(joints, (wrenches) => placeMisfits(wrenches, new Map([[0, { offset: [0, 0, 1e-4], tilt: [0, 0, 0] }]])));
  expect(found.forces.map((force) => Math.round(force * 1000) / 1000)).toEqual([-2500, 2500, -2500, 2500]);
});

test('two carriages out of parallel by an angle: half of it on each, M = k φ/2', () => {
  const found = loads(rails(2), (wrenches) => placeMisfits(wrenches, new Map([[1, { offset: [0, 0, 0], tilt: [1e-3, 0, 0] }]])));
  expect(Math.abs(found.loads[0]!.couple[0])).toBeCloseTo((5e4 * 1e-3) / 2, 9);
});

describe('the jamming bed', () => {
  const misfit = (wrenches: ReturnType<typeof wrenchesOf>): number[] => wrenches.map((_, i) => 1e-5 * Math.sin(3 * i + 1));
  const { wrenches, forces } = loads(jammingBed, misfit);
  test('forces and couples balance', () => {
    for (const i of [0, 1, 2] as const) {
      expect(Math.abs(wrenches.reduce((sum, one, j) => sum + one.force[i] * forces[j]!, 0))).toBeLessThan(1e-6);
      expect(Math.abs(wrenches.reduce((sum, one, j) => sum + one.moment[i] * forces[j]!, 0))).toBeLessThan(1e-6);
    }
  });
  test('the work along every pattern of forces in balance is that of the misfit: null space by elimination', () => {
    // For each n with Wᵀ n = 0: nᵀ K⁻¹ f = −nᵀ δ. n from elimination on Wᵀ, unscaled.
    const delta = misfit(wrenches);
    const patterns = nullSpace([0, 1, 2].flatMap((i) => [wrenches.map((one) => one.force[i]!), wrenches.map((one) => one.moment[i]!)]));
    expect(patterns.length).toBe(19);
    for (const n of patterns) {
      const given = n.reduce((sum, value, i) => sum + (value * forces[i]!) / (wrenches[i]!.holds === 'couple' ? stiff.couple : stiff.force), 0);
      const wanted = -n.reduce((sum, value, i) => sum + value * delta[i]!, 0);
      expect(Math.abs(given - wanted)).toBeLessThan(1e-9);
    }
  });
});

test('a stiffer machine never stores less energy, and twice the stiffness doubles every force', () => {
  const wrenches = wrenchesOf(jammingBed, 'drives held');
  const scale = scaleOf(jammingBed.map((joint) => joint.at));
  const misfits = growthMisfits(wrenches, 1e-3);
  const one = jamForces(wrenches, misfits, wrenches.map(() => stiff), scale);
  const two = jamForces(wrenches, misfits, wrenches.map(() => ({ force: 2e8, couple: 1e5 })), scale);
  one.forEach((force, i) => expect(Math.abs(two[i]! - 2 * force)).toBeLessThan(1e-4));
});

test('positions written to the micrometre do not let the part slip out: three stays through one point, one 0.1 mm short', () => {
  // Three springs at 120° on a point, in their plane: the misfit pattern (1, 1, 1)/√3 is held once too often: F = k δ/3 each.
  const stays = (places: typeof threePlaces): Joint[] => [
    ...threePlaces.map((at, i): Joint => ({ owner: `leg ${i}`, kind: 'wire-flexure', at, axis: Z })), ...places.map((at, i): Joint => ({ owner: `stay ${i}`, kind: 'wire-flexure', at, axis: threePlaces[i]! })),
  ];
  const rounded = threePlaces.map(([x, y, z], i) => [Math.round(x * 1e6) / 1e6 + (i === 0 ? 2e-7 : 0), Math.round(y * 1e6) / 1e6, z] as const);
  const found = loads(stays(rounded), (wrenches) => placeMisfits(wrenches, new Map([[3, { offset: [0, 1e-4, 0], tilt: [0, 0, 0] }]])));
  for (const force of found.forces.slice(3)) expect(Math.abs(Math.abs(force) / ((1e8 * 1e-4) / 3) - 1)).toBeLessThan(1e-4);
});

describe('how far a growing plate slides where it floats', () => {
  // Strain 1e-3. The ball at (−0.25, 0) holds x and y, the fork at (0.25, 0) y alone: the thermal centre is the ball. Nuts at 0.2 m and 120° slide 1e-3 times their distance from it:
  // nut 1 at (0, 0.2): 0.25 mm along x, 0.2 mm along y; the fork 0.5 mm along x.
  const scale = scaleOf(exactBed.map((joint) => joint.at));
  const wrenches = wrenchesOf(exactBed, 'drives held');
  const slide = (at: Vector3, along: Vector3): number => slideAt(wrenches, growthMisfits(wrenches, 1e-3), wrenches.map(() => stiff), [{ at, along, misfit: 1e-3 * dot3(at, along) }], scale)[0] as number;
  test('it grows away from the joint that holds both ways', () => {
    expect(slide([-0.25, 0, 0], [1, 0, 0])).toBeCloseTo(0, 12);
    expect(slide([0.25, 0, 0], [1, 0, 0])).toBeCloseTo(0.5e-3, 12);
    expect([slide([0, 0.2, 0], [1, 0, 0]), slide([0, 0.2, 0], [0, 1, 0])]).toEqual([expect.closeTo(0.25e-3, 12), expect.closeTo(0.2e-3, 12)]);
  });
  // Balls on slides that meet in the middle hold the middle: each slides by 1e-3 · 0.2 m outwards.
  test('on slides that meet in one place it grows from there', () => {
    const balls = threePlaces.map((at, i): Joint => ({ owner: `ball ${i}`, kind: 'ball-on-radial-slide', at, axis: Z, across: at }));
    const rows = wrenchesOf(balls, 'guides alone');
    const outwards = threePlaces.map((at) => ({ at, along: [at[0] / 0.2, at[1] / 0.2, 0] as Vector3, misfit: 1e-3 * 0.2 }));
    for (const moved of slideAt(rows, growthMisfits(rows, 1e-3), rows.map(() => stiff), outwards, scaleOf(threePlaces))) expect(moved).toBeCloseTo(0.2e-3, 12);
  });
  // The ball 1 mm out along y turns the plate about the fork: 1 mm over 0.5 m; at nut 1, 0.2 m beside the line, 0.4 mm along x, and half of 1 mm along y.
  test('a joint out of its place turns it about the other', () => {
    const off = placeMisfits(wrenches, new Map([[0, { offset: [0, 1e-3, 0], tilt: [0, 0, 0] }]]));
    const moved = slideAt(wrenches, off, wrenches.map(() => stiff), [{ at: [0, 0.2, 0], along: [1, 0, 0], misfit: 0 }, { at: [0, 0.2, 0], along: [0, 1, 0], misfit: 0 }], scale);
    expect(moved.map(Math.abs)).toEqual([expect.closeTo(0.4e-3, 12), expect.closeTo(0.5e-3, 12)]);
  });
});

test('drag: 0.1 · (200 N + 2 · 3 N·m/0.06 m) = 30 N, by hand', () => {
  expect(jamDrag(0.1, 200, 3, 0.06)).toBeCloseTo(30, 12);
});

/** Rows n with a n = 0, by Gauss–Jordan elimination with pivoting. */
function nullSpace(a: number[][]): number[][] {
  const rows = a.map((row) => [...row]);
  const columns = rows[0]!.length;
  const pivots: number[] = [];
  for (let column = 0; column < columns && pivots.length < rows.length; column++) {
    const top = pivots.length;
    const best = rows.slice(top).reduce((at, row, i) => (Math.abs(row[column]!) > Math.abs(rows[at]![column]!) ? top + i : at), top);
    if (Math.abs(rows[best]![column]!) < 1e-9) continue;
    [rows[top], rows[best]] = [rows[best]!, rows[top]!];
    const pivot = rows[top];
    const size = pivot[column]!;
    pivot.forEach((value, j) => { pivot[j] = value / size; });
    rows.forEach((row, i) => {
      if (i === top) return;
      const factor = row[column]!;
      pivot.forEach((value, j) => { row[j] = row[j]! - factor * value; });
    });
    pivots.push(column);
  }
  return Array.from({ length: columns }, (_, j) => j).filter((j) => !pivots.includes(j)).map((free) => {
    const n = Array.from({ length: columns }, (_, j): number => (j === free ? 1 : 0));
    pivots.forEach((column, i) => { n[column] = -rows[i]![free]!; });
    return n;
  });
}
