/** Temperature swing and time of an overload against the heat balance, integrated in time (Runge and Kutta, fourth order). */
import { expect, test } from 'vitest';
import { overloadTime, temperatureSwing } from '../../server/src/mechanics/intermittent-heating.ts';

/** One step of C dθ/dt = P − θ/R, with P R = end and C R = constant. */
function step(rise: number, end: number, constant: number, dt: number): number {
  const slope = (at: number): number => (end - at) / constant;
  const k1 = slope(rise);
  const k2 = slope(rise + (k1 * dt) / 2);
  const k3 = slope(rise + (k2 * dt) / 2);
  const k4 = slope(rise + k3 * dt);
  return rise + ((k1 + 2 * k2 + 2 * k3 + k4) * dt) / 6;
}

test.each([
  { loadedRise: 160, idleRise: 20, loadedTime: 300, idleTime: 600, heatingConstant: 900, coolingConstant: 900 },
  { loadedRise: 260, idleRise: 0, loadedTime: 600, idleTime: 600, heatingConstant: 900, coolingConstant: 1500 },
  { loadedRise: 90, idleRise: 30, loadedTime: 2000, idleTime: 400, heatingConstant: 700, coolingConstant: 700 },
])('$loadedTime s at $loadedRise K, $idleTime s at $idleRise K', (cycle) => {
  let rise = 0;
  let [highest, lowest] = [0, 0];
  for (let i = 0; i < 40; i++) {
    for (let t = 0; t < 200; t++) rise = step(rise, cycle.loadedRise, cycle.heatingConstant, cycle.loadedTime / 200);
    highest = rise;
    for (let t = 0; t < 200; t++) rise = step(rise, cycle.idleRise, cycle.coolingConstant, cycle.idleTime / 200);
    lowest = rise;
  }
  const found = temperatureSwing(cycle);
  expect(found.highest).toBeCloseTo(highest, 6);
  expect(found.lowest).toBeCloseTo(lowest, 6);
});

test('time of an overload', () => {
  let rise = 25;
  let time = 0;
  while (rise < 80) {
    rise = step(rise, 300, 700, 0.1);
    time += 0.1;
  }
  const found = overloadTime(25, 300, 80, 700);
  expect(Math.abs((found.kind === 'for' ? found.time : NaN) - time)).toBeLessThan(0.2);
});
