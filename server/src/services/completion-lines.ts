import { findKey, lineStartAt, nextLineAt, plainEnd, unquoted } from '../language/line-parts.ts';
import type { Span } from '../language/spans.ts';
import type { EntryPath } from '../language/syntax-tree.ts';

/** Most lines that are looked at above and below the cursor. */
const MOST_LINES = 2_000;

/** What a line above the cursor opens: a key whose entries follow, or an item of a list. */
interface Opening {
  readonly column: number;
  readonly key?: string;
  readonly item: boolean;
  /** What stands behind the key's colon. */
  readonly value: string;
}

export interface Parents {
  readonly path: EntryPath;
  /** The innermost parent is an item of a list. */
  readonly item: boolean;
  /** Column of the innermost parent's key or dash, -1 at the outermost level, and the start of its line. */
  readonly column: number;
  readonly line: number;
}

/**
 * The keys and items that the content at `content` of the line at `start` stands in, from the lines above and the dashes before it.
 * Undefined where the line stands below an entry that has a value already.
 */
export function parentsOf(text: string, start: number, line: string, content: number): Parents | undefined {
  const found: { opening: Opening; line: number; index: number }[] = [];
  let limit = content;
  // An item in the column of a key belongs to that key all the same.
  let keyLimit = content;
  const take = (opening: Opening, at: number): void => {
    const last = found.at(-1);
    if (opening.item && last?.opening.item && opening.column === last.opening.column) {
      last.index += 1;
    } else if (opening.column < (opening.item ? limit : keyLimit)) {
      found.push({ opening, line: at, index: 0 });
      limit = opening.column;
      keyLimit = opening.item ? opening.column + 1 : opening.column;
    }
  };
  for (const opening of dashesBefore(line, content).reverse()) take(opening, start);
  let at = start;
  for (let count = 0; at > 0 && count < MOST_LINES && (limit > 0 || keyLimit > 0); count++) {
    at = lineStartAt(text, at - 1);
    const end = text.indexOf('\n', at);
    for (const opening of openingsOf(text.slice(at, end < 0 ? text.length : end)).reverse()) take(opening, at);
  }
  const inner = found[0];
  if (inner && !inner.opening.item && inner.opening.value !== '') return undefined;
  const path = found.reverse().map(({ opening, index }) => opening.key ?? String(index));
  return { path, item: inner?.opening.item === true, column: inner?.opening.column ?? -1, line: inner?.line ?? 0 };
}

function dashesBefore(line: string, content: number): Opening[] {
  const dashes: Opening[] = [];
  for (let at = 0; at < content; at++) if (line[at] === '-' && /^[ \t-]*$/.test(line.slice(0, at))) dashes.push({ column: at, item: true, value: '' });
  return dashes;
}

/** Dashes and the key of a line, from the left; nothing for blank lines, comments and text. */
function openingsOf(written: string): Opening[] {
  const line = written.replace(/\r$/, '');
  let at = /^ */.exec(line)?.[0].length ?? 0;
  const openings: Opening[] = [];
  while (/^-(?:[ \t]|$)/.test(line.slice(at))) {
    openings.push({ column: at, item: true, value: '' });
    at += 1 + (/^[ \t]*/.exec(line.slice(at + 1))?.[0].length ?? 0);
  }
  const key = line[at] === '#' ? undefined : findKey(line.slice(at));
  if (key) {
    const behind = line.slice(at + key.colon + 1);
    const value = behind.slice(0, plainEnd(behind, 0)).trim();
    // An anchor before the entries is no value.
    openings.push({ column: at, key: unquoted(key.text), item: false, value: value.startsWith('#') || /^&\S*$/.test(value) ? '' : value });
  }
  return openings;
}

/** The lines that belong to the innermost parent: from its own to the last one that is indented more. */
export function regionOf(text: string, start: number, parents: Parents): Span {
  const from = parents.column < 0 ? 0 : parents.line;
  let end = start;
  for (let at = nextLineAt(text, start), count = 0; at < text.length && count < MOST_LINES; at = nextLineAt(text, at), count++) {
    const line = text.slice(at, nextLineAt(text, at));
    const indent = /^ */.exec(line)?.[0].length ?? 0;
    const blank = /^[ \t]*(?:#.*)?\r?\n?$/.test(line);
    if (!blank && (indent < parents.column || (indent === parents.column && (parents.item || !/^ *-(?:\s|$)/.test(line))))) break;
    end = at;
  }
  return { start: from, end: nextLineAt(text, end) };
}

/** The entries of the map below the innermost parent, whose lines are in `region`, without those of the line at `skipped`; and the column in which they stand. */
export function siblingsIn(text: string, region: Span, parents: Parents, skipped: number): { readonly siblings: ReadonlyMap<string, string>; readonly column: number | undefined } {
  const keys: { column: number; key: string; value: string }[] = [];
  for (let at = region.start; at < region.end; at = nextLineAt(text, at)) {
    if (at === skipped) continue;
    for (const { column, key, value } of openingsOf(text.slice(at, nextLineAt(text, at)).replace(/\n$/, ''))) {
      if (key !== undefined && column > parents.column) keys.push({ column, key, value });
    }
  }
  const column = keys.reduce<number | undefined>((least, entry) => Math.min(least ?? entry.column, entry.column), undefined);
  return { siblings: new Map(keys.filter((entry) => entry.column === column).map((entry) => [entry.key, entry.value])), column };
}
