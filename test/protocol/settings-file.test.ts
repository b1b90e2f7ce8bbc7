import { mkdir, mkdtemp, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import type { CodeAction, CompletionItem, Hover } from 'vscode-languageserver';
import { settingsNear } from '../../server/src/protocol/settings-near.ts';
import { localDay, onNewDay } from '../../server/src/protocol/today.ts';
import { codesOf, Editor, sleep, until } from './support/editor.ts';
import { partList, sample, sampleWithList } from './support/sample.ts';

const tooFast = 'screw-too-fast-for-its-maker';
/** 10 mm/s over a lead of 8 mm are 75 rpm (hand calculation), where 50 rpm are allowed. */
const fast = sample.replace('        material: steel\n        grade: rolled\n', '        material: steel\n        grade: rolled\n        speed-limit: 50 rpm\n');
const hint = `checks:\n  ${tooFast}: { severity: hint }\n`;

let top: string;
let editor: Editor | undefined;
const uriOf = (...path: readonly string[]): string => pathToFileURL(join(top, ...path)).href;
const machine = (): string => uriOf('shop', 'lifts', 'heron.machine.yaml');
const settings = (): string => uriOf('shop', 'axiswright.yaml');

beforeEach(async () => {
  top = await mkdtemp(join(tmpdir(), 'axiswright-settings-'));
  await mkdir(join(top, 'shop', 'lifts'), { recursive: true });
});
afterEach(async () => {
  await editor?.stop();
  editor = undefined;
  await rm(top, { recursive: true, force: true });
});

const start = async (text = fast, client: 'pull' | 'push' = 'pull'): Promise<Editor> => {
  editor = await Editor.start({ folders: [uriOf('shop')], client });
  await editor.open(machine(), text);
  return editor;
};
const severity = async (it: Editor): Promise<number | undefined> => (await it.pull(machine())).items.find(({ code }) => code === tooFast)?.severity;
const write = (text: string, ...path: readonly string[]): Promise<void> => writeFile(join(top, ...path), text);
const noticed = (it: Editor, uri: string, type = 2): Promise<void> => it.notify('workspace/didChangeWatchedFiles', { changes: [{ uri, type }] });

describe('settings on the disk', () => {
  it('hold for descriptions below them', async () => {
    await write(hint, 'shop', 'axiswright.yaml');
    expect(await severity(await start())).toBe(4);
  });

  it('that come, change and go have the machine analysed again', async () => {
    const it = await start();
    const watched = (): unknown => it.registered.find(({ method }) => method === 'workspace/didChangeWatchedFiles')?.registerOptions;
    await until(() => watched() !== undefined, () => 'files to be watched');
    expect(watched()).toMatchObject({ watchers: [{}, {}, { globPattern: '**/axiswright.yaml' }] });
    expect(await severity(it)).toBe(2);
    await write(hint, 'shop', 'axiswright.yaml');
    await noticed(it, settings(), 1);
    await until(async () => (await severity(it)) === 4, () => 'the settings to hold');
    await write(hint.replace('hint', 'off'), 'shop', 'axiswright.yaml');
    await noticed(it, settings());
    await until(async () => (await severity(it)) === undefined, () => 'the check to be off');
    await rm(join(top, 'shop', 'axiswright.yaml'));
    await noticed(it, settings(), 3);
    await until(async () => (await severity(it)) === 2, () => 'the check to judge as before');
  });

  it('nearer ones that come take their place', async () => {
    await write(hint, 'shop', 'axiswright.yaml');
    const it = await start();
    expect(await severity(it)).toBe(4);
    await write('{}\n', 'shop', 'lifts', 'axiswright.yaml');
    await noticed(it, uriOf('shop', 'lifts', 'axiswright.yaml'), 1);
    await until(async () => (await severity(it)) === 2, () => 'the nearer settings to hold');
  });

  it('above the folder that was opened are not looked at', async () => {
    await write(hint, 'axiswright.yaml');
    expect(await severity(await start())).toBe(2);
  });

  it('bring their part lists', async () => {
    await write('part-lists: [motors.parts.yaml]\n', 'shop', 'axiswright.yaml');
    await write(partList, 'shop', 'motors.parts.yaml');
    const it = await start(sampleWithList.replace('uses: [motors.parts.yaml]\n', ''));
    expect(codesOf((await it.pull(machine())).items)).not.toContain('unknown-name');
  });
});

describe('settings that are open', () => {
  it('beat the disk; what is typed into them is seen in the machine in the other tab', async () => {
    await write(hint, 'shop', 'axiswright.yaml');
    const it = await start(fast, 'push');
    await it.pushed(machine(), (_, { diagnostics }) => diagnostics.some(({ code, severity: own }) => code === tooFast && own === 4));
    await it.open(settings(), hint);
    await it.replace(settings(), 'hint', 'error');
    await it.pushed(machine(), (_, { diagnostics }) => diagnostics.some(({ code, severity: own }) => code === tooFast && own === 1));
  });

  it.each(['axiswright-machine', 'yaml'])('are checked as what they are, with hover, completion and fixes (%s)', async (languageId) => {
    const it = await start();
    await it.open(settings(), 'checks:\n  pinch-point: { severity: off }\n  screw-inefficent: { severity: hint }\n', languageId);
    const { items } = await it.pull(settings());
    expect(codesOf(items)).toEqual(['limit-not-changeable', 'check-unknown']);
    const misspelt = items[1];
    const [fix] = misspelt ? await it.request<CodeAction[]>('textDocument/codeAction', { textDocument: { uri: settings() }, range: misspelt.range, context: { diagnostics: [misspelt] } }) : [];
    expect(fix?.title).toBe('Change to "screw-inefficient"');
    const hover = await it.request<Hover>('textDocument/hover', { textDocument: { uri: settings() }, position: it.position(settings(), 'pinch|-point') });
    expect(JSON.stringify(hover.contents)).toContain('people can be hurt');
    await it.write(settings(), 'fail-on: ');
    const answer = await it.request<{ items: CompletionItem[] } | CompletionItem[]>('textDocument/completion', { textDocument: { uri: settings() }, position: { line: 0, character: 9 } });
    expect(('items' in answer ? answer.items : answer).map(({ label }) => label)).toEqual(['error', 'warning', 'information']);
  });

  it('of another name are nobody\'s', async () => {
    const it = await start();
    await it.open(uriOf('shop', 'other.yaml'), 'checks: x\n', 'yaml');
    expect((await it.pull(uriOf('shop', 'other.yaml'))).items).toEqual([]);
  });
});

describe('where settings may lie', () => {
  it('is from the folder of the text up to the folder that was opened', () => {
    expect(settingsNear('file:///a/b/c/x.machine.yaml', ['file:///a/b'])).toEqual(['file:///a/b/c/axiswright.yaml', 'file:///a/b/axiswright.yaml']);
    expect(settingsNear('file:///a/b/x.machine.yaml', ['file:///a/b/'])).toEqual(['file:///a/b/axiswright.yaml']);
    expect(settingsNear('file:///a/b%20c/x.machine.yaml', ['file:///a/b c'])).toEqual(['file:///a/b%20c/axiswright.yaml']);
  });
  it('is nowhere for a text outside, beside, or without a file', () => {
    for (const uri of ['file:///other/x.machine.yaml', 'file:///a/bc/x.machine.yaml', 'untitled:Untitled-1']) expect(settingsNear(uri, ['file:///a/b'])).toEqual([]);
    expect(settingsNear('file:///a/x.machine.yaml', [])).toEqual([]);
  });
});

describe('the day', () => {
  it('is that of the clock where the computer stands', () => expect(localDay(new Date(2027, 0, 5, 23, 59))).toBe('2027-01-05'));

  it('is told once when another one has come', async () => {
    let day = '2026-11-25';
    let told = 0;
    const stop = onNewDay(() => day, () => told++, 5);
    await sleep(30);
    expect(told).toBe(0);
    day = '2026-11-26';
    await until(() => told === 1, () => 'the new day');
    await sleep(30);
    expect(told).toBe(1);
    stop();
  });
});
