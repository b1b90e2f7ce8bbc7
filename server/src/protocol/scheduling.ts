import type { CancellationToken } from 'vscode-languageserver';
import type { Snapshot, SnapshotHost, Snapshots } from '../services/snapshot.ts';
import type * as analysisModule from './analysis.ts';
import type { Documents, OpenDocument } from './documents.ts';
import type { Files } from './files.ts';

export type Analysis = typeof analysisModule;

/**
 * An analysis is done as soon as no message is waiting. Only one that is slow enough to be felt, in milliseconds, waits for a pause in the
 * typing as well: half of what it costs beyond that.
 */
const FELT = 100;
const LONGEST_PAUSE = 200;
/** Nobody waits longer than this for somebody to stop typing. */
const MOST_PATIENCE = 1_000;
/** Rounds of loading the lists that the text names; a text that changes meanwhile may name others. */
const MOST_ROUNDS = 10;

interface Kept {
  /** Revision of the text and of the part lists that the snapshot was made from. */
  readonly stamp: string;
  readonly snapshot: Snapshot;
}

interface Run {
  readonly waiting: CancellationToken[];
  readonly result: Promise<Snapshot | undefined>;
}

/** Lets one message that waits behind the present one be taken. */
export const turn = (): Promise<void> => new Promise((resolve) => (typeof setImmediate === 'function' ? setImmediate(resolve) : setTimeout(resolve, 0)));

const sleep = (milliseconds: number): Promise<void> => new Promise((resolve) => setTimeout(resolve, milliseconds));

/**
 * Turns open texts into snapshots: the newest version only, one analysis for all who ask, and none that nobody waits for. It first takes
 * in what has already been typed: under load, messages pile up behind an analysis, and all but the last version are skipped.
 */
export class Scheduler {
  readonly #documents: Documents;
  readonly #files: Files;
  readonly #load: () => Promise<Analysis>;
  /** Counts incoming messages. */
  readonly #received: () => number;
  readonly #kept = new WeakMap<OpenDocument, Kept>();
  readonly #costs = new WeakMap<OpenDocument, number>();
  readonly #runs = new Map<OpenDocument, Run>();
  readonly #surroundings: SnapshotHost;
  #analysis: Promise<Analysis> | undefined;
  #loaded: Analysis | undefined;
  #snapshots: Snapshots | undefined;

  constructor(documents: Documents, files: Files, load: () => Promise<Analysis>, received: () => number, surroundings: SnapshotHost = {}) {
    this.#documents = documents;
    this.#files = files;
    this.#load = load;
    this.#received = received;
    this.#surroundings = surroundings;
  }

  /** The analysis, loaded at the first call. */
  analysis(): Promise<Analysis> {
    this.#analysis ??= this.#load().then(
      (loaded) => (this.#loaded = loaded),
      (error: unknown) => {
        this.#analysis = undefined; // the next one tries again
        throw error;
      },
    );
    return this.#analysis;
  }

  /** The analysis, if it has been loaded. */
  get loaded(): Analysis | undefined {
    return this.#loaded;
  }

  /** What is known of the newest version of a text; undefined when the text is closed or the asker has given up. Throws what the analysis throws. */
  async latest(document: OpenDocument, token?: CancellationToken): Promise<Snapshot | undefined> {
    let run = this.#runs.get(document);
    if (!run) {
      const waiting: CancellationToken[] = [];
      run = { waiting, result: this.#run(document, waiting) };
      this.#runs.set(document, run);
    }
    run.waiting.push(token ?? { isCancellationRequested: false, onCancellationRequested: () => ({ dispose: () => undefined }) });
    const snapshot = await run.result;
    return token?.isCancellationRequested === true || !this.#documents.isOpen(document) ? undefined : snapshot;
  }

  /** The snapshot of the present version, if it has been made already. */
  known(document: OpenDocument): Snapshot | undefined {
    const kept = this.#kept.get(document);
    return kept?.stamp === this.#stamp(document) ? kept.snapshot : undefined;
  }

  /** Part lists and settings that an open machine rested on when it was last analysed, or would rest on if they were there. */
  listsOf(document: OpenDocument): readonly string[] {
    return this.#kept.get(document)?.snapshot.watched ?? [];
  }

  /** Drops what was kept of a text that is open no more, and of part lists that nobody names any more. */
  forget(document: OpenDocument): void {
    const named = this.#documents.descriptions.flatMap((other) => this.listsOf(other));
    this.#snapshots?.forget(document.uri);
    for (const list of this.listsOf(document)) if (!named.includes(list)) this.#snapshots?.forget(list);
    this.#files.retain(named);
    this.#kept.delete(document);
  }

  async #run(document: OpenDocument, waiting: readonly CancellationToken[]): Promise<Snapshot | undefined> {
    try {
      const { Snapshots } = await this.analysis();
      this.#snapshots ??= new Snapshots((uri) => this.#files.read(uri), this.#surroundings);
      for (let round = 1; ; round++) {
        await this.#pause(document);
        if (!this.#documents.isOpen(document) || waiting.every((token) => token.isCancellationRequested)) return undefined;
        const snapshot = this.#take(document, this.#snapshots);
        const missing = this.#files.missing(snapshot.watched);
        if (missing.length === 0 || round === MOST_ROUNDS) return snapshot;
        await this.#files.load(missing);
      }
    } finally {
      this.#runs.delete(document);
    }
  }

  /** Waits until no message is waiting and, where the analysis is slow, until the typing pauses. */
  async #pause(document: OpenDocument): Promise<void> {
    const patience = Date.now() + MOST_PATIENCE;
    const cost = this.#costs.get(document) ?? 0;
    const pause = Math.min(Math.max(0, (cost - FELT) / 2), LONGEST_PAUSE);
    for (;;) {
      const received = this.#received();
      await turn();
      await turn(); // a message that was waiting has its turn between these two
      if (Date.now() > patience) return;
      if (this.#received() !== received) continue;
      const rest = (document.editing?.at ?? 0) + pause - Date.now();
      if (rest <= 0) return;
      await sleep(rest);
    }
  }

  #take(document: OpenDocument, snapshots: Snapshots): Snapshot {
    const known = this.known(document);
    if (known) return known;
    const before = this.#kept.get(document)?.snapshot;
    const since = Date.now();
    let snapshot = snapshots.take(document.uri, document.text);
    if (before && namesOfLists(before) !== namesOfLists(snapshot)) {
      // A list more may give what was looked for in vain, and what is kept of the version before does not know of it.
      snapshots.forget(document.uri);
      snapshot = snapshots.take(document.uri, document.text);
    } else if (before) {
      // The first one is slow by its nature and says nothing of what an edit will cost.
      this.#costs.set(document, Date.now() - since);
    }
    this.#kept.set(document, { stamp: this.#stamp(document), snapshot });
    return snapshot;
  }

  #stamp(document: OpenDocument): string {
    return `${document.revision} ${this.#files.revision} ${this.#surroundings.today?.() ?? ''}`;
  }
}

const namesOfLists = ({ lists }: Snapshot): string => lists.map(({ uri }) => uri).join('\n');
