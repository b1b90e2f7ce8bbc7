import { describe, expect, test } from 'vitest';
import { BELT_PROFILES, beltProfile, nextWidth, usualCord } from '../../server/src/catalogue/belt-profiles.ts';

const mm = 1e-3;

test('the profiles of the trade, each once', () => {
  expect(BELT_PROFILES.map((row) => row.profile)).toEqual([
    'T2.5', 'T5', 'T10', 'AT3', 'AT5', 'AT10', 'MXL', 'XL', 'L', 'H', 'curvilinear 2 mm', 'curvilinear 3 mm', 'curvilinear 5 mm', 'curvilinear 8 mm',
  ]);
  expect(beltProfile('Z9')).toBeUndefined();
});

describe('pitches', () => {
  // ISO 5296: MXL 0.080 in, XL 1/5 in, L 3/8 in, H 1/2 in; metric profiles carry theirs in the name.
  test.each([['MXL', 0.08 * 25.4], ['XL', 25.4 / 5], ['L', (3 * 25.4) / 8], ['H', 25.4 / 2], ['T2.5', 2.5], ['AT10', 10], ['curvilinear 8 mm', 8]])('%s %f mm', (name, pitch) => {
    expect(beltProfile(name)!.pitch / mm).toBeCloseTo(pitch, 9);
  });
});

describe.each(BELT_PROFILES)('$profile', (row) => {
  test('ranges rise, every one has a source', () => {
    const ranges = [row.mass, row.backlash, row.toothLoad, ...row.cords.flatMap((cord) => [row.specificStiffness(cord), row.breakingForce(cord)])];
    expect(ranges).not.toContain(undefined);
    for (const range of ranges) {
      expect(range!.low).toBeGreaterThan(0);
      expect(range!.low).toBeLessThanOrEqual(range!.nominal);
      expect(range!.nominal).toBeLessThanOrEqual(range!.high);
      expect(range!.source).not.toBe('');
    }
    for (const { source } of [row.teeth, row.widths, row.pitchLineDifferential]) expect(source).not.toBe('');
  });
  test('what rests on memory is wide: at least a fifth to each side for stiffness and breaking force', () => {
    for (const cord of row.cords) {
      for (const range of [row.specificStiffness(cord)!, row.breakingForce(cord)!]) {
        if (!range.weak) continue;
        expect(range.low / range.nominal).toBeLessThanOrEqual(0.8);
        expect(range.high / range.nominal).toBeGreaterThanOrEqual(1.2);
      }
    }
  });
  test('pulley, widths, cord', () => {
    expect(row.teeth.least).toBeLessThan(row.teeth.recommended);
    expect([...row.widths.values].sort((a, b) => a - b)).toEqual(row.widths.values);
    expect(row.pitchLineDifferential.value).toBeLessThan(row.pitch / 4);
    expect(row.cords).toContain(usualCord(row, row.usualBody));
  });
  test('strain at a quarter of the breaking force is about that of the four data pages, 0.4 %, within a factor of three', () => {
    for (const cord of row.cords) {
      const strain = (0.25 * row.breakingForce(cord)!.nominal) / row.specificStiffness(cord)!.nominal;
      expect(strain).toBeGreaterThan(0.004 / 3);
      expect(strain).toBeLessThan(0.004 * 3);
    }
  });
});

test('data pages of steel-cord belts, 10 mm wide: specific stiffness and breaking force in N', () => {
  for (const [profile, cord, stiffness, breaking] of [['T5', 'steel', 90_000, 1500], ['AT5', 'steel', 140_000, 2000], ['AT5', 'reinforced-steel', 275_000, 4000]] as const) {
    expect(beltProfile(profile)!.specificStiffness(cord)!.nominal * 10 * mm).toBeCloseTo(stiffness, 3);
    expect(beltProfile(profile)!.breakingForce(cord)!.nominal * 10 * mm).toBeCloseTo(breaking, 3);
    expect(beltProfile(profile)!.specificStiffness(cord)!.weak).toBe(false);
  }
});

test('a page for 0.080 in pitch: 425 lbf/in with glass is 74.4 N for a millimetre, 1050 lbf/in with aramid 184 N', () => {
  expect(beltProfile('MXL')!.breakingForce('glass')!.nominal / 1e3).toBeCloseTo((425 * 4.448222) / 25.4, 1);
  expect(beltProfile('MXL')!.breakingForce('aramid')!.nominal / 1e3).toBeCloseTo((1050 * 4.448222) / 25.4, 0);
});

test('curvilinear 2 mm: all of glass is weak, and the standard is not claimed', () => {
  const two = beltProfile('curvilinear 2 mm')!;
  expect(two.specificStiffness('glass')!.weak).toBe(true);
  expect(two.breakingForce('glass')!.weak).toBe(true);
  expect(two.standard).toContain('not known');
  // Dossier: 6 mm wide 8.3 g/m (a shop page).
  expect(Math.abs((two.mass.nominal * 6 * mm) / 8.3e-3 - 1)).toBeLessThan(0.02);
});

test('next width', () => {
  const two = beltProfile('curvilinear 2 mm')!;
  expect(nextWidth(two, 6 * mm)).toBeCloseTo(9 * mm, 12);
  expect(nextWidth(two, 15 * mm)).toBeUndefined();
});
