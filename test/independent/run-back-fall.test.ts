/** A load that runs back through belt, shaft and reduction: bodies on stiff springs integrated in time, and a balance of work, against the closed form. */
import { describe, expect, test } from 'vitest';
import { freeRunningFallAcceleration, loadTorqueAtMotor, type FreeRunningFall } from '../../server/src/mechanics/free-running-drive.ts';
import { runDownAcceleration } from '../../server/src/mechanics/axis-torque.ts';

const cases: readonly FreeRunningFall[] = [
  { mass: 2, pull: 18, friction: 3, radius: 0.0064, reverseEfficiency: 0.95, shaftInertia: 4e-6, ratio: 1, reductionEfficiency: 1, motorInertia: 7e-6 },
  { mass: 5, pull: 49, friction: 4, radius: 0.0127, reverseEfficiency: 0.97, shaftInertia: 2e-5, ratio: 4, reductionEfficiency: 0.9, motorInertia: 7e-6 },
  { mass: 12, pull: 60, friction: 10, radius: 0.02, reverseEfficiency: 0.92, shaftInertia: 1e-4, ratio: 10, reductionEfficiency: 0.85, motorInertia: 5e-5 },
];

describe.each(cases)('fall of $mass kg through $ratio : 1', (fall) => {
  test('bodies on springs, integrated', () => {
    // Load, shaft and rotor each move for themselves; belt and mesh are stiff springs with damping that lose their share of the force on the way to the motor.
    const belt = { k: 4e6, c: 800 };
    const mesh = { k: 4e6 * fall.radius ** 2, c: 800 * fall.radius ** 2 };
    let [x, v, shaft, shaftSpeed, rotor, rotorSpeed] = [0, 0, 0, 0, 0, 0];
    const dt = 2e-6;
    let [vEarly, tEarly, t] = [0, 0, 0];
    while (t < 0.08) {
      const force = belt.k * (x - fall.radius * shaft) + belt.c * (v - fall.radius * shaftSpeed);
      const torque = mesh.k * (shaft - rotor / fall.ratio) + mesh.c * (shaftSpeed - rotorSpeed / fall.ratio);
      v += ((fall.pull - fall.friction - force) / fall.mass) * dt;
      shaftSpeed += ((force * fall.radius * fall.reverseEfficiency - torque) / fall.shaftInertia) * dt;
      rotorSpeed += ((torque * fall.reductionEfficiency) / fall.ratio / fall.motorInertia) * dt;
      x += v * dt;
      shaft += shaftSpeed * dt;
      rotor += rotorSpeed * dt;
      t += dt;
      if (t < 0.04) [vEarly, tEarly] = [v, t];
    }
    expect(Math.abs((v - vEarly) / (t - tEarly) / freeRunningFallAcceleration(fall) - 1)).toBeLessThan(2e-3);
  });

  test('the general run-down search of the axis gives the same', () => {
    const found = runDownAcceleration(
      {
        travelPerTurn: 2 * Math.PI * fall.radius, efficiency: 0.95, reverseEfficiency: fall.reverseEfficiency, dragTorque: 0, screwInertia: fall.shaftInertia,
        stages: [{ ratio: fall.ratio, efficiency: 0.95, reverseEfficiency: fall.reductionEfficiency, fastInertia: 0, slowInertia: 0, backlash: 0 }], motorInertia: fall.motorInertia,
      },
      { mass: fall.mass, slope: Math.asin(fall.pull / fall.mass / 9.81), gravity: 9.81, friction: fall.friction, process: 0, counterbalance: 0 },
      1,
    );
    expect(found.kind === 'accelerates' ? found.acceleration : NaN).toBeCloseTo(freeRunningFallAcceleration(fall), 9);
  });

  test('over one turn of the shaft the work of the load arrives at the motor, less what is lost', () => {
    const travel = 2 * Math.PI * fall.radius;
    const efficiency = fall.reverseEfficiency * fall.reductionEfficiency;
    const torque = loadTorqueAtMotor(fall.pull, fall.radius, fall.ratio, efficiency);
    expect(torque * 2 * Math.PI * fall.ratio).toBeCloseTo(fall.pull * travel * efficiency, 12);
  });
});
