/** Where progress is drawn: the error output of a terminal. */
export interface ProgressPlace {
  readonly write: (text: string) => void;
  readonly columns: number;
}

/** Files from which on a bar is worth drawing. */
export const MANY_FILES = 20;

const WIDTH = 30;

/**
 * A bar that tells how far a run is. Everything else that is written meanwhile goes through `around`, so that the bar never stands in the
 * middle of it and leaves no trace.
 */
export class Progress {
  #done = 0;
  #drawn = '';

  constructor(
    readonly total: number,
    readonly place: ProgressPlace | undefined,
  ) {}

  step(): void {
    this.#done++;
    this.#draw();
  }

  around<T>(write: () => T): T {
    this.clear();
    const result = write();
    this.#draw();
    return result;
  }

  clear(): void {
    if (this.#drawn !== '') this.place?.write('\r\u001b[K');
    this.#drawn = '';
  }

  #draw(): void {
    const { place, total } = this;
    if (!place || total <= MANY_FILES || this.#done >= total) return this.clear();
    const full = Math.floor((this.#done / total) * WIDTH);
    const words = `${this.#done} of ${total} files`;
    const bar = `[${'#'.repeat(full)}${' '.repeat(WIDTH - full)}] ${words}`;
    const text = bar.length < place.columns ? bar : words.slice(0, Math.max(0, place.columns - 1));
    if (text === this.#drawn) return;
    place.write(`\r${text}\u001b[K`);
    this.#drawn = text;
  }
}
