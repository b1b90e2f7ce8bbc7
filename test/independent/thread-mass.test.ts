import { describe, expect, it } from 'vitest';
import { refinedDiametersOfTrapezoidalScrew } from '../../server/src/mechanics/screw-body.ts';

/**
 * Independent method: the volume of the screw over one pitch, summed ring by ring. At radius r a thread of the ISO 2901 profile is
 * P/2 − 2 (r − r2) tan 15° wide; the core below the root is full. Widths and clearances typed in from the standard, not taken from the product.
 */
const SIZES = [
  { d: 8, pitch: 1.5, clearance: 0.15 },
  { d: 8, pitch: 2, clearance: 0.25 },
  { d: 10, pitch: 2, clearance: 0.25 },
  { d: 12, pitch: 3, clearance: 0.25 },
  { d: 16, pitch: 4, clearance: 0.25 },
  { d: 20, pitch: 4, clearance: 0.25 },
];

describe('mass diameter', () => {
  it.each(SIZES)('of Tr$d x $pitch is within 0.6 % of the profile’s volume', ({ d, pitch, clearance }) => {
    const root = d / 2 - pitch / 2 - clearance;
    const mean = d / 2 - pitch / 4;
    const rings = 20000;
    const step = (d / 2 - root) / rings;
    let volume = Math.PI * root ** 2 * pitch;
    for (let i = 0; i < rings; i += 1) {
      const r = root + (i + 0.5) * step;
      volume += 2 * Math.PI * r * (pitch / 2 - 2 * (r - mean) * Math.tan((15 * Math.PI) / 180)) * step;
    }
    const equal = 2 * Math.sqrt(volume / (Math.PI * pitch));
    const { mass } = refinedDiametersOfTrapezoidalScrew((2 * root) / 1000, (2 * mean) / 1000, pitch / 1000);
    expect(Math.abs((mass * 1000) / equal - 1)).toBeLessThan(0.006);
  });
});
