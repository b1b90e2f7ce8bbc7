/** The reach of lifts by trying all directions, and for each the tilt by halving. */
import { expect, test } from 'vitest';
import { tiltRange } from '../../server/src/mechanics/levelling.ts';

test.each([
  [[{ x: 0, y: 0 }, { x: 0.5, y: 0 }, { x: 0.2, y: 0.4 }], [{ up: 2e-3, down: 1e-3 }, { up: 1e-3, down: 4e-3 }, { up: 3e-3, down: 2e-3 }]],
  [[{ x: 0, y: 0 }, { x: 0.5, y: 0 }, { x: 0.5, y: 0.4 }, { x: 0, y: 0.4 }], [{ up: 2e-3, down: 2e-3 }, { up: 2e-3, down: 2e-3 }, { up: 2e-3, down: 2e-3 }, { up: 2e-3, down: 2e-3 }]],
])('every direction tried', (lifts, reach) => {
  const reaches = (slope: number, angle: number): boolean => {
    const heights = lifts.map(({ x, y }) => slope * (x * Math.cos(angle) + y * Math.sin(angle)));
    // A common height must fit: the highest "too low" below the lowest "too high".
    return Math.max(...heights.map((h, i) => -(reach[i]?.down ?? 0) - h)) <= Math.min(...heights.map((h, i) => (reach[i]?.up ?? 0) - h));
  };
  let worst = Infinity;
  for (let step = 0; step < 7200; step++) {
    const angle = (step * Math.PI) / 3600;
    let [low, high] = [0, 1];
    for (let i = 0; i < 50; i++) {
      const middle = (low + high) / 2;
      if (reaches(middle, angle)) low = middle;
      else high = middle;
    }
    worst = Math.min(worst, low);
  }
  const { everyDirection } = tiltRange(lifts, reach);
  expect(Math.abs(worst / everyDirection - 1)).toBeLessThan(1e-6);
});
