import { spawn, type ChildProcess } from 'node:child_process';
import { join } from 'node:path';
import { beforeAll, vi } from 'vitest';
import { createMessageConnection, StreamMessageReader, StreamMessageWriter, type MessageConnection } from 'vscode-jsonrpc/node';
import type { Diagnostic, InitializeResult, Position, PublishDiagnosticsParams, Range } from 'vscode-languageserver';
import { builtServer } from './built-server.ts';
import { capabilities } from './capabilities.ts';

// Each test starts a process of its own, on machines that do other things as well.
vi.setConfig({ testTimeout: 20_000, hookTimeout: 60_000 });
beforeAll(() => builtServer());

export interface Options {
  /** `pull` and `push` are complete clients; anything else is taken as it is. */
  readonly client?: 'pull' | 'push' | Readonly<Record<string, unknown>>;
  readonly folders?: readonly string[];
  readonly initializationOptions?: unknown;
  /** What the editor answers for our section of the settings, by file. */
  readonly settings?: (scope: string | undefined) => unknown;
  /** The folder of the bundles, where it is not the shared one. */
  readonly dist?: string;
}

interface Text {
  readonly uri: string;
  version: number;
  text: string;
}

/** An editor that has started the real server as a process and speaks with it over its standard input and output. */
export class Editor {
  readonly connection: MessageConnection;
  readonly initialized: InitializeResult;
  /** Lines that the server wrote to the client's log. */
  readonly log: string[] = [];
  /** Methods of everything that came from the server of its own accord. */
  readonly heard: string[] = [];
  /** Capabilities that the server registered. */
  readonly registered: { method: string; registerOptions?: unknown }[] = [];
  readonly published: PublishDiagnosticsParams[] = [];
  readonly exit: Promise<number | null>;
  readonly process: ChildProcess;
  readonly #texts = new Map<string, Text>();
  #settings: Options['settings'];

  private constructor(child: ChildProcess, connection: MessageConnection, initialized: InitializeResult, options: Options) {
    this.process = child;
    this.connection = connection;
    this.initialized = initialized;
    this.exit = new Promise((resolve) => child.once('exit', resolve));
    this.#settings = options.settings;
  }

  static async start(options: Options = {}): Promise<Editor> {
    const dist = options.dist ?? (await builtServer());
    const child = spawn(process.execPath, [join(dist, 'server-node.js'), '--stdio'], { stdio: ['pipe', 'pipe', 'inherit'] });
    const connection = createMessageConnection(new StreamMessageReader(child.stdout), new StreamMessageWriter(child.stdin));
    const client = options.client ?? 'pull';
    const started: { editor?: Editor } = {};
    const early: (readonly [string, unknown])[] = [];
    connection.onNotification((method, params) => (started.editor ? started.editor.#notified(method, params) : void early.push([method, params])));
    connection.onRequest((method, params) => (started.editor ? started.editor.#asked(method, params) : null));
    connection.onError(() => undefined);
    connection.listen();
    const initialized = await connection.sendRequest<InitializeResult>('initialize', {
      processId: process.pid,
      rootUri: null,
      workspaceFolders: options.folders?.map((uri) => ({ uri, name: uri })) ?? null,
      capabilities: client === 'pull' || client === 'push' ? capabilities(client) : client,
      initializationOptions: options.initializationOptions,
    });
    const editor = new Editor(child, connection, initialized, options);
    started.editor = editor;
    for (const [method, params] of early) editor.#notified(method, params);
    await connection.sendNotification('initialized', {});
    return editor;
  }

  #notified(method: string, params: unknown): void {
    if (method === 'window/logMessage') this.log.push((params as { message: string }).message);
    else this.heard.push(method);
    if (method === 'textDocument/publishDiagnostics') this.published.push(params as PublishDiagnosticsParams);
  }

  #asked(method: string, params: unknown): unknown {
    this.heard.push(method);
    if (method === 'workspace/configuration') return (params as { items: { scopeUri?: string }[] }).items.map(({ scopeUri }) => this.#settings?.(scopeUri) ?? null);
    if (method === 'client/registerCapability') this.registered.push(...(params as { registrations: { method: string }[] }).registrations);
    return null;
  }

  request<T>(method: string, params?: unknown): Promise<T> {
    return this.connection.sendRequest<T>(method, params);
  }

  async notify(method: string, params?: unknown): Promise<void> {
    await this.connection.sendNotification(method, params);
  }

  async open(uri: string, text: string, languageId = 'axiswright-machine'): Promise<void> {
    this.#texts.set(uri, { uri, version: 1, text });
    await this.notify('textDocument/didOpen', { textDocument: { uri, languageId, version: 1, text } });
  }

  /** Replaces the only occurrence of a text by another, as a person's typing would. */
  async replace(uri: string, before: string, after: string): Promise<void> {
    const { text } = this.#text(uri);
    const at = text.indexOf(before);
    if (at < 0 || text.indexOf(before, at + 1) >= 0) throw new Error(`"${before}" does not stand in the text exactly once.`);
    await this.edit(uri, { start: this.positionAt(uri, at), end: this.positionAt(uri, at + before.length) }, after);
  }

  async edit(uri: string, range: Range, newText: string): Promise<void> {
    const text = this.#text(uri);
    const start = offsetAt(text.text, range.start);
    const end = offsetAt(text.text, range.end);
    text.text = text.text.slice(0, start) + newText + text.text.slice(end);
    text.version++;
    await this.notify('textDocument/didChange', { textDocument: { uri, version: text.version }, contentChanges: [{ range, text: newText }] });
  }

  /** Replaces the whole text at once. */
  async write(uri: string, newText: string): Promise<void> {
    const text = this.#text(uri);
    text.text = newText;
    text.version++;
    await this.notify('textDocument/didChange', { textDocument: { uri, version: text.version }, contentChanges: [{ text: newText }] });
  }

  async save(uri: string): Promise<void> {
    await this.notify('textDocument/didSave', { textDocument: { uri } });
  }

  async close(uri: string): Promise<void> {
    this.#texts.delete(uri);
    await this.notify('textDocument/didClose', { textDocument: { uri } });
  }

  textOf(uri: string): string {
    return this.#text(uri).text;
  }

  versionOf(uri: string): number {
    return this.#text(uri).version;
  }

  /** The place of the only occurrence of a text, or of a part of it behind its first `|`. */
  position(uri: string, marked: string): Position {
    const plain = marked.replace('|', '');
    const { text } = this.#text(uri);
    const at = text.indexOf(plain);
    if (at < 0 || text.indexOf(plain, at + 1) >= 0) throw new Error(`"${plain}" does not stand in the text exactly once.`);
    return this.positionAt(uri, at + Math.max(0, marked.indexOf('|')));
  }

  positionAt(uri: string, offset: number): Position {
    const before = this.#text(uri).text.slice(0, offset).split(/\r\n|\n/);
    return { line: before.length - 1, character: before.at(-1)?.length ?? 0 };
  }

  /** The text that a range covers. */
  covered(uri: string, range: Range): string {
    const { text } = this.#text(uri);
    return text.slice(offsetAt(text, range.start), offsetAt(text, range.end));
  }

  /** The findings of a text, by whichever way this client gets them. */
  async pull(uri: string, previousResultId?: string): Promise<{ kind: string; resultId?: string; items: readonly Diagnostic[] }> {
    const report = await this.request<{ kind: string; resultId?: string; items?: Diagnostic[] }>('textDocument/diagnostic', { textDocument: { uri }, ...(previousResultId === undefined ? {} : { previousResultId }) });
    return { ...report, items: report.items ?? [] };
  }

  /** Waits until the findings that were pushed last for a text are as wanted. */
  async pushed(uri: string, wanted: (codes: readonly unknown[], params: PublishDiagnosticsParams) => boolean, patience = 5_000): Promise<PublishDiagnosticsParams> {
    let last: PublishDiagnosticsParams | undefined;
    await until(() => {
      last = this.published.findLast((params) => params.uri === uri);
      return last !== undefined && wanted(codesOf(last.diagnostics), last);
    }, () => `the findings of ${uri} to be as wanted; they are ${last ? codesOf(last.diagnostics).join(', ') : 'not there'}`, patience);
    if (!last) throw new Error('unreachable');
    return last;
  }

  /** Whether the server still answers. */
  async isAlive(): Promise<boolean> {
    return (await this.request('axiswright/page', { id: 'unit-missing' })) !== null;
  }

  async stop(): Promise<number | null> {
    if (this.process.exitCode === null) {
      await this.request('shutdown');
      await this.notify('exit');
    }
    const code = await this.exit;
    this.connection.dispose();
    return code;
  }

  #text(uri: string): Text {
    const text = this.#texts.get(uri);
    if (!text) throw new Error(`${uri} is not open.`);
    return text;
  }
}

export const codesOf = (diagnostics: readonly Diagnostic[]): readonly unknown[] => diagnostics.map(({ code }) => code);

export const sleep = (milliseconds: number): Promise<void> => new Promise((resolve) => setTimeout(resolve, milliseconds));

export async function until(holds: () => boolean | Promise<boolean>, what: () => string, patience = 5_000): Promise<void> {
  const end = Date.now() + patience;
  while (!(await holds())) {
    if (Date.now() > end) throw new Error(`Waited in vain for ${what()}.`);
    await sleep(5);
  }
}

function offsetAt(text: string, { line, character }: Position): number {
  let start = 0;
  for (let i = 0; i < line; i++) {
    const end = text.indexOf('\n', start);
    if (end < 0) return text.length;
    start = end + 1;
  }
  return Math.min(text.length, start + character);
}
