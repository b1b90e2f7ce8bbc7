import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { contradictions, readDesignation, settleDesignation } from '../../server/src/mechanics/thread-designation.ts';

const mm = (value: number): number => value / 1000;
const AT_8 = [mm(1.5), mm(2)];

describe('reading', () => {
  it.each([
    ['Tr8x8(P2)', 8, 8, 2, 'right'],
    ['tr 8 X 8 ( p 2 ) lh', 8, 8, 2, 'left'],
    ['Tr8×1,5', 8, 1.5, undefined, 'right'],
    ['Tr12*3 LH', 12, 3, undefined, 'left'],
    ['T8 lead 8', 8, 8, undefined, 'right'],
    ['Tr16x4-7e', 16, 4, undefined, 'right'],
    ['Tr16x4 - 7e LH', 16, 4, undefined, 'left'],
    ['T8', 8, undefined, undefined, 'right'],
    ['Tr10 (P2)', 10, undefined, 2, 'right'],
  ])('%s', (text, d, travel, pitch, hand) => {
    const written = readDesignation(text);
    expect(written?.majorDiameter).toBeCloseTo(mm(d), 12);
    if (travel === undefined) expect(written?.travelPerTurn).toBeUndefined();
    else expect(written?.travelPerTurn).toBeCloseTo(mm(travel), 12);
    if (pitch === undefined) expect(written?.pitch).toBeUndefined();
    else expect(written?.pitch).toBeCloseTo(mm(pitch), 12);
    expect(written?.hand).toBe(hand);
  });

  it.each(['', 'Tr', 'Trx2', 'M8x1.25', 'Tr8x', 'Tr0x2', 'Tr8x0', 'Tr8x8(P0)', 'Tr8x8(P2', '1605', 'Tr-8x2', 'Tr8x8(P2)extra', 'Tr8xé', `Tr${'9'.repeat(200)}x2`])(
    'not a designation: %j',
    (text) => {
      expect(readDesignation(text)).toBeUndefined();
    },
  );

  it('never throws and stays finite', () => {
    fc.assert(
      fc.property(fc.string({ unit: fc.constantFrom(...'Tr8x×*(P2)LH-7e .,1690'.split('')), maxLength: 40 }), (text) => {
        const written = readDesignation(text);
        return written === undefined || (Number.isFinite(written.majorDiameter) && written.majorDiameter > 0);
      }),
      { numRuns: 2000 },
    );
  });
});

const settle = (text: string, pitches: readonly number[] = AT_8) => {
  const written = readDesignation(text);
  if (written === undefined) throw new Error(`${text} not read`);
  return settleDesignation(written, pitches);
};

describe('settling', () => {
  it('four starts of 2 mm', () => {
    expect(settle('Tr8x8(P2)')).toMatchObject({ kind: 'clear', starts: 4, listed: true });
  });

  it('a listed pitch stands for a single start', () => {
    expect(settle('Tr8x1.5')).toMatchObject({ kind: 'clear', starts: 1 });
    expect(settle('Tr12x3', [mm(2), mm(3)])).toMatchObject({ kind: 'clear', starts: 1, pitch: mm(3) });
  });

  it('Tr8x8 alone is a lead whose pitch is not said', () => {
    // 8 / 2 = 4 starts; 8 / 1.5 is not whole.
    expect(settle('Tr8x8')).toMatchObject({ kind: 'ambiguous', readings: [{ pitch: mm(2), starts: 4 }] });
  });

  it('Tr8x6 has two readings, coarser pitch first', () => {
    // 6 / 2 = 3 starts, 6 / 1.5 = 4 starts.
    expect(settle('Tr8x6')).toMatchObject({ kind: 'ambiguous', readings: [{ pitch: mm(2), starts: 3 }, { pitch: mm(1.5), starts: 4 }] });
  });

  it('T8 names no lead at all', () => {
    expect(settle('T8')).toMatchObject({ kind: 'ambiguous', lead: undefined });
  });

  it('an unlisted but possible single start is taken as such', () => {
    expect(settle('Tr13x3', [])).toMatchObject({ kind: 'clear', starts: 1, listed: false });
    expect(settle('Tr13x6', [])).toMatchObject({ kind: 'ambiguous', readings: [] });
  });

  it('a lead that is no whole number of pitches, and more than eight starts', () => {
    expect(settle('Tr8x7(P2)')).toMatchObject({ kind: 'lead-not-whole-pitches', ratio: 3.5 });
    expect(settle('Tr8x18(P2)')).toMatchObject({ kind: 'lead-not-whole-pitches' });
    expect(settle('Tr8x1(P2)')).toMatchObject({ kind: 'lead-not-whole-pitches' });
  });
});

describe('contradictions', () => {
  const designated = {
    majorDiameter: mm(8),
    pitch: mm(2),
    starts: 4,
    lead: mm(8),
    hand: 'right' as const,
    pitchDiameter: mm(7),
    rootDiameter: mm(5.5),
  };

  it('none for what agrees, as measured on a real bar, or is left out', () => {
    expect(contradictions(designated, {})).toEqual([]);
    expect(contradictions(designated, designated)).toEqual([]);
    // Smallest core of class 7e is 5.192 mm, a rolled bar may be 0.15 P = 0.3 mm below; 7.9 mm over the crests is an ordinary bar.
    expect(contradictions(designated, { rootDiameter: mm(4.9), majorDiameter: mm(7.9), pitchDiameter: mm(6.74) })).toEqual([]);
  });

  it('each one by name', () => {
    expect(contradictions(designated, { lead: mm(4) })).toEqual([{ dimension: 'lead', designated: mm(8), given: mm(4) }]);
    expect(contradictions(designated, { starts: 2 })).toMatchObject([{ dimension: 'starts' }]);
    expect(contradictions(designated, { hand: 'left' })).toMatchObject([{ dimension: 'hand' }]);
    expect(contradictions(designated, { rootDiameter: mm(6.2) })).toMatchObject([{ dimension: 'rootDiameter' }]);
    expect(contradictions(designated, { majorDiameter: mm(10), pitch: mm(1.5) }).map((found) => found.dimension)).toEqual(['pitch', 'majorDiameter']);
  });
});
