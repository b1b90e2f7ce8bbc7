/** A DC motor against its circuit and rotor, stepped in time, with a chopper that limits the current. */
import { describe, expect, test } from 'vitest';
import { dcMotorAt, greatestTorque } from '../../server/src/mechanics/dc-motor.ts';

const motor = { torqueConstant: 0.05, resistance: 0.5, noLoadCurrent: 0.4 };
const inductance = 0.4e-3;
const voltage = 24;
const none = { current: Infinity, torque: Infinity, speed: Infinity };

/** L di/dt = v − R i − K ω; the switch is opened (free-wheeling, v = 0) above the limit and closed again a little below it. */
function stepped(options: { readonly inertia: number; readonly load: number; readonly currentLimit: number; readonly time: number; readonly speed?: number }) {
  const { torqueConstant: k, resistance, noLoadCurrent } = motor;
  const dt = 1e-6;
  let [current, speed, on] = [0, options.speed ?? 0, true];
  let [torque, counted, most] = [0, 0, 0];
  for (let t = 0; t < options.time; t += dt) {
    if (current > options.currentLimit) on = false;
    else if (current < options.currentLimit - 0.1) on = true;
    current = Math.max(0, current + (((on ? voltage : 0) - resistance * current - k * speed) / inductance) * dt);
    most = Math.max(most, current);
    const shaft = k * (current - noLoadCurrent);
    // A shaft that is turned at an even speed from outside has no inertia of its own.
    if (options.speed === undefined) speed += ((shaft - options.load) / options.inertia) * dt;
    if (t > options.time / 2) {
      torque += shaft;
      counted += 1;
    }
  }
  return { speed, torque: torque / counted, most };
}

describe('DC motor', () => {
  test.each([0, 0.1, 0.5, 1.2])('settles under a load of %f N·m where the formula gives that torque', (load) => {
    // A light rotor, so that it settles within the time: mechanical constant J R/K² = 4 ms.
    const { speed } = stepped({ inertia: 2e-5, load, currentLimit: Infinity, time: 0.08 });
    expect(dcMotorAt(motor, voltage, speed).torque).toBeCloseTo(load, 3);
  });
  test.each([0, 50, 150, 250, 350, 420])('at %f rad/s a chopper limited to 10 A gives the least of both limits', (speed) => {
    const { torque, most } = stepped({ inertia: 1, load: 0, currentLimit: 10, time: 0.02, speed });
    const formula = greatestTorque(motor, voltage, { ...none, current: 10 }, speed).torque;
    // The current swings 0.1 A below the limit: 1 %.
    expect(Math.abs(torque - formula)).toBeLessThan(0.01 * 0.5 + 1e-4);
    expect(most).toBeLessThan(10.1);
  });
});
