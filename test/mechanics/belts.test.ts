import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { drivingEccentricityError, idlerEccentricityError, polygonRipple } from '../../server/src/mechanics/belt-errors.ts';
import { centerDistanceForLength, openBelt, pulleyOutsideDiameter, pulleyPitchDiameter, teethInMesh } from '../../server/src/mechanics/belt-geometry.ts';
import {
  beltShaftLoad, loadedSpans, mostShaftLoad, softestPosition, spansAt, tautStiffness, tensionNeeded, tensionRange, tightShare,
} from '../../server/src/mechanics/belt-spans.ts';
import { beltStrain, capstanRatio, cordBendingStress, meshFactor, radialLimitAt, tensionAllowed, toothCapacity } from '../../server/src/mechanics/belt-strength.ts';
import { isStringLike, stringFrequency, tensionFromFrequency } from '../../server/src/mechanics/belt-string.ts';
import { degrees } from './units.ts';

const mm = 1e-3;

describe('geometry', () => {
  test('equal pulleys, hand calculation: 2 · 400 + π · 12.732 = 840 mm, half a turn on each', () => {
    const d = pulleyPitchDiameter(2 * mm, 20);
    const belt = openBelt(400 * mm, d, d);
    // π d = 20 teeth of 2 mm = 40 mm.
    expect(belt.length / mm).toBeCloseTo(840, 9);
    expect(belt.firstWrap).toBeCloseTo(Math.PI, 12);
    expect(belt.run / mm).toBeCloseTo(400, 9);
  });
  test('unequal pulleys: the smaller one is wrapped less, whichever comes first, and both wraps make a turn', () => {
    fc.assert(fc.property(fc.double({ min: 0.005, max: 0.1, noNaN: true }), fc.double({ min: 0.005, max: 0.1, noNaN: true }), fc.double({ min: 0.11, max: 2, noNaN: true }), (a, b, distance) => {
      const belt = openBelt(distance, a, b);
      const turned = openBelt(distance, b, a);
      expect(belt.length).toBeCloseTo(turned.length, 12);
      expect(belt.firstWrap).toBeCloseTo(turned.secondWrap, 12);
      expect(belt.firstWrap + belt.secondWrap).toBeCloseTo(2 * Math.PI, 12);
      if (a < b) expect(belt.firstWrap).toBeLessThanOrEqual(Math.PI);
      expect(centerDistanceForLength(belt.length, a, b)).toBeCloseTo(distance, 9);
    }));
  });
  test('a belt that does not go round both pulleys is too short', () => {
    // Round two pulleys of 10 mm that touch: 2 · 10 + 31.4 = 51.4 mm.
    expect(centerDistanceForLength(51 * mm, 10 * mm, 10 * mm)).toBe('too short');
    expect(centerDistanceForLength(52 * mm, 10 * mm, 10 * mm)).not.toBe('too short');
  });
  test('teeth in mesh: 20 teeth over half a turn are 10; 16 over 150° are 6.67', () => {
    expect(teethInMesh(20, Math.PI)).toBeCloseTo(10, 12);
    expect(teethInMesh(16, degrees(150))).toBeCloseTo(6.667, 3);
  });
  test('what cannot be throws', () => {
    expect(() => openBelt(9 * mm, 10 * mm, 10 * mm)).toThrow(RangeError);
    expect(() => pulleyPitchDiameter(0, 20)).toThrow(RangeError);
    expect(() => pulleyOutsideDiameter(1 * mm, 0.6 * mm)).toThrow(RangeError);
    expect(() => centerDistanceForLength(Number.NaN, 1, 1)).toThrow(RangeError);
  });
});

describe('spans', () => {
  test('reference dossier 2.3: 25 kN, 0.4 m and 1.2 m: 83 N/mm; 10 N give 0.12 mm', () => {
    const spans = spansAt(1.6, 0.4);
    expect(tautStiffness(25e3, spans) / 1e3).toBeCloseTo(83.3, 1);
    expect(loadedSpans(25e3, spans, 30, 10, 'first').give / mm).toBeCloseTo(0.12, 9);
  });
  test('hand calculation: 20 N shared by 0.4 and 1.2 m: the short span takes 15 N more, the long one 5 N less', () => {
    const spans = spansAt(1.6, 0.4);
    expect(tightShare(spans, 'first')).toBeCloseTo(0.75, 12);
    const loaded = loadedSpans(25e3, spans, 30, 20, 'first');
    expect(loaded.tight).toBeCloseTo(45, 9);
    expect(loaded.slack).toBeCloseTo(25, 9);
    // Pushed away from the pulley the long span pulls: 5 N more there, 15 N less here.
    const away = loadedSpans(25e3, spans, 30, 20, 'second');
    expect(away.tight).toBeCloseTo(35, 9);
    expect(away.slack).toBeCloseTo(15, 9);
  });
  test('hand calculation, gone slack: 10 N set, 40 N away from the pulley: the long span alone holds, (40 − 10)/(25000/1.2) = 1.44 mm', () => {
    const loaded = loadedSpans(25e3, spansAt(1.6, 0.4), 10, 40, 'second');
    expect(loaded).toMatchObject({ tight: 40, slack: 0, isSlack: true });
    expect(loaded.give / mm).toBeCloseTo(1.44, 9);
  });
  test('give and tensions have no jump where the span goes slack', () => {
    fc.assert(fc.property(fc.double({ min: 0.05, max: 1.5, noNaN: true }), fc.double({ min: 1, max: 100, noNaN: true }), fc.constantFrom('first' as const, 'second' as const), (x, tension, tight) => {
      const spans = spansAt(1.6, x);
      const critical = tension / (1 - tightShare(spans, tight));
      const before = loadedSpans(25e3, spans, tension, critical * (1 - 1e-9), tight);
      const after = loadedSpans(25e3, spans, tension, critical * (1 + 1e-9), tight);
      expect(before.isSlack).toBe(false);
      expect(after.isSlack).toBe(true);
      expect(after.give / before.give).toBeCloseTo(1, 6);
      expect(after.tight / before.tight).toBeCloseTo(1, 6);
    }));
  });
  test('softest: a loop at its far end, two anchors in the middle, or the end nearest to the middle', () => {
    // Loop: 0.5 m between axes, pulleys of 40 mm circumference: free belt 2 · 0.5 + 0.02 m; half of it, 0.51 m, lies beyond the idler.
    expect(softestPosition({ freeLength: 1.02, nearest: 0.05, travel: 0.4 })).toBeCloseTo(0.45, 12);
    expect(softestPosition({ freeLength: 1, nearest: 0.1, travel: 0.8 })).toBeCloseTo(0.5, 12);
    expect(softestPosition({ freeLength: 1, nearest: 0.7, travel: 0.2 })).toBeCloseTo(0.7, 12);
  });
  test('tension needed, hand calculation: 20 N both ways, spans 0.05 to 0.45 of 1.02 m: 20 · 0.97/1.02 = 19.02 N, not half of 20', () => {
    const travel = { freeLength: 1.02, nearest: 0.05, travel: 0.4 };
    expect(tensionNeeded(travel, { towards: 20, away: 20 })).toBeCloseTo((20 * 0.97) / 1.02, 9);
    // Only towards the pulley (a weight that hangs under it): worst at the far end, 20 · 0.45/1.02 = 8.82 N.
    expect(tensionNeeded(travel, { towards: 20, away: 0 })).toBeCloseTo((20 * 0.45) / 1.02, 9);
    // With that tension the least of all spans is just nothing.
    expect(tensionRange(travel, (20 * 0.97) / 1.02, { towards: 20, away: 20 }).least).toBeCloseTo(0, 9);
    // Equal spans all the way: the rule of the trade.
    expect(tensionNeeded({ freeLength: 1, nearest: 0.5, travel: 0 }, { towards: 20, away: 20 })).toBeCloseTo(10, 9);
  });
  test('largest tension, hand calculation: 30 + 20 · 0.97/1.02 = 49.02 N', () => {
    expect(tensionRange({ freeLength: 1.02, nearest: 0.05, travel: 0.4 }, 30, { towards: 20, away: 20 }).most).toBeCloseTo(49.02, 2);
  });
  test('shaft load: components added by hand, 50 and 30 N over 120° of wrap', () => {
    // The runs leave 60° apart: along the first 50 + 30 cos 60° = 65, across 30 sin 60° = 25.98; together 70.
    expect(beltShaftLoad(50, 30, degrees(120))).toBeCloseTo(70, 9);
    expect(beltShaftLoad(50, 30, Math.PI)).toBeCloseTo(80, 9);
    // Both spans at 30 N plus 20 · (0.97 − 0.05)/1.02 = 18.04 N where the short one pulls.
    expect(mostShaftLoad({ freeLength: 1.02, nearest: 0.05, travel: 0.4 }, 30, { towards: 20, away: 0 }, Math.PI)).toBeCloseTo(78.04, 2);
  });
  test('what cannot be throws', () => {
    expect(() => spansAt(1, 1)).toThrow(RangeError);
    expect(() => softestPosition({ freeLength: 1, nearest: 0.5, travel: 0.5 })).toThrow(RangeError);
    expect(() => loadedSpans(1, { first: 1, second: 1 }, -1, 1, 'first')).toThrow(RangeError);
    expect(() => beltShaftLoad(1, 1, 7)).toThrow(RangeError);
  });
});

describe('strength', () => {
  test('strain, hand calculation: 48 N on 12 kN is 0.4 %', () => {
    expect(beltStrain(48, 12e3)).toBeCloseTo(0.004, 12);
  });
  test('tension allowed: what is written, else the lesser of strain and breaking', () => {
    expect(tensionAllowed({ specificStiffness: 12e3, breakingForce: 447 })).toEqual({ value: 48, by: 'strain' });
    expect(tensionAllowed({ specificStiffness: 40e3, breakingForce: 440 })).toEqual({ value: 110, by: 'breaking' });
    expect(tensionAllowed({ written: 60, specificStiffness: 12e3 })).toEqual({ value: 60, by: 'written' });
    expect(tensionAllowed({})).toBeUndefined();
  });
  test('tooth load, hand calculation: 1400 N/m · 6 mm · 8.4 N a tooth; 10 teeth, at most 6 counted: 50.4 N; at 4.9 teeth four count, 0.6 · 6 · 8.4', () => {
    expect(toothCapacity(1400, 6 * mm, 10, 6)).toBeCloseTo(50.4, 9);
    expect(toothCapacity(1400, 6 * mm, 10, 12)).toBeCloseTo(84, 9);
    expect(toothCapacity(1400, 6 * mm, 4.9, 12)).toBeCloseTo(30.24, 9);
  });
  test('mesh factor never rises above 1, never falls below 0, and does not lose a tooth to rounding', () => {
    expect(meshFactor(teethInMesh(12, Math.PI))).toBe(1);
    expect(meshFactor(0)).toBe(0);
    expect(meshFactor(40)).toBe(1);
    fc.assert(fc.property(fc.double({ min: 0, max: 50, noNaN: true }), (teeth) => {
      expect(meshFactor(teeth)).toBeGreaterThanOrEqual(0);
      expect(meshFactor(teeth + 1)).toBeGreaterThanOrEqual(meshFactor(teeth));
    }));
  });
  test('radial limit: twice as far out, half of it; a trade table for a 42 mm frame, from memory, within 10 %', () => {
    expect(radialLimitAt(30, 17 * mm, 34 * mm)).toBeCloseTo(15, 9);
    expect(radialLimitAt(30, 17 * mm, 1 * mm)).toBeCloseTo(75, 9);
    for (const [distance, force] of [[24, 35], [19, 44], [14, 58], [9, 85]] as const) {
      expect(Math.abs(radialLimitAt(58, 14 * mm, distance * mm) / force - 1)).toBeLessThan(0.1);
    }
  });
  test('what cannot be throws', () => {
    expect(() => beltStrain(-1, 1)).toThrow(RangeError);
    expect(() => tensionAllowed({ written: 0 })).toThrow(RangeError);
    expect(() => capstanRatio(-0.1, 1)).toThrow(RangeError);
    expect(() => cordBendingStress(1, 0, 1)).toThrow(RangeError);
    expect(() => radialLimitAt(1, 1, 0)).toThrow(RangeError);
  });
});

describe('string', () => {
  test('there and back', () => {
    expect(tensionFromFrequency(0.15, stringFrequency(0.15, 30, 0.0083), 0.0083)).toBeCloseTo(30, 9);
  });
  test('a span of 15 widths counts as a string, a shorter one does not', () => {
    expect(isStringLike(90 * mm, 6 * mm)).toBe(true);
    expect(isStringLike(89 * mm, 6 * mm)).toBe(false);
  });
  test('four times the tension is twice the frequency, half the length too', () => {
    expect(stringFrequency(0.2, 40, 0.01) / stringFrequency(0.2, 10, 0.01)).toBeCloseTo(2, 12);
    expect(stringFrequency(0.1, 10, 0.01) / stringFrequency(0.2, 10, 0.01)).toBeCloseTo(2, 12);
  });
});

describe('errors that come back', () => {
  test('hand calculation: 0.02 mm out of true, spans 0.1 and 0.9 m: 2 · 0.02 · 0.8 = 32 µm from peak to peak; nothing with equal spans', () => {
    expect(drivingEccentricityError(0.02 * mm, Math.PI, 0.1, 0.9) / mm).toBeCloseTo(0.032, 9);
    expect(drivingEccentricityError(0.02 * mm, Math.PI, 0.5, 0.5)).toBeCloseTo(0, 9);
  });
  test('never more than 2e, from peak to peak, of which the usual rule speaks', () => {
    fc.assert(fc.property(fc.double({ min: 0.01, max: 2, noNaN: true }), fc.double({ min: 0.01, max: 2, noNaN: true }), fc.double({ min: 0, max: 6.28, noNaN: true }), (a, b, wrap) => {
      expect(drivingEccentricityError(1e-5, wrap, a, b)).toBeLessThanOrEqual(2e-5 * (1 + 1e-9));
    }));
  });
  test('idler, hand calculation: 0.02 mm, spans 0.4 and 0.6 m: 4 · 0.02 · 0.4 = 32 µm', () => {
    expect(idlerEccentricityError(0.02 * mm, Math.PI, 0.4, 0.6) / mm).toBeCloseTo(0.032, 9);
  });
  test('polygon, hand calculation: 20 teeth of 2 mm, r = 6.366 mm, 1 − cos 9° = 0.01231: 78 µm', () => {
    expect(polygonRipple(pulleyPitchDiameter(2 * mm, 20), 20) / mm).toBeCloseTo(0.0784, 4);
  });
});
