/** A column in which keys of a map, or dashes of a list, stand. */
export interface Level {
  readonly column: number;
  readonly list: boolean;
  /** What the last entry in this column has so far. */
  last: 'nothing' | 'value' | 'entries';
  lastKey: string;
}

/** The columns that are open while a text is read line by line. */
export class Levels {
  readonly #open: Level[] = [];

  /** The innermost one. */
  get last(): Level | undefined {
    return this.#open.at(-1);
  }

  get columns(): readonly number[] {
    return this.#open.map((level) => level.column);
  }

  /** Opens again what `closeTo` has closed. */
  reopen(level: Level): void {
    this.#open.push(level);
  }

  /** Leaves the levels that are deeper than `column`; returns the last one left. */
  closeTo(column: number): Level | undefined {
    let closed: Level | undefined;
    while ((this.#open.at(-1)?.column ?? -1) > column) closed = this.#open.pop();
    const level = this.#open.at(-1);
    if (closed && level) level.last = 'entries';
    return closed;
  }

  /** The level of a key or dash in `column`: the one that is open there, or a new one. */
  enter(column: number, list: boolean): Level {
    this.closeTo(column);
    const level = this.#open.at(-1);
    // A list may stand in the column of the key that it belongs to, so both can be open there.
    if (level?.column === column && level.list === list) return level;
    if (level?.column === column && level.list && !list) {
      this.#open.pop();
      return this.enter(column, list);
    }
    if (level) level.last = 'entries';
    const entered: Level = { column, list, last: 'nothing', lastKey: '' };
    this.#open.push(entered);
    return entered;
  }

  /** The innermost level; a first one where none is open. */
  top(): Level {
    return this.#open.at(-1) ?? this.enter(0, false);
  }
}
