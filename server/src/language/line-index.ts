/** A place in a text as editors count: both from 0, `character` in UTF-16 code units. */
export interface LinePosition {
  readonly line: number;
  readonly character: number;
}

/** Translates between offsets and line positions. Lines end with LF, CR LF, or a lone CR; none of these belongs to its line. */
export class LineIndex {
  readonly #length: number;
  /** Offset of the first character of each line. */
  readonly #starts: readonly number[];
  /** Offset just after the last character of each line, line end excluded. */
  readonly #ends: readonly number[];

  constructor(text: string) {
    this.#length = text.length;
    const starts = [0];
    const ends: number[] = [];
    const lineEnd = /\r\n|\n|\r/g;
    for (let match = lineEnd.exec(text); match !== null; match = lineEnd.exec(text)) {
      ends.push(match.index);
      starts.push(match.index + match[0].length);
    }
    ends.push(text.length);
    this.#starts = starts;
    this.#ends = ends;
  }

  get lineCount(): number {
    return this.#starts.length;
  }

  /** The position of `offset`; offsets outside the text are clamped, an offset inside a line end counts as the end of its line. */
  positionAt(offset: number): LinePosition {
    const clamped = Math.max(0, Math.min(offset, this.#length));
    const line = this.lineAt(clamped);
    const character = Math.min(clamped, this.lineEnd(line)) - this.lineStart(line);
    return { line, character };
  }

  /** The offset of a position; a character beyond the end of its line counts as that end, a line beyond the last as the end of the text. */
  offsetAt(position: LinePosition): number {
    if (position.line < 0) return 0;
    if (position.line >= this.lineCount) return this.#length;
    const start = this.lineStart(position.line);
    return Math.min(start + Math.max(0, position.character), this.lineEnd(position.line));
  }

  /** The number, from 0, of the line on which `offset` lies. */
  lineAt(offset: number): number {
    let low = 0;
    let high = this.#starts.length - 1;
    while (low < high) {
      const middle = (low + high + 1) >> 1;
      if (this.lineStart(middle) <= offset) low = middle;
      else high = middle - 1;
    }
    return low;
  }

  /** Offset of the first character of a line. */
  lineStart(line: number): number {
    return this.#starts[line] ?? this.#length;
  }

  /** Offset just after the last character of a line, its line end excluded. */
  lineEnd(line: number): number {
    return this.#ends[line] ?? this.#length;
  }
}
