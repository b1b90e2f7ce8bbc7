import { findKey, lineEndAt, lineStartAt, plainEnd, unquoted } from '../language/line-parts.ts';
import type { Span } from '../language/spans.ts';
import type { EntryPath } from '../language/syntax-tree.ts';
import { flowContext } from './completion-brackets.ts';
import { parentsOf, regionOf, siblingsIn } from './completion-lines.ts';

/** What is due at the cursor, told from the lines and their indentation alone: the tree of a half-typed text cannot be trusted there. */
export interface CompletionContext {
  /** A key of the map at `path`; the value of the entry, or the item, at `path`; or the text itself, in comments and blocks of text. */
  readonly due: 'key' | 'value' | 'nothing';
  readonly path: EntryPath;
  /** Other entries of the map in which a key is due: their inline values by key. */
  readonly siblings: ReadonlyMap<string, string>;
  /** The token at the cursor: the key, or the whole value. */
  readonly token: Span;
  /** In braces or brackets. */
  readonly flow: boolean;
  /** Whether the key at the cursor has its colon already. */
  readonly colonFollows: boolean;
  /** The column in which keys of this map stand; of the cursor's line where there are none yet. */
  readonly column: number;
  /** The columns in which the map's other keys stand agree with the cursor's. */
  readonly inPlace: boolean;
}

const nothing = (offset: number): CompletionContext => ({
  due: 'nothing', path: [], siblings: new Map(), token: { start: offset, end: offset }, flow: false, colonFollows: false, column: 0, inPlace: false,
});

/** What is due at an offset. Never throws; looks at 2,000 lines above the cursor at most. */
export function contextAt(text: string, offset: number): CompletionContext {
  const start = lineStartAt(text, offset);
  const end = lineEndAt(text, offset);
  const line = text.slice(start, end);
  const cursor = offset - start;
  if (inComment(line, cursor) || inBlockOfText(text, start, line)) return nothing(offset);
  const flow = flowContext(text, offset);
  if (flow) return flow;
  const content = contentOf(line, cursor);
  // Before what stands on the line, or right behind a dash, nothing can be typed that would be read.
  if (cursor < content || line[content - 1] === '-') return nothing(offset);
  const parents = parentsOf(text, start, line, content);
  if (!parents) return nothing(offset);
  const key = findKey(line.slice(content));
  if (key && cursor > content + key.colon) return valueContext(text, { start, end, content, cursor, line }, [...parents.path, unquoted(key.text)], content + key.colon + 1);
  const region = regionOf(text, start, parents);
  const { siblings, column } = siblingsIn(text, region, parents, start);
  const word = /^[^\s:#]*/.exec(line.slice(content))?.[0] ?? '';
  // Behind a word and a blank nothing is due: a colon is.
  if (key === undefined && cursor > content + word.length) {
    const whole = line.slice(content, plainEnd(line, 0));
    if (parents.item && !whole.includes(':')) return valueContext(text, { start, end, content, cursor, line }, parents.path, content);
    return nothing(offset);
  }
  return {
    due: 'key',
    path: parents.path,
    siblings,
    token: { start: start + content, end: start + content + (key && unquoted(key.text) !== '' ? key.text.length : word.length) },
    flow: false,
    colonFollows: key !== undefined,
    column: content,
    inPlace: column === undefined || column === content,
  };
}

interface CursorLine {
  readonly start: number;
  readonly end: number;
  readonly content: number;
  readonly cursor: number;
  readonly line: string;
}

function valueContext(text: string, at: CursorLine, path: EntryPath, from: number): CompletionContext {
  let valueStart = from;
  while (valueStart < at.cursor && (at.line[valueStart] === ' ' || at.line[valueStart] === '\t')) valueStart += 1;
  const quote = /^["']/.exec(at.line.slice(valueStart))?.[0];
  if (quote !== undefined) valueStart += 1;
  const rest = at.line.slice(valueStart);
  const closing = quote === undefined ? -1 : rest.indexOf(quote);
  const length = closing >= 0 ? closing : plainEnd(rest, 0);
  const end = Math.max(at.cursor, valueStart + length);
  return {
    due: 'value', path, siblings: new Map(), token: { start: at.start + Math.min(valueStart, at.cursor), end: at.start + end }, flow: false, colonFollows: false, column: at.content, inPlace: true,
  };
}

/** Where the content of a line begins, behind blanks and dashes; on a blank line, or before the content, at the cursor. */
function contentOf(line: string, cursor: number): number {
  let at = 0;
  for (;;) {
    const blanks = /^[ \t]*/.exec(line.slice(at))?.[0].length ?? 0;
    if (at + blanks >= cursor) return line.slice(at + blanks) === '' ? Math.max(cursor, at) : at + blanks;
    at += blanks;
    if (!/^-(?:[ \t]|$)/.test(line.slice(at))) return at;
    if (cursor <= at) return at;
    at += 1;
  }
}

function inComment(line: string, cursor: number): boolean {
  const comment = /(?:^|[ \t])#/.exec(line);
  return comment !== null && cursor > comment.index + comment[0].length - 1 && !/["']/.test(line.slice(0, comment.index));
}

/** Whether the line belongs to a block of text that a `|` or `>` above began. */
function inBlockOfText(text: string, start: number, line: string): boolean {
  let column = /^ */.exec(line)?.[0].length ?? 0;
  if (line.trim() === '') column = Math.max(column, 1);
  let at = start;
  for (let count = 0; at > 0 && count < 2_000 && column > 0; count++) {
    const previous = lineStartAt(text, at - 1);
    const above = text.slice(previous, lineEndAt(text, previous));
    const indent = above.length - above.trimStart().length;
    if (above.trim() !== '' && indent < column) {
      if (/:[ \t]+[|>][-+0-9]*[ \t]*(?:#.*)?$/.test(above)) return true;
      column = indent;
    }
    at = previous;
  }
  return false;
}
