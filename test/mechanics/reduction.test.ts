import { describe, expect, test } from 'vitest';
import {
  backlashAtOutput, bestRatio, fastSideTorque, inertiaAtInput, ratioFromTeeth, reverseEfficiency, totalEfficiency, totalRatio,
} from '../../server/src/mechanics/reduction.ts';
import type { ReductionStage } from '../../server/src/mechanics/reduction.ts';

const belt: ReductionStage = { ratio: 2, efficiency: 0.96, reverseEfficiency: 0.96, fastInertia: 1e-6, slowInertia: 8e-6, backlash: 0.001 };
const gears: ReductionStage = { ratio: 5, efficiency: 0.9, reverseEfficiency: 0.88, fastInertia: 2e-6, slowInertia: 5e-6, backlash: 0.004 };

test('ratio and efficiency multiply; 16 on 40 teeth is 2.5', () => {
  expect(ratioFromTeeth(16, 40)).toBe(2.5);
  expect(totalRatio([belt, gears])).toBe(10);
  expect(totalEfficiency([belt, gears])).toBeCloseTo(0.864, 12);
  expect(totalRatio([])).toBe(1);
});

describe('torque through a stage', () => {
  test('hand calculation: 1.8 N·m up needs 1.8/(5·0.9) = 0.4; down it leaves 1.8·0.88/5 = 0.3168', () => {
    expect(fastSideTorque(gears, 1.8, 1)).toBeCloseTo(0.4, 12);
    expect(fastSideTorque(gears, 1.8, -1)).toBeCloseTo(0.3168, 12);
    expect(fastSideTorque(gears, 1.8, 0)).toBeCloseTo(0.3168, 12);
    expect(fastSideTorque(gears, -1.8, -1)).toBeCloseTo(-0.4, 12);
  });
  test('a worm that locks: at rest nothing arrives, turning down it must be pushed', () => {
    const worm = { ...gears, efficiency: 0.4, reverseEfficiency: -0.5 };
    expect(fastSideTorque(worm, 1.8, 0)).toBe(0);
    expect(fastSideTorque(worm, 1.8, -1)).toBeCloseTo(-0.18, 12);
  });
});

test('play, hand calculation: 0.001/5 + 0.004 = 0.0042 rad behind the gears; 0.004/2 + 0.001 the other way round', () => {
  expect(backlashAtOutput([belt, gears])).toBeCloseTo(0.0042, 12);
  expect(backlashAtOutput([gears, belt])).toBeCloseTo(0.003, 12);
});

test('inertia, hand calculation: gears 2e-6 + (5e-6 + 1e-3)/25 = 4.22e-5; belt 1e-6 + (8e-6 + 4.22e-5)/4 = 1.355e-5', () => {
  expect(inertiaAtInput([belt, gears], 1e-3)).toBeCloseTo(1.355e-5, 12);
});

test('backwards efficiency of a thread: 2 − 1/η is too low by 2 sin²φ/(cos²λ − sin²φ), from the sums of the tangents', () => {
  for (const [angle, friction] of [[0.05, 0.03], [0.1, 0.08], [0.19, 0.1], [0.35, 0.15]] as const) {
    const cone = Math.atan(friction);
    const forwards = Math.tan(angle) / Math.tan(angle + cone);
    const exact = Math.tan(angle - cone) / Math.tan(angle);
    const gap = (2 * Math.sin(cone) ** 2) / (Math.cos(angle) ** 2 - Math.sin(cone) ** 2);
    expect(exact - reverseEfficiency(forwards)).toBeCloseTo(gap, 12);
  }
  expect(reverseEfficiency(0.5)).toBe(0);
});

test('best ratio with a load torque: no ratio near it accelerates the load quicker', () => {
  const acceleration = (ratio: number): number => (0.4 * ratio - 0.6) / (8e-6 * ratio ** 2 + 3e-4);
  const best = bestRatio(8e-6, 3e-4, 0.4, 0.6);
  for (const factor of [0.5, 0.9, 0.99, 1.01, 1.1, 2]) expect(acceleration(best)).toBeGreaterThan(acceleration(best * factor));
});

test('programmer errors throw', () => {
  expect(() => fastSideTorque({ ...gears, ratio: 0 }, 1, 1)).toThrow(RangeError);
  expect(() => fastSideTorque({ ...gears, efficiency: 1.2 }, 1, 1)).toThrow(RangeError);
  expect(() => reverseEfficiency(0)).toThrow(RangeError);
  expect(() => ratioFromTeeth(0, 20)).toThrow(RangeError);
});
