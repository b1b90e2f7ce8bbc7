// The way to the web server: a worker, or this very host when the worker is refused at once or a moment later.
import { describe, expect, test } from 'vitest';
import { ServerPort, type ServerWorker } from '../../client/src/server-port.ts';

/** A server that answers each message with "here: message", as a script would find it whose scope is called self. */
const echo = "self.onmessage = (event) => self.postMessage('here: ' + event.data);";

class Worker implements ServerWorker {
  onmessage: ServerWorker['onmessage'] = null;
  readonly received: unknown[] = [];
  ended = false;
  fail: (event: { readonly message?: string }) => void = () => undefined;

  postMessage(message: unknown): void {
    this.received.push(message);
  }
  addEventListener(_type: 'error', listener: (event: { readonly message?: string }) => void): void {
    this.fail = listener;
  }
  terminate(): void {
    this.ended = true;
  }
}

async function messages(port: ServerPort, count: number): Promise<unknown[]> {
  const got: unknown[] = [];
  await new Promise<void>((done) => {
    port.onmessage = ({ data }) => {
      got.push(data);
      if (got.length === count) done();
    };
  });
  return got;
}

describe('the port to a web server', () => {
  test('uses the worker where there is one', async () => {
    const worker = new Worker();
    const notes: string[] = [];
    const port = await ServerPort.open(async () => worker, async () => echo, (note) => notes.push(note));
    port.postMessage('initialize');
    expect(worker.received).toEqual(['initialize']);
    const got = messages(port, 1);
    worker.onmessage?.({ data: 'answer' });
    expect(await got).toEqual(['answer']);
    expect(notes).toEqual([]);
  });

  test('runs the server here when making the worker throws, and says why', async () => {
    const notes: string[] = [];
    const port = await ServerPort.open(() => Promise.reject(new Error('not from this scheme')), async () => echo, (note) => notes.push(note));
    const got = messages(port, 1);
    port.postMessage('initialize');
    expect(await got).toEqual(['here: initialize']);
    expect(notes.join()).toContain('not from this scheme');
  });

  test('runs the server here when the worker fails before its first answer, and sends again what was sent', async () => {
    const worker = new Worker();
    const port = await ServerPort.open(async () => worker, async () => echo, () => undefined);
    const got = messages(port, 2);
    port.postMessage('initialize');
    worker.fail({ message: 'blocked' });
    port.postMessage('more');
    expect(await got).toEqual(['here: initialize', 'here: more']);
    expect(worker.ended).toBe(true);
  });

  test('leaves a worker that has answered alone when it reports an error, and passes the error on', async () => {
    const worker = new Worker();
    const port = await ServerPort.open(async () => worker, async () => echo, () => undefined);
    const errors: unknown[] = [];
    port.addEventListener('error', (event) => errors.push(event.message));
    worker.onmessage?.({ data: 'answer' });
    worker.fail({ message: 'a slip' });
    port.postMessage('next');
    expect(worker.ended).toBe(false);
    expect(worker.received).toEqual(['next']);
    expect(errors).toEqual(['a slip']);
  });
});
