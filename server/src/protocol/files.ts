import { keyOf, type Documents } from './documents.ts';

/** Longest part list that is read: above the limit of any text that is analysed. */
export const MOST_BYTES = 2_000_000;

/** Reads a file that the host allows to be read; undefined for one that is not there, not allowed, too large, or no text. */
export type FileSource = (uri: string) => Promise<string | undefined>;

interface Held {
  /** Undefined while it is being read. */
  text: string | null | undefined;
  /** Counts the times that it was said to have changed, so that an older reading that comes in late is dropped. */
  turn: number;
  reading: Promise<void> | undefined;
}

/**
 * The part lists that open machines name. What is open in the editor beats what lies on the disk; what lies on the disk is read
 * once and kept until it is said to have changed.
 */
export class Files {
  readonly #documents: Documents;
  readonly #source: FileSource;
  readonly #held = new Map<string, Held>();
  #revision = 0;

  constructor(documents: Documents, source: FileSource) {
    this.#documents = documents;
    this.#source = source;
  }

  /** Changes whenever some text does that `read` may give. */
  get revision(): number {
    return this.#revision;
  }

  /** The text of a file, if it is open or has been loaded. */
  read(uri: string): string | undefined {
    return this.#documents.get(uri)?.text ?? this.#held.get(keyOf(uri))?.text ?? undefined;
  }

  /** Which of the files have to be loaded before `read` can tell. */
  missing(uris: readonly string[]): readonly string[] {
    return uris.filter((uri) => !this.#documents.get(uri) && this.#held.get(keyOf(uri))?.text === undefined);
  }

  async load(uris: readonly string[]): Promise<void> {
    await Promise.all(uris.map((uri) => this.#load(uri)));
  }

  /** A file has changed, on the disk or in the editor; what was known of it counts no more. */
  changed(uri: string): void {
    this.#revision++;
    const held = this.#held.get(keyOf(uri));
    if (!held) return;
    held.text = undefined;
    held.turn++;
    held.reading = undefined;
  }

  /** Everything may have changed: other folders, another disk. */
  allChanged(): void {
    this.#revision++;
    this.#held.clear();
  }

  /** Keeps only what is still named by somebody. */
  retain(uris: Iterable<string>): void {
    const wanted = new Set([...uris].map(keyOf));
    for (const key of this.#held.keys()) if (!wanted.has(key)) this.#held.delete(key);
  }

  #load(uri: string): Promise<void> {
    const key = keyOf(uri);
    const held: Held = this.#held.get(key) ?? { text: undefined, turn: 0, reading: undefined };
    this.#held.set(key, held);
    held.reading ??= this.#read(uri, held);
    return held.reading;
  }

  async #read(uri: string, held: Held): Promise<void> {
    const { turn } = held;
    let text: string | undefined;
    try {
      text = await this.#source(uri);
    } catch {
      text = undefined; // what cannot be read is not there; the finding on the `uses` entry says so
    }
    if (held.turn !== turn) return;
    held.text = text !== undefined && text.length <= MOST_BYTES ? text : null;
    held.reading = undefined;
    this.#revision++;
  }
}
