import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { crestClearance, leadAngle, screwThreadLimits, trapezoidalGeometry } from '../../server/src/mechanics/trapezoidal-thread.ts';

describe('crest clearance', () => {
  // ISO 2901: the bands and their edges.
  it.each([
    [1.5, 0.15],
    [2, 0.25],
    [5, 0.25],
    [6, 0.5],
    [12, 0.5],
    [14, 1],
    [44, 1],
  ])('at pitch %d mm is %d mm', (pitch, clearance) => {
    expect((crestClearance(pitch / 1000) ?? NaN) * 1000).toBeCloseTo(clearance, 9);
  });

  it('is unknown outside the standard', () => {
    expect(crestClearance(1.4e-3)).toBeUndefined();
    expect(crestClearance(45e-3)).toBeUndefined();
  });

  it('takes 2 mm for 2 mm however it was converted', () => {
    expect(crestClearance(0.0787401574803149606 * 0.0254)).toBe(0.25e-3);
  });
});

describe('geometry', () => {
  it('says why a thread cannot be', () => {
    // 8 − 8 − 2 · 0.5 mm leaves no core.
    expect(trapezoidalGeometry(0.008, 0.008)).toEqual({ exists: false, reason: 'no-core-left' });
    expect(trapezoidalGeometry(0.008, 0.001)).toEqual({ exists: false, reason: 'pitch-outside-standard' });
    expect(trapezoidalGeometry(0.008, 0.002, 1.5)).toEqual({ exists: false, reason: 'starts-not-whole' });
    expect(trapezoidalGeometry(0.008, 0.002, 0)).toEqual({ exists: false, reason: 'starts-not-whole' });
  });

  it('throws for what no caller can mean', () => {
    expect(() => trapezoidalGeometry(-0.008, 0.002)).toThrow(RangeError);
    expect(() => trapezoidalGeometry(0.008, NaN)).toThrow(RangeError);
    expect(() => leadAngle(0, 0.01)).toThrow(RangeError);
  });

  it('keeps its order: root < bore of the nut < pitch < major < ground of the nut', () => {
    fc.assert(
      fc.property(fc.double({ min: 0.006, max: 0.3, noNaN: true }), fc.double({ min: 0.0015, max: 0.044, noNaN: true }), fc.integer({ min: 1, max: 8 }), (d, pitch, starts) => {
        const thread = trapezoidalGeometry(d, pitch, starts);
        if (!thread.exists) return thread.reason === 'no-core-left';
        return (
          0 < thread.rootDiameter &&
          thread.rootDiameter < thread.nutMinorDiameter &&
          thread.nutMinorDiameter < thread.pitchDiameter &&
          thread.pitchDiameter < thread.majorDiameter &&
          thread.majorDiameter < thread.nutMajorDiameter &&
          Math.abs(Math.tan(thread.leadAngle) * Math.PI * thread.pitchDiameter - starts * pitch) < 1e-12
        );
      }),
    );
  });
});

describe('limits', () => {
  it('lie inside the basic profile and in order', () => {
    // By hand, Tr8x1.5 with 67, 170, 150 µm: d2max 7.183, d2min 7.013, d3min 6.2 − 0.067 − 0.2125 = 5.9205, dmin 7.85 mm.
    const limits = screwThreadLimits(
      { majorDiameter: 0.008, pitchDiameter: 0.00725, rootDiameter: 0.0062 },
      { fundamentalDeviation: 67e-6, pitchDiameterTolerance: 170e-6, majorDiameterTolerance: 150e-6 },
    );
    expect(limits.pitchDiameterMax).toBeCloseTo(7.183e-3, 12);
    expect(limits.pitchDiameterMin).toBeCloseTo(7.013e-3, 12);
    expect(limits.rootDiameterMax).toBeCloseTo(6.2e-3, 12);
    expect(limits.rootDiameterMin).toBeCloseTo(5.9205e-3, 12);
    expect(limits.majorDiameterMin).toBeCloseTo(7.85e-3, 12);
  });
});
