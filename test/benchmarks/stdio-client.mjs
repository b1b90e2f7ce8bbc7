// The least that speaks the language server protocol to a process over stdin and stdout.
import { spawn } from 'node:child_process';

export class StdioClient {
  #child;
  #waiting = new Map();
  #buffer = Buffer.alloc(0);
  #next = 1;

  constructor(command, args) {
    this.#child = spawn(command, args, { stdio: ['pipe', 'pipe', 'inherit'] });
    this.#child.stdout.on('data', (chunk) => this.#take(chunk));
    this.#child.on('exit', (code) => {
      for (const { fail } of this.#waiting.values()) fail(new Error(`the server ended with ${code}`));
    });
  }

  #take(chunk) {
    this.#buffer = Buffer.concat([this.#buffer, chunk]);
    for (;;) {
      const end = this.#buffer.indexOf('\r\n\r\n');
      if (end < 0) return;
      const length = Number(/Content-Length: (\d+)/i.exec(this.#buffer.toString('latin1', 0, end))?.[1]);
      if (this.#buffer.length < end + 4 + length) return;
      const message = JSON.parse(this.#buffer.toString('utf8', end + 4, end + 4 + length));
      this.#buffer = this.#buffer.subarray(end + 4 + length);
      if (message.method !== undefined && message.id !== undefined) this.#send({ id: message.id, result: message.method === 'workspace/configuration' ? message.params.items.map(() => null) : null });
      else if (message.id !== undefined) this.#answer(message);
    }
  }

  #answer({ id, result, error }) {
    const { done, fail } = this.#waiting.get(id);
    this.#waiting.delete(id);
    if (error) fail(new Error(error.message));
    else done(result);
  }

  #send(message) {
    const body = Buffer.from(JSON.stringify({ jsonrpc: '2.0', ...message }));
    this.#child.stdin.write(`Content-Length: ${body.length}\r\n\r\n`);
    this.#child.stdin.write(body);
  }

  request(method, params) {
    const id = this.#next++;
    return new Promise((done, fail) => {
      this.#waiting.set(id, { done, fail });
      this.#send({ id, method, params });
    });
  }

  notify(method, params) {
    this.#send({ method, params });
  }

  initialize() {
    const capabilities = { textDocument: { diagnostic: { dynamicRegistration: false }, synchronization: {} }, workspace: {} };
    return this.request('initialize', { processId: process.pid, rootUri: null, capabilities, workspaceFolders: null });
  }

  async stop() {
    const gone = new Promise((done) => this.#child.once('exit', done));
    await this.request('shutdown');
    this.notify('exit');
    await gone;
  }

  /** Ends the process at once. */
  kill() {
    this.#child.kill('SIGKILL');
  }
}
