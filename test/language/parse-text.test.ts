import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { parseChunk } from '../../server/src/language/parse-chunk.ts';
import { parseText } from '../../server/src/language/parse-text.ts';
import type { Span } from '../../server/src/language/spans.ts';
import { entryAt, nodeAt, type SyntaxNode } from '../../server/src/language/syntax-tree.ts';
import { descriptions } from './arbitrary-descriptions.ts';
import { marked, outline } from './outline.ts';

const cut = (text: string, span: Span | undefined): string | undefined => span && text.slice(span.start, span.end);

describe('the tree', () => {
  const text = [
    '# a machine',
    'machine: Heron # its name',
    'notes: |',
    '  first line',
    '  second: line',
    '',
    'masses:',
    '  # heavy',
    '  plate: { mass: 6.2 kg ± 0.2 kg, at: [310 mm, "160 mm"] }',
    'axes:',
    '  lift:',
    '    moves:',
    '    - plate',
    '    -',
    "    title: 'it''s up'",
    '    travel:',
    '    purpose: a text that goes on',
    '      over two lines',
    '',
  ].join('\n');

  for (const lineEnd of ['\n', '\r\n']) {
    describe(lineEnd === '\n' ? 'with LF' : 'with CR LF', () => {
      const written = text.replaceAll('\n', lineEnd);
      const { root, problems, repaired } = parseText(written);

      it('holds everything, decoded', () => {
        expect(problems).toEqual([]);
        expect(repaired).toBe(false);
        expect(outline(root)).toBe(
          '{machine: Heron, notes: |first line/second: line/, masses: {plate: {mass: 6.2 kg ± 0.2 kg, at: [310 mm, "160 mm"]}}, axes: {lift: {moves: [plate, null], title: "it\'s up", travel: null, purpose: a text that goes on over two lines}}}',
        );
      });

      it.each([
        [['machine'], 'machine: Heron', 'Heron'],
        [['notes'], `notes: |${lineEnd}  first line${lineEnd}  second: line`, `|${lineEnd}  first line${lineEnd}  second: line`],
        [['masses', 'plate'], 'plate: { mass: 6.2 kg ± 0.2 kg, at: [310 mm, "160 mm"] }', '{ mass: 6.2 kg ± 0.2 kg, at: [310 mm, "160 mm"] }'],
        [['masses', 'plate', 'mass'], 'mass: 6.2 kg ± 0.2 kg', '6.2 kg ± 0.2 kg'],
        [['masses', 'plate', 'at', '1'], undefined, '"160 mm"'],
        [['axes', 'lift', 'moves'], `moves:${lineEnd}    - plate${lineEnd}    -`, `- plate${lineEnd}    -`],
        [['axes', 'lift', 'moves', '0'], undefined, 'plate'],
        [['axes', 'lift', 'title'], "title: 'it''s up'", "'it''s up'"],
        [['axes', 'lift', 'travel'], 'travel:', undefined],
        [['axes', 'lift', 'purpose'], `purpose: a text that goes on${lineEnd}      over two lines`, `a text that goes on${lineEnd}      over two lines`],
      ])('marks %j', (path, entry, value) => {
        expect(cut(written, entryAt(root, path)?.span)).toBe(entry);
        expect(cut(written, nodeAt(root, path)?.span)).toBe(value);
      });

      it('ends with its last entry', () => {
        expect(cut(written, root?.span)).toBe(written.slice(written.indexOf('machine: Heron'), written.lastIndexOf('lines') + 5));
        const lift = nodeAt(root, ['axes', 'lift']);
        expect(cut(written, lift?.span)?.startsWith('moves:')).toBe(true);
      });
    });
  }

  it('counts in UTF-16 units behind emoji and signs of the trade', () => {
    const line = 'a: { "😀°µØ": ∅, travel: 5 µm, größe: 3 }\nb: *nope';
    const { root, problems } = parseText(line);
    expect(cut(line, entryAt(root, ['a', 'travel'])?.span)).toBe('travel: 5 µm');
    expect(cut(line, entryAt(root, ['a', 'größe'])?.span)).toBe('größe: 3');
    expect(cut(line, entryAt(root, ['a', '😀°µØ'])?.key.span)).toBe('"😀°µØ"');
    expect(problems.map((problem) => marked(problem, line))).toEqual(['anchor-unknown "*nope"']);
  });

  it('gives the nearest anchors for an unknown alias', () => {
    const [problem] = parseText('plate: &plate 1\nlift: &lift 2\nplates: &plates 3\nc: *plat').problems;
    expect(problem?.message).toBe('No anchor "plat" before this line. Did you mean "plate" or "plates"?');
    expect(problem?.fixes?.[0]?.edits[0]?.text).toBe('*plate');
  });

  it('shows the first key beside a repeated one', () => {
    const text2 = 'mass: 1\nspeed: 2\nmass: 3';
    const [problem] = parseText(text2).problems;
    expect(problem?.message).toBe('"mass" is written twice; the other is here. Only the first one counts.');
    expect(cut(text2, problem?.related?.[0]?.span)).toBe('mass');
    expect(problem?.related?.[0]?.span.start).toBe(0);
  });

  it('stands for an alias with the places of its anchor', () => {
    const text2 = 'a: &x { mass: 5 kg }\nb: *x';
    const { root } = parseText(text2);
    expect(outline(root)).toBe('{a: {mass: 5 kg}, b: {mass: 5 kg}}');
    expect(nodeAt(root, ['b', 'mass'])).toBe(nodeAt(root, ['a', 'mass']));
    expect(cut(text2, entryAt(root, ['b'])?.span)).toBe('b:');
  });
});

describe('messages', () => {
  it.each([
    ['mass:5 kg\nx: 1', 'Put a space after the colon: "mass: 5 kg".'],
    ['screw: lead: 8 mm', 'Two keys on one line. Put "lead" on its own line below "screw", two spaces in, or put quotes around the text.'],
    ['a:\n\tb: 1', 'Tabs are not allowed as indentation. Use two spaces for each level.'],
    ['a: *nope', 'No anchor "nope" before this line. An anchor is written "&name" before its value.'],
    ['a: 1\n<<<<<<< x\nb: 1\n=======\nb: 2\n>>>>>>> y', 'Unfinished merge: lines 2 to 6. Keep one side and remove the marks; until then the first side counts.'],
  ])('%j', (text, message) => {
    expect(parseText(text).problems.map((problem) => problem.message)).toEqual([message]);
  });

  it('offer both sides of an unfinished merge', () => {
    const text = 'a: 1\n<<<<<<< x\nb: 1\n=======\nb: 2\n>>>>>>> y\nc: 3\n';
    const fixes = parseText(text).problems[0]?.fixes ?? [];
    const after = fixes.map((fix) => fix.edits.reduce((result, edit) => result.slice(0, edit.span.start) + edit.text + result.slice(edit.span.end), text));
    expect(after).toEqual(['a: 1\nb: 1\nc: 3\n', 'a: 1\nb: 2\nc: 3\n']);
  });

  it('are short enough', () => {
    const long = 'x'.repeat(300);
    for (const text of [`${long}:5 kg\na: 1`, `a: ${long}: 5`, `${long}\na: 1`, `a: *${long}`, `a: !${long} 1`, `a: 1\n   ${long}: 2`, `a: "\\${long}"`]) {
      for (const problem of parseText(text).problems) expect(problem.message.length, problem.message).toBeLessThanOrEqual(240);
    }
  });
});

describe('reading entry by entry', () => {
  /** A tree without the chunking: the whole text as one chunk. */
  const whole = (text: string): SyntaxNode | null => parseChunk(text).node;

  it('gives the same tree as reading the whole at once', () => {
    fc.assert(
      fc.property(descriptions(), (text) => {
        const parsed = parseText(text);
        expect(parsed.problems).toEqual([]);
        expect(parsed.root).toEqual(whole(text));
      }),
      { numRuns: 400 },
    );
  });
});
