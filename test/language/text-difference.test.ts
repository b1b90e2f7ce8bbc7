import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { applyEdits } from '../../server/src/language/spans.ts';
import { editsBetween } from '../../server/src/language/text-difference.ts';

const text = fc.array(fc.constantFrom('a: 1\n', 'b: 2\r\n', '  c: µ\n', '\n', 'd: 😀', '# note\n'), { maxLength: 30 }).map((lines) => lines.join(''));

describe('the edits between two texts', () => {
  it('turn the one into the other', () => {
    fc.assert(fc.property(text, text, (before, after) => applyEdits(before, editsBetween(before, after)) === after), { numRuns: 500 });
  });
  it('do not overlap and stand in order', () => {
    fc.assert(
      fc.property(text, text, (before, after) => {
        const edits = editsBetween(before, after);
        return edits.every((edit, index) => edit.span.start <= edit.span.end && (index === 0 || (edits[index - 1]?.span.end ?? 0) <= edit.span.start));
      }),
      { numRuns: 300 },
    );
  });
  it('touch only what differs', () => {
    const before = 'a: 1 # one\nb: 2 # two\nc: 3 # three\nd: 4\n';
    const after = 'a: 10 # one\nb: 2 # two\nc: 3 # three\nd: 5\ne: 6\n';
    const edits = editsBetween(before, after);
    expect(edits).toHaveLength(2);
    expect(edits[0]).toEqual({ span: { start: 4, end: 4 }, text: '0' });
  });
  it('are none between equal texts', () => {
    expect(editsBetween('a\n', 'a\n')).toEqual([]);
  });
});
