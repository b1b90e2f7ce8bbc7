import { existsSync, readFileSync } from 'node:fs';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { codesOf, Editor, sleep } from './support/editor.ts';
import { sample } from './support/sample.ts';

const uri = 'file:///heron/heron.machine.yaml';
let editor: Editor;

describe('findings that are pushed to a client that cannot fetch them', () => {
  beforeEach(async () => {
    editor = await Editor.start({ client: 'push' });
    await editor.open(uri, sample);
    await editor.pushed(uri, (codes) => codes.includes('drops-unpowered'));
  });
  afterEach(() => editor.stop());

  it('cannot be fetched as well', async () => {
    await expect(editor.request('textDocument/diagnostic', { textDocument: { uri } })).rejects.toThrow();
  });

  it('of a slip come at once and go at once', async () => {
    await editor.replace(uri, 'travel: 300 mm', 'travel: 300');
    await editor.pushed(uri, (codes) => codes.includes('unit-missing'));
    await editor.replace(uri, 'travel: 300', 'travel: 300 mm');
    await editor.pushed(uri, (codes, { version }) => version === 3 && !codes.includes('unit-missing'));
  });

  it('of engineering that are new on the line being typed come after a pause, cured ones go at once', async () => {
    const since = Date.now();
    await editor.replace(uri, 'layer-height: 0.24 mm', 'layer-height: 0.25 mm');
    await editor.pushed(uri, (codes, { version }) => version === 2 && !codes.includes('layer-height-off-full-steps'));
    await editor.pushed(uri, (codes) => codes.includes('layer-height-off-full-steps'));
    expect(Date.now() - since).toBeGreaterThanOrEqual(390); // timers may be a few ms early
    await editor.replace(uri, 'layer-height: 0.25 mm', 'layer-height: 0.24 mm');
    await editor.pushed(uri, (codes, { version }) => version === 3 && !codes.includes('layer-height-off-full-steps'));
  });

  it('never come while the typing goes on', async () => {
    await editor.replace(uri, 'layer-height: 0.24 mm', 'layer-height: 0.25 mm');
    for (let i = 0; i < 12; i++) {
      await sleep(60);
      const at = editor.position(uri, 'layer-height: 0.25 mm');
      await editor.edit(uri, { start: { line: at.line, character: 200 }, end: { line: at.line, character: 200 } }, i === 0 ? ' # why' : 'y');
    }
    const meanwhile = editor.published.filter((params) => codesOf(params.diagnostics).includes('layer-height-off-full-steps'));
    expect(meanwhile).toEqual([]);
    await editor.pushed(uri, (codes) => codes.includes('layer-height-off-full-steps'));
  });

  it('of many versions typed in one go are those of the last one only, and never of an older one after a newer', async () => {
    const before = editor.published.length;
    const typed: Promise<void>[] = [];
    for (let i = 0; i < 40; i++) typed.push(editor.edit(uri, { start: { line: 0, character: 0 }, end: { line: 0, character: 0 } }, '#'));
    await Promise.all(typed);
    await editor.pushed(uri, (_, { version }) => version === 41);
    const versions = editor.published.slice(before).map(({ version }) => version ?? 0);
    expect(versions).toEqual([...versions].sort((a, b) => a - b));
    expect(versions.length).toBeLessThan(40);
  });

  it('are silent when nothing happens, and cost nothing', async () => {
    await sleep(500);
    const before = { heard: editor.heard.length, log: editor.log.length, ticks: ticksOf(editor.process.pid) };
    await sleep(2_500);
    expect({ heard: editor.heard.length, log: editor.log.length }).toEqual({ heard: before.heard, log: before.log });
    expect(ticksOf(editor.process.pid) - before.ticks).toBeLessThanOrEqual(2);
  });
});

/** Hundredths of a second of a processor that a process has used, where the system tells. */
function ticksOf(pid: number | undefined): number {
  const path = `/proc/${pid ?? 0}/stat`;
  if (!existsSync(path)) return 0;
  const fields = readFileSync(path, 'utf8').replace(/^.*\) /, '').split(' ');
  return Number(fields[11]) + Number(fields[12]); // utime and stime: fields 14 and 15 of proc(5)
}
