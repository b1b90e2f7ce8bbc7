import { describe, expect, it } from 'vitest';
import { flankAngleOf, pitchDiameterBelowCrest, rootBelowCrest } from '../../server/src/mechanics/sliding-thread.ts';

describe('thread forms', () => {
  it('have their flank angles', () => {
    expect((flankAngleOf('trapezoidal') * 180) / Math.PI).toBeCloseTo(15, 12);
    expect((flankAngleOf('acme') * 180) / Math.PI).toBeCloseTo(14.5, 12);
    expect(flankAngleOf('square')).toBe(0);
    expect(flankAngleOf('ball')).toBe(0);
  });

  it('Budynas and Nisbett, Example 8-1: square 32 × 4, d2 30 mm, d3 28 mm', () => {
    expect(0.032 - pitchDiameterBelowCrest(0.004)).toBeCloseTo(0.03, 12);
    expect(0.032 - rootBelowCrest('square', 0.004)).toBeCloseTo(0.028, 12);
  });

  it('ASME B1.5: 1 in with 5 threads an inch has a root of 0.78 in, 1/2 in with 10 one of 0.38 in, 1/4 in with 16 one of 0.1775 in', () => {
    // Basic minor diameter d − P − 0.020 in from 10 threads an inch upwards in coarseness, d − P − 0.010 in for finer pitches (from memory):
    // 1 − 0.2 − 0.02 = 0.78; 0.25 − 0.0625 − 0.01 = 0.1775; 10 threads: 0.5 − 0.1 − 0.02 = 0.38.
    const inch = 0.0254;
    expect((inch - rootBelowCrest('acme', 0.2 * inch)) / inch).toBeCloseTo(0.78, 9);
    expect((0.5 * inch - rootBelowCrest('acme', 0.1 * inch)) / inch).toBeCloseTo(0.38, 9);
    expect((0.25 * inch - rootBelowCrest('acme', inch / 16)) / inch).toBeCloseTo(0.1775, 9);
  });

  it('throws for a pitch that is none', () => {
    expect(() => rootBelowCrest('square', 0)).toThrow(RangeError);
    expect(() => pitchDiameterBelowCrest(-1)).toThrow(RangeError);
  });
});
