/** The way to a language server that runs in a worker, or here when the worker is refused. */

/** What a worker and one end of a message channel have in common: all that the messages of the protocol need. */
interface Port {
  onmessage: ((event: { readonly data: unknown }) => void) | null;
  postMessage(message: unknown): void;
  addEventListener(type: 'error', listener: (event: { readonly message?: string }) => void): void;
}

/** The part of a Web Worker that is used here; the browser's own types would leak into the rooms that must run anywhere. */
export interface ServerWorker extends Port {
  terminate(): void;
}

/** @returns a Web Worker that runs the script at an address; throws where the host refuses workers from there */
export function newWorker(address: string): ServerWorker {
  const { Worker } = globalThis as unknown as { Worker: new (address: string) => ServerWorker };
  return new Worker(address);
}

/**
 * A port whose far end can change once: a worker may be refused at once (it throws) or a moment later (an error event and nothing else).
 * What was sent by then is sent again to the server that runs here instead.
 */
export class ServerPort implements Port {
  /** Set by the reader of messages. */
  onmessage: Port['onmessage'] = null;
  #target: Port | undefined;
  #sent: unknown[] | undefined = [];
  readonly #errorListeners: Parameters<Port['addEventListener']>[1][] = [];

  /**
   * @param startWorker starts the worker; may throw
   * @param scriptText the text of the server, for running it here
   * @param note told, in words, that the server runs here and why
   */
  static async open(startWorker: () => Promise<ServerWorker>, scriptText: () => Promise<string>, note: (text: string) => void): Promise<ServerPort> {
    const port = new ServerPort();
    const here = async (reason: string): Promise<void> => {
      note(`A worker was refused (${reason}): the language server runs in the extension host.`);
      port.#attach(runHere(await scriptText()));
    };
    try {
      const worker = await startWorker();
      worker.addEventListener('error', (event) => {
        if (port.#sent === undefined) return port.#tell(event); // it had answered: an error of the server
        worker.terminate();
        here(event.message ?? 'it could not be loaded').catch(() => port.#tell(event));
      });
      port.#attach(worker);
    } catch (reason) {
      await here(reason instanceof Error ? reason.message : String(reason));
    }
    return port;
  }

  postMessage(message: unknown): void {
    this.#sent?.push(message);
    this.#target?.postMessage(message);
  }

  addEventListener(_type: 'error', listener: Parameters<Port['addEventListener']>[1]): void {
    this.#errorListeners.push(listener);
  }

  #tell(event: { readonly message?: string }): void {
    for (const listener of this.#errorListeners) listener(event);
  }

  #attach(target: Port): void {
    this.#target = target;
    target.onmessage = (event) => {
      this.#sent = undefined; // it answers: it will not be replaced
      this.onmessage?.(event);
    };
    for (const message of this.#sent ?? []) target.postMessage(message);
  }
}

/** Runs the text of the server in this very host, with one end of a channel in the place of the worker's own scope. */
function runHere(text: string): Port {
  const { MessageChannel } = globalThis as unknown as { MessageChannel: new () => { port1: Port; port2: Port } };
  const { port1, port2 } = new MessageChannel();
  // eslint-disable-next-line @typescript-eslint/no-implied-eval -- our own bundle, loaded as the host loads the extension; there is no other way into it
  const start = new Function('self', text) as (self: Port) => void;
  start(port2);
  return port1;
}
