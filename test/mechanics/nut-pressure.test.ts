import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  bearingPressure,
  firstTurnPressure,
  lengthForPressure,
  nutThreadShear,
  playFromWear,
  pressureVelocity,
  slidingDistance,
  slidingSpeed,
  travelToPlay,
  wearDepth,
} from '../../server/src/mechanics/nut-pressure.ts';

const tr8 = { load: 98, pitchDiameter: 7e-3, pitch: 2e-3, flankHeight: 1e-3, engagedLength: 15e-3 };

describe('pressure', () => {
  it('by hand: 98 N on a Tr8 nut of 15 mm', () => {
    // 2 · 98/(π · 7 · 15) = 0.5942 MPa; half the area, twice the pressure.
    expect(bearingPressure(tr8) / 1e6).toBeCloseTo(0.5942, 4);
    expect(bearingPressure({ ...tr8, areaFactor: 0.5 }) / 1e6).toBeCloseTo(1.1884, 4);
  });

  it('does not depend on the pitch of a trapezoidal thread', () => {
    fc.assert(
      fc.property(fc.double({ min: 1.5e-3, max: 0.012, noNaN: true }), (pitch) =>
        Math.abs(bearingPressure({ ...tr8, pitch, flankHeight: pitch / 2 }) / bearingPressure(tr8) - 1) < 1e-9,
      ),
    );
  });

  it('the length for a pressure has that pressure', () => {
    fc.assert(
      fc.property(fc.double({ min: 1, max: 5000, noNaN: true }), fc.double({ min: 1e4, max: 2e7, noNaN: true }), fc.double({ min: 0.25, max: 1, noNaN: true }), (load, p, areaFactor) => {
        const contact = { ...tr8, load, areaFactor };
        return Math.abs(bearingPressure({ ...contact, engagedLength: lengthForPressure(contact, p) }) / p - 1) < 1e-9;
      }),
    );
    expect(lengthForPressure({ ...tr8, load: 0 }, 1e6)).toBe(0);
  });

  it('the first turn carries at least its even share', () => {
    // 0.38 · 7.5 turns = 2.85 times the even pressure; two turns cannot carry less than an even share.
    expect(firstTurnPressure(1e6, 7.5)).toBeCloseTo(2.85e6, 3);
    expect(firstTurnPressure(1e6, 2)).toBe(1e6);
  });

  it('shear at the base of the threads, by hand', () => {
    // 300/(0.634 · π · 8 · 15) = 1.255 MPa
    expect(nutThreadShear(300, 8e-3, 15e-3) / 1e6).toBeCloseTo(1.255, 3);
  });
});

describe('sliding', () => {
  it('speed by hand: Tr8x8(P2) at 300 rpm', () => {
    // π · 7 mm · 5 /s = 0.10996 m/s; cos 19.99° = 0.93975; 0.1170 m/s.
    expect(slidingSpeed(7e-3, Math.atan(8 / (7 * Math.PI)), 5)).toBeCloseTo(0.117, 4);
  });

  it('distance is turns times the length of one turn', () => {
    // One turn of Tr8x8: √((7π)² + 8²) = 23.40 mm; 125 turns per metre: 2.925 m.
    expect(slidingDistance(1, Math.atan(8 / (7 * Math.PI)))).toBeCloseTo(2.925, 3);
  });

  it('speed times time is distance', () => {
    fc.assert(
      fc.property(fc.double({ min: 0.02, max: 1, noNaN: true }), fc.double({ min: 0.1, max: 50, noNaN: true }), (angle, turns) => {
        const lead = Math.tan(angle) * Math.PI * 7e-3;
        return Math.abs(slidingSpeed(7e-3, angle, turns) / slidingDistance(lead * turns, angle) - 1) < 1e-9;
      }),
    );
  });

  it('counts the duty', () => {
    expect(pressureVelocity(0.6e6, 0.117, 0.05)).toBeCloseTo(3510, 6);
    expect(pressureVelocity(0.6e6, 0.117)).toBeCloseTo(70200, 6);
  });
});

describe('wear', () => {
  it('by hand: 0.6 MPa, k 1e-14 m²/N, 10 km slid', () => {
    // 1e-14 · 0.6e6 · 1e4 = 6e-5 m
    expect(wearDepth(1e-14, 0.6e6, 1e4)).toBeCloseTo(6e-5, 12);
  });

  it('the travel to a play wears exactly that play', () => {
    fc.assert(
      fc.property(fc.double({ min: 1e-16, max: 1e-13, noNaN: true }), fc.double({ min: 1e4, max: 1e7, noNaN: true }), fc.double({ min: 0.03, max: 0.6, noNaN: true }), (k, p, angle) => {
        const travel = travelToPlay(1e-4, k, p, 0.26, angle);
        const play = playFromWear(wearDepth(k, p, slidingDistance(travel, angle)), 0.26, angle);
        return Math.abs(play / 1e-4 - 1) < 1e-9;
      }),
    );
    expect(travelToPlay(1e-4, 0, 1e6, 0.26, 0.1)).toBe(Infinity);
  });
});

it('throws for what cannot be', () => {
  expect(() => bearingPressure({ ...tr8, engagedLength: 0 })).toThrow(RangeError);
  expect(() => bearingPressure({ ...tr8, areaFactor: 1.2 })).toThrow(RangeError);
  expect(() => pressureVelocity(1, 1, 1.1)).toThrow(RangeError);
  expect(() => slidingSpeed(7e-3, Math.PI / 2, 1)).toThrow(RangeError);
  expect(() => slidingDistance(1, 0)).toThrow(RangeError);
});
