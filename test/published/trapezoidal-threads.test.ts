/** Thread dimensions and limits against tabulated copies of the standards. Lengths in mm here. */
import { describe, expect, it } from 'vitest';
import { class7e, standardThread } from '../../server/src/catalogue/trapezoidal-threads.ts';
import { runDownFriction } from '../../server/src/mechanics/power-screw.ts';
import { readDesignation, settleDesignation } from '../../server/src/mechanics/thread-designation.ts';
import { screwThreadLimits, TRAPEZOIDAL_FLANK_ANGLE, trapezoidalGeometry } from '../../server/src/mechanics/trapezoidal-thread.ts';

function geometry(d: number, pitch: number, starts = 1) {
  const found = trapezoidalGeometry(d / 1000, pitch / 1000, starts);
  if (!found.exists) throw new Error(found.reason);
  return found;
}

describe('basic dimensions, ISO 2904 as tabulated', () => {
  // d, P, d2, d3, D1, D4
  it.each([
    [10, 2, 9, 7.5, 8, 10.5],
    [42, 7, 38.5, 34, 35, 43],
    [44, 12, 38, 31, 32, 45],
    // Columns d2, d3 of two supplier tables that agree with each other.
    [12, 3, 10.5, 8.5, 9, 12.5],
    [14, 3, 12.5, 10.5, 11, 14.5],
    [16, 4, 14, 11.5, 12, 16.5],
    [20, 4, 18, 15.5, 16, 20.5],
    [8, 1.5, 7.25, 6.2, 6.5, 8.3],
  ])('Tr%dx%d', (d, pitch, d2, d3, d1, d4) => {
    const thread = geometry(d, pitch);
    expect(thread.pitchDiameter * 1000).toBeCloseTo(d2, 9);
    expect(thread.rootDiameter * 1000).toBeCloseTo(d3, 9);
    expect(thread.nutMinorDiameter * 1000).toBeCloseTo(d1, 9);
    expect(thread.nutMajorDiameter * 1000).toBeCloseTo(d4, 9);
  });
});

describe('class 7e limits, ISO 2903 as tabulated', () => {
  // d, P, d2max, d2min, d3min
  it.each([
    [8, 1.5, 7.183, 7.013, 5.921],
    [16, 4, 13.905, 13.64, 11.074],
    [10, 2, 8.929, 8.739, 7.191],
    [10, 3, 8.415, 8.203, 6.15],
    [12, 3, 10.415, 10.191, 8.135],
  ])('Tr%dx%d', (d, pitch, d2max, d2min, d3min) => {
    const tolerance = class7e(d / 1000, pitch / 1000);
    if (tolerance === undefined) throw new Error('no tolerance');
    const limits = screwThreadLimits(geometry(d, pitch), tolerance);
    expect(limits.pitchDiameterMax * 1000).toBeCloseTo(d2max, 6);
    expect(limits.pitchDiameterMin * 1000).toBeCloseTo(d2min, 6);
    // Printed rounded to 1 µm.
    expect(Math.abs(limits.rootDiameterMin * 1000 - d3min)).toBeLessThan(0.0006);
  });

  // d, P, I in mm⁴ at the smallest root, as printed (rounded) on two supplier pages
  it.each([
    [10, 2, 131],
    [12, 3, 215],
    [16, 4, 738],
    [20, 4, 2534],
  ])('Tr%dx%d: second moment of area of the smallest core', (d, pitch, printed) => {
    const tolerance = class7e(d / 1000, pitch / 1000);
    if (tolerance === undefined) throw new Error('no tolerance');
    const core = screwThreadLimits(geometry(d, pitch), tolerance).rootDiameterMin * 1000;
    expect(Math.abs((Math.PI * core ** 4) / 64 / printed - 1)).toBeLessThan(0.0025);
  });
});

describe('lead angle and the friction below which the thread runs down', () => {
  // Independent calculation of the reference dossier, recomputed by hand for Tr8x8(P2): tan λ = 8/(7π) = 0.363783, λ = 19.99°,
  // tan αn = tan 15° cos λ = 0.251805, cos αn = 0.969723, µ = 0.352768.
  it.each([
    [8, 1.5, 1, 3.77, 0.064],
    [8, 2, 1, 5.2, 0.088],
    [8, 2, 2, 10.31, 0.176],
    [8, 2, 4, 19.99, 0.353],
    [10, 2, 4, 15.8, 0.274],
    [16, 4, 1, 5.2, 0.088],
    [20, 4, 2, 8.05, 0.137],
    [40, 7, 1, 3.49, 0.059],
  ])('Tr%d, pitch %d, %d starts', (d, pitch, starts, angle, friction) => {
    const thread = geometry(d, pitch, starts);
    expect((thread.leadAngle * 180) / Math.PI).toBeCloseTo(angle, 2);
    expect(Math.abs(runDownFriction(TRAPEZOIDAL_FLANK_ANGLE, thread.leadAngle) - friction)).toBeLessThanOrEqual(0.00051);
  });
});

describe('designations in the forms of ISO 2902', () => {
  it('single start', () => {
    expect(readDesignation('Tr 40 × 7')).toEqual({ majorDiameter: 0.04, travelPerTurn: 0.007, pitch: undefined, hand: 'right', toleranceClass: undefined });
  });

  it('two starts, left hand: 60 × 18 (P9) LH', () => {
    const written = readDesignation('Tr 60 × 18 (P9) LH');
    expect(written && settleDesignation(written, [])).toMatchObject({ kind: 'clear', pitch: 0.009, starts: 2, lead: 0.018, hand: 'left' });
  });

  it('with its tolerance class', () => {
    expect(readDesignation('Tr 40 × 7 LH - 7e')).toMatchObject({ hand: 'left', toleranceClass: '7e' });
  });
});

it('8 mm with pitch 2 mm is marked as outside the standard, pitch 1.5 mm as inside', () => {
  // ISO 2904 lists only pitch 1.5 mm for 8 mm (table read).
  expect(standardThread(0.008, 0.002, 4)?.listedInStandard).toBe(false);
  expect(standardThread(0.008, 0.0015, 1)?.listedInStandard).toBe(true);
});
