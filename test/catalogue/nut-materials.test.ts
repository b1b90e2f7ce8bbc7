import { describe, expect, it } from 'vitest';
import data from '../../server/src/catalogue/data/nut-materials.json';
import { isNutMaterial, LUBRICATIONS, movingPressureLimit, NUT_MATERIALS, nutMaterial, type HandbookRange } from '../../server/src/catalogue/nut-materials.ts';

function ranges(value: unknown): { low: number; nominal: number; high: number; source?: string; weak?: boolean }[] {
  if (Array.isArray(value)) return value.flatMap(ranges);
  if (typeof value !== 'object' || value === null) return [];
  if ('nominal' in value) return [value as { low: number; nominal: number; high: number }];
  return Object.values(value).flatMap(ranges);
}

describe.each(data.materials)('$title', (material) => {
  it('gives each value as a range in order, with its source, weak where from memory', () => {
    const all = ranges(material);
    // friction 3, static ratio 1, static limit 1, PV 3, wear 3, area 1, and at least one band of speed.
    expect(all.length).toBeGreaterThanOrEqual(13);
    for (const range of all) {
      expect(range.source?.length).toBeGreaterThan(10);
      expect(range.low).toBeGreaterThan(0);
      expect(range.low).toBeLessThanOrEqual(range.nominal);
      expect(range.nominal).toBeLessThanOrEqual(range.high);
      if (/memory|ours|makers’? practice/.test(range.source ?? '') && !/low end is ours, the cautious side/.test(range.source ?? '')) expect(range.weak).toBe(true);
    }
  });

  it('has bands of speed that join, stricter with speed, the last open', () => {
    const bands = material.pressure_limit_by_speed_mpa as { from_m_per_min: number; to_m_per_min?: number; low: number; high: number }[];
    expect(bands[0]?.from_m_per_min).toBe(0);
    bands.forEach((band, index) => {
      const next = bands[index + 1];
      expect(band.to_m_per_min).toBe(next?.from_m_per_min);
      if (next) expect(next.high).toBeLessThanOrEqual(band.high);
    });
  });

  it('loads into SI', () => {
    if (!isNutMaterial(material.material)) throw new Error('unknown');
    const loaded = nutMaterial(material.material);
    expect(loaded.staticPressureLimit.high).toBeCloseTo(material.static_pressure_limit_mpa.high * 1e6, 3);
    for (const lubrication of LUBRICATIONS) {
      const row = material.friction.find((candidate) => candidate.lubrication === lubrication);
      expect(loaded.friction[lubrication].nominal).toBe(row?.nominal);
      expect(loaded.pressureVelocityLimit[lubrication].low).toBeLessThan(3e6);
      expect(loaded.specificWear[lubrication].high).toBeLessThan(1e-11);
    }
  });

  it('is never slipperier dry than lubricated, nor wears less', () => {
    if (!isNutMaterial(material.material)) throw new Error('unknown');
    const { friction, specificWear, pressureVelocityLimit } = nutMaterial(material.material);
    for (const wet of ['oil', 'grease'] as const) {
      expect(friction[wet].nominal).toBeLessThanOrEqual(friction.dry.nominal);
      expect(specificWear[wet].nominal).toBeLessThanOrEqual(specificWear.dry.nominal);
      expect(pressureVelocityLimit[wet].nominal).toBeGreaterThanOrEqual(pressureVelocityLimit.dry.nominal);
    }
  });
});

describe('printed values', () => {
  const ends = (range: HandbookRange): number[] => [range.low, range.high];

  // Budynas and Nisbett, Table 8-5, p. 422 (page read): steel screw, dry and machine oil.
  it.each([
    ['bronze', [0.15, 0.23], [0.1, 0.16]],
    ['brass', [0.15, 0.19], [0.1, 0.15]],
    ['cast-iron', [0.15, 0.25], [0.11, 0.17]],
    ['steel', [0.15, 0.25], [0.11, 0.17]],
  ] as const)('friction of %s', (name, dry, oiled) => {
    expect(ends(nutMaterial(name).friction.dry)).toEqual(dry);
    expect(ends(nutMaterial(name).friction.oil)).toEqual(oiled);
  });

  // Budynas and Nisbett, Table 8-4 (from memory): bronze by sliding speed, m/min and MPa; between the bands the stricter neighbour.
  it.each([
    [0, 17],
    [0.5, 17],
    [0.51, 11],
    [3, 11],
    [3.01, 5.5],
    [12, 5.5],
    [12.01, 1],
    [100, 1],
  ])('bronze at %d m/min bears at least %d MPa', (perMinute, pressure) => {
    expect(movingPressureLimit('bronze', perMinute / 60).low / 1e6).toBeCloseTo(pressure, 9);
  });
});

it('knows its names and no others', () => {
  expect(NUT_MATERIALS).toEqual(data.materials.map((material) => material.material));
  expect(isNutMaterial('wood')).toBe(false);
  expect(() => movingPressureLimit('bronze', -1)).toThrow(RangeError);
  expect(() => movingPressureLimit('bronze', NaN)).toThrow(RangeError);
});
