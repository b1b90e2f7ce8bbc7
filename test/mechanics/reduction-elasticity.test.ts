import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { beltStageStiffness, errorAtOutput, freeSpan, stiffnessAtOutput } from '../../server/src/mechanics/reduction-elasticity.ts';

/** 20 and 60 teeth of 2 mm: radii 6.366 and 19.099 mm. */
const belt = { specificStiffness: 20000, centerDistance: 0.06, drivingRadius: 0.0063662, drivenRadius: 0.0190986, bothTaut: true };

describe('belt stage', () => {
  it('free span √(60² − 12.732²) = 58.633 mm', () => {
    expect(freeSpan(belt)).toBeCloseTo(0.058633, 6);
    expect(freeSpan({ ...belt, drivenRadius: belt.drivingRadius })).toBe(0.06);
    expect(() => freeSpan({ ...belt, centerDistance: 0.01 })).toThrow(RangeError);
  });

  it('2 · 20 kN · (19.0986 mm)² / 58.633 mm = 248.8 N·m/rad; half with a slack span', () => {
    expect(beltStageStiffness(belt)).toBeCloseTo(248.84, 1);
    expect(beltStageStiffness({ ...belt, bothTaut: false })).toBeCloseTo(124.42, 1);
  });
});

describe('stages seen at the output', () => {
  const stages = [
    { ratio: 3, values: { stiffness: 100, error: 0.001 } },
    { ratio: 5, values: { stiffness: 400, error: 0.0004 } },
  ];

  it('by hand: 1/k = 1/(100 · 25) + 1/400, k = 344.83 N·m/rad; ε = 1 mrad/5 + 0.4 mrad = 0.6 mrad', () => {
    expect(stiffnessAtOutput(stages)).toBeCloseTo(344.83, 2);
    expect(errorAtOutput(stages)).toBeCloseTo(0.0006, 12);
  });

  it('no stage is rigid and exact; a rigid stage gives nothing', () => {
    expect(stiffnessAtOutput([])).toBe(Infinity);
    expect(errorAtOutput([])).toBe(0);
    expect(stiffnessAtOutput([{ ratio: 3, values: { stiffness: Infinity } }])).toBe(Infinity);
  });

  it('a unit torque followed from the output to the motor turns the output by 1/k', () => {
    const stage = fc.record({ ratio: fc.double({ min: 0.2, max: 20, noNaN: true }), stiffness: fc.double({ min: 1, max: 1e4, noNaN: true }) });
    fc.assert(
      fc.property(fc.array(stage, { minLength: 1, maxLength: 6 }), (list) => {
        // Backwards: each stage twists under the torque that arrives at its slow side, and passes it on divided by its ratio; its twist shows at the output divided by the ratios after it.
        let torque = 1;
        let after = 1;
        let turned = 0;
        for (const { ratio, stiffness } of [...list].reverse()) {
          turned += torque / stiffness / after;
          torque /= ratio;
          after *= ratio;
        }
        const k = stiffnessAtOutput(list.map(({ ratio, stiffness }) => ({ ratio, values: { stiffness } })));
        return Math.abs(k * turned - 1) < 1e-9;
      }),
    );
  });

  it('refuses what no stage can be', () => {
    expect(() => stiffnessAtOutput([{ ratio: 0, values: { stiffness: 1 } }])).toThrow(RangeError);
    expect(() => stiffnessAtOutput([{ ratio: 1, values: { stiffness: 0 } }])).toThrow(RangeError);
    expect(() => errorAtOutput([{ ratio: 1, values: { error: -1 } }])).toThrow(RangeError);
  });
});
