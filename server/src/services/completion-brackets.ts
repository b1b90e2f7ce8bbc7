import { findKey, lineEndAt, lineStartAt, unquoted } from '../language/line-parts.ts';
import type { EntryPath } from '../language/syntax-tree.ts';
import type { CompletionContext } from './completion-context.ts';
import { parentsOf } from './completion-lines.ts';

/** How far above the cursor an open bracket is looked for. */
const MOST_LINES = 200;

/** What is due at an offset in braces or brackets; undefined where the offset is in none. */
export function flowContext(text: string, offset: number): CompletionContext | undefined {
  for (const base of basesAbove(text, offset)) {
    const walk = new FlowWalk(text, base, offset);
    const context = walk.context();
    if (context) return context;
  }
  return undefined;
}

interface Base {
  /** The first bracket of the value. */
  readonly bracket: number;
  /** The entry or item whose value it is. */
  readonly path: EntryPath;
  /** Indentation of its line: what is in brackets stands further right. */
  readonly indent: number;
}

/** Values in brackets that may reach to the offset: of the cursor's line, and of lines above that are indented less, the outermost first. */
function basesAbove(text: string, offset: number): Base[] {
  const bases: Base[] = [];
  let column = Number.POSITIVE_INFINITY;
  let start = lineStartAt(text, offset);
  for (let count = 0; count < MOST_LINES; count++) {
    const line = text.slice(start, lineEndAt(text, start));
    const indent = line.length - line.trimStart().length;
    const first = column === Number.POSITIVE_INFINITY;
    if (line.trim() !== '' && (first || indent < column)) {
      const base = baseOf(text, start, line);
      if (base && base.bracket < offset) bases.unshift(base);
      column = first && line.trimStart().startsWith('}') ? indent + 1 : indent;
    } else if (first) {
      // On a blank line the cursor's own column does not matter: any line above may hold the bracket.
      column = Math.max(1, offset - start);
    }
    if (start === 0 || column === 0) break;
    start = lineStartAt(text, start - 1);
  }
  return bases;
}

/** The value in brackets that begins on a line, behind its dashes and its key. */
function baseOf(text: string, start: number, line: string): Base | undefined {
  const content = /^[ \t]*(?:-[ \t]+)*/.exec(line)?.[0].length ?? 0;
  const rest = line.slice(content);
  const key = findKey(rest);
  const behind = key ? key.colon + 1 : 0;
  const value = /^[ \t]*(?:[&!]\S*[ \t]+)?(?=[{[])/.exec(rest.slice(behind));
  if (!value) return undefined;
  const parents = parentsOf(text, start, line, content);
  if (!parents) return undefined;
  return { bracket: start + content + behind + value[0].length, path: key ? [...parents.path, unquoted(key.text)] : parents.path, indent: line.length - line.trimStart().length };
}

/** A map or list in brackets that is open at some point of the walk. */
interface Frame {
  readonly list: boolean;
  /** Entries of a map: inline values by key. */
  readonly entries: Map<string, string>;
  index: number;
  /** The key whose value is being read. */
  key: string | undefined;
  /** Where the token being read began, and its text so far. */
  tokenStart: number;
}

/** Reads from a bracket to the offset, and on to the end of the map there, keeping account of what is open. */
class FlowWalk {
  readonly #text: string;
  readonly #offset: number;
  readonly #base: Base;
  readonly #frames: Frame[] = [];
  #at: number;

  constructor(text: string, base: Base, offset: number) {
    this.#text = text;
    this.#offset = offset;
    this.#base = base;
    this.#at = base.bracket;
  }

  context(): CompletionContext | undefined {
    while (this.#at < this.#offset) {
      this.#step(this.#offset);
      if (this.#frames.length === 0) return undefined;
    }
    const frame = this.#frames.at(-1);
    if (!frame) return undefined;
    const path = [...this.#base.path, ...this.#frames.slice(0, -1).map((outer) => (outer.list ? String(outer.index) : (outer.key ?? '')))];
    const start = this.#skipBlanks(frame.tokenStart);
    const token = { start: Math.min(start, this.#offset), end: this.#tokenEnd() };
    const due = frame.list || frame.key !== undefined ? 'value' : 'key';
    const own = frame.list ? String(frame.index) : frame.key;
    const colonFollows = /^[ \t]*:/.test(this.#text.slice(token.end, token.end + 80));
    if (due === 'key') this.#readOn();
    return {
      due, path: due === 'value' && own !== undefined ? [...path, own] : path, siblings: frame.entries, token, flow: true, colonFollows, column: 0, inPlace: true,
    };
  }

  /** One sign, or one quoted text, further. */
  #step(limit: number): void {
    const sign = this.#text[this.#at] ?? '';
    const frame = this.#frames.at(-1);
    this.#at += 1;
    if (sign === '{' || sign === '[') {
      this.#frames.push({ list: sign === '[', entries: new Map(), index: 0, key: undefined, tokenStart: this.#at });
    } else if (!frame) {
      return;
    } else if (sign === '}' || sign === ']') {
      this.#endEntry(frame, this.#at - 1);
      this.#frames.pop();
    } else if (sign === ',') {
      this.#endEntry(frame, this.#at - 1);
      frame.index += 1;
      frame.key = undefined;
      frame.tokenStart = this.#at;
    } else if (sign === ':' && frame.key === undefined && !frame.list && /[\s,}]/.test(this.#text[this.#at] ?? ' ')) {
      frame.key = unquoted(this.#text.slice(frame.tokenStart, this.#at - 1).trim());
      frame.tokenStart = this.#at;
    } else if ((sign === '"' || sign === "'") && this.#text.slice(frame.tokenStart, this.#at - 1).trim() === '') {
      const close = this.#text.indexOf(sign, this.#at);
      const end = close < 0 || close > lineEndAt(this.#text, this.#at) ? limit : close + 1;
      this.#at = Math.min(limit, end);
    } else if (sign === '#' && /\s/.test(this.#text[this.#at - 2] ?? ' ')) {
      this.#at = Math.min(limit, lineEndAt(this.#text, this.#at));
    }
  }

  #endEntry(frame: Frame, end: number): void {
    if (frame.list) return;
    const written = this.#text.slice(frame.tokenStart, end).trim();
    if (frame.key !== undefined) frame.entries.set(frame.key, unquoted(written));
    else if (written !== '' && frame.tokenStart > this.#offset) frame.entries.set(unquoted(written), '');
  }

  /** Reads the entries behind the cursor, up to the end of its map, for the keys that are there. */
  #readOn(): void {
    const depth = this.#frames.length;
    const end = Math.min(this.#offset + 2_000, this.#endOfFlow());
    const frame = this.#frames.at(-1);
    // What is being typed is no entry yet: begin behind the next comma.
    while (this.#at < end && !/[,}\]]/.test(this.#text[this.#at] ?? '')) this.#at += 1;
    if (!frame || this.#at >= end || this.#text[this.#at] !== ',') return;
    this.#at += 1;
    frame.tokenStart = this.#at;
    while (this.#at < end && this.#frames.length >= depth) this.#step(end);
    if (this.#frames.length >= depth && this.#frames.at(-1) === frame) this.#endEntry(frame, this.#at);
  }

  #skipBlanks(from: number): number {
    let at = from;
    while (at < this.#offset && /\s/.test(this.#text[at] ?? '')) at += 1;
    return /["']/.test(this.#text[at] ?? '') && at < this.#offset ? at + 1 : at;
  }

  /** Where the key or value at the cursor ends. */
  #tokenEnd(): number {
    const rest = /^[^,\]}{[\r\n"':#]*/.exec(this.#text.slice(this.#offset, lineEndAt(this.#text, this.#offset)))?.[0] ?? '';
    return this.#offset + rest.trimEnd().length;
  }

  /** Where what is in brackets ends at the latest: at the next line that stands no further right than the line of its first bracket. */
  #endOfFlow(): number {
    for (let at = this.#text.indexOf('\n', this.#offset); at >= 0; at = this.#text.indexOf('\n', at + 1)) {
      const line = this.#text.slice(at + 1, lineEndAt(this.#text, at + 1));
      const content = line.trimStart();
      if (content !== '' && line.length - content.length <= this.#base.indent && !/^[}\]]/.test(content)) return at;
    }
    return this.#text.length;
  }
}
