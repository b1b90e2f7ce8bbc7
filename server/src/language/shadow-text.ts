import type { Span } from './spans.ts';

/** One difference between a shadow and the text that was written: at `at`, `remove` characters gave way to `insert`. */
export interface ShadowEdit {
  readonly at: number;
  readonly remove: number;
  readonly insert: string;
}

/** A repaired copy of a text, from which every position leads back to the text as it was written. */
export class ShadowText {
  readonly text: string;
  readonly written: string;
  readonly #edits: readonly (ShadowEdit & { readonly shadowAt: number })[];

  constructor(written: string, edits: readonly ShadowEdit[]) {
    this.written = written;
    const ordered = [...edits].sort((a, b) => a.at - b.at);
    const placed: (ShadowEdit & { shadowAt: number })[] = [];
    let text = '';
    let from = 0;
    for (const edit of ordered) {
      text += written.slice(from, edit.at);
      placed.push({ ...edit, shadowAt: text.length });
      text += edit.insert;
      from = edit.at + edit.remove;
    }
    this.text = text + written.slice(from);
    this.#edits = placed;
  }

  /** The position in the written text for a position in the shadow. What was inserted has no place of its own: it counts as where it was put. */
  toWritten(offset: number): number {
    let low = 0;
    let high = this.#edits.length;
    while (low < high) {
      const middle = (low + high) >> 1;
      if ((this.#edits[middle]?.shadowAt ?? Infinity) < offset) low = middle + 1;
      else high = middle;
    }
    const edit = this.#edits[low - 1];
    if (!edit) return offset;
    const beyond = offset - edit.shadowAt - edit.insert.length;
    return beyond >= 0 ? edit.at + edit.remove + beyond : edit.at;
  }

  spanToWritten(span: Span): Span {
    const start = this.toWritten(span.start);
    return { start, end: Math.max(start, this.toWritten(span.end)) };
  }
}
