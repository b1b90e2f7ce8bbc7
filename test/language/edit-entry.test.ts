import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { removeEntry, scalarText, setEntry, type NewValue } from '../../server/src/language/edit-entry.ts';
import { readDocument } from '../../server/src/language/read-document.ts';
import { applyEdits } from '../../server/src/language/spans.ts';
import { nodeAt, type SyntaxNode } from '../../server/src/language/syntax-tree.ts';

/** The text after setting (or, with null, removing) the entry at a path written with slashes; undefined where that is refused. */
function after(text: string, path: string, value: NewValue | null): string | undefined {
  const document = readDocument('file:///edit.machine.yaml', text);
  const keys = path.split('/');
  const edits = value === null ? removeEntry(document, keys) : setEntry(document, keys, value);
  return edits && applyEdits(text, edits);
}

interface Row {
  readonly what: string;
  readonly before: string;
  readonly path: string;
  readonly value: NewValue | null;
  readonly after: string | undefined;
}

const row = (what: string, before: string, path: string, value: NewValue | null, expected: string | undefined): Row => ({ what, before, path, value, after: expected });

/** Every expected text is written by hand: it is what a careful person would have typed. */
const setting: readonly Row[] = [
  row('replaces a plain scalar', 'a:\n  b: 1 mm\n  c: 2\n', 'a/b', '3 mm', 'a:\n  b: 3 mm\n  c: 2\n'),
  row('keeps the comment at the end of the line', 'a:\n  b: 1 mm   # as sold\n', 'a/b', '3 mm', 'a:\n  b: 3 mm   # as sold\n'),
  row('keeps alignment before and comments between', 'a:\n  b:    1 mm\n  # note\n  c: 2\n', 'a/b', '3 mm', 'a:\n  b:    3 mm\n  # note\n  c: 2\n'),
  row('replaces in a flow map', 'a: { b: 1 mm, c: 2 }  # x\n', 'a/b', '3 mm', 'a: { b: 3 mm, c: 2 }  # x\n'),
  row('replaces in a flow map over several lines', 'a: {\n  b: 1 mm, # one\n  c: 2 # two\n}\n', 'a/c', '3, 4', 'a: {\n  b: 1 mm, # one\n  c: "3, 4" # two\n}\n'),
  row('replaces an item of a flow list', 'bores: [5 mm, 8 mm]\n', 'bores/1', '10 mm', 'bores: [5 mm, 10 mm]\n'),
  row('replaces an item of a block list', 'bores:\n  - 5 mm  # motor\n  - 8 mm  # screw\n', 'bores/1', '10 mm', 'bores:\n  - 5 mm  # motor\n  - 10 mm  # screw\n'),
  row('adds a map in braces where the others of its map stand in braces', 's:\n  a: { b: 1 }\n  c: { b: 2 }  # two\nd: 1\n', 's/e f', { b: '3', at: ['1 mm', '2 mm'] }, 's:\n  a: { b: 1 }\n  c: { b: 2 }  # two\n  e f: { b: 3, at: [1 mm, 2 mm] }\nd: 1\n'),
  row('adds a map over lines where not all others stand in braces', 's:\n  a: { b: 1 }\n  c: 2\n', 's/e', { b: '3' }, 's:\n  a: { b: 1 }\n  c: 2\n  e:\n    b: 3\n'),
  row('adds the item behind the last of a flow list', 'bores: [5 mm]\n', 'bores/1', '10 mm', 'bores: [5 mm, 10 mm]\n'),
  row('adds the first item of an empty list', 'bores: []\n', 'bores/0', '5 mm', 'bores: [5 mm]\n'),
  row('adds the item behind the last of a block list', 'bores:\n  - 5 mm  # motor\nc: 1\n', 'bores/1', '10 mm', 'bores:\n  - 5 mm  # motor\n  - 10 mm\nc: 1\n'),
  row('leaves no gap in a list', 'bores: [5 mm]\n', 'bores/3', '10 mm', undefined),
  row('keeps double quotes', 'size: "Tr8x8(P2)"  # shop\n', 'size', 'Tr10x2', 'size: "Tr10x2"  # shop\n'),
  row('keeps single quotes', "size: 'Tr8x8'\n", 'size', "it's", "size: 'it''s'\n"),
  row('quotes what would read otherwise', 'a: 1\n', 'a', 'b: c', 'a: "b: c"\n'),
  row('quotes in braces what would end there', 'a: { b: 1 }\n', 'a/b', 'x, y', 'a: { b: "x, y" }\n'),
  row('fills an empty value', 'a:\n  b:\n  c: 2\n', 'a/b', '1 mm', 'a:\n  b: 1 mm\n  c: 2\n'),
  row('fills an empty value before a comment', 'a:\n  b:   # unknown\n', 'a/b', '1 mm', 'a:\n  b: 1 mm   # unknown\n'),
  row('fills an empty value with blanks behind it', 'a:\n  b:  \n  c: 2\n', 'a/b', '1 mm', 'a:\n  b: 1 mm\n  c: 2\n'),
  row('fills an empty value in braces', 'a: { b: , c: 2 }\n', 'a/b', '1 mm', 'a: { b: 1 mm, c: 2 }\n'),
  row('fills a key without colon in braces', 'a: { b, c: 2 }\n', 'a/b', '1 mm', 'a: { b: 1 mm, c: 2 }\n'),
  row('takes the place of a null', 'a: ~ # none\n', 'a', '1 mm', 'a: 1 mm # none\n'),
  row('puts a map into an empty value', 'a:\n  b:\n', 'a/b', { c: '1 mm', d: 'x' }, 'a:\n  b: { c: 1 mm, d: x }\n'),
  row('puts an entry into the map of an empty value', 'a:\n  b:   # to do\n', 'a/b/c', '1 mm', 'a:\n  b: { c: 1 mm }   # to do\n'),
  row('adds below the last of a block map', 'a:\n  b: 1\n  c: 2  # two\nd: 3\n', 'a/e', 'x', 'a:\n  b: 1\n  c: 2  # two\n  e: x\nd: 3\n'),
  row('adds below a nested last entry', 'a:\n  b: 1\n  c:\n    d: 2  # deep\nf: 3\n', 'a/e', 'x', 'a:\n  b: 1\n  c:\n    d: 2  # deep\n  e: x\nf: 3\n'),
  row('adds below an empty last entry', 'a:\n  b: 1\n  c:\nf: 3\n', 'a/e', 'x', 'a:\n  b: 1\n  c:\n  e: x\nf: 3\n'),
  row('adds below a block scalar', 'a:\n  notes: |\n    two\n    lines\n\nf: 3\n', 'a/e', 'x', 'a:\n  notes: |\n    two\n    lines\n  e: x\n\nf: 3\n'),
  row('adds below a list', 'a:\n  b:\n    - 1\n    - 2  # last\nf: 3\n', 'a/e', 'x', 'a:\n  b:\n    - 1\n    - 2  # last\n  e: x\nf: 3\n'),
  row('adds behind the last of a flow map', 'a: { b: 1, c: 2 }  # x\n', 'a/d', '3 mm', 'a: { b: 1, c: 2, d: 3 mm }  # x\n'),
  row('adds to a flow map with a comma at its end', 'a: { b: 1, }\n', 'a/d', '3 mm', 'a: { b: 1, d: 3 mm, }\n'),
  row('adds to an empty flow map', 'a: {}\n', 'a/d', '3 mm', 'a: { d: 3 mm }\n'),
  row('adds to a flow map over several lines', 'a: {\n  b: 1 # one\n}\n', 'a/d', '3 mm', 'a: {\n  b: 1, d: 3 mm # one\n}\n'),
  row('makes the maps on the way', 'a:\n  b: 1\n', 'a/c/d', '3 mm', 'a:\n  b: 1\n  c:\n    d: 3 mm\n'),
  row('makes the maps on the way in braces', 'a: { b: 1 }\n', 'a/c/d', '3 mm', 'a: { b: 1, c: { d: 3 mm } }\n'),
  row('indents as the text does', 'a:\n    b: 1\n', 'a/c/d', '3 mm', 'a:\n    b: 1\n    c:\n        d: 3 mm\n'),
  row('adds a list of maps on one line', 'a:\n  b: 1\n', 'a/reduction', [{ kind: 'belt', ratio: '2' }], 'a:\n  b: 1\n  reduction: [{ kind: belt, ratio: 2 }]\n'),
  row('adds to the map of a list item', 'a:\n  - kind: belt\n    ratio: 2\nc: 1\n', 'a/0/efficiency', '95 %', 'a:\n  - kind: belt\n    ratio: 2\n    efficiency: 95 %\nc: 1\n'),
  row('adds to the one-line map of a list item', 'a:\n- kind: belt\nc: 1\n', 'a/0/ratio', '2', 'a:\n- kind: belt\n  ratio: 2\nc: 1\n'),
  row('sets several entries of a map that is there', 'a:\n  b: 1  # one\n  c: 2\n', 'a', { b: '3', d: '4', e: '5' }, 'a:\n  b: 3  # one\n  c: 2\n  d: 4\n  e: 5\n'),
  row('keeps carriage returns', 'a:\r\n  b: 1 mm # x\r\n  c: 2\r\n', 'a/b', '3 mm', 'a:\r\n  b: 3 mm # x\r\n  c: 2\r\n'),
  row('writes carriage returns where the text has them', 'a:\r\n  b: 1\r\nc: 2\r\n', 'a/d/e', 'x', 'a:\r\n  b: 1\r\n  d:\r\n    e: x\r\nc: 2\r\n'),
  row('adds to a last line that does not end', 'a:\n  b: 1', 'a/c', '2', 'a:\n  b: 1\n  c: 2'),
  row('fills an empty value on a last line that does not end', 'a:\n  b:', 'a/b', '2', 'a:\n  b: 2'),
  row('lets an alias give way', 'a: &s 5 mm\nb: *s   # same\n', 'b', '6 mm', 'a: &s 5 mm\nb: 6 mm   # same\n'),
  row('lets an alias in braces give way', 'a: &s 5 mm\nb: { c: *s, d: 1 }\n', 'b/c', '6 mm', 'a: &s 5 mm\nb: { c: 6 mm, d: 1 }\n'),
  row('keeps an anchor', 'a: &s 5 mm\nb: *s\n', 'a', '6 mm', 'a: &s 6 mm\nb: *s\n'),
  row('adds below an alias', 'a:\n  b: &s 1\n  c: *s  # same\nd: 2\n', 'a/e', 'x', 'a:\n  b: &s 1\n  c: *s  # same\n  e: x\nd: 2\n'),
  row('leaves alone what says so already', 'a: 5 mm # five\n', 'a', '5 mm', 'a: 5 mm # five\n'),
  row('replaces text that is not Latin', 'a: Gehäuse µ 😀\nb: 1 mm\n', 'b', '2 µm', 'a: Gehäuse µ 😀\nb: 2 µm\n'),
  row('adds at the top', 'a: 1\n', 'b', '2', 'a: 1\nb: 2\n'),
  row('adds before the end mark of a text', '---\na: 1\n...\n', 'b', '2', '---\na: 1\nb: 2\n...\n'),
  row('quotes a key that needs it', 'a:\n  b: 1\n', 'a/x: y', '2', 'a:\n  b: 1\n  "x: y": 2\n'),
  row('writes into no scalar', 'a: 1\n', 'a/b', '2', undefined),
  row('rewrites no block scalar', 'a: |\n  x\n', 'a', '2', undefined),
  row('puts no scalar in place of a map', 'a:\n  b: 1\n', 'a', '2', undefined),
];

const removing: readonly Row[] = [
  row('takes a line away', 'a:\n  b: 1\n  c: 2\n  d: 3\n', 'a/c', null, 'a:\n  b: 1\n  d: 3\n'),
  row('takes the last line away', 'a:\n  b: 1\n  c: 2\n', 'a/c', null, 'a:\n  b: 1\n'),
  row('takes a last line away that does not end', 'a:\n  b: 1\n  c: 2', 'a/c', null, 'a:\n  b: 1'),
  row('keeps the comment of the line', 'a:\n  b: 1\n  c: 2   # measured\n', 'a/c', null, 'a:\n  b: 1\n  # measured\n'),
  row('keeps the comments around', 'a:\n  # one\n  b: 1\n  # two\n  c: 2\n  # three\n', 'a/b', null, 'a:\n  # one\n  # two\n  c: 2\n  # three\n'),
  row('takes nested lines away and keeps their comments', 'a:\n  b: 1\n  c:\n    d: 2  # deep\n    # deeper\n    e: "# no comment"\n  f: 3\n', 'a/c', null, 'a:\n  b: 1\n  # deep\n  # deeper\n  f: 3\n'),
  row('takes the map along that would be empty', 'a:\n  b: 1\n  c:\n    d: 2\n', 'a/c/d', null, 'a:\n  b: 1\n'),
  row('takes the first of a flow map', 'a: { b: 1, c: 2 }\n', 'a/b', null, 'a: { c: 2 }\n'),
  row('takes the last of a flow map', 'a: { b: 1, c: 2 }\n', 'a/c', null, 'a: { b: 1 }\n'),
  row('takes the only one of a flow map', 'a: { b: 1 }\n', 'a/b', null, 'a: {}\n'),
  row('keeps comments in a flow map over several lines', 'a: {\n  b: 1, # one\n  c: 2, # two\n  d: 3 # three\n}\n', 'a/c', null, 'a: {\n  b: 1, # one\n   # two\n  d: 3 # three\n}\n'),
  row('keeps comments before the last of a flow map', 'a: {\n  b: 1, # one\n  c: 2 # two\n}\n', 'a/c', null, 'a: {\n  b: 1 # one\n   # two\n}\n'),
  row('keeps the dash of a list item', 'a:\n  - kind: belt\n    ratio: 2\n', 'a/0/kind', null, 'a:\n  - ratio: 2\n'),
  row('keeps the dash and the comment of a list item', 'a:\n  - kind: belt # x\n    ratio: 2\n', 'a/0/kind', null, 'a:\n  - # x\n    ratio: 2\n'),
  row('keeps carriage returns', 'a:\r\n  b: 1\r\n  c: 2\r\n', 'a/b', null, 'a:\r\n  c: 2\r\n'),
  row('keeps a comment and its carriage return', 'a:\r\n  b: 1 # x\r\n  c: 2\r\n', 'a/b', null, 'a:\r\n  # x\r\n  c: 2\r\n'),
  row('takes an alias away', 'a: &s 1\nb: *s\nc: 2\n', 'b', null, 'a: &s 1\nc: 2\n'),
  row('takes an empty value away', 'a:\n  b:\n  c: 2\n', 'a/b', null, 'a:\n  c: 2\n'),
  row('leaves what is not there', 'a: 1\nb: 2\n', 'c', null, undefined),
  row('never empties the text', 'a: 1\n', 'a', null, undefined),
];

describe('setting an entry', () => {
  it.each(setting)('$what', ({ before, path, value, after: expected }) => {
    expect(after(before, path, value)).toBe(expected);
  });
  it.each(setting.filter(({ after: expected }) => expected !== undefined))('does nothing more the second time: $what', ({ after: once, path, value }) => {
    expect(after(once ?? '', path, value)).toBe(once);
  });
  it.each(setting.filter(({ after: expected, value }) => expected !== undefined && typeof value === 'string'))('reads back: $what', ({ after: text, path, value }) => {
    const node = nodeAt(readDocument('file:///edit.machine.yaml', text ?? '').root, path.split('/'));
    expect(node?.type === 'scalar' ? node.text : undefined).toBe(value);
  });
});

describe('removing an entry', () => {
  it.each(removing)('$what', ({ before, path, value, after: expected }) => {
    expect(after(before, path, value)).toBe(expected);
  });
  it.each(removing.filter(({ after: expected }) => expected !== undefined))('leaves no trace of it: $what', ({ after: text, path }) => {
    expect(nodeAt(readDocument('file:///edit.machine.yaml', text ?? '').root, path.split('/'))).toBeUndefined();
  });
});

describe('a text as scalar', () => {
  it('reads back the same, alone and in braces', () => {
    const awkward = fc.oneof(fc.string({ maxLength: 12 }), fc.constantFrom('~', '- a', '?', ': x', 'a: b', 'a #b', '"q"', "it's", '%', '@', '---', '...', '{', ']', ' lead', 'tail ', 'µ 1/4 in', 'Tr8x8(P2)', '50 %', ''));
    fc.assert(
      fc.property(awkward, fc.boolean(), (value, inFlow) => {
        // Characters that YAML forbids are not for a description to hold.
        fc.pre(!/[\u0000-\u0008\u000b\u000c\u000e-\u001f\u007f\ufeff]/.test(value));
        const written = scalarText(value, inFlow);
        const text = inFlow ? `k: { a: 1, v: ${written}, z: 2 }\n` : `k:\n  v: ${written}\n  z: 2\n`;
        const node = nodeAt(readDocument('file:///edit.machine.yaml', text).root, ['k', 'v']);
        expect(node?.type === 'scalar' ? node.text : '').toBe(value);
      }),
      { numRuns: 500 },
    );
  });
});

describe('any entry of a text', () => {
  const texts = [
    'a:\n  b: 1 mm   # one\n  c: { d: x, e: [1, 2] }  # two\n  # three\nf:\n  - g: 1\n    h: 2 # four\n  - i # five\nj: "q"\n',
    'a: {b: 1, c: {d: 2}}\nf:\n- 1\n- 2\n',
  ].flatMap((text) => [text, text.replaceAll('\n', '\r\n'), text.trimEnd()]);

  /** Paths of all scalars of a tree. */
  const scalars = (node: SyntaxNode | null | undefined, path: readonly string[] = []): readonly (readonly string[])[] => {
    if (!node) return [];
    if (node.type === 'scalar') return [path];
    return node.type === 'map' ? node.entries.flatMap(({ key, value }) => scalars(value, [...path, key.text])) : node.items.flatMap((item, index) => scalars(item, [...path, String(index)]));
  };
  const shape = (node: SyntaxNode | null | undefined): unknown =>
    !node ? null : node.type === 'scalar' ? node.text : node.type === 'map' ? Object.fromEntries(node.entries.map(({ key, value }) => [key.text, shape(value)])) : node.items.map(shape);
  const comments = (text: string): readonly string[] => text.match(/(?<=\s)#.*/g) ?? [];

  it('can be set without changing any other, or any comment', () => {
    for (const text of texts) {
      const { root } = readDocument('file:///edit.machine.yaml', text);
      for (const path of scalars(root)) {
        const changed = after(text, path.join('/'), '7 mm') ?? '';
        expect(comments(changed)).toEqual(comments(text));
        const now = readDocument('file:///edit.machine.yaml', changed).root;
        for (const other of scalars(root)) {
          expect(shape(nodeAt(now, other)), `${path.join('/')} in ${JSON.stringify(text)}`).toEqual(other.join() === path.join() ? '7 mm' : shape(nodeAt(root, other)));
        }
      }
    }
  });
  it('can be removed without changing any other, or any comment', () => {
    for (const text of texts) {
      const { root } = readDocument('file:///edit.machine.yaml', text);
      for (const path of scalars(root)) {
        const changed = after(text, path.join('/'), null);
        if (changed === undefined) continue;
        expect(comments(changed), JSON.stringify(changed)).toEqual(comments(text));
        const now = readDocument('file:///edit.machine.yaml', changed);
        const known = new Set(readDocument('file:///edit.machine.yaml', text).problems.map(({ code }) => code));
        expect(now.problems.filter(({ code }) => !known.has(code)), JSON.stringify(changed)).toEqual([]);
        for (const other of scalars(root)) if (other.join() !== path.join()) expect(shape(nodeAt(now.root, other)), `${path.join('/')} from ${JSON.stringify(text)} gives ${JSON.stringify(changed)}`).toEqual(shape(nodeAt(root, other)));
      }
    }
  });
});
