import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { LineIndex } from '../../server/src/language/line-index.ts';

describe('line index', () => {
  // "µ😀x" is one unit, two units, one unit long.
  const text = 'ab\r\nµ😀x\n\ry\n';

  it.each([
    [0, 0, 0], [1, 0, 1], [2, 0, 2],
    // Inside CR LF: the end of the line.
    [3, 0, 2],
    [4, 1, 0], [5, 1, 1], [7, 1, 3], [8, 1, 4], [9, 2, 0], [10, 3, 0], [11, 3, 1], [12, 4, 0],
    // Outside: clamped.
    [-5, 0, 0], [99, 4, 0],
  ])('offset %i is line %i, character %i', (offset, line, character) => {
    expect(new LineIndex(text).positionAt(offset)).toEqual({ line, character });
  });

  it.each([
    [0, 0, 0], [0, 2, 2], [0, 99, 2], [1, 0, 4], [1, 3, 7], [2, 0, 9], [3, 1, 11], [4, 0, 12], [9, 0, 12], [-1, 3, 0], [0, -3, 0],
  ])('line %i, character %i is offset %i', (line, character, offset) => {
    expect(new LineIndex(text).offsetAt({ line, character })).toBe(offset);
  });

  it('counts lines', () => {
    expect(new LineIndex('').lineCount).toBe(1);
    expect(new LineIndex(text).lineCount).toBe(5);
    expect(new LineIndex('a\r\n').lineCount).toBe(2);
  });

  it('goes from offset to position and back for any text', () => {
    fc.assert(
      fc.property(fc.array(fc.constantFrom('a', 'µ', '😀', '\n', '\r\n', '\r', ' ')).map((parts) => parts.join('')), (any) => {
        const lines = new LineIndex(any);
        for (let offset = 0; offset <= any.length; offset++) {
          const back = lines.offsetAt(lines.positionAt(offset));
          const insideLineEnd = any[offset - 1] === '\r' && any[offset] === '\n';
          expect(back).toBe(insideLineEnd ? offset - 1 : offset);
        }
      }),
    );
  });
});
