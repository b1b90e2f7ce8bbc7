import { describe, expect, it } from 'vitest';
import { limits } from '../../server/src/language/limits.ts';
import { parseText } from '../../server/src/language/parse-text.ts';
import { quantityProblems } from '../../server/src/language/quantity-problems.ts';
import { readDocument } from '../../server/src/language/read-document.ts';
import { fileSchema } from '../../server/src/language/schema/schema-model.ts';
import { validateStructure } from '../../server/src/language/schema/validate-structure.ts';
import type { SyntaxNode } from '../../server/src/language/syntax-tree.ts';
import { outline } from '../language/outline.ts';

interface Case {
  readonly name: string;
  readonly text: () => string;
  /** Codes of the problems, each once, in the order of the text. */
  readonly codes: readonly string[];
  /** How many values the tree holds at least and at most, aliases in full. */
  readonly values?: readonly [number, number];
  /** The whole tree in one line, where it is short. */
  readonly tree?: string;
}

/** A number generator with a fixed seed (linear congruential, constants of Numerical Recipes), so that "random" bytes are the same each time. */
function generator(seed: number): () => number {
  let state = seed;
  return () => (state = (Math.imul(state, 1664525) + 1013904223) >>> 0) / 2 ** 32;
}

const repeat = (text: string, count: number): string => text.repeat(count);
const numbered = (count: number, line: (index: number) => string): string => Array.from({ length: count }, (_, index) => line(index)).join('');
const indented = (levels: number): string => numbered(levels, (index) => `${' '.repeat(index)}a:\n`);

/**
 * The texts of the library report, section 5 ("behaviour and limits"), rebuilt from their descriptions, and more of their kind.
 * Each must give a finding instead of a hang or a crash; what is expected is written by hand from our limits.
 */
const cases: readonly Case[] = [
  // Deep nesting: 64 levels are read.
  { name: '600 open brackets', text: () => `a: ${repeat('[', 600)}`, codes: ['too-deep'], values: [1, 70] },
  { name: '10,000 open brackets', text: () => `a: ${repeat('[', 10_000)}`, codes: ['too-deep'], values: [1, 70] },
  { name: '10,000 closed brackets', text: () => `a: ${repeat('[', 10_000)}${repeat(']', 10_000)}`, codes: ['too-deep'], values: [1, 70] },
  { name: '1,000,000 open brackets', text: () => `a: ${repeat('[', 1_000_000)}`, codes: ['too-deep'], values: [1, 70] },
  { name: '10,000 open braces', text: () => `a: ${repeat('{a: ', 10_000)}`, codes: ['too-deep'], values: [1, 140] },
  { name: '10,000 closed braces', text: () => `a: ${repeat('{a: ', 10_000)}1${repeat('}', 10_000)}`, codes: ['too-deep'], values: [1, 140] },
  { name: 'brackets and braces by turns', text: () => `a: ${repeat('[{a: ', 5_000)}`, codes: ['too-deep'], values: [1, 140] },
  { name: '10,000 dashes on a line', text: () => `a:\n  ${repeat('- ', 10_000)}`, codes: ['too-deep'], values: [1, 70] },
  { name: '10,000 dashes at the outset', text: () => repeat('- ', 10_000), codes: ['too-deep'], values: [1, 70] },
  { name: '400 question marks, which hang the conversion', text: () => repeat('? ', 400), codes: ['too-deep'], values: [0, 70] },
  { name: '10,000 question marks', text: () => repeat('? ', 10_000), codes: ['too-deep'], values: [0, 70] },
  { name: 'maps as keys of maps, 300 levels', text: () => `a: ${repeat('{', 300)}a${repeat(': 1}', 300)}`, codes: ['too-deep'], values: [1, 70] },
  { name: 'maps as keys of maps, 10 levels', text: () => `a: ${repeat('{', 10)}a${repeat(': 1}', 10)}`, codes: ['key-not-a-word'], tree: '{a: {}}' },
  { name: '1,500 indented maps', text: () => indented(1_500), codes: ['too-deep'], values: [1, 140] },
  { name: '500 indented lists', text: () => `a:\n${numbered(500, (index) => `${' '.repeat(index + 1)}-\n`)}`, codes: ['too-deep'], values: [1, 70] },
  { name: '64 indented maps, which are read', text: () => indented(64), codes: [], values: [64 * 2, 64 * 2] },
  { name: '67 indented maps', text: () => indented(67), codes: ['too-deep'], values: [64, 64 * 2 + 2] },
  { name: '100,000 colons with blanks', text: () => repeat(': ', 100_000), codes: ['key-not-a-word', 'too-deep'], values: [0, 140] },
  { name: '100,000 colons', text: () => repeat(':', 100_000), codes: ['key-not-a-word'], values: [1, 3] },

  // Aliases: 1,000 uses are read, and 200,000 values with what they repeat.
  { name: 'an alias without anchor', text: () => 'a: *nope', codes: ['anchor-unknown'], tree: '{a: null}' },
  { name: '101 honest uses of one anchor', text: () => `base: &b { mass: 5 kg }\n${numbered(101, (index) => `k${index}: *b\n`)}`, codes: [], values: [102 * 3, 102 * 5] },
  { name: '1,001 uses of one anchor', text: () => `base: &b 5 kg\n${numbered(1_001, (index) => `k${index}: *b\n`)}`, codes: ['too-many-aliases'], values: [1, 2_100] },
  { name: 'an alias bomb of nine levels', text: () => `l0: &l0 [x]\n${numbered(9, (index) => `l${index + 1}: &l${index + 1} [${repeat(`*l${index}, `, 9)}]\n`)}`, codes: ['too-many-entries'], values: [1, limits.nodes] },
  { name: 'a wide alias bomb', text: () => `a: &a [${repeat('x, ', 1_000)}]\nb: [${repeat('*a, ', 999)}]`, codes: ['too-many-entries'], values: [1, limits.nodes] },
  { name: '10,000 anchors and aliases', text: () => numbered(10_000, (index) => `k${index}: &a${index} 1\nj${index}: *a${index}\n`), codes: ['too-many-aliases'], values: [20_000, 45_000] },
  { name: 'an alias inside its own list', text: () => 'a: &a [1, *a]', codes: ['alias-inside-itself'], tree: '{a: [1, null]}' },
  { name: 'an alias of what is around it', text: () => 'a: &a { b: &b { c: *a } }', codes: ['alias-inside-itself'], tree: '{a: {b: {c: null}}}' },
  { name: 'an alias as key', text: () => 'a: &a word\n*a : 2', codes: ['key-not-a-word'], tree: '{a: word}' },
  { name: 'an anchor that is set twice', text: () => 'a: &x 1\nb: *x\nc: &x 2\nd: *x', codes: [], tree: '{a: 1, b: 1, c: 2, d: 2}' },
  { name: 'a merge key', text: () => 'a: &a { b: 1 }\nc:\n  <<: *a\n  d: 2', codes: ['merge-key'], tree: '{a: {b: 1}, c: {d: 2}}' },
  { name: 'an alias that makes the text too deep', text: () => `a: &a ${repeat('[', 40)}${repeat(']', 40)}\nb: ${repeat('[', 40)}*a${repeat(']', 40)}`, codes: ['too-deep'], values: [40, 90] },

  // Huge texts.
  { name: 'more than 2,000,000 characters', text: () => `a: ${repeat('x', 2_000_000)}`, codes: ['text-too-long'], tree: 'null' },
  { name: 'more than 50,000 lines', text: () => repeat('# x\n', 50_001), codes: ['text-too-long'], tree: 'null' },
  { name: '1,000,000 line ends', text: () => repeat('\n', 1_000_000), codes: ['text-too-long'], tree: 'null' },
  { name: 'a plain text of 1.9 million characters', text: () => `a: ${repeat('x', 1_900_000)}\nb: 2`, codes: [], values: [4, 5] },
  { name: 'the same in double quotes', text: () => `a: "${repeat('x', 1_900_000)}"\nb: 2`, codes: [], values: [4, 5] },
  { name: 'a quote of 1.9 million characters, never closed', text: () => `a: "${repeat('x', 1_900_000)}`, codes: ['quote-open'], values: [2, 3] },
  { name: 'the same over 45,000 lines', text: () => `a: "${repeat('  x y z w\n', 45_000)}`, codes: ['quote-open'], values: [2, 3] },
  { name: 'a block of text of 1.9 million characters', text: () => `a: |\n${repeat(`  ${repeat('x', 100)}\n`, 18_000)}b: 2`, codes: [], values: [4, 5] },
  { name: 'a key of 1,000,000 characters', text: () => `${repeat('k', 1_000_000)}: 1\nb: 2`, codes: ['key-not-a-word'], values: [2, 5] },
  { name: '49,000 line ends', text: () => `a: 1\n${repeat('\n', 49_000)}b: 2`, codes: [], tree: '{a: 1, b: 2}' },
  { name: '49,000 comment lines', text: () => `a: 1\n${repeat('# x\n', 49_000)}b: 2`, codes: [], tree: '{a: 1, b: 2}' },
  { name: 'a list of 100,000 in brackets', text: () => `a: [${repeat('1,', 100_000)}]`, codes: [], values: [100_000, 100_005] },
  { name: 'a list of 49,000 lines', text: () => `a:\n${repeat('- 1\n', 49_000)}`, codes: [], values: [49_000, 49_005] },
  { name: 'a list of 400,000 in brackets', text: () => `a: [${repeat('1,', 400_000)}]`, codes: ['too-many-entries'], values: [0, limits.nodes] },
  { name: '20,000 keys in braces', text: () => `a: {${numbered(20_000, (index) => `k${index}: 1, `)}}`, codes: [], values: [40_000, 40_005] },
  { name: '49,000 different keys', text: () => numbered(49_000, (index) => `k${index}: 1\n`), codes: [], values: [98_000, 98_002] },
  { name: '49,000 times the same key', text: () => repeat('a: 1\n', 49_000), codes: ['key-twice', 'more-problems'], values: [90_000, 98_001] },
  { name: '20,000 times the same key in braces', text: () => `a: {${repeat('b: 1, ', 20_000)}}`, codes: ['key-twice', 'more-problems'], values: [40_000, 40_005] },
  { name: '24,000 documents', text: () => repeat('---\na: 1\n', 24_000), codes: ['several-documents'], tree: '{a: 1}' },
  { name: '5,000 lines with two keys', text: () => numbered(5_000, (index) => `a${index}: b: c\n`), codes: ['two-keys-on-one-line', 'more-problems'], values: [4_000, 25_001] },
  { name: '33,000 errors on one line', text: () => `a: ${repeat('"x" ', 33_000)}`, codes: ['text-not-understood'], values: [1, 33_005] },
  { name: '33,000 closing brackets on one line', text: () => `a: ${repeat(']} ', 33_000)}\nb: 2`, codes: ['bracket-stray'], tree: '{a: null, b: 2}' },
  { name: '49,000 words without colon', text: () => numbered(49_000, (index) => `w${index}\n`), codes: ['colon-missing', 'more-problems'], values: [1_000, 100_001] },
  { name: '49,000 words without colon below a key', text: () => `a:\n${repeat('  word\n', 49_000)}  b: 1`, codes: ['text-not-understood'], values: [2, 100_010] },
  { name: '49,000 open quotes', text: () => numbered(49_000, (index) => `k${index}: "x\n`), codes: ['quote-open', 'more-problems'], values: [2_000, 100_001] },
  { name: '49,000 open braces', text: () => numbered(49_000, (index) => `k${index}: { a: 1\n`), codes: ['bracket-open', 'more-problems'], values: [4_000, limits.nodes] },
  { name: '40,000 open quotes inside one entry', text: () => `a:\n  b:\n    c:\n${numbered(40_000, (index) => `      k${index}: "x\n`)}`, codes: ['quote-open'], values: [0, 200_000] },
  { name: '1,800,000 blanks before a key', text: () => `${repeat(' ', 1_800_000)}a: 1`, codes: [], tree: '{a: 1}' },
  { name: '1,000,000 tabs before a key', text: () => `b: 1\n${repeat('\t', 1_000_000)}a: 1`, codes: ['tab-as-indent'], values: [1, 6] },
  { name: 'a key with 1,000,000 blanks and no colon', text: () => `a${repeat(' ', 1_000_000)}b\nc: 1`, codes: ['text-not-understood'], values: [1, 6] },
  { name: '300,000 escapes', text: () => `a: "${repeat('\\u0041', 300_000)}"`, codes: [], values: [3, 3] },
  { name: '100,000 tags', text: () => `a: ${repeat('!x ', 100_000)}`, codes: ['tag-used'], values: [1, 4] },
  { name: '100,000 anchors on one value', text: () => `a: ${repeat('&x ', 100_000)}`, codes: ['text-not-understood'], values: [1, 4] },
  { name: '98,000 random bytes', text: () => numbered(98_000, (() => { const next = generator(7); return () => String.fromCharCode(Math.floor(next() * 256)); })()), codes: ['text-not-understood', 'invisible-character', 'lone-carriage-return'] },
  { name: '5,000 unfinished merges', text: () => numbered(5_000, (index) => `<<<<<<< a\nk${index}: 1\n=======\nk${index}: 2\n>>>>>>> b\n`), codes: ['unfinished-merge'], values: [10_000, 10_001] },

  // Names that mean something to the language we are written in.
  { name: 'keys that objects are born with', text: () => '__proto__: 1\nconstructor: { prototype: 2 }\ntoString: 3\nhasOwnProperty: 4', codes: [], tree: '{__proto__: 1, constructor: {prototype: 2}, toString: 3, hasOwnProperty: 4}' },
  { name: 'the same key twice among them', text: () => '__proto__: 1\n__proto__: 2', codes: ['key-twice'], tree: '{__proto__: 1, __proto__: 2}' },

  // Tags.
  ...['!!js/function', '!!binary', '!!set', '!!omap', '!!timestamp', '!!float', '!!python/object', '!include', '!'].map((tag) => ({
    name: `the tag ${tag}`, text: () => `a: ${tag} abc\nb: 2`, codes: ['tag-used'], tree: '{a: abc, b: 2}',
  })),

  // Directives: a version that changes meanings is a finding, and changes nothing.
  { name: 'YAML 1.1', text: () => '%YAML 1.1\n---\na: yes\nb: 1:20\nc: 010', codes: ['yaml-version'], tree: '{a: yes, b: 1:20, c: 010}' },
  { name: 'YAML 1.3', text: () => '%YAML 1.3\n---\na: 1', codes: ['yaml-version'], tree: '{a: 1}' },
  { name: 'YAML 1.2, which is ours', text: () => '%YAML 1.2\n---\na: 1\n...\n', codes: [], tree: '{a: 1}' },
  { name: 'a tag directive', text: () => '%TAG ! tag:example.org,2000:\n---\na: 1', codes: ['directive-unknown'], tree: '{a: 1}' },
  { name: 'an unknown directive', text: () => '%FOO bar\n---\na: 1', codes: ['directive-unknown'], tree: '{a: 1}' },

  // Characters.
  { name: 'a NUL', text: () => 'a: 5\0 mm', codes: ['invisible-character'], tree: '{a: 5  mm}' },
  { name: 'a bell', text: () => 'a: 5\u0007mm', codes: ['invisible-character'], tree: '{a: 5 mm}' },
  { name: 'half of a surrogate pair', text: () => 'a: x\ud83dy', codes: ['invisible-character'], tree: '{a: x y}' },
  { name: 'a whole surrogate pair', text: () => 'a: x😀y\nb: 2', codes: [], tree: '{a: x😀y, b: 2}' },
  { name: 'a byte order mark in the middle', text: () => 'a: x\ufeffy', codes: ['invisible-character'], tree: '{a: x y}' },
  { name: 'a mark that turns the reading direction', text: () => 'a: 5 \u202emm', codes: ['invisible-character'], tree: '{a: 5  mm}' },
  { name: 'a blank of no width in a key', text: () => 'tra\u200bvel: 5 mm', codes: ['invisible-character'], tree: '{tra vel: 5 mm}' },
  { name: 'no-break spaces as indentation', text: () => 'a:\n\u00a0\u00a0b: 1', codes: ['invisible-character'], tree: '{a: {b: 1}}' },
  { name: 'a no-break space in a quantity', text: () => 'a: 5\u00a0mm', codes: [], tree: '{a: 5\u00a0mm}' },
  { name: 'other line separators', text: () => 'a: 1\u2028b: 2', codes: ['invisible-character'], tree: '{a: 1, b: 2}' },

  // Merges.
  { name: 'an unfinished merge', text: () => 'z: 1\n<<<<<<< ours\na: 1\n=======\na: 2\nb: 3\n>>>>>>> theirs\nc: 4', codes: ['unfinished-merge'], tree: '{z: 1, a: 1, c: 4}' },
  { name: 'an unfinished merge of three', text: () => '<<<<<<< ours\na: 1\n||||||| base\na: 0\n=======\na: 2\n>>>>>>> theirs\nc: 4', codes: ['unfinished-merge'], tree: '{a: 1, c: 4}' },
  { name: 'a mark of a merge without its end', text: () => '<<<<<<< ours\na: 1\nc: 4', codes: ['unfinished-merge'], tree: '{a: 1, c: 4}' },
  { name: 'a line of equals signs in a text', text: () => 'a: |\n  title\n  =======\nb: 2', codes: [], tree: '{a: |title/=======/, b: 2}' },
];

/** Values in a tree, aliases in full; a value met twice is counted from what was counted before. */
function countValues(root: SyntaxNode | null): number {
  const counted = new Map<SyntaxNode, number>();
  const count = (node: SyntaxNode | null): number => {
    if (node === null) return 0;
    const known = counted.get(node);
    if (known !== undefined) return known;
    let sum = 1;
    if (node.type === 'list') for (const item of node.items) sum += count(item);
    if (node.type === 'map') for (const entry of node.entries) sum += 1 + count(entry.value);
    counted.set(node, sum);
    return sum;
  };
  return count(root);
}

describe('hostile texts', { timeout: 30_000 }, () => {
  it('are at least the 75 of the report', () => {
    expect(cases.length).toBeGreaterThanOrEqual(75);
  });

  it.each(cases)('$name', ({ text: make, codes, tree, values }) => {
    const text = make();
    const { root, problems } = parseText(text);
    expect([...new Set(problems.map((problem) => problem.code))]).toEqual(codes);
    expect(problems.length).toBeLessThanOrEqual(limits.problems + 1);
    if (tree !== undefined) expect(outline(root)).toBe(tree);
    if (values) {
      expect(countValues(root)).toBeGreaterThanOrEqual(values[0]);
      expect(countValues(root)).toBeLessThanOrEqual(values[1]);
    }
    for (const problem of problems) {
      expect(problem.span.start).toBeGreaterThanOrEqual(0);
      expect(problem.span.end).toBeLessThanOrEqual(text.length);
    }
    // The rest of the language room must bear the tree as well.
    expect(() => [...validateStructure(root, 'machine', text), ...quantityProblems(root, fileSchema('machine'), text)]).not.toThrow();
  });
});

describe('numbers that YAML would take for something else', () => {
  const microsteps = (value: string): readonly string[] =>
    readDocument('file:///a.machine.yaml', `description-version: 1\nmachine: x\naxes: {}\ncontroller: { microsteps: ${value} }`).problems.map((problem) => problem.code);

  it.each([
    ['16', []],
    ['1e999999999', ['value-of-wrong-type']],
    ['.inf', ['value-of-wrong-type']],
    ['.nan', ['value-of-wrong-type']],
    ['0o20', ['value-of-wrong-type']],
    ['0x10', ['value-of-wrong-type']],
    ['12:30', ['value-of-wrong-type']],
    ['1_6', ['value-of-wrong-type']],
    ['yes', ['value-of-wrong-type']],
    ['constructor', ['value-of-wrong-type']],
    ['16.5', ['value-of-wrong-type']],
    // Decimal in YAML 1.2, and here.
    ['016', []],
    ['999', ['value-out-of-bounds']],
  ])('microsteps: %s', (value, codes) => {
    expect(microsteps(value)).toEqual(codes);
  });

  it('a quantity of 100,000 characters', () => {
    const text = `description-version: 1\nmachine: x\naxes: { lift: { direction: vertical, travel: 5 ${'m'.repeat(100_000)} } }`;
    expect(readDocument('file:///a.machine.yaml', text).problems.map((problem) => problem.code)).toEqual(['quantity-too-long']);
  });
});
