import { describe, expect, test } from 'vitest';
import schema from '../../schemas/machine.schema.json' with { type: 'json' };
import { COUPLINGS, usualCoupling } from '../../server/src/catalogue/couplings.ts';

test('every form of the description language has a row, and no other', () => {
  expect(COUPLINGS.map((row) => row.form).sort()).toEqual([...schema.$defs.coupling.properties.form.enum].sort());
  expect(usualCoupling('chain')).toBeUndefined();
});

describe.each(COUPLINGS)('$form', (row) => {
  test('ranges rise, sources are named and marked weak', () => {
    for (const range of [row.torsionalStiffness, row.axialStiffness, row.torqueRating, row.parallelOffset, row.angularOffset]) {
      expect(range.low).toBeLessThanOrEqual(range.nominal);
      expect(range.nominal).toBeLessThanOrEqual(range.high);
      expect(range.low).toBeGreaterThanOrEqual(0);
      expect(range.source).not.toBe('');
      expect(range.weak).toBe(true);
    }
    expect(row.torsionalStiffness.low).toBeGreaterThan(0);
    expect(row.torqueRating.low).toBeGreaterThan(0);
  });
});

test('stiffness rises from beam over jaw and bellows to rigid, and only the rigid one carries a pull (common practice, no published source)', () => {
  const stiffness = (form: string): number => usualCoupling(form)!.torsionalStiffness.nominal;
  expect(stiffness('beam')).toBeLessThan(stiffness('jaw'));
  expect(stiffness('jaw')).toBeLessThan(stiffness('bellows'));
  expect(stiffness('bellows')).toBeLessThan(stiffness('rigid'));
  expect(COUPLINGS.filter((row) => row.carriesAxialLoad).map((row) => row.form)).toEqual(['rigid']);
});

test('units: a nominal beam coupling gives 20 N/mm along and 10 N·m/rad round its axis', () => {
  const beam = usualCoupling('beam')!;
  expect(beam.axialStiffness.nominal).toBe(20e3);
  expect(beam.torsionalStiffness.nominal).toBe(10);
  // The reference dossier has small beam and jaw couplings from 20 to 150 N·m/rad; softer ones are sold, and the range holds both.
  expect(beam.torsionalStiffness.high).toBe(150);
  expect(beam.angularOffset.nominal).toBeCloseTo((2 * Math.PI) / 180, 12);
});
