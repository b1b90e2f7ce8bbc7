import { afterEach, describe, expect, it } from 'vitest';
import type { CodeAction, WorkspaceEdit } from 'vscode-languageserver';
import { codesOf, Editor } from './support/editor.ts';
import { sample } from './support/sample.ts';

const uri = 'file:///heron/heron.machine.yaml';
const isAccept = ({ title }: CodeAction): boolean => title.startsWith('Accept with a reason: ') && title.endsWith('…');
let editor: Editor | undefined;

afterEach(async () => {
  await editor?.stop();
  editor = undefined;
});

async function start(initializationOptions?: unknown): Promise<Editor> {
  editor = await Editor.start({ initializationOptions });
  await editor.open(uri, sample);
  return editor;
}

const finding = async (it: Editor, code = 'drops-unpowered') => (await it.pull(uri)).items.find((one) => one.code === code);

async function actions(it: Editor, code?: string): Promise<readonly CodeAction[]> {
  const told = await finding(it, code);
  return told ? it.request<CodeAction[]>('textDocument/codeAction', { textDocument: { uri }, range: told.range, context: { diagnostics: [told] } }) : [];
}

/** Carries out the edits of our own file, last ones first. */
async function apply(it: Editor, edit: WorkspaceEdit | undefined): Promise<void> {
  const edits = (edit?.documentChanges ?? []).flatMap((change) => ('edits' in change && change.textDocument.uri === uri ? change.edits : []));
  expect(edits.length).toBeGreaterThan(0);
  for (const one of [...edits].reverse()) if ('newText' in one) await it.edit(uri, one.range, one.newText);
}

describe('in our own extension', () => {
  it('the fix asks for the reason first, and comes behind all cures', async () => {
    const it = await start({ pages: 'axiswright-page', askReason: true });
    const offered = await actions(it);
    expect(offered.findIndex(isAccept)).toBe(offered.length - 2);
    expect(offered.at(-1)?.command?.command).toBe('axiswright.explainFinding');
    const fix = offered.find(isAccept);
    expect(fix?.command?.command).toBe('axiswright.accept');
    expect(fix?.edit).toBeUndefined();
    expect(fix?.isPreferred).toBeUndefined();
    expect(fix?.command?.arguments?.[1]).toMatch(/^\d{4}-\d{2}-\d{2}$/);
  });

  it('the answer is the edit; carried out, the finding is information and has its caution still', async () => {
    const it = await start({ askReason: true });
    const command = (await actions(it)).find(isAccept)?.command;
    const answer = await it.request<{ edit: WorkspaceEdit } | null>('axiswright/accept', { finding: command?.arguments?.[0] as unknown, reason: 'a prop stands below it', by: 'R. Okafor', until: '2999-12-31' });
    await apply(it, answer?.edit);
    expect(it.textOf(uri)).toContain('\n    reason: a prop stands below it\n    by: R. Okafor\n    until: 2999-12-31\n');
    const after = await finding(it);
    expect(after?.severity).toBe(3);
    // The message is nearly as long as one may be: the reason stands beside it.
    expect(after?.message).toMatch(/\(accepted\)\nCaution: /);
    expect(after?.relatedInformation?.[0]?.message).toBe('accepted by R. Okafor until 2999-12-31: a prop stands below it');
    expect((await actions(it)).some(isAccept)).toBe(false);
  });

  it('finds the finding again in a text that has grown above it', async () => {
    const it = await start({ askReason: true });
    const command = (await actions(it)).find(isAccept)?.command;
    await it.edit(uri, { start: { line: 0, character: 0 }, end: { line: 0, character: 0 } }, '# one more line\n');
    const answer = await it.request<{ edit: WorkspaceEdit } | null>('axiswright/accept', { finding: command?.arguments?.[0] as unknown, reason: 'x' });
    await apply(it, answer?.edit);
    expect((await finding(it))?.severity).toBe(3);
  });

  it('what is malformed, gone or empty gets no edit, and the server lives on', async () => {
    const it = await start({ askReason: true });
    const ticket = (await actions(it)).find(isAccept)?.command?.arguments?.[0] as Record<string, unknown>;
    for (const params of [null, {}, { finding: ticket }, { finding: ticket, reason: ' ' }, { finding: { ...ticket, uri: 'file:///gone.machine.yaml' }, reason: 'x' }, { finding: 3, reason: 'x' }]) {
      expect(await it.request('axiswright/accept', params)).toBeNull();
    }
    await expect(it.request('axiswright/accept', { finding: { ...ticket, code: 'screw-whirls' }, reason: 'x' })).rejects.toThrow('changed');
    expect(await it.isAlive()).toBe(true);
  });
});

describe('in any other editor', () => {
  it('the fix is an edit with a word in the place of the reason, which is reported until it is replaced', async () => {
    const it = await start();
    const fix = (await actions(it)).find(isAccept);
    expect(fix?.command).toBeUndefined();
    await apply(it, (await it.request<CodeAction>('codeAction/resolve', fix)).edit);
    expect(codesOf((await it.pull(uri)).items)).toContain('reason-not-told');
    expect((await finding(it))?.severity).toBe(1);
    await it.replace(uri, 'reason: why', 'reason: a prop stands below it');
    expect((await finding(it))?.severity).toBe(3);
  });

  it('is no part of mending all', async () => {
    const it = await start();
    const all = await it.request<CodeAction[]>('textDocument/codeAction', { textDocument: { uri }, range: { start: { line: 0, character: 0 }, end: { line: 99, character: 0 } }, context: { diagnostics: (await it.pull(uri)).items, only: ['source.fixAll'] } });
    expect(all).toEqual([]);
  });
});

it('an acceptance whose last day is over has ended, by the clock of the computer', async () => {
  const it = await start();
  await it.write(uri, `${sample}accepted:\n  - check: drops-unpowered\n    at: axes/lift\n    reason: a prop stands below it\n    by: R. Okafor\n    until: 2020-02-29\n`);
  const told = await finding(it);
  expect(told?.severity).toBe(1);
  expect(told?.relatedInformation?.[0]?.message).toBe('acceptance by R. Okafor ended on 2020-02-29');
});
