import { expect, it } from 'vitest';
import { readDocument } from '../../server/src/language/read-document.ts';
import { applyEdits } from '../../server/src/language/spans.ts';

/** What is left when every space is taken away: a fix of indentation may change nothing of it. */
const ink = (text: string): string => text.replace(/\s/g, '');

it.each([
  ['a later line stands less far in than what is taken away', 'a:\n  b: "double"\nc: d\n       e: 5 mm # a comment\n   f:\n   - 5 mm\n'],
  ['the last line is shorter than what is taken away', 'a: b\n    machine:\n      - []\n a'],
])('indenting less takes spaces only: %s', (_, text) => {
  const fixes = readDocument('file:///a.machine.yaml', text).problems.flatMap((problem) => problem.fixes ?? []).filter(({ title }) => title.startsWith('Indent by'));
  expect(fixes).not.toEqual([]);
  for (const { edits } of fixes) expect(ink(applyEdits(text, edits))).toBe(ink(text));
});
