import { describe, expect, it } from 'vitest';
import data from '../../server/src/catalogue/data/collar-friction.json';
import { collarFriction, COLLARS, isCollar } from '../../server/src/catalogue/collar-friction.ts';

describe.each(data.rows)('$title', (row) => {
  it('has a source and ranges in order; starting is never easier than running', () => {
    expect(row.source.length).toBeGreaterThan(10);
    if (/memory/.test(row.source)) expect(row.weak).toBe(true);
    if (!isCollar(row.collar)) throw new Error('unknown');
    const { running, starting } = collarFriction(row.collar);
    for (const range of [running, starting]) {
      expect(range.low).toBeGreaterThan(0);
      expect(range.low).toBeLessThanOrEqual(range.nominal);
      expect(range.nominal).toBeLessThanOrEqual(range.high);
    }
    expect(starting.nominal).toBeGreaterThanOrEqual(running.nominal);
  });
});

// Budynas and Nisbett, Table 8-6 (page read): running and starting.
it.each([
  ['soft-steel-on-cast-iron', 0.12, 0.17],
  ['hard-steel-on-cast-iron', 0.09, 0.15],
  ['soft-steel-on-bronze', 0.08, 0.1],
  ['hard-steel-on-bronze', 0.06, 0.08],
] as const)('%s as printed', (name, running, starting) => {
  expect(collarFriction(name).running.nominal).toBe(running);
  expect(collarFriction(name).starting.nominal).toBe(starting);
  expect(collarFriction(name).kind).toBe('plain');
});

it('a rolling bearing has a tenth of a plain face’s friction, as a weak range', () => {
  expect(collarFriction('rolling-bearing')).toMatchObject({ kind: 'rolling', weak: true });
  expect(collarFriction('rolling-bearing').running.high).toBeLessThan(collarFriction('hard-steel-on-bronze').running.low);
});

it('knows its names and no others', () => {
  expect(data.rows.map((row) => row.collar)).toEqual([...COLLARS]);
  expect(isCollar('wood-on-glass')).toBe(false);
});
