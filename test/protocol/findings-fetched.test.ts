import { cp, mkdir, mkdtemp, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { builtServer } from './support/built-server.ts';
import { codesOf, Editor, sleep, until } from './support/editor.ts';
import { sample } from './support/sample.ts';

const uri = 'file:///heron/heron.machine.yaml';
let editor: Editor;

describe('findings that the client fetches', () => {
  beforeEach(async () => {
    editor = await Editor.start({ client: 'pull', initializationOptions: { pages: 'axiswright-page' } });
    await editor.open(uri, sample);
  });
  afterEach(() => editor.stop());

  it('stand on the smallest stretch that shows them, with code, page, source and related places', async () => {
    const drops = (await editor.pull(uri)).items.find(({ code }) => code === 'drops-unpowered');
    expect(drops).toMatchObject({ severity: 1, source: 'axiswright', codeDescription: { href: 'axiswright-page:/drops-unpowered.md' } });
    expect(typeof drops?.message).toBe('string'); // never Markdown
    expect(drops?.message).toContain('Caution: ');
    expect(drops && editor.covered(uri, drops.range)).toBe('Tr8x8(P2)');
    expect(drops?.relatedInformation?.length).toBeGreaterThan(0);
    expect(drops?.relatedInformation?.length).toBeLessThanOrEqual(4);
    for (const { location } of drops?.relatedInformation ?? []) expect(location.uri).toBe(uri);
  });

  it('are never pushed as well', async () => {
    await editor.pull(uri);
    await editor.replace(uri, 'travel: 300 mm', 'travel: 300');
    await editor.pull(uri);
    await sleep(600);
    expect(editor.published).toEqual([]);
  });

  it('of a slip appear at once and vanish at once', async () => {
    const before = codesOf((await editor.pull(uri)).items);
    await editor.replace(uri, 'travel: 300 mm', 'travel: 300');
    const slip = (await editor.pull(uri)).items.find(({ code }) => code === 'unit-missing');
    expect(slip && editor.covered(uri, slip.range)).toBe('300');
    await editor.replace(uri, 'travel: 300', 'travel: 300 mm');
    expect(codesOf((await editor.pull(uri)).items)).toEqual(before);
  });

  it('of engineering that are new on the line being typed wait for a pause, then the client is asked to fetch; cured ones are gone at once', async () => {
    await editor.pull(uri);
    await editor.replace(uri, 'layer-height: 0.24 mm', 'layer-height: 0.25 mm');
    expect(codesOf((await editor.pull(uri)).items)).not.toContain('layer-height-off-full-steps');
    expect(editor.heard).not.toContain('workspace/diagnostic/refresh');
    await until(() => editor.heard.includes('workspace/diagnostic/refresh'), () => 'being asked to fetch again', 3_000);
    expect(codesOf((await editor.pull(uri)).items)).toContain('layer-height-off-full-steps');
    await editor.replace(uri, 'layer-height: 0.25 mm', 'layer-height: 0.24 mm');
    expect(codesOf((await editor.pull(uri)).items)).not.toContain('layer-height-off-full-steps');
  });

  it('of engineering on another line than the one being typed appear at once', async () => {
    await editor.replace(uri, '        size: Tr8x8(P2)', '        size: Tr8x1.5'); // tan λ = 1.5/(π·7.25) = 0.07: holds
    expect(codesOf((await editor.pull(uri)).items)).not.toContain('drops-unpowered');
    await editor.replace(uri, 'step-angle: 1.8°', 'step-angle: 1.8°  # measured'); // another line is typed now
    const at = editor.position(uri, '|Tr8x1.5');
    await editor.notify('textDocument/didChange', {
      textDocument: { uri, version: 10 },
      contentChanges: [{ range: { start: at, end: { ...at, character: at.character + 'Tr8x1.5'.length } }, text: 'Tr8x8(P2)' }, { range: { start: { line: 0, character: 0 }, end: { line: 0, character: 0 } }, text: '#' }],
    });
    await editor.notify('textDocument/didChange', { textDocument: { uri, version: 11 }, contentChanges: [{ range: { start: { line: 0, character: 0 }, end: { line: 0, character: 0 } }, text: '#' }] });
    expect(codesOf((await editor.pull(uri)).items)).toContain('drops-unpowered');
  });

  it('that have not changed are not sent again', async () => {
    const first = await editor.pull(uri);
    expect(first.kind).toBe('full');
    expect(await editor.pull(uri, first.resultId)).toEqual({ kind: 'unchanged', resultId: first.resultId, items: [] });
    await editor.edit(uri, { start: { line: 0, character: 0 }, end: { line: 0, character: 0 } }, '# one line more\n');
    const moved = await editor.pull(uri, first.resultId);
    expect(moved.kind).toBe('full');
    expect(codesOf(moved.items)).toEqual(codesOf(first.items));
    expect(moved.items[0]?.range.start.line).toBe((first.items[0]?.range.start.line ?? 0) + 1);
  });

  it('of a text that is not open, or none of ours, are none', async () => {
    expect((await editor.pull('file:///elsewhere.machine.yaml')).items).toEqual([]);
    await editor.open('file:///notes.txt', 'mass: 5', 'plaintext');
    expect((await editor.pull('file:///notes.txt')).items).toEqual([]);
  });
});

describe('a client that fetches but cannot be asked to fetch again', () => {
  it('is told everything at once', async () => {
    editor = await Editor.start({ client: { textDocument: { diagnostic: {} } } });
    await editor.open(uri, sample);
    await editor.pull(uri);
    await editor.replace(uri, 'layer-height: 0.24 mm', 'layer-height: 0.25 mm');
    expect(codesOf((await editor.pull(uri)).items)).toContain('layer-height-off-full-steps');
    await editor.stop();
  });

  it('is told no more than it says that it understands', async () => {
    editor = await Editor.start({ client: { textDocument: { diagnostic: {} } }, initializationOptions: { pages: 'axiswright-page' } });
    await editor.open(uri, sample);
    const { items } = await editor.pull(uri);
    expect(items.length).toBeGreaterThan(0);
    for (const item of items) expect(Object.keys(item).filter((key) => ['codeDescription', 'relatedInformation', 'tags', 'data'].includes(key))).toEqual([]);
    await editor.stop();
  });
});

describe('the page of a check', () => {
  it('is a file beside the server for an editor that knows no pages of ours, and only when it is there', async () => {
    const top = await mkdtemp(join(tmpdir(), 'axiswright-pages-'));
    await cp(await builtServer(), join(top, 'dist'), { recursive: true });
    const page = join(top, 'server', 'docs', 'checks', 'drops-unpowered.md');
    await mkdir(dirname(page), { recursive: true });
    await writeFile(page, '# Axis drops\n');
    editor = await Editor.start({ dist: join(top, 'dist') });
    await editor.open(uri, sample);
    const { items } = await editor.pull(uri);
    expect(items.length).toBeGreaterThan(1);
    for (const { code, codeDescription } of items) expect(codeDescription).toEqual(code === 'drops-unpowered' ? { href: pathToFileURL(page).href } : undefined);
    await editor.stop();
    await rm(top, { recursive: true });
  });
});

describe('settings', () => {
  it('come from the client for each file; findings can be off, hints can be off', async () => {
    editor = await Editor.start({ settings: (scope) => (scope === uri ? { findings: { when: 'off' }, inlayHints: { enabled: false } } : null) });
    await editor.open(uri, sample);
    await editor.open('file:///other/heron.machine.yaml', sample);
    expect((await editor.pull(uri)).items).toEqual([]);
    expect((await editor.pull('file:///other/heron.machine.yaml')).items.length).toBeGreaterThan(0);
    const range = { start: { line: 0, character: 0 }, end: { line: 100, character: 0 } };
    expect(await editor.request('textDocument/inlayHint', { textDocument: { uri }, range })).toEqual([]);
    expect(await editor.request<unknown[]>('textDocument/inlayHint', { textDocument: { uri: 'file:///other/heron.machine.yaml' }, range })).not.toEqual([]);
    await editor.stop();
  });

  it('take effect when they change', async () => {
    let when = 'typing';
    editor = await Editor.start({ settings: () => ({ findings: { when } }) });
    await editor.open(uri, sample);
    expect((await editor.pull(uri)).items.length).toBeGreaterThan(0);
    when = 'off';
    await editor.notify('workspace/didChangeConfiguration', { settings: null });
    await until(() => editor.heard.includes('workspace/diagnostic/refresh'), () => 'being asked to fetch again');
    expect((await editor.pull(uri)).items).toEqual([]);
    await editor.stop();
  });

  it('that switch hints off or on ask the client to fetch them again', async () => {
    let enabled = true;
    editor = await Editor.start({ settings: () => ({ inlayHints: { enabled } }) });
    await editor.open(uri, sample);
    const hints = (): Promise<readonly unknown[]> => editor.request('textDocument/inlayHint', { textDocument: { uri }, range: { start: { line: 0, character: 0 }, end: { line: 100, character: 0 } } });
    const refreshes = (): number => editor.heard.filter((method) => method === 'workspace/inlayHint/refresh').length;
    for (const [count, wanted] of [[1, false], [2, true]] as const) {
      const before = await hints();
      enabled = wanted;
      await editor.notify('workspace/didChangeConfiguration', { settings: null });
      await until(() => refreshes() === count, () => 'being asked to fetch hints again');
      expect((await hints()).length > 0).toBe(wanted);
      expect(before.length > 0).toBe(!wanted);
    }
    expect(editor.heard).not.toContain('workspace/diagnostic/refresh');
    await editor.stop();
  });

  it('can hold findings back until the file is saved', async () => {
    editor = await Editor.start({ settings: () => ({ findings: { when: 'save' } }) });
    await editor.open(uri, sample);
    const first = await editor.pull(uri);
    await editor.replace(uri, 'travel: 300 mm', 'travel: 300');
    expect((await editor.pull(uri, first.resultId)).kind).toBe('unchanged');
    await editor.save(uri);
    await until(() => editor.heard.includes('workspace/diagnostic/refresh'), () => 'being asked to fetch again');
    expect(codesOf((await editor.pull(uri, first.resultId)).items)).toContain('unit-missing');
    await editor.stop();
  });

  it('that are malformed are the defaults', async () => {
    editor = await Editor.start({ settings: () => ({ findings: 7, inlayHints: { enabled: 'yes' } }) });
    await editor.open(uri, sample);
    expect((await editor.pull(uri)).items.length).toBeGreaterThan(0);
    await editor.stop();
  });
});
