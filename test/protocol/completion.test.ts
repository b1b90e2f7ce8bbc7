import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { CompletionItem, CompletionList, DocumentSymbol, SymbolInformation, TextEdit } from 'vscode-languageserver';
import { codesOf, Editor } from './support/editor.ts';
import { sample } from './support/sample.ts';

const spellings = [
  ['as it is', (text: string) => text],
  ['with CR LF', (text: string) => text.replaceAll('\n', '\r\n')],
] as const;

describe.each(spellings)('completion in a text %s', (_, spelt) => {
  const uri = 'file:///heron/heron.machine.yaml';
  let editor: Editor;
  beforeAll(async () => {
    editor = await Editor.start({ initializationOptions: { pages: 'axiswright-page' } });
  });
  afterAll(() => editor.stop());

  /** What is offered at the mark in a text. */
  const offered = async (marked: string): Promise<CompletionItem[]> => {
    const text = spelt(marked);
    await editor.open(uri, text.replace('|', ''));
    const list = await editor.request<CompletionList>('textDocument/completion', { textDocument: { uri }, position: editor.positionAt(uri, text.indexOf('|')) });
    expect(list.isIncomplete).toBe(false);
    return list.items;
  };
  /** The text after an item was taken. */
  const taken = async (item: CompletionItem | undefined): Promise<string> => {
    const edit = item?.textEdit as TextEdit;
    expect(edit.range.start.line).toBe(edit.range.end.line);
    await editor.edit(uri, edit.range, edit.newText);
    return editor.textOf(uri);
  };

  it('of keys: those that are not there yet, required ones first, asking on for their values', async () => {
    const items = await offered(sample.replace('        material: steel\n', '        ma|\n'));
    const material = items.find(({ label }) => label === 'material');
    expect(items.map(({ label }) => label)).not.toContain('grade');
    expect(material).toMatchObject({ kind: 10, command: { command: 'editor.action.triggerSuggest' } });
    expect([...items].sort((a, b) => ((a.sortText ?? '') < (b.sortText ?? '') ? -1 : 1))).toEqual(items);
    expect(await taken(material)).toBe(spelt(sample.replace('material: steel', 'material: ')));
  });

  it('of a word of a list, which replaces the one that is there', async () => {
    const items = await offered(sample.replace('grade: rolled', 'grade: ro|lled'));
    expect(await taken(items.find(({ label }) => label === 'ground'))).toBe(spelt(sample.replace('grade: rolled', 'grade: ground')));
  });

  it('of the name of a part, and of a unit behind a number', async () => {
    expect((await offered(sample.replace('motor: lift-motor', 'motor: |'))).map(({ label }) => label)).toEqual(['lift-motor']);
    const units = await offered(sample.replace('travel: 300 mm', 'travel: 300 |'));
    expect(await taken(units.find(({ label }) => label === 'mm'))).toBe(spelt(sample));
  });

  it('of a standard size, with what the axis comes to with it when it is looked at', async () => {
    const items = await offered(sample.replace('size: Tr8x8(P2)', 'size: |'));
    const size = items.find(({ label }) => label === 'Tr12x3');
    expect(size?.documentation).toBeUndefined();
    const resolved = await editor.request<CompletionItem>('completionItem/resolve', size);
    expect(resolved.documentation).toMatchObject({ kind: 'markdown' });
    expect(resolved.detail).not.toBe(size?.detail);
    expect(resolved.detail?.endsWith(` · ${size?.detail}`)).toBe(true);
    await taken(resolved);
    expect(codesOf((await editor.pull(uri)).items)).not.toContain('drops-unpowered'); // tan λ = 3/(π·10.5) = 0.09
  });

  it('of a word that is typed on while the answer is made', async () => {
    const text = spelt(sample.replace('        material: steel\n', '        m\n'));
    await editor.open(uri, text);
    const at = editor.positionAt(uri, text.indexOf('        m\r') < 0 ? text.indexOf('        m\n') + 9 : text.indexOf('        m\r') + 9);
    const asking = editor.request<CompletionList>('textDocument/completion', { textDocument: { uri }, position: at });
    await editor.edit(uri, { start: at, end: at }, 'at');
    const { items } = await asking;
    const material = items.find(({ label }) => label === 'material');
    const edit = material?.textEdit as TextEdit;
    // Told for the text that was asked about: the letter m, and not what was typed since.
    expect(edit.range).toEqual({ start: { line: at.line, character: at.character - 1 }, end: at });
  });

  it('of an item of an older list is left as it is', async () => {
    const [first] = await offered(sample.replace('size: Tr8x8(P2)', 'size: |'));
    await offered(sample.replace('motor: lift-motor', 'motor: |'));
    expect(await editor.request('completionItem/resolve', first)).toEqual(first);
  });

  it('in a comment is nothing', async () => {
    expect(await offered(sample.replace('# Heron, ', '# Heron, |'))).toEqual([]);
  });
});

describe('completion for an editor of few words', () => {
  it('has no tab stops, the whole indent and the documentation at once', async () => {
    const uri = 'file:///heron/heron.machine.yaml';
    const editor = await Editor.start({ client: {} });
    const text = sample.replace(/ {6}screw:\n(?: {8}.*\n)*/, '      scr\n');
    await editor.open(uri, text);
    const { items } = await editor.request<CompletionList>('textDocument/completion', { textDocument: { uri }, position: editor.position(uri, '      scr|') });
    const screw = items.find(({ label }) => label === 'screw');
    expect(screw?.insertTextFormat).toBeUndefined();
    expect(screw?.data).toBeUndefined();
    expect(screw?.documentation).toBeDefined();
    const inserted = (screw?.textEdit as TextEdit).newText;
    expect(inserted).not.toContain('$');
    expect(inserted).toBe('screw:\n        ');
    await editor.stop();
  });
});

describe('the outline', () => {
  const uri = 'file:///heron/heron.machine.yaml';

  it('has the machine, its axes, their drives and elements, each inside of the other', async () => {
    const editor = await Editor.start();
    await editor.open(uri, sample);
    const symbols = await editor.request<DocumentSymbol[]>('textDocument/documentSymbol', { textDocument: { uri } });
    const path = (names: readonly string[]): DocumentSymbol | undefined => names.reduce<{ children?: DocumentSymbol[] } | undefined>((inner, name) => inner?.children?.find((child) => child.name === name), { children: symbols }) as DocumentSymbol | undefined;
    const screw = path(['Heron', 'axes', 'lift', 'drive', 'screw']);
    expect(screw && editor.covered(uri, screw.selectionRange)).toBe('screw');
    const inside = (inner: DocumentSymbol['range'], outer: DocumentSymbol['range']): boolean =>
      [inner.start, inner.end].every(({ line, character }) => (line > outer.start.line || (line === outer.start.line && character >= outer.start.character)) && (line < outer.end.line || (line === outer.end.line && character <= outer.end.character)));
    const check = (symbol: DocumentSymbol): void => {
      expect(symbol.name).not.toBe('');
      expect(inside(symbol.selectionRange, symbol.range), symbol.name).toBe(true);
      for (const child of symbol.children ?? []) {
        expect(inside(child.range, symbol.range), child.name).toBe(true);
        check(child);
      }
    };
    symbols.forEach(check);
    await editor.stop();
  });

  it('is a list for an editor that knows no tree', async () => {
    const editor = await Editor.start({ client: {} });
    await editor.open(uri, sample);
    const symbols = await editor.request<SymbolInformation[]>('textDocument/documentSymbol', { textDocument: { uri } });
    expect(symbols.find(({ name }) => name === 'screw')).toMatchObject({ containerName: 'drive', location: { uri } });
    await editor.stop();
  });
});
