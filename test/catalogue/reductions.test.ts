import { describe, expect, test } from 'vitest';
import { REDUCTIONS, REDUCTION_KINDS, usualReduction } from '../../server/src/catalogue/reductions.ts';
import { reverseEfficiency } from '../../server/src/mechanics/reduction.ts';

test('every kind of the description language has a row, and no other', () => {
  expect(REDUCTIONS.map((row) => row.kind)).toEqual([...REDUCTION_KINDS]);
  expect(usualReduction('chain')).toBeUndefined();
});

describe.each(REDUCTIONS)('$kind', ({ efficiency, reverseEfficiency: reverse, backlash }) => {
  test('ranges rise, efficiencies stay below 1, sources are named and marked weak', () => {
    for (const range of [efficiency, reverse, backlash]) {
      expect(range.low).toBeLessThanOrEqual(range.nominal);
      expect(range.nominal).toBeLessThanOrEqual(range.high);
      expect(range.source).not.toBe('');
      expect(range.weak).toBe(true);
    }
    expect(efficiency.high).toBeLessThan(1);
    expect(efficiency.low).toBeGreaterThan(0);
    expect(reverse.high).toBeLessThanOrEqual(efficiency.high);
  });
});

test('a worm driven backwards follows 2 − 1/η at both ends: 2 − 1/0.3 = −1.33, 2 − 1/0.9 = 0.89', () => {
  const worm = usualReduction('worm')!;
  expect(worm.reverseEfficiency.low).toBeCloseTo(reverseEfficiency(worm.efficiency.low), 2);
  expect(worm.reverseEfficiency.high).toBeCloseTo(reverseEfficiency(worm.efficiency.high), 2);
});
