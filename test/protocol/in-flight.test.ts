import { existsSync, readFileSync } from 'node:fs';
import { CancellationTokenSource } from 'vscode-jsonrpc/node';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import type { Hover, InlayHint } from 'vscode-languageserver';
import { codesOf, Editor } from './support/editor.ts';
import { sample } from './support/sample.ts';

const uri = 'file:///heron/heron.machine.yaml';
const textDocument = { uri };
const whole = { start: { line: 0, character: 0 }, end: { line: 1000, character: 0 } };
let editor: Editor;

beforeEach(async () => {
  editor = await Editor.start();
  await editor.open(uri, sample);
});
afterEach(() => editor.stop());

describe('edits while requests are in flight', () => {
  it('findings asked for at every keystroke are all answered, the last of them for the last text', async () => {
    const asked = [];
    for (const [before, after] of [['travel: 300 mm', 'travel: 300 m'], ['travel: 300 m\n', 'travel: 300 \n'], ['travel: 300 \n', 'travel: 300\n']] as const) {
      await editor.replace(uri, before, after);
      asked.push(editor.pull(uri));
    }
    const reports = await Promise.all(asked);
    expect(codesOf(reports.at(-1)?.items ?? [])).toContain('unit-missing');
  });

  it('a hover whose text has changed meanwhile is empty, not misplaced', async () => {
    const position = editor.position(uri, 'mass: |4 kg');
    const asked = editor.request<Hover | null>('textDocument/hover', { textDocument, position });
    await editor.edit(uri, { start: { line: 0, character: 0 }, end: { line: 0, character: 0 } }, '# a line\n# and another\n');
    const hover = await asked;
    if (hover?.range) expect(hover.range.start).toEqual(position); // answered before the edit came in
    const now = await editor.request<Hover>('textDocument/hover', { textDocument, position: editor.position(uri, 'mass: |4 kg') });
    expect(now.range && editor.covered(uri, now.range)).toBe('4 kg');
  });

  it('a request that is cancelled is answered as such', async () => {
    const source = new CancellationTokenSource();
    const asked = editor.connection.sendRequest('textDocument/diagnostic', { textDocument }, source.token);
    source.cancel();
    await asked.catch((error: unknown) => expect(error).toMatchObject({ code: -32800 }));
    expect((await editor.pull(uri)).items.length).toBeGreaterThan(0);
  });

  it('a text closed while it is asked about gives nothing', async () => {
    const asked = [editor.pull(uri), editor.request('textDocument/hover', { textDocument, position: { line: 5, character: 4 } }), editor.request('textDocument/inlayHint', { textDocument, range: whole })];
    await editor.close(uri);
    await Promise.all(asked);
    expect((await editor.pull(uri)).items).toEqual([]);
  });

  it('hints never vanish while a value is typed letter by letter', async () => {
    const labels = async (): Promise<readonly string[]> => (await editor.request<InlayHint[]>('textDocument/inlayHint', { textDocument, range: whole })).map(({ position }) => `${position.line}`);
    const before = await labels();
    expect(before.length).toBeGreaterThan(0);
    await editor.replace(uri, 'unsupported-length: 340 mm', 'unsupported-length: ');
    for (const letter of '380 mm') {
      const at = editor.position(uri, 'unsupported-length: ');
      const line = editor.textOf(uri).split('\n')[at.line] ?? '';
      await editor.edit(uri, { start: { line: at.line, character: line.length }, end: { line: at.line, character: line.length } }, letter);
      expect(await labels()).toEqual(expect.arrayContaining([...before]));
    }
  });

  it('ten thousand keystrokes leave the same findings as a fresh text, and no memory in use for the versions that are gone', async () => {
    const at = editor.position(uri, 'lifting table|');
    const column = at.character + 'lifting table'.length;
    const type = async (count: number): Promise<void> => {
      for (let i = 0; i < count; i++) {
        await editor.edit(uri, { start: { line: 0, character: column }, end: { line: 0, character: column + (i % 2) } }, i % 2 === 0 ? 'x' : '');
        if (i % 20 === 19) await editor.pull(uri);
      }
    };
    await type(2_000);
    const before = memoryOf(editor.process.pid);
    await type(8_000);
    // Garbage that has not been collected yet counts; what leaks 10 kB a keystroke would be 80 MB.
    expect(memoryOf(editor.process.pid) - before).toBeLessThan(50);
    expect(editor.textOf(uri)).toBe(sample);
    const typed = await editor.pull(uri);
    const fresh = 'file:///heron/fresh.machine.yaml';
    await editor.open(fresh, sample);
    expect(codesOf(typed.items)).toEqual(codesOf((await editor.pull(fresh)).items));
  });
});

/** Megabytes of memory that a process has in use, where the system tells. */
function memoryOf(pid: number | undefined): number {
  const path = `/proc/${pid ?? 0}/statm`;
  return existsSync(path) ? (Number(readFileSync(path, 'utf8').split(' ')[1]) * 4_096) / 1e6 : 0; // pages in use: field 2 of proc(5)
}
