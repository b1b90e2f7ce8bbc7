import { spawn, spawnSync } from 'node:child_process';
import { readFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { beforeAll, describe, expect, it } from 'vitest';
import { builtServer } from './support/built-server.ts';
import { Editor, until } from './support/editor.ts';

let server: string;
beforeAll(async () => {
  server = join(await builtServer(), 'server-node.js');
});

describe('initialize', () => {
  it('offers a complete client what it can use: findings are fetched', async () => {
    const editor = await Editor.start({ client: 'pull' });
    expect(editor.initialized).toMatchInlineSnapshot(`
      {
        "capabilities": {
          "codeActionProvider": {
            "codeActionKinds": [
              "quickfix",
              "source.fixAll.axiswright",
            ],
            "resolveProvider": true,
          },
          "completionProvider": {
            "resolveProvider": true,
            "triggerCharacters": [
              " ",
            ],
          },
          "definitionProvider": true,
          "diagnosticProvider": {
            "identifier": "axiswright",
            "interFileDependencies": true,
            "workspaceDiagnostics": false,
          },
          "documentLinkProvider": {
            "resolveProvider": false,
          },
          "documentSymbolProvider": {
            "label": "Axiswright",
          },
          "hoverProvider": true,
          "inlayHintProvider": {
            "resolveProvider": true,
          },
          "positionEncoding": "utf-16",
          "referencesProvider": true,
          "textDocumentSync": {
            "change": 2,
            "openClose": true,
            "save": {
              "includeText": false,
            },
          },
          "workspace": {
            "workspaceFolders": {
              "changeNotifications": true,
              "supported": true,
            },
          },
        },
        "serverInfo": {
          "name": "Axiswright",
        },
      }
    `);
    await editor.stop();
  });

  it('offers a client that cannot fetch findings no fetching', async () => {
    const editor = await Editor.start({ client: 'push' });
    expect(editor.initialized.capabilities.diagnosticProvider).toBeUndefined();
    await editor.stop();
  });

  it('offers a client that says nothing of itself only what every client understands, and asks nothing of it', async () => {
    const editor = await Editor.start({ client: {} });
    const { codeActionProvider, workspace, diagnosticProvider, positionEncoding } = editor.initialized.capabilities;
    expect({ codeActionProvider, workspace, diagnosticProvider, positionEncoding }).toEqual({ codeActionProvider: undefined, workspace: undefined, diagnosticProvider: undefined, positionEncoding: 'utf-16' });
    await editor.open('untitled:one', 'description-version: 1\n');
    await editor.pushed('untitled:one', (codes) => codes.length > 0);
    expect(editor.heard).not.toContain('client/registerCapability');
    expect(editor.heard).not.toContain('workspace/configuration');
    await editor.stop();
  });

  it('asks to be told of changed files and settings, after the client is ready', async () => {
    const editor = await Editor.start();
    await until(() => editor.registered.length === 2, () => 'two registrations');
    expect(editor.registered.map(({ method, registerOptions }) => ({ method, registerOptions })).sort((a, b) => (a.method < b.method ? -1 : 1))).toEqual([
      { method: 'workspace/didChangeConfiguration', registerOptions: { section: 'axiswright' } },
      { method: 'workspace/didChangeWatchedFiles', registerOptions: { watchers: [{ globPattern: '**/*.machine.yaml' }, { globPattern: '**/*.parts.yaml' }, { globPattern: '**/axiswright.yaml' }] } },
    ]);
    await editor.stop();
  });
});

describe('the process', () => {
  it('ends with 0 after shutdown and exit', async () => {
    expect(await (await Editor.start()).stop()).toBe(0);
  });

  it('ends with 1 on exit without shutdown', async () => {
    const editor = await Editor.start();
    await editor.notify('exit');
    expect(await editor.exit).toBe(1);
  });

  it('ends when its client is gone', async () => {
    const editor = await Editor.start();
    editor.process.stdin?.end();
    expect(await editor.exit).toBe(1);
  });

  it('says how it is started when started by hand', () => {
    const bare = spawnSync(process.execPath, [server], { encoding: 'utf8' });
    expect(bare.status).toBe(2);
    expect(bare.stderr).toContain('--stdio');
    const help = spawnSync(process.execPath, [server, '--help'], { encoding: 'utf8' });
    expect(help.status).toBe(0);
    expect(help.stdout).toContain('--stdio');
  });

  it('is what the package names as a command, and runs as one', async () => {
    const root = join(dirname(fileURLToPath(import.meta.url)), '..', '..');
    const { bin } = JSON.parse(readFileSync(join(root, 'package.json'), 'utf8')) as { bin: Record<string, string> };
    expect(bin['axiswright-language-server']).toBe('dist/server-node.js');
    expect(readFileSync(server, 'utf8').split('\n')[0]).toBe('#!/usr/bin/env node');
  });

  it('speaks over the channel of a Node parent too', async () => {
    const child = spawn(process.execPath, [server, '--node-ipc'], { stdio: ['ignore', 'inherit', 'inherit', 'ipc'] });
    const answer = new Promise((resolve) => child.once('message', resolve));
    child.send({ jsonrpc: '2.0', id: 1, method: 'initialize', params: { processId: null, rootUri: null, capabilities: {} } });
    expect(await answer).toMatchObject({ id: 1, result: { serverInfo: { name: 'Axiswright' } } });
    const gone = new Promise((resolve) => child.once('exit', resolve));
    child.disconnect();
    expect(await gone).toBe(1);
  });

  it('answers initialize without the analysis, and tells in the log when that cannot be loaded', async () => {
    const { cp, mkdtemp, rm } = await import('node:fs/promises');
    const folder = await mkdtemp(join(dirname(server), '..', 'without-'));
    await cp(server, join(folder, 'server-node.js'));
    const editor = await Editor.start({ dist: folder });
    expect(editor.initialized.capabilities.hoverProvider).toBe(true);
    await until(() => editor.log.some((line) => line.includes('analysis')), () => 'a line in the log');
    expect(await editor.request('textDocument/hover', { textDocument: { uri: 'file:///a.machine.yaml' }, position: { line: 0, character: 0 } })).toBeNull();
    expect(await editor.stop()).toBe(0);
    await rm(folder, { recursive: true });
  });
});
