import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { CodeAction, DocumentLink, Hover, InlayHint, Location, TextEdit } from 'vscode-languageserver';
import { example } from '../support/cursor.ts';
import { Editor } from './support/editor.ts';
import { partList, sample, sampleWithList } from './support/sample.ts';

const whole = { start: { line: 0, character: 0 }, end: { line: 1000, character: 0 } };

/** Line ends and characters of two code units change where things stand, and nothing else. */
const spellings = [
  ['as it is', sample],
  ['with CR LF', sample.replaceAll('\n', '\r\n')],
  ['with °µØ😀 before it on the line', sample.replaceAll(/^( {8}material: )(?=steel)/gm, '        notes: "°µØ😀"\n$1').replace('{ design: plain,', '{ notes: "°µØ😀", design: plain,').replace('{ mass: 4 kg }', '{ notes: "°µØ😀", mass: 4 kg }')],
] as const;

describe.each(spellings)('answers on a text %s', (_, text) => {
  const uri = 'file:///heron/heron.machine.yaml';
  let editor: Editor;

  beforeAll(async () => {
    editor = await Editor.start({ initializationOptions: { pages: 'axiswright-page' } });
    await editor.open(uri, text);
  });
  afterAll(() => editor.stop());

  it('hover: a value says what it is, on exactly its own range', async () => {
    const hover = await editor.request<Hover>('textDocument/hover', { textDocument: { uri }, position: editor.position(uri, 'design: plain, material: |bronze') });
    expect(hover.contents).toMatchObject({ kind: 'markdown' });
    expect(hover.range && editor.covered(uri, hover.range)).toBe('bronze');
    const mass = await editor.request<Hover>('textDocument/hover', { textDocument: { uri }, position: editor.position(uri, 'mass: |4 kg') });
    expect(mass.range && editor.covered(uri, mass.range)).toBe('4 kg');
  });

  it('hover: between entries there is nothing', async () => {
    expect(await editor.request('textDocument/hover', { textDocument: { uri }, position: { line: 0, character: 3 } })).toBeNull();
  });

  it('definition and references: the name of a part leads to its key and back', async () => {
    const definition = await editor.request<Location>('textDocument/definition', { textDocument: { uri }, position: editor.position(uri, 'motor: |lift-motor') });
    expect(definition.uri).toBe(uri);
    expect(editor.covered(uri, definition.range)).toBe('lift-motor');
    expect(definition.range.start).toEqual({ line: editor.position(uri, 'parts:').line + 1, character: 2 });
    const ask = (includeDeclaration: boolean): Promise<Location[]> => editor.request('textDocument/references', { textDocument: { uri }, position: definition.range.start, context: { includeDeclaration } });
    const uses = await ask(false);
    expect(uses.map(({ range }) => range.start)).toEqual([editor.position(uri, 'motor: |lift-motor')]);
    expect(await ask(true)).toHaveLength(2);
  });

  it('hints: at the ends of lines, at most 40 characters, with their explanation when asked for', async () => {
    const hints = await editor.request<InlayHint[]>('textDocument/inlayHint', { textDocument: { uri }, range: whole });
    expect(hints.length).toBeGreaterThan(0);
    const lines = text.split(/\r?\n/);
    for (const { position, label, tooltip } of hints) {
      expect(position.character).toBe(lines[position.line]?.length);
      expect(typeof label === 'string' ? [...label].length : 0).toBeLessThanOrEqual(40);
      expect(tooltip).toBeUndefined();
    }
    const [first] = hints;
    const resolved = await editor.request<InlayHint>('inlayHint/resolve', first);
    expect(resolved.tooltip).toMatchObject({ kind: 'markdown' });
    expect(await editor.request('textDocument/inlayHint', { textDocument: { uri }, range: { start: { line: 0, character: 0 }, end: { line: 1, character: 0 } } })).toEqual([]);
  });

  it('fixes: a proven cure whose edit, once made, cures; and the way to the page', async () => {
    const finding = (await editor.pull(uri)).items.find(({ code }) => code === 'drops-unpowered');
    const actions = await editor.request<CodeAction[]>('textDocument/codeAction', { textDocument: { uri }, range: finding?.range, context: { diagnostics: [finding] } });
    expect(actions.find(({ command }) => command !== undefined)?.command).toMatchObject({ command: 'axiswright.explainFinding', arguments: ['drops-unpowered'] });
    const [cure] = actions.filter(({ data }) => data !== undefined) as [CodeAction];
    expect(cure.kind).toBe('quickfix');
    expect(cure.edit).toBeUndefined();
    const edits = editsOf(await editor.request<CodeAction>('codeAction/resolve', cure), uri, 1);
    const other = 'file:///heron/cured.machine.yaml';
    await editor.open(other, text);
    await make(editor, other, edits);
    expect((await editor.pull(other)).items.map(({ code }) => code)).not.toContain('drops-unpowered');
    if (text.includes('\r\n')) expect(editor.textOf(other).replaceAll('\r\n', '')).not.toContain('\n');
    await editor.close(other);
  });

  it('fixes: a slip of spelling, and all of them at once, which leaves nothing to mend the second time', async () => {
    const slips = 'file:///heron/slips.machine.yaml';
    await editor.open(slips, text.replace('travel: 300 mm', 'travel: 300,5 mm').replace('speed: 10 mm/s', 'speed:10 mm/s'));
    const items = (await editor.pull(slips)).items;
    const comma = items.find(({ code }) => code === 'decimal-comma');
    const actions = await editor.request<CodeAction[]>('textDocument/codeAction', { textDocument: { uri: slips }, range: comma?.range, context: { diagnostics: [comma], only: ['quickfix'] } });
    const fix = await editor.request<CodeAction>('codeAction/resolve', actions.find(({ data }) => data !== undefined));
    const [edit] = editsOf(fix, slips, 1);
    expect(edit && [editor.covered(slips, edit.range), edit.newText]).toEqual(['300,5', '300.5']);
    const all = (): Promise<CodeAction[]> => editor.request('textDocument/codeAction', { textDocument: { uri: slips }, range: whole, context: { diagnostics: [], only: ['source.fixAll'] } });
    const [mend] = await all();
    expect(mend?.kind).toBe('source.fixAll.axiswright');
    await make(editor, slips, editsOf(mend, slips, 1));
    expect(editor.textOf(slips)).toBe(text.replace('travel: 300 mm', 'travel: 300.5 mm'));
    expect(await all()).toEqual([]);
    await editor.close(slips);
  });

  it('fixes: of findings that the person does not see there are none, and none of another kind than asked for', async () => {
    const finding = (await editor.pull(uri)).items.find(({ code }) => code === 'drops-unpowered');
    const ask = (context: unknown): Promise<CodeAction[]> => editor.request('textDocument/codeAction', { textDocument: { uri }, range: finding?.range, context });
    expect(await ask({ diagnostics: [] })).toEqual([]);
    expect(await ask({ diagnostics: [finding], only: ['refactor'] })).toEqual([]);
    expect(await ask({ diagnostics: [{ ...finding, code: 'unit-missing' }] })).toEqual([]);
  });
});

describe('fixes of a text that has changed since they were offered', () => {
  const uri = 'file:///heron/heron.machine.yaml';
  let editor: Editor;
  beforeAll(async () => {
    editor = await Editor.start();
  });
  afterAll(() => editor.stop());

  const offered = async (text: string, code: string): Promise<CodeAction> => {
    await editor.open(uri, text);
    const finding = (await editor.pull(uri)).items.find((item) => item.code === code);
    const [action] = await editor.request<CodeAction[]>('textDocument/codeAction', { textDocument: { uri }, range: finding?.range, context: { diagnostics: [finding] } });
    if (!action) throw new Error('nothing was offered');
    return action;
  };

  it('change the right place when lines were added above', async () => {
    const action = await offered(sample.replace('travel: 300 mm', 'travel: 300,5 mm'), 'decimal-comma');
    await editor.edit(uri, { start: { line: 1, character: 0 }, end: { line: 1, character: 0 } }, '# one\n# two\n');
    await make(editor, uri, editsOf(await editor.request<CodeAction>('codeAction/resolve', action), uri, 2));
    expect(editor.textOf(uri)).toContain('travel: 300.5 mm');
  });

  it('are refused when what they cure is gone', async () => {
    const action = await offered(sample.replace('travel: 300 mm', 'travel: 300,5 mm'), 'decimal-comma');
    await editor.replace(uri, 'travel: 300,5 mm', 'travel: 300 mm');
    await expect(editor.request('codeAction/resolve', action)).rejects.toThrow('changed');
  });

  it('are refused when two places could be meant', async () => {
    const slip = sample.replace('travel: 300 mm', 'travel: 300,5 mm');
    const action = await offered(slip, 'decimal-comma');
    await editor.replace(uri, 'travel: 300,5 mm', 'travel: 300,5 mm # same\n    accuracy: 300,5 mm');
    await expect(editor.request('codeAction/resolve', action)).rejects.toThrow('changed');
  });
});

describe('a client of few words', () => {
  const uri = 'file:///heron/heron.machine.yaml';

  it('gets fixes with their edits, for the text without a version', async () => {
    const editor = await Editor.start({ client: { textDocument: { diagnostic: {}, codeAction: { codeActionLiteralSupport: { codeActionKind: { valueSet: [] } } } } } });
    await editor.open(uri, sample.replace('travel: 300 mm', 'travel: 300,5 mm'));
    const finding = (await editor.pull(uri)).items.find(({ code }) => code === 'decimal-comma');
    const [action] = await editor.request<CodeAction[]>('textDocument/codeAction', { textDocument: { uri }, range: finding?.range, context: { diagnostics: [finding] } });
    expect(action?.edit?.changes?.[uri]).toHaveLength(1);
    expect(action).not.toHaveProperty('isPreferred');
    expect(action).not.toHaveProperty('data');
    await editor.stop();
  });

  it('gets hovers and hints as plain text', async () => {
    const editor = await Editor.start({ client: { textDocument: { hover: { contentFormat: ['plaintext'] } } } });
    await editor.open(uri, sample);
    const hover = await editor.request<Hover>('textDocument/hover', { textDocument: { uri }, position: editor.position(uri, '      |screw:') });
    expect(hover.contents).toMatchObject({ kind: 'plaintext' });
    expect((hover.contents as { value: string }).value).not.toMatch(/\*\*|\]\(|data:image|^\|/m);
    const [hint] = await editor.request<InlayHint[]>('textDocument/inlayHint', { textDocument: { uri }, range: whole });
    expect(hint?.tooltip).toMatchObject({ kind: 'plaintext' });
    await editor.stop();
  });
});

describe('links and names across files', () => {
  it('lead to the part list', async () => {
    const editor = await Editor.start();
    const uri = 'file:///heron/heron.machine.yaml';
    const list = 'file:///heron/motors.parts.yaml';
    await editor.open(list, partList);
    await editor.open(uri, sampleWithList);
    const [link] = await editor.request<DocumentLink[]>('textDocument/documentLink', { textDocument: { uri } });
    expect(link).toMatchObject({ target: list });
    expect(link && editor.covered(uri, link.range)).toBe('motors.parts.yaml');
    const definition = await editor.request<Location>('textDocument/definition', { textDocument: { uri }, position: editor.position(uri, 'motor: |lift-motor') });
    expect(definition).toEqual({ uri: list, range: { start: { line: 2, character: 2 }, end: { line: 2, character: 12 } } });
    await editor.stop();
  });
});

describe('pages', () => {
  it('of checks come as Markdown, and of what has none, nothing', async () => {
    const editor = await Editor.start();
    expect(await editor.request('axiswright/page', { id: 'drops-unpowered' })).toMatchObject({ markdown: expect.stringContaining('# ') as string });
    for (const id of ['no-such-check', '../package', '', 7, null]) expect(await editor.request('axiswright/page', { id })).toBeNull();
    await editor.stop();
  });
});

/** The edits of a fix for one text, which must be for its present version. */
function editsOf(action: CodeAction | undefined, uri: string, version: number): readonly TextEdit[] {
  const [change] = action?.edit?.documentChanges ?? [];
  expect(change).toMatchObject({ textDocument: { uri, version } });
  return change && 'edits' in change ? (change.edits as TextEdit[]) : [];
}

/** Makes edits that all refer to the same text. */
async function make(editor: Editor, uri: string, edits: readonly TextEdit[]): Promise<void> {
  const ordered = [...edits].sort((a, b) => b.range.start.line - a.range.start.line || b.range.start.character - a.range.start.character);
  for (const { range, newText } of ordered) await editor.edit(uri, range, newText);
}

it('fixes: one that cures two findings at the same place is offered once, for both', async () => {
  const uri = 'file:///plover/bends.machine.yaml';
  const editor = await Editor.start();
  await editor.open(uri, example('slider-on-shafts/bends.machine.yaml'));
  const shown = (await editor.pull(uri)).items.filter(({ code }) => code === 'guide-sags' || code === 'bushing-tilts');
  expect(shown.map(({ range }) => range.start)).toEqual([shown[0]?.range.start, shown[0]?.range.start]);
  const actions = await editor.request<CodeAction[]>('textDocument/codeAction', { textDocument: { uri }, range: shown[0]?.range, context: { diagnostics: shown } });
  const titles = actions.map(({ title }) => title);
  expect(new Set(titles).size).toBe(titles.length);
  const rails = actions.find(({ title }) => title.startsWith('Support the shafts along their length'));
  expect(rails?.diagnostics?.map(({ code }) => code)).toEqual(shown.map(({ code }) => code));
  await editor.stop();
});
