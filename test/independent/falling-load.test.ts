/** Energy balance of a load that runs down through a screw and a reduction: nothing appears or vanishes. */
import { expect, test } from 'vitest';
import { runDownAcceleration } from '../../server/src/mechanics/axis-torque.ts';
import type { AxisLoad, DriveChain } from '../../server/src/mechanics/axis-torque.ts';

const load: AxisLoad = { mass: 11.6, slope: Math.PI / 2, gravity: 9.81, friction: 6, process: 0, counterbalance: 10 };
const chain: DriveChain = {
  travelPerTurn: 0.008, efficiency: 0.66, reverseEfficiency: 0.54, dragTorque: 0.004, screwInertia: 1.6e-6,
  stages: [{ ratio: 2.5, efficiency: 0.96, reverseEfficiency: 0.95, fastInertia: 2e-7, slowInertia: 3e-6, backlash: 0 }],
  motorInertia: 8.2e-6,
};

test.each([1, 2])('%i drives: potential energy equals kinetic energy and every loss, element by element', (drives) => {
  const found = runDownAcceleration(chain, load, drives);
  if (found.kind !== 'accelerates') throw new Error('this load runs down');
  // Integrate the fall with that acceleration, and keep the books of each element from its own forces.
  const dt = 1e-4;
  const perTurn = chain.travelPerTurn / (2 * Math.PI);
  const stage = chain.stages[0]!;
  let speed = 0;
  let fallen = 0;
  let lost = 0;
  while (fallen < 0.2) {
    const mean = speed + (found.acceleration * dt) / 2;
    const way = mean * dt;
    const turn = way / perTurn;
    const nutForce = (load.mass * (load.gravity - found.acceleration) - load.friction - load.counterbalance) / drives;
    const screwOut = nutForce * perTurn * chain.reverseEfficiency;
    const intoStage = screwOut - chain.dragTorque - ((chain.screwInertia + stage.slowInertia) * found.acceleration) / perTurn;
    lost += load.friction * way;
    lost += drives * (nutForce * way * (1 - chain.reverseEfficiency) + chain.dragTorque * turn);
    lost += drives * intoStage * turn * (1 - stage.reverseEfficiency);
    speed += found.acceleration * dt;
    fallen += way;
  }
  const given = load.mass * load.gravity * fallen;
  const lifted = load.counterbalance * fallen;
  const screwSpeed = speed / perTurn;
  const motorSpeed = screwSpeed * stage.ratio;
  const kinetic = (load.mass * speed ** 2) / 2
    + drives * (((chain.screwInertia + stage.slowInertia) * screwSpeed ** 2) / 2 + ((stage.fastInertia + chain.motorInertia) * motorSpeed ** 2) / 2);
  expect(found.acceleration).toBeGreaterThan(0.01);
  expect(Math.abs((kinetic + lost + lifted) / given - 1)).toBeLessThan(1e-6);
});

test('a thread that locks does not run down, nor does a load that detent can hold', () => {
  expect(runDownAcceleration({ ...chain, reverseEfficiency: -0.2 }, load, 1).kind).toBe('cannot');
  // By hand: (11.6·9.81 − 6 − 10) N · 0.008/2π · 0.54 = 0.0672 N·m at the screw, less 0.004, · 0.95/2.5 = 0.0240 N·m at the motor.
  expect(runDownAcceleration(chain, load, 1, 0.0245).kind).toBe('cannot');
  expect(runDownAcceleration(chain, load, 1, 0.0235).kind).toBe('accelerates');
});
