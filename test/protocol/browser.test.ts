import { readFile } from 'node:fs/promises';
import { join } from 'node:path';
import { MessageChannel, type MessagePort } from 'node:worker_threads';
import { afterEach, describe, expect, it } from 'vitest';
import { builtServer } from './support/built-server.ts';
import { capabilities } from './support/capabilities.ts';
import { codesOf } from './support/editor.ts';
import { partList, sampleWithList } from './support/sample.ts';
import type { Diagnostic } from 'vscode-languageserver';

interface Message {
  readonly id?: number;
  readonly method?: string;
  readonly params?: unknown;
  readonly result?: unknown;
}

const ports: MessagePort[] = [];
afterEach(() => ports.splice(0).forEach((port) => port.close()));

/** Runs the bundle for a worker in this very process, as the extension does where workers are refused: with one end of a channel as `self`. */
async function start(readFileFor: (uri: string) => unknown): Promise<{ request: <T>(method: string, params: unknown) => Promise<T>; notify: (method: string, params: unknown) => void; asked: string[] }> {
  const text = await readFile(join(await builtServer(), 'server-web.js'), 'utf8');
  const { port1, port2 } = new MessageChannel();
  ports.push(port1, port2);
  // eslint-disable-next-line @typescript-eslint/no-implied-eval -- the way in which the extension starts it
  const run = new Function('self', text) as (self: MessagePort) => void;
  run(port2);
  const waiting = new Map<number, (result: unknown) => void>();
  const asked: string[] = [];
  port1.on('message', (message: Message) => {
    if (message.method === undefined) return waiting.get(message.id ?? 0)?.(message.result);
    if (message.id === undefined) return;
    asked.push(message.method);
    const result = message.method === 'axiswright/readFile' ? readFileFor((message.params as { uri: string }).uri) : message.method === 'workspace/configuration' ? [null] : null;
    port1.postMessage({ jsonrpc: '2.0', id: message.id, result });
  });
  let next = 1;
  return {
    asked,
    request: (method, params) => new Promise((resolve) => {
      const id = next++;
      waiting.set(id, resolve as (result: unknown) => void);
      port1.postMessage({ jsonrpc: '2.0', id, method, params });
    }),
    notify: (method, params) => port1.postMessage({ jsonrpc: '2.0', method, params }),
  };
}

describe('the server in a browser', () => {
  it.each([
    ['its text', { text: partList }, false],
    ['nothing', null, true],
    ['an empty answer', { text: null }, true],
    ['nonsense', { text: 7 }, true],
  ])('asks the client for part lists and takes %s', async (_, answer, missing) => {
    const uri = 'vscode-vfs://shop/heron.machine.yaml';
    const files: string[] = [];
    const server = await start((file) => {
      files.push(file);
      return answer;
    });
    const { capabilities: offered } = await server.request<{ capabilities: { diagnosticProvider?: unknown } }>('initialize', { processId: null, rootUri: null, capabilities: capabilities('pull'), workspaceFolders: [{ uri: 'vscode-vfs://shop', name: 'shop' }] });
    expect(offered.diagnosticProvider).toBeDefined();
    server.notify('initialized', {});
    server.notify('textDocument/didOpen', { textDocument: { uri, languageId: 'axiswright-machine', version: 1, text: sampleWithList } });
    const { items } = await server.request<{ items: Diagnostic[] }>('textDocument/diagnostic', { textDocument: { uri } });
    expect(files).toEqual(['vscode-vfs://shop/motors.parts.yaml', 'vscode-vfs://shop/axiswright.yaml']);
    expect(codesOf(items).includes('part-list-missing')).toBe(missing);
    expect(codesOf(items)).toContain('drops-unpowered');
  }, 30_000);
});
