import { describe, expect, it } from 'vitest';
import data from '../../server/src/catalogue/data/trapezoidal-threads.json';
import tolerances from '../../server/src/catalogue/data/trapezoidal-thread-tolerances.json';
import {
  class7e,
  nearestThread,
  nextLargerThread,
  nextSmallerLead,
  pitchesAt,
  STANDARD_THREADS,
  standardThread,
  threadsThat,
} from '../../server/src/catalogue/trapezoidal-threads.ts';
import { readDesignation, settleDesignation } from '../../server/src/mechanics/thread-designation.ts';
import { trapezoidalGeometry } from '../../server/src/mechanics/trapezoidal-thread.ts';

const mm = (value: number): number => value / 1000;

describe.each(data.rows)('$designation', (row) => {
  it('has a source, and says weak where it rests on memory', () => {
    expect(row.source.length).toBeGreaterThan(10);
    if (/memory|not in ISO 2904/.test(row.source)) expect(row.weak).toBe(true);
  });

  it('has the dimensions of the relations of ISO 2901', () => {
    const thread = trapezoidalGeometry(mm(row.major_mm), mm(row.pitch_mm), row.starts);
    if (!thread.exists) throw new Error(thread.reason);
    expect(thread.pitchDiameter).toBeCloseTo(mm(row.pitch_diameter_mm), 12);
    expect(thread.rootDiameter).toBeCloseTo(mm(row.root_mm), 12);
    expect(thread.nutMinorDiameter).toBeCloseTo(mm(row.nut_minor_mm), 12);
    expect(thread.nutMajorDiameter).toBeCloseTo(mm(row.nut_major_mm), 12);
  });

  it('has a designation that means this thread', () => {
    const written = readDesignation(row.designation);
    if (written === undefined) throw new Error('not read');
    expect(settleDesignation(written, pitchesAt(written.majorDiameter))).toMatchObject({ kind: 'clear', starts: row.starts, listed: true });
    const found = standardThread(mm(row.major_mm), mm(row.pitch_mm), row.starts);
    expect(found?.designation).toBe(row.designation);
    expect(found?.lead).toBeCloseTo(mm(row.starts * row.pitch_mm), 12);
  });

  it('has a class 7e tolerance, or a pitch that the tolerance table leaves out', () => {
    const found = class7e(mm(row.major_mm), mm(row.pitch_mm));
    // ISO 2903 gives no row for pitch 1.5 mm above 11.2 mm; no thread here is of that kind.
    expect(found).toBeDefined();
  });
});

describe('the table', () => {
  it('has each thread once, one preferred pitch a diameter, and the sizes from 8 to 40 mm', () => {
    expect(new Set(data.rows.map((row) => row.designation)).size).toBe(data.rows.length);
    const diameters = [...new Set(data.rows.map((row) => row.major_mm))];
    for (const diameter of diameters) {
      expect(data.rows.filter((row) => row.major_mm === diameter && row.preferred)).toHaveLength(1);
    }
    // ISO 2904, first and second choice of diameters from 8 to 40 mm (from memory).
    expect(diameters).toEqual([8, 9, 10, 11, 12, 14, 16, 18, 20, 22, 24, 26, 28, 30, 32, 34, 36, 38, 40]);
  });

  it('knows no thread beyond its ends', () => {
    expect(standardThread(mm(7), mm(1.5), 1)).toBeUndefined();
    expect(standardThread(mm(42), mm(7), 1)).toBeUndefined();
    expect(standardThread(mm(8), mm(2), 9)).toBeUndefined();
    expect(pitchesAt(mm(7))).toEqual([]);
    expect(pitchesAt(mm(8))).toEqual([mm(1.5), mm(2)]);
  });
});

describe('lookups', () => {
  it('nearest, at both ends and between', () => {
    expect(nearestThread(0.001).designation).toBe('Tr8x1.5');
    expect(nearestThread(1).designation).toBe('Tr40x7');
    expect(nearestThread(mm(12.9)).designation).toBe('Tr12x3');
    expect(nearestThread(mm(13)).designation).toBe('Tr12x3');
    expect(nearestThread(mm(13.1)).designation).toBe('Tr14x3');
  });

  it('next larger with the same lead, until there is none', () => {
    expect(nextLargerThread(mm(8), mm(8))?.designation).toBe('Tr10x8(P2)');
    expect(nextLargerThread(mm(8), mm(2))?.designation).toBe('Tr9x2');
    expect(nextLargerThread(mm(40), mm(7))).toBeUndefined();
    expect(nextLargerThread(mm(8), mm(1.7))).toBeUndefined();
  });

  it('next smaller lead at the same diameter, until there is none', () => {
    expect(nextSmallerLead(mm(8), mm(8))?.designation).toBe('Tr8x4(P2)');
    expect(nextSmallerLead(mm(8), mm(2))?.designation).toBe('Tr8x1.5');
    expect(nextSmallerLead(mm(8), mm(1.5))).toBeUndefined();
  });

  it('those that suit come small first', () => {
    const stout = threadsThat((thread) => thread.rootDiameter >= mm(8.5) && thread.lead <= mm(3));
    expect(stout[0]?.designation).toBe('Tr11x2');
    expect(threadsThat(() => false)).toEqual([]);
    expect(threadsThat(() => true)).toHaveLength(STANDARD_THREADS.length);
  });
});

/** Renard series R40 over one decade, ISO 3. */
const R40 = [1, 1.06, 1.12, 1.18, 1.25, 1.32, 1.4, 1.5, 1.6, 1.7, 1.8, 1.9, 2, 2.12, 2.24, 2.36, 2.5, 2.65, 2.8, 3, 3.15, 3.35, 3.55, 3.75, 4, 4.25, 4.5, 4.75, 5, 5.3, 5.6, 6, 6.3, 6.7, 7.1, 7.5, 8, 8.5, 9, 9.5];

describe.each(tolerances.rows)('class 7e, pitch $pitch_mm mm, above $above_major_mm to $to_major_mm mm', (row) => {
  it('has a source', () => {
    expect(row.source).toMatch(/ISO 2903/);
    if (/memory/.test(row.source)) expect(row.weak).toBe(true);
  });

  it('lies in the preferred series and within one step of the formulas of ISO 965-1', () => {
    // Td2 of grade 7 = 1.25 · 90 P^0.4 d^0.1 with the geometric mean of the band; Td of grade 4 = 0.63 (180 P^(2/3) − 3.15/√P); µm from mm.
    const diameter = Math.sqrt(row.above_major_mm * row.to_major_mm);
    const pitchDiameter = 1.25 * 90 * row.pitch_mm ** 0.4 * diameter ** 0.1;
    const majorDiameter = 0.63 * (180 * row.pitch_mm ** (2 / 3) - 3.15 / Math.sqrt(row.pitch_mm));
    expect(R40).toContain(row.pitch_diameter_tolerance_um / 100);
    expect(R40).toContain(row.major_diameter_tolerance_um / 100);
    expect(Math.abs(row.pitch_diameter_tolerance_um / pitchDiameter - 1)).toBeLessThan(0.06);
    expect(Math.abs(row.major_diameter_tolerance_um / majorDiameter - 1)).toBeLessThan(0.06);
    // es of position e: −(50 + 11 P) µm, rounded in the standard.
    expect(Math.abs(row.fundamental_deviation_um / (50 + 11 * row.pitch_mm) - 1)).toBeLessThan(0.1);
  });

  it('is found at both ends of its band and not beyond', () => {
    expect(class7e(mm(row.to_major_mm), mm(row.pitch_mm))?.pitchDiameterTolerance).toBeCloseTo(row.pitch_diameter_tolerance_um / 1e6, 12);
    expect(class7e(mm(row.above_major_mm) + 1e-6, mm(row.pitch_mm))?.pitchDiameterTolerance).toBeCloseTo(row.pitch_diameter_tolerance_um / 1e6, 12);
    const beyond = class7e(mm(row.to_major_mm) + 1e-6, mm(row.pitch_mm));
    if (beyond !== undefined) expect(beyond.pitchDiameterTolerance).toBeGreaterThan(row.pitch_diameter_tolerance_um / 1e6);
  });
});

it('has no class 7e row for a pitch or a diameter outside the table', () => {
  expect(class7e(mm(5), mm(1.5))).toBeUndefined();
  expect(class7e(mm(60), mm(9))).toBeUndefined();
  expect(class7e(mm(10), mm(1.75))).toBeUndefined();
});
