import { afterEach, describe, expect, it } from 'vitest';
import { codesOf, Editor, until } from './support/editor.ts';
import { sample } from './support/sample.ts';

/** Findings of a text that is gone must be gone too, whichever way the client gets them. */
const uri = 'file:///heron/heron.machine.yaml';
const deleted = 3;
let editor: Editor;

const open = async (client: 'pull' | 'push'): Promise<void> => {
  editor = await Editor.start({ client });
  await editor.open(uri, sample);
  if (client === 'push') await editor.pushed(uri, (codes) => codes.length > 0);
  else expect((await editor.pull(uri)).items.length).toBeGreaterThan(0);
};

const noneAreLeft = async (client: 'pull' | 'push', at = uri): Promise<void> => {
  if (client === 'push') await editor.pushed(at, (codes) => codes.length === 0);
  else expect((await editor.pull(at)).items).toEqual([]);
};

describe.each(['pull', 'push'] as const)('a client whose findings come by %s has no ghosts of a file', (client) => {
  afterEach(() => editor.stop());

  it('that was closed', async () => {
    await open(client);
    await editor.close(uri);
    await noneAreLeft(client);
  });

  it('that was renamed', async () => {
    await open(client);
    await editor.close(uri);
    const renamed = 'file:///heron/egret.machine.yaml';
    await editor.open(renamed, sample);
    await noneAreLeft(client);
    if (client === 'push') await editor.pushed(renamed, (codes) => codes.length > 0);
    else expect((await editor.pull(renamed)).items.length).toBeGreaterThan(0);
  });

  it('that was deleted, even while its text is still open; a change brings them back', async () => {
    await open(client);
    await editor.notify('workspace/didChangeWatchedFiles', { changes: [{ uri, type: deleted }] });
    if (client === 'pull') await until(() => editor.heard.includes('workspace/diagnostic/refresh'), () => 'being asked to fetch again');
    await noneAreLeft(client);
    await editor.replace(uri, 'travel: 300 mm', 'travel: 310 mm');
    if (client === 'push') await editor.pushed(uri, (codes) => codes.length > 0);
    else expect((await editor.pull(uri)).items.length).toBeGreaterThan(0);
  });

  it('whose language was changed', async () => {
    await open(client);
    await editor.close(uri);
    await editor.open(uri, sample, 'plaintext');
    await noneAreLeft(client);
    await editor.replace(uri, 'travel: 300 mm', 'travel: 300');
    await noneAreLeft(client);
  });

  it('that was emptied', async () => {
    await open(client);
    await editor.write(uri, '');
    // An empty description is told so, and nothing else.
    const wanted = (codes: readonly unknown[]): boolean => codes.every((code) => code === 'entry-missing');
    if (client === 'push') await editor.pushed(uri, wanted);
    else expect(wanted(codesOf((await editor.pull(uri)).items))).toBe(true);
  });

  it('that was opened twice without being closed', async () => {
    await open(client);
    await editor.open(uri, 'description-version: 1\nmachine: Heron\n');
    const wanted = (codes: readonly unknown[]): boolean => codes.every((code) => code === 'entry-missing');
    if (client === 'push') await editor.pushed(uri, wanted);
    else expect(wanted(codesOf((await editor.pull(uri)).items))).toBe(true);
  });
});
