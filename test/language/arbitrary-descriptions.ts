import fc from 'fast-check';

const key = fc.constantFrom('machine', 'travel', 'lift', 'plate', 'end-supports', 'a', 'b2', 'Größe', '"quoted key"', "'it''s'", 'x y', 'tilt', 'moves', 'x_1', 'speed');
const scalar = fc.constantFrom(
  '5 mm', '0.12 ± 0.03', 'Tr8x8(P2)', '"double \\u00b5 \\" quote"', "'single '' quote'", '12:30', 'a text, with a comma', 'µm °C Ω 😀', '-5', '~', '', 'x#y', 'https://example.org/a', '5"', "it's", '"a: b"',
);
const comment = fc.constantFrom('', '', '', ' # a comment', '   #: [ { "');
const flowScalar = fc.constantFrom('5 mm', '0.12 ± 0.03', 'Tr8x8(P2)', '"double, quote"', "'x'", 'µm', '1');

const flow: fc.Arbitrary<string> = fc.letrec<{ value: string; list: string; map: string }>((tie) => ({
  value: fc.oneof({ maxDepth: 3 }, flowScalar, tie('list'), tie('map')),
  list: fc.array(tie('value'), { maxLength: 3 }).map((items) => `[${items.join(', ')}]`),
  map: fc.uniqueArray(fc.tuple(key, tie('value')), { maxLength: 3, selector: ([name]) => name }).map((entries) => `{ ${entries.map(([name, value]) => `${name}: ${value}`).join(', ')} }`),
})).value;

type Block = { readonly kind: 'inline'; readonly text: string } | { readonly kind: 'lines'; readonly lines: readonly string[]; readonly indentless?: boolean };

const nested: fc.Arbitrary<Block> = fc.letrec<{ value: Block; map: Block; list: Block }>((tie) => ({
  value: fc.oneof(
    { maxDepth: 4, depthSize: 'small' },
    fc.tuple(fc.oneof(scalar, flow), comment).map(([text, after]): Block => ({ kind: 'inline', text: text + (text === '' && after !== '' ? after : after) })),
    fc.constantFrom<Block>({ kind: 'lines', lines: ['|', '  block: text', '', '  # not a comment'] }, { kind: 'lines', lines: ['>-', '  folded', '  text'] }, { kind: 'lines', lines: ['"over', '  two lines"'] }, { kind: 'lines', lines: ['{ over: two,', '  lines: 3 }'] }),
    tie('map'),
    tie('list'),
  ),
  map: fc
    .tuple(fc.constantFrom(1, 2, 2, 2, 4), fc.uniqueArray(fc.tuple(key, tie('value'), fc.constantFrom('', '', '', '# a comment', ' ')), { minLength: 1, maxLength: 4, selector: ([name]) => name }))
    .map(([indent, entries]): Block => ({ kind: 'lines', lines: ['', ...mapLines(entries).map((line) => (line === '' ? '' : ' '.repeat(indent) + line))] })),
  list: fc
    .tuple(fc.boolean(), fc.array(fc.oneof(scalar.filter((text) => text !== '' && !text.startsWith('"a:')), flow), { minLength: 1, maxLength: 3 }))
    .map(([indentless, items]): Block => ({ kind: 'lines', lines: ['', ...items.map((item) => `${indentless ? '' : '  '}- ${item}`)] })),
})).value;

function mapLines(entries: readonly (readonly [string, Block, string])[]): string[] {
  return entries.flatMap(([name, value, after]) => {
    const lines = value.kind === 'inline' ? [`${name}:${value.text === '' ? '' : ' '}${value.text}`] : [`${name}:${value.lines[0] === '' ? '' : ` ${value.lines[0] ?? ''}`}`, ...value.lines.slice(1)];
    return after === '' ? lines : [...lines, after];
  });
}

/** Valid descriptions of any structure: maps and lists in lines and in brackets, quotes, blocks of text, comments, blank lines. */
export function descriptions(): fc.Arbitrary<string> {
  return fc
    .tuple(fc.uniqueArray(fc.tuple(key, nested, fc.constantFrom('', '', '# between', ' ')), { minLength: 1, maxLength: 6, selector: ([name]) => name }), fc.constantFrom('\n', '\r\n'), fc.constantFrom('', '# first\n\n'))
    .map(([entries, lineEnd, before]) => (before + mapLines(entries).join('\n') + '\n').replaceAll('\n', lineEnd));
}
