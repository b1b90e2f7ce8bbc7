/** The slider as a body with play that is pushed in time: contact springs and Coulomb friction at both ends, beside the balance of forces of the product. */
import { describe, expect, test } from 'vitest';
import { sliderForce, type Slider } from '../../server/src/mechanics/slider-jamming.ts';

/** Speed after 0.3 s under a constant driving force, m/s. */
function speedUnder(force: number, { guidedLength: s, friction, driveOffset: d, load, loadOffset = 0, sideForce = 0, couple = 0, constantDrag = 0 }: Slider, thickness = 0): number {
  const [mass, inertia, stiffness, damping, play, creep] = [1, 0.01, 1e6, 400, 20e-6, 1e-3];
  let [v, y, vy, turn, spin] = [0, 0, 0, 0, 0];
  const step = 5e-6;
  for (let t = 0; t < 0.3; t += step) {
    // Friction and what resists point against the motion; below the creep speed they fade, as a stiff viscous hold.
    const against = (size: number): number => -size * Math.max(-1, Math.min(1, v / creep));
    const resists = against(load);
    let [fx, fy, moment] = [force + resists + against(constantDrag), sideForce, -force * d - resists * loadOffset - couple];
    for (const end of [-1, 1]) {
      const at = y + (turn * end * s) / 2;
      const depth = Math.abs(at) - play;
      if (depth <= 0) continue;
      const side = Math.sign(at);
      const normal = Math.max(0, stiffness * depth + damping * side * (vy + (spin * end * s) / 2));
      const rub = against(friction * normal);
      fx += rub;
      fy -= side * normal;
      // The side of the guide that it touches lies half a thickness from the axis.
      moment += (-side * normal * end * s) / 2 - rub * side * (thickness / 2);
    }
    v += (fx / mass) * step;
    vy += (fy / mass) * step;
    spin += (moment / inertia) * step;
    y += vy * step;
    turn += spin * step;
  }
  return v;
}

const moves = (force: number, slider: Slider, thickness = 0): boolean => speedUnder(force, slider, thickness) > 0.05;

describe.each<[string, Slider]>([
  ['drive offset', { guidedLength: 0.1, friction: 0.25, driveOffset: 0.12, load: 20 }],
  ['load offset', { guidedLength: 0.1, friction: 0.25, driveOffset: 0, load: 20, loadOffset: 0.3 }],
  ['both, opposite sides', { guidedLength: 0.1, friction: 0.2, driveOffset: 0.1, load: 20, loadOffset: -0.1 }],
  ['both, same side', { guidedLength: 0.1, friction: 0.2, driveOffset: 0.1, load: 20, loadOffset: 0.15 }],
  ['side force that rules', { guidedLength: 0.1, friction: 0.2, driveOffset: 0.02, load: 20, sideForce: 120 }],
  ['side force and offset', { guidedLength: 0.1, friction: 0.2, driveOffset: 0.1, load: 20, sideForce: 30, couple: 3, constantDrag: 4 }],
])('%s', (_, slider) => {
  test('moves with 4 % more than the force computed and stays with 4 % less', () => {
    const result = sliderForce(slider);
    if (result.kind !== 'moves') throw new Error('expected to move');
    expect(moves(result.force * 1.04, slider)).toBe(true);
    expect(moves(result.force * 0.96, slider)).toBe(false);
  });
});

test.each([30, 300])('an offset beyond s/(2 mu) locks, whatever the force (%f N)', (force) => {
  const slider = { guidedLength: 0.1, friction: 0.25, driveOffset: 0.21, load: 0 };
  expect(sliderForce(slider).kind).toBe('locks');
  expect(moves(force, slider)).toBe(false);
  expect(moves(force, { ...slider, driveOffset: 0.19 })).toBe(true);
});

test('a couple that helps opens a window of forces: too soft and too hard a push both stay', () => {
  const slider = { guidedLength: 0.1, friction: 0.3, driveOffset: 0.2, load: 5, couple: -12 };
  const result = sliderForce(slider);
  if (result.kind !== 'moves') throw new Error('expected to move');
  expect(result.locksAbove).toBeLessThan(Infinity);
  expect(moves(result.force * 0.96, slider)).toBe(false);
  expect(moves((result.force + result.locksAbove) / 2, slider)).toBe(true);
  expect(moves(result.locksAbove * 1.1, slider)).toBe(false);
});

test('the thickness of the guide does not matter without a side force', () => {
  const slider = { guidedLength: 0.1, friction: 0.25, driveOffset: 0.12, load: 20 };
  const result = sliderForce(slider);
  if (result.kind !== 'moves') throw new Error('expected to move');
  expect(moves(result.force * 1.04, slider, 0.04)).toBe(true);
  expect(moves(result.force * 0.96, slider, 0.04)).toBe(false);
});
