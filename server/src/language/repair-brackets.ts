import type { Problem } from './problems.ts';
import type { ShadowEdit } from './shadow-text.ts';
import { bracketOfOtherKind, bracketOpen, bracketStray, quoteOpen, spaceAfterColonMissing } from './slip-messages.ts';

/** Where repairs are gathered. */
export interface Repairs {
  readonly text: string;
  readonly edits: ShadowEdit[];
  /** End of the line on which `from` lies, its line end excluded. */
  lineEnd(from: number): number;
  report(problem: Problem): void;
}

/** A line that looks like an entry of its own, which no quoted text or bracket above it is meant to swallow. */
const entryLine = /^[ \t]*(?:- +)?[A-Za-z][\w -]*:(?:[ \t]|\r?$)/;

/**
 * The end of the quoted text that begins at `at`, behind a key in `column`: just after its closing quote, or, where that is missing,
 * the place where it should be: the end of its first line, unless the lines below clearly go on with the text.
 */
export function closingQuote(repairs: Repairs, at: number, column: number): { readonly closed: boolean; readonly at: number } {
  const { text } = repairs;
  const quote = text[at];
  let end = repairs.lineEnd(at);
  for (let index = at + 1; index < text.length; index++) {
    const sign = text[index];
    if (sign === '\\' && quote === '"') {
      index += 1;
    } else if (sign === quote) {
      if (quote === "'" && text[index + 1] === "'") index += 1;
      else return { closed: true, at: index + 1 };
    } else if (sign === '\n') {
      const line = text.slice(index + 1, repairs.lineEnd(index + 1));
      const blank = line.trim() === '';
      const indent = line.length - line.trimStart().length;
      if (!blank && (indent <= column || entryLine.test(line))) break;
      if (!blank) end = repairs.lineEnd(index + 1);
    }
  }
  // A text that goes on over several lines is kept whole where the lines below do not look like entries.
  return { closed: false, at: at + 1 + text.slice(at + 1, end).trimEnd().length };
}

const closers: Readonly<Record<string, string>> = { '{': '}', '[': ']' };

/** Reads maps and lists in brackets, and closes those that were left open. */
export class FlowRepair {
  readonly #repairs: Repairs;
  /** A quote that was not closed, until it is known whether the brackets around it are open as well. */
  #openQuote: { readonly start: number; readonly end: number } | undefined;

  constructor(repairs: Repairs) {
    this.#repairs = repairs;
  }

  /** Reads from the bracket at `from`, behind a key in `column`, and returns the offset after its end. */
  read(from: number, column: number): number {
    this.#openQuote = undefined;
    const end = this.#read(from, column);
    this.#reportQuote('');
    return end;
  }

  #read(from: number, column: number): number {
    const { text } = this.#repairs;
    const open: number[] = [];
    let contentEnd = from;
    let tokenStart = true;
    for (let at = from; at < text.length; at++) {
      const sign = text[at] ?? '';
      if (sign === '\n') {
        if (this.#ended(at + 1, column)) return this.#close(open, contentEnd);
        tokenStart = true;
        continue;
      }
      if (sign === ' ' || sign === '\t' || sign === '\r') continue;
      if (sign === '#' && /\s/.test(text[at - 1] ?? ' ')) {
        at = this.#repairs.lineEnd(at) - 1;
        continue;
      }
      contentEnd = at + 1;
      if (sign === '{' || sign === '[') {
        open.push(at);
        tokenStart = true;
      } else if (sign === '}' || sign === ']') {
        this.#closeWith(open, sign, at);
        if (open.length === 0) return at + 1;
        tokenStart = false;
      } else if (sign === ',') {
        tokenStart = true;
      } else if (tokenStart && (sign === '"' || sign === "'")) {
        at = this.#quoted(at, column) - 1;
        contentEnd = at + 1;
        tokenStart = false;
      } else if (sign === ':' && /[\s,[\]{}]/.test(text[at + 1] ?? ' ')) {
        tokenStart = true;
      } else if (tokenStart) {
        at = this.#plain(at, text[open.at(-1) ?? from] === '{') - 1;
        contentEnd = at + 1;
        tokenStart = false;
      }
    }
    return this.#close(open, contentEnd);
  }

  /** Whether the line at `start` no longer belongs to the brackets: it stands no further right than their key, and does not close them. */
  #ended(start: number, column: number): boolean {
    const { text } = this.#repairs;
    const line = text.slice(start, this.#repairs.lineEnd(start));
    const content = line.trimStart();
    if (content === '' || content.startsWith('#')) return false;
    if (line.length - content.length > column) return false;
    return !(content.startsWith('}') || content.startsWith(']'));
  }

  #quoted(at: number, column: number): number {
    const { text } = this.#repairs;
    const close = closingQuote(this.#repairs, at, column);
    if (close.closed) return close.at;
    const quote = text[at] ?? '"';
    const rest = /^[^,}\]\n]*/.exec(text.slice(at + 1))?.[0].trimEnd() ?? '';
    const end = at + 1 + rest.length;
    this.#reportQuote('');
    this.#openQuote = { start: at, end };
    this.#repairs.edits.push({ at: end, remove: 0, insert: quote });
    return end;
  }

  /** Reports the open quote, if there is one; `closers` close the brackets around it, which the same slip left open. */
  #reportQuote(closers: string): void {
    if (!this.#openQuote) return;
    const { start, end } = this.#openQuote;
    this.#repairs.report(quoteOpen(this.#repairs.text[start] ?? '"', { start, end: start + 1 }, end, closers));
    this.#openQuote = undefined;
  }

  /** Reads a plain text in brackets up to where it ends, and parts a key from the value that was joined to it. */
  #plain(at: number, inMap: boolean): number {
    const { text } = this.#repairs;
    const word = /^(?:[^\s,[\]{}:#]|:(?![\s,[\]{}]|$)|(?<=\S)#|[ \t]+(?![\s,[\]{}:#]|$))+/.exec(text.slice(at, this.#repairs.lineEnd(at)))?.[0] ?? text[at] ?? '';
    const joined = /^(?<key>[A-Za-z][\w-]*):(?<value>[^\s/:].*)$/.exec(word)?.groups;
    const followedByColon = /^[ \t]*:/.test(text.slice(at + word.length, at + word.length + 80));
    if (inMap && joined?.['key'] !== undefined && joined['value'] !== undefined && !followedByColon) {
      const colonEnd = at + joined['key'].length + 1;
      this.#repairs.report(spaceAfterColonMissing(joined['key'], joined['value'], colonEnd, { start: at, end: at + word.length }));
      this.#repairs.edits.push({ at: colonEnd, remove: 0, insert: ' ' });
    }
    return at + Math.max(1, word.length);
  }

  #closeWith(open: number[], sign: string, at: number): void {
    const { text, edits } = this.#repairs;
    const inner = open.at(-1);
    if (inner === undefined) return;
    const due = closers[text[inner] ?? ''] ?? '}';
    const rest = text.slice(at + 1, this.#repairs.lineEnd(at));
    if (due === sign) {
      open.pop();
    } else if (!rest.includes(sign) && open.some((bracket) => closers[text[bracket] ?? ''] === sign)) {
      // An outer bracket is closed: the inner ones were forgotten.
      const from = open.findLastIndex((bracket) => closers[text[bracket] ?? ''] === sign);
      this.#insertClosers(open.splice(from + 1), at);
      open.pop();
    } else if (rest.includes(due)) {
      // The right one follows: this one is too many.
      this.#repairs.report(bracketStray(sign, { start: at, end: at + 1 }));
      edits.push({ at, remove: 1, insert: ' ' });
    } else {
      open.pop();
      this.#repairs.report(bracketOfOtherKind(sign, text[inner] ?? '', due, { start: at, end: at + 1 }));
      edits.push({ at, remove: 1, insert: due });
    }
  }

  #close(open: number[], at: number): number {
    this.#insertClosers(open.splice(0), at);
    return at;
  }

  /** Closes brackets that were left open, the innermost last in the list; one slip, reported at the outermost. */
  #insertClosers(open: readonly number[], at: number): void {
    const { text, edits } = this.#repairs;
    const [outermost] = open;
    if (outermost === undefined) return;
    const missing = [...open].reverse().map((bracket) => closers[text[bracket] ?? ''] ?? '}').join('');
    const before = text.slice(outermost, at).trimEnd().length + outermost;
    edits.push({ at: before, remove: 0, insert: missing });
    if (this.#openQuote?.end === before) return this.#reportQuote(missing);
    this.#repairs.report(bracketOpen(text[outermost] ?? '{', missing, { start: outermost, end: outermost + 1 }, before));
  }
}
