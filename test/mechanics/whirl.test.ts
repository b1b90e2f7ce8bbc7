import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  axialLoadFactor, bowAmplification, endFixity, practicalWhirlShare, slenderExcess, tiltStiffnessOfBearingPair, whirlLength, whirlOverTravel, whirlSpeed, whirlWithNut,
} from '../../server/src/mechanics/whirl.ts';
import { endPair, type EndPair } from '../../server/src/mechanics/shaft-ends.ts';
import { lowestFrequency } from '../../server/src/mechanics/shaft-on-supports.ts';
import { dunkerley, unsafeSpeedBand, whirlOfDisc } from '../../server/src/mechanics/whirl-with-masses.ts';

const PAIRS: readonly EndPair[] = ['fixed-fixed', 'fixed-supported', 'supported-supported', 'fixed-free'];
const positive = fc.double({ min: 0.01, max: 100, noNaN: true });

describe('scaling', () => {
  test('double length, a quarter of the speed; quadruple stiffness or a quarter of the mass, double', () => {
    fc.assert(fc.property(fc.constantFrom(...PAIRS), positive, positive, positive, (ends, length, bending, mass) => {
      const one = whirlSpeed(ends, length, bending, mass);
      expect(whirlSpeed(ends, 2 * length, bending, mass) / one).toBeCloseTo(0.25, 9);
      expect(whirlSpeed(ends, length, 4 * bending, mass) / one).toBeCloseTo(2, 9);
      expect(whirlSpeed(ends, length, bending, mass / 4) / one).toBeCloseTo(2, 9);
    }));
  });
  test('the length for a speed gives that speed back', () => {
    fc.assert(fc.property(fc.constantFrom(...PAIRS), positive, positive, positive, (ends, speed, bending, mass) => {
      expect(whirlSpeed(ends, whirlLength(ends, speed, bending, mass), bending, mass) / speed).toBeCloseTo(1, 9);
    }));
  });
  test('the solver scales likewise and mirrors', () => {
    fc.assert(fc.property(positive, positive, positive, fc.double({ min: 0.02, max: 0.98, noNaN: true }), (length, bending, mass, share) => {
      const at = (l: number, where: number, mirrored: boolean): number => {
        const found = whirlWithNut({ left: mirrored ? 'supported' : 'fixed', right: mirrored ? 'fixed' : 'supported', length: l, bendingStiffness: bending, massPerLength: mass }, 'knife edge', where);
        return found.kind === 'frequency' ? found.angularFrequency : NaN;
      };
      const one = at(length, share * length, false);
      expect(at(2 * length, 2 * share * length, false) / one).toBeCloseTo(0.25, 7);
      expect(at(length, (1 - share) * length, true) / one).toBeCloseTo(1, 7);
    }), { numRuns: 40 });
  });
  test('firmer holds never lower the speed', () => {
    fc.assert(fc.property(fc.double({ min: 0.02, max: 0.98, noNaN: true }), fc.double({ min: 0, max: 100, noNaN: true }), fc.double({ min: 0, max: 50, noNaN: true }), (share, tilt, more) => {
      const speed = (tiltStiffness: number, nut: 'none' | 'knife edge' | 'against tilt'): number => {
        const found = whirlWithNut({ left: { lateral: 'held', tiltStiffness }, right: 'supported', length: 1, bendingStiffness: 1, massPerLength: 1 }, nut, share);
        return found.kind === 'frequency' ? found.angularFrequency : NaN;
      };
      expect(speed(tilt + more, 'none')).toBeGreaterThanOrEqual(speed(tilt, 'none') * (1 - 1e-9));
      expect(speed(tilt, 'knife edge')).toBeGreaterThanOrEqual(speed(tilt, 'none') * (1 - 1e-9));
      expect(speed(tilt, 'against tilt')).toBeGreaterThanOrEqual(speed(tilt, 'knife edge') * (1 - 1e-9));
    }), { numRuns: 60 });
  });
});

describe('limits', () => {
  test('a nut at an end merges with it', () => {
    const screw = { left: 'supported', right: 'supported', length: 1, bendingStiffness: 1, massPerLength: 1 } as const;
    const at = (nut: 'knife edge' | 'against tilt', x: number): number => {
      const found = whirlWithNut(screw, nut, x);
      return found.kind === 'frequency' ? found.angularFrequency : NaN;
    };
    // pi² supported; a long nut at the end clamps it: 3.9266² (Blevins, table 8-1, from memory).
    expect(at('knife edge', 0)).toBeCloseTo(Math.PI ** 2, 6);
    expect(at('knife edge', 1)).toBeCloseTo(Math.PI ** 2, 6);
    expect(at('against tilt', 1)).toBeCloseTo(3.92660231 ** 2, 6);
  });
  test('a nut in the middle of a supported screw halves the span: four times the speed', () => {
    const found = whirlWithNut({ left: 'supported', right: 'supported', length: 1, bendingStiffness: 1, massPerLength: 1 }, 'knife edge', 0.5);
    // Sine shape of half the length: (2 pi)².
    expect(found.kind === 'frequency' && found.angularFrequency).toBeCloseTo(4 * Math.PI ** 2, 6);
  });
  test('axial load of a supported screw without a nut follows sqrt(1 - F/Fcr) exactly', () => {
    // Hand calculation: the shape stays a sine, omega² = (pi/L)^4 EI/m - (pi/L)² F/m.
    for (const share of [-2, -0.5, 0.3, 0.9]) {
      const found = whirlWithNut({ left: 'supported', right: 'supported', length: 1, bendingStiffness: 1, massPerLength: 1, tensionLeftOfNut: -share * Math.PI ** 2, tensionRightOfNut: -share * Math.PI ** 2 }, 'none', 0.5);
      expect(found.kind === 'frequency' && found.angularFrequency / Math.PI ** 2).toBeCloseTo(Math.sqrt(1 - share), 6);
      expect(axialLoadFactor(share * Math.PI ** 2, Math.PI ** 2)).toBeCloseTo(Math.sqrt(1 - share), 12);
    }
  });
  test('what cannot whirl says so', () => {
    const screw = { length: 1, bendingStiffness: 1, massPerLength: 1 };
    expect(whirlWithNut({ ...screw, left: 'supported', right: 'free' }, 'none', 0.5).kind).toBe('mechanism');
    expect(whirlWithNut({ ...screw, left: 'supported', right: 'supported', tensionLeftOfNut: -10, tensionRightOfNut: -10 }, 'none', 0.5).kind).toBe('buckled');
    expect(endPair('supported', 'free')).toBe('mechanism');
    expect(axialLoadFactor(2, 1)).toBe('buckled');
  });
  test('the longest stretch is that of the nut at its far end', () => {
    const found = whirlOverTravel({ left: 'fixed', right: 'free', length: 1, bendingStiffness: 1, massPerLength: 1 }, 'knife edge', 0.1, 0.6);
    expect(found.nutPosition).toBe(0.1);
    expect(found.longestStretch).toBeCloseTo(0.9, 12);
  });
});

describe('slenderness', () => {
  test('the excess falls with the square of the length and vanishes', () => {
    for (const ends of PAIRS) {
      const [short, long, very] = [30, 60, 3000].map((l) => slenderExcess(ends, l) as number) as [number, number, number];
      expect(short / long).toBeGreaterThan(3.9);
      expect(short / long).toBeLessThan(4.1);
      expect(very).toBeLessThan(1e-5);
    }
  });
  test('supported ends have a closed form', () => {
    // Hand calculation for a sine of half wave L, g = (pi r/L)², s = 2(1+nu)/kappa, forward whirl J = -r²:
    // with x = (omega/omega_slender)²: from EI(1) k^4 - (c EI m + J) w² k² - m w² (1 - c J w²) = 0
    // -> 1 - x (1 + g (s - 1)) - x² g² s = 0 (J = -r²: 1 - cJw² = 1 + g² s x).
    const r = 1 / 48;
    const g = (Math.PI * r) ** 2;
    const s = 2.6 / ((6 * 1.69) / (7 + 3.6 + 0.36));
    const b = 1 + g * (s - 1);
    const x = (-b + Math.sqrt(b * b + 4 * g * g * s)) / (2 * g * g * s);
    expect(slenderExcess('supported-supported', 12)).toBeCloseTo(1 / Math.sqrt(x) - 1, 8);
  });
  test('below four diameters it does not pretend', () => {
    expect(slenderExcess('fixed-fixed', 3.9)).toBe('too short');
  });
});

describe('bow, share, fixity', () => {
  // 1/(1 - 0.64) = 2.78, 1/(1 - 0.49) = 1.96.
  test('bow amplification', () => {
    expect(bowAmplification(0)).toBe(1);
    expect(bowAmplification(0.8)).toBeCloseTo(1 / 0.36, 12);
    expect(bowAmplification(0.7)).toBeCloseTo(1 / 0.51, 12);
    expect(bowAmplification(1)).toBe('past critical');
    expect(() => bowAmplification(-1)).toThrow(RangeError);
  });
  test('common practice: 0.8, and 0.7 with a free end', () => {
    expect(practicalWhirlShare('fixed-free')).toBe(0.7);
    expect(practicalWhirlShare('supported-supported')).toBe(0.8);
  });
  test('two bearings 10 mm apart at 20 N/µm: 1000 N·m/rad fix an 8 mm screw and hardly a 16 mm one', () => {
    // Hand calculation: 20e6 · 0.01²/2 = 1000. E I: 8 mm with root 5.5: 206e9 · pi/64 · 5.5e-3^4 = 9.25 N·m² -> q(0.5 m) = 54;
    // root 13: 206e9 · pi/64 · 13e-3^4 = 288.8 -> q = 1.73.
    const tilt = tiltStiffnessOfBearingPair(20e6, 0.01);
    expect(tilt).toBeCloseTo(1000, 9);
    expect(endFixity(tilt, 0.5, 9.25)).toEqual({ q: 500 / 9.25, countsAsFixed: true });
    expect(endFixity(tilt, 0.5, 288.8).countsAsFixed).toBe(false);
    expect(endFixity(tilt, 0.5, 288.8).q).toBeCloseTo(1.731, 3);
  });
});

describe('masses on a shaft', () => {
  test('Dunkerley of equal speeds and of one', () => {
    expect(dunkerley([7])).toBeCloseTo(7, 12);
    expect(dunkerley([7, 7])).toBeCloseTo(7 / Math.SQRT2, 12);
    expect(() => dunkerley([])).toThrow(RangeError);
  });
  test('the unsafe band encloses the critical speed; past an eccentricity as large as the bow allowed it has no upper end', () => {
    const band = unsafeSpeedBand(whirlOfDisc(400, 4), 1e-4, 1e-3);
    // 10 rad/s /sqrt(1.1) and /sqrt(0.9).
    expect(band.low).toBeCloseTo(9.5346, 4);
    expect(band.high).toBeCloseTo(10.5409, 4);
    expect(unsafeSpeedBand(10, 2e-3, 1e-3).high).toBe(Infinity);
  });
});

test('programmer errors throw', () => {
  expect(() => whirlSpeed('fixed-fixed', 0, 1, 1)).toThrow(RangeError);
  expect(() => whirlWithNut({ left: 'fixed', right: 'fixed', length: 1, bendingStiffness: 1, massPerLength: 1 }, 'none', 2)).toThrow(RangeError);
  expect(() => lowestFrequency({ bendingStiffness: 1, massPerLength: 1, stretches: [], supports: [] })).toThrow(RangeError);
  expect(() => lowestFrequency({ bendingStiffness: 1, massPerLength: 1, stretches: [{ length: 1, axialForce: 0 }], supports: [] })).toThrow(RangeError);
  expect(() => slenderExcess('fixed-fixed', 12, 0.6)).toThrow(RangeError);
});
