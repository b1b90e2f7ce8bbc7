import { LSPErrorCodes, ResponseError, type CancellationToken } from 'vscode-languageserver';

/** Answers a request; parameters are what the client sent, unseen. */
export type Answer<R> = (params: unknown, token: CancellationToken) => R | Promise<R>;

/** The part of a connection that a fence stands in front of. */
export interface Requests {
  onRequest(method: string, handler: (...args: unknown[]) => unknown): unknown;
  onNotification(method: string, handler: (...args: unknown[]) => void): unknown;
}

/** Different complaints that are remembered so as not to be logged at every keystroke. */
const MOST_REMEMBERED = 200;

/** Stands between the client and everything that is computed: whatever throws behind it becomes one line in the log and an empty answer. */
export class Fence {
  readonly #connection: Requests;
  readonly #log: (line: string) => void;
  readonly #logged = new Set<string>();
  #received = 0;

  constructor(connection: Requests, log: (line: string) => void) {
    this.#connection = connection;
    this.#log = log;
  }

  /** How many messages have come in: by it one sees whether others are waiting behind the present one. */
  get received(): number {
    return this.#received;
  }

  /** Answers requests of a method. An answer that fails is `empty`; one that nobody waits for any more is an error that says so. */
  request<R>(method: string, empty: R, answer: Answer<R>): void {
    this.#connection.onRequest(method, async (...args) => {
      this.#received++;
      const token = args.at(-1) as CancellationToken; // the connection passes it last, after the parameters, if any came
      try {
        const result = await answer(args.length > 1 ? args[0] : undefined, token);
        return token.isCancellationRequested ? cancelled() : result;
      } catch (error) {
        if (error instanceof ResponseError) return error;
        this.report(method, error);
        return empty;
      }
    });
  }

  notification(method: string, take: (params: unknown) => void | Promise<void>): void {
    this.#connection.onNotification(method, (...args) => {
      this.#received++;
      this.run(method, () => take(args[0]));
    });
  }

  /** Does something outside of any request, with the same care. */
  run(name: string, action: () => void | Promise<void>): void {
    try {
      Promise.resolve(action()).catch((error: unknown) => this.report(name, error));
    } catch (error) {
      this.report(name, error);
    }
  }

  /** One line about a failure; the same one only once. */
  report(name: string, error: unknown): void {
    const line = `${name} failed: ${inOneLine(error)}`;
    if (this.#logged.has(line)) return;
    if (this.#logged.size >= MOST_REMEMBERED) this.#logged.clear();
    this.#logged.add(line);
    this.#log(line);
  }
}

// Values of the protocol library are imported here and where the connection is made, and nowhere else: each module that does costs the
// start some two milliseconds for copying the library's thousand names.

/** The error for a request that the client has given up, or whose text is gone. */
const cancelled = (): ResponseError => new ResponseError(LSPErrorCodes.RequestCancelled, 'The request was cancelled.');

/** The error for a request about something that is not there any more. */
export const outdated = (reason: string): ResponseError => new ResponseError(LSPErrorCodes.ContentModified, reason);

function inOneLine(error: unknown): string {
  if (!(error instanceof Error)) return String(error).slice(0, 300);
  const where = /\n\s+(at .*)/.exec(error.stack ?? '')?.[1];
  return `${error.message}${where === undefined ? '' : ` (${where})`}`.replaceAll(/\s*[\r\n]+\s*/g, ' ').slice(0, 300);
}
