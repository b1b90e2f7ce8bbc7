/** A place as people count: both from 1, columns in UTF-16 units as editors count them. */
export interface TextPlace {
  readonly line: number;
  readonly column: number;
}

/** The lines of a text. They end with LF, CR LF or a lone CR; no line end belongs to its line. */
export class TextLines {
  readonly #starts: number[] = [0];
  readonly #ends: number[] = [];

  constructor(readonly text: string) {
    for (const match of text.matchAll(/\r\n|\n|\r/g)) {
      this.#ends.push(match.index);
      this.#starts.push(match.index + match[0].length);
    }
    this.#ends.push(text.length);
  }

  /** The place of an offset; one inside a line end counts as the end of its line. */
  placeOf(offset: number): TextPlace {
    let low = 0;
    let high = this.#starts.length - 1;
    while (low < high) {
      const middle = (low + high + 1) >> 1;
      if ((this.#starts[middle] ?? 0) <= offset) low = middle;
      else high = middle - 1;
    }
    const start = this.#starts[low] ?? 0;
    return { line: low + 1, column: Math.max(0, Math.min(offset, this.#ends[low] ?? offset) - start) + 1 };
  }

  /** The text of a line, counted from 1. */
  line(number: number): string {
    return this.text.slice(this.#starts[number - 1], this.#ends[number - 1]);
  }
}
