import { describe, expect, test } from 'vitest';
import { RAIL_SIZE_TEXTS, railOfSize, railSizeText } from '../../server/src/machine/guide-rail-size.ts';
import { readDocument } from '../../server/src/language/read-document.ts';
import { Machine } from '../../server/src/machine/machine.ts';
import { sizeProblems } from '../../server/src/machine/size-problems.ts';
import { sizeDrafts } from '../../server/src/services/completion-sizes.ts';

describe('sizes of profile rails', () => {
  // Both forms have a size 15; the trade means the standard one unless it says miniature.
  test('a bare number is the standard rail where there is one', () => {
    expect(railOfSize('15')).toMatchObject({ form: 'standard', size: 15 });
    expect(railOfSize('miniature 15')).toMatchObject({ form: 'miniature', size: 15 });
    expect(railOfSize('12')).toMatchObject({ form: 'miniature', size: 12 });
    expect(railOfSize('13')).toBeUndefined();
    expect(railOfSize('fifteen')).toBeUndefined();
  });
  test('each is read back as it is written, and completion offers each once', () => {
    for (const text of RAIL_SIZE_TEXTS) expect(railSizeText(railOfSize(text) ?? (() => { throw new Error(text); })())).toBe(text);
    expect(sizeDrafts('profile-rail', () => undefined).map(({ label }) => label)).toEqual(RAIL_SIZE_TEXTS);
  });
  test('one that is not known is a finding, with what was meant where that is plain', () => {
    const problems = (size: string) => sizeProblems(new Machine(readDocument('file:///a.machine.yaml', `axes:\n  x:\n    guides: { kind: profile-rail, size: ${size} }\n`), []));
    expect(problems('15')).toEqual([]);
    expect(problems('size 15')).toMatchObject([{ code: 'size-unknown', severity: 'warning', replacements: ['15'] }]);
    expect(problems('17')[0]?.message).toMatch(/no rail size that is known/);
  });
});
