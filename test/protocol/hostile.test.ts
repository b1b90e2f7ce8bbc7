import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { codesOf, Editor } from './support/editor.ts';
import { sample } from './support/sample.ts';

const uri = 'file:///heron/heron.machine.yaml';
const textDocument = { uri };

const questions = [
  'textDocument/diagnostic', 'textDocument/hover', 'textDocument/definition', 'textDocument/references', 'textDocument/documentLink',
  'textDocument/documentSymbol', 'textDocument/completion', 'completionItem/resolve', 'textDocument/inlayHint', 'inlayHint/resolve', 'textDocument/codeAction', 'codeAction/resolve', 'axiswright/page',
];

const notices = [
  'textDocument/didOpen', 'textDocument/didChange', 'textDocument/didSave', 'textDocument/didClose', 'workspace/didChangeWatchedFiles',
  'workspace/didChangeConfiguration', 'workspace/didChangeWorkspaceFolders', '$/cancelRequest', '$/setTrace', 'initialized',
];

const nowhere = [
  { line: -1, character: -5 }, { line: 1e9, character: 1e9 }, { line: Number.MAX_SAFE_INTEGER, character: 0 }, { line: 1.5, character: 0 }, { line: '1', character: null },
  { line: 1e300, character: 1 }, {}, null, 7, [],
];

/** Parameters that no client should send, and stale ones that any client may. */
const malformed: readonly unknown[] = [
  undefined, null, [], {}, [1, 2], { textDocument: null }, { textDocument: [] }, { textDocument: { uri: 7 } }, { textDocument: { uri: '%' } }, { textDocument: { uri: '' }, position: { line: 0, character: 0 } },
  { textDocument, position: null }, { textDocument, range: { start: {} } },
  ...nowhere.map((position) => ({ textDocument, position })),
  ...nowhere.map((start) => ({ textDocument, range: { start, end: { line: 0, character: 0 } }, context: { diagnostics: [null, 7, {}, { code: {}, range: start }], only: [null, 7, 'quickfix'] } })),
  { textDocument, range: { start: { line: 0, character: 0 }, end: { line: 0, character: 0 } }, context: null },
  { textDocument, range: { start: { line: 40, character: 0 }, end: { line: 0, character: 0 } }, context: { diagnostics: 'all', only: 'quickfix' } },
  { textDocument, previousResultId: {} }, { data: null }, { data: { uri, revision: {}, code: [], title: null, start: 'x' } }, { data: { uri, revision: 0, code: 'constructor', title: '__proto__', start: -1 } }, { data: { uri }, position: { line: 1e9, character: 3 }, label: {} },
  { id: {} }, { id: '__proto__' },
];

const malformedNotices: readonly unknown[] = [
  ...malformed.filter((params) => typeof params !== 'object' || params === null || !('textDocument' in params)),
  { textDocument: { uri: 'file:///x.machine.yaml' } }, { textDocument: { uri: 'file:///x.machine.yaml', text: 7, languageId: [] } },
  { textDocument, contentChanges: null }, { textDocument, contentChanges: [null] }, { textDocument, contentChanges: [{ text: 7 }] }, { textDocument, contentChanges: [{ range: { start: 1 }, text: 'x' }] },
  { textDocument: { uri: 'file:///not-open.machine.yaml', version: 3 }, contentChanges: [{ text: 'x' }] },
  { changes: [null, {}, { uri: 7, type: 3 }, { uri: 'file:///x.machine.yaml', type: 'gone' }] }, { settings: [] }, { settings: { axiswright: 7 } }, { event: null }, { event: { added: [null, { uri: 7 }], removed: 3 } },
];

describe('malformed and stale parameters', () => {
  let editor: Editor;
  beforeAll(async () => {
    editor = await Editor.start({ initializationOptions: { pages: 'axiswright-page' } });
    await editor.open(uri, sample);
  });
  afterAll(async () => {
    expect(await editor.stop()).toBe(0);
  });

  it.each(questions)('%s is answered, whatever comes with it', async (method) => {
    for (const params of malformed) await editor.request(method, params).catch((error: unknown) => expect(error).toBeInstanceOf(Error));
    expect(await editor.isAlive()).toBe(true);
  });

  it.each(notices)('%s is survived, whatever comes with it, and the open text stays what it was', async (method) => {
    const before = codesOf((await editor.pull(uri)).items);
    // A notice that names the open text rightly is not malformed: it would close it.
    const closes = (params: unknown): boolean => method === 'textDocument/didClose' && JSON.stringify(params ?? null).includes(uri);
    for (const params of malformedNotices.filter((candidate) => !closes(candidate))) await editor.notify(method, params);
    expect(await editor.isAlive()).toBe(true);
    expect(codesOf((await editor.pull(uri)).items)).toEqual(before);
    await expect(editor.request('textDocument/hover', { textDocument, position: editor.position(uri, 'mass: |4 kg') })).resolves.not.toBeNull();
  });

  it('unknown requests are refused, unknown notices passed over', async () => {
    await expect(editor.request('textDocument/nonsense', {})).rejects.toThrow();
    await editor.notify('axiswright/nonsense', {});
    expect(await editor.isAlive()).toBe(true);
  });

  it('bytes that are no message are survived', async () => {
    editor.process.stdin?.write('Content-Length: 7\r\n\r\n{"bad":');
    editor.process.stdin?.write('Content-Length: 4\r\n\r\nnull');
    editor.process.stdin?.write('Content-Length: 2\r\n\r\n[]');
    expect(await editor.isAlive()).toBe(true);
  });

  it('are told in the log in single lines, each once', () => {
    const ours = editor.log.filter((line) => / failed: /.test(line) && !line.startsWith('Notification handler'));
    expect(ours.length).toBeGreaterThan(0);
    for (const line of ours) expect(line).not.toContain('\n');
    expect(new Set(ours).size).toBe(ours.length);
  });
});

const deep = (open: string, close: string): string => `machine: ${open.repeat(10_000)}${close.repeat(10_000)}\n`;
const bomb = `a0: &a0 [x, x, x, x, x, x, x, x, x, x]\n${Array.from({ length: 9 }, (_, i) => `a${i + 1}: &a${i + 1} [${Array(10).fill(`*a${i}`).join(', ')}]\n`).join('')}`;
const conflict = sample.replace('    travel: 300 mm\n', '<<<<<<< ours\n    travel: 300 mm\n=======\n    travel: 310 mm\n>>>>>>> theirs\n');

describe('hostile texts', () => {
  let editor: Editor;
  beforeAll(async () => {
    editor = await Editor.start();
    await editor.open('file:///warm.machine.yaml', sample);
    await editor.pull('file:///warm.machine.yaml');
  });
  afterAll(() => editor.stop());

  it.each([
    ['nested 10,000 deep in brackets', deep('[', ']')],
    ['nested 10,000 deep in braces', deep('{a: ', '}')],
    ['with 10,000 brackets open', `machine: ${'['.repeat(10_000)}`],
    ['indented 2,000 deep', Array.from({ length: 2_000 }, (_, i) => `${' '.repeat(i)}a:\n`).join('')],
    ['an alias bomb', bomb],
    ['of 50,000 lines', `${sample}notes: |\n${'  a line of no meaning\n'.repeat(50_000)}`],
    ['of 50,000 entries', `${sample}${Array.from({ length: 50_000 }, (_, i) => `unknown-${i}: 5 mm\n`).join('')}`],
    ['with conflict markers', conflict],
    ['of one line of 1 MB', `machine: ${'x'.repeat(1_000_000)}\n`],
    ['of zeros', '\0'.repeat(1_000)],
    ['with lone surrogates', 'machine: \ud83d\nname\ude00: 5\n'],
  ])('%s: findings, hover, hints and fixes are answered, and findings are capped', async (name, text) => {
    const hostile = `file:///${encodeURIComponent(name)}.machine.yaml`;
    await editor.open(hostile, text);
    const since = Date.now();
    const { items } = await editor.pull(hostile);
    expect(Date.now() - since).toBeLessThan(5_000); // below 1 s on a machine that does nothing else
    expect(items.length).toBeLessThanOrEqual(300);
    const position = { line: 0, character: 12 };
    const range = { start: { line: 0, character: 0 }, end: { line: 100_000, character: 0 } };
    await editor.request('textDocument/hover', { textDocument: { uri: hostile }, position });
    await editor.request('textDocument/inlayHint', { textDocument: { uri: hostile }, range });
    await editor.request('textDocument/codeAction', { textDocument: { uri: hostile }, range: { start: position, end: position }, context: { diagnostics: items.slice(0, 3) } });
    await editor.request('textDocument/definition', { textDocument: { uri: hostile }, position });
    await editor.close(hostile);
    expect(await editor.isAlive()).toBe(true);
    expect(editor.log).toEqual([]);
  }, 30_000);

  it('conflict markers are told as one finding, and the rest of the file is still checked', async () => {
    await editor.open(uri, conflict);
    const codes = codesOf((await editor.pull(uri)).items);
    expect(codes.filter((code) => code === 'unfinished-merge')).toHaveLength(1);
    expect(codes).toContain('drops-unpowered');
  });
});
