import type { Worker } from 'node:worker_threads';
import { FileChecker, type CheckedFile, type CheckSetup } from './file-checker.ts';
import { shownPath } from './find-files.ts';
import { faultText } from './machine-reader.ts';

/** Starts a worker that answers a `Job` with a `Done`; see worker.ts. */
export type StartWorker = (setup: CheckSetup) => Worker;

export interface Job {
  readonly index: number;
  readonly file: string;
}

export interface Done {
  readonly index: number;
  readonly checked: CheckedFile;
}

/** Fewer files are checked before a worker has even begun. */
export const LEAST_FILES = 8;

/** Files that each worker may be ahead of what was asked for: results wait in memory for their turn, so they are few. */
const AHEAD = 4;

/**
 * Checks files, and gives the results in the order of the files, whatever the number of workers. Only as many results are kept as workers
 * are ahead; one is dropped when the next is asked for.
 */
export async function* checkAll(files: readonly string[], setup: CheckSetup, { workers, start }: { readonly workers: number; readonly start: StartWorker | undefined }): AsyncGenerator<CheckedFile> {
  const number = Math.min(workers, files.length);
  if (number < 2 || files.length < LEAST_FILES || start === undefined) {
    const checker = new FileChecker(setup);
    for (const file of files) yield checker.check(file);
    return;
  }
  const pool = new Pool(files, setup, number, start);
  try {
    for (let index = 0; index < files.length; index++) yield await pool.take(index);
  } finally {
    await pool.end();
  }
}

interface Lane {
  worker: Worker | undefined;
  /** The file at which the worker is. */
  busy: number | undefined;
}

class Pool {
  readonly #lanes: Lane[];
  readonly #done = new Map<number, CheckedFile>();
  #next = 0;
  #asked = 0;
  #waiting: { readonly index: number; readonly resolve: (checked: CheckedFile) => void } | undefined;
  #ended = false;

  constructor(
    readonly files: readonly string[],
    readonly setup: CheckSetup,
    number: number,
    readonly start: StartWorker,
  ) {
    this.#lanes = Array.from({ length: number }, () => ({ worker: undefined, busy: undefined }));
  }

  take(index: number): Promise<CheckedFile> {
    this.#asked = index;
    this.#feed();
    return new Promise((resolve) => {
      this.#waiting = { index, resolve };
      this.#hand();
    });
  }

  async end(): Promise<void> {
    this.#ended = true;
    await Promise.all(this.#lanes.flatMap(({ worker }) => (worker ? [worker.terminate()] : [])));
  }

  #feed(): void {
    const most = this.#asked + AHEAD * this.#lanes.length;
    for (const lane of this.#lanes) {
      while (!this.#ended && lane.busy === undefined && this.#next < this.files.length && this.#next < most) {
        lane.busy = this.#next++;
        try {
          lane.worker ??= this.#begin(lane);
          lane.worker.postMessage({ index: lane.busy, file: this.files[lane.busy] ?? '' } satisfies Job);
        } catch (error) {
          this.#lost(lane, error);
        }
      }
    }
  }

  #begin(lane: Lane): Worker {
    const worker = this.start(this.setup);
    const isCurrent = (): boolean => !this.#ended && lane.worker === worker;
    worker.on('message', ({ index, checked }: Done) => {
      if (!isCurrent()) return;
      lane.busy = undefined;
      this.#finish(index, checked);
    });
    // A worker that dies takes its file with it and no other; the next file gets a new worker.
    const died = (error: unknown): void => {
      if (isCurrent()) this.#lost(lane, error);
    };
    worker.on('error', died);
    worker.on('messageerror', died);
    worker.on('exit', (code) => died(new Error(`its worker ended with status ${code}`)));
    return worker;
  }

  #lost(lane: Lane, error: unknown): void {
    const { busy } = lane;
    lane.busy = undefined;
    lane.worker = undefined;
    if (busy === undefined) return;
    const path = shownPath(this.files[busy] ?? '', this.setup.reader.current);
    this.#finish(busy, { path, screen: '', filed: '', restsOn: [], failures: [{ path, message: faultText('checked', error) }] });
  }

  #finish(index: number, checked: CheckedFile): void {
    this.#done.set(index, checked);
    this.#hand();
    this.#feed();
  }

  #hand(): void {
    const { index, resolve } = this.#waiting ?? {};
    const checked = index === undefined ? undefined : this.#done.get(index);
    if (index === undefined || resolve === undefined || checked === undefined) return;
    this.#done.delete(index);
    this.#waiting = undefined;
    resolve(checked);
  }
}
