import { scalarText, setEntry } from './edit-entry.ts';
import { lineEnd, lineStart } from './edit-lines.ts';
import type { TextEdit } from './spans.ts';
import { entryOf, type ListNode, type SyntaxNode } from './syntax-tree.ts';

interface Source {
  readonly text: string;
  readonly root: SyntaxNode | null;
}

/**
 * The edits that put a map of texts behind the last item of the list under a key of the outermost map, in the style in which the list is
 * written; a key that is not there goes to the end. Undefined where something else stands there.
 */
export function appendItem(source: Source, key: string, item: Readonly<Record<string, string>>): readonly TextEdit[] | undefined {
  const { text, root } = source;
  if (root?.type !== 'map') return undefined;
  const entry = entryOf(root, key);
  if (!entry) return root.flow ? setEntry(source, [key], [item]) : atTheEnd(text, root.entries.at(-1)?.span.end, key, item);
  const list = entry.value;
  if (list === null) return root.flow ? setEntry(source, [key], [item]) : belowKey(text, entry.key.span.end, item);
  if (list.type !== 'list') return undefined;
  const last = list.items.at(-1);
  if (list.flow || (last?.type === 'map' && last.flow)) return setEntry(source, [key, String(list.items.length)], item);
  return last ? behind(text, list, last, item) : undefined;
}

/** The lines of an item, the first behind a dash. */
function itemLines(item: Readonly<Record<string, string>>, indent: string, blanks: string): readonly string[] {
  return Object.entries(item).map(([name, value], index) => `${indent}${index === 0 ? `-${blanks}` : ` ${' '.repeat(blanks.length)}`}${scalarText(name, false)}: ${scalarText(value, false)}`);
}

function behind(text: string, list: ListNode, last: SyntaxNode, item: Readonly<Record<string, string>>): readonly TextEdit[] | undefined {
  const dash = text.lastIndexOf('-', last.span.start - 1);
  const line = lineStart(text, dash);
  const indent = text.slice(line, dash);
  const blanks = text.slice(dash + 1, last.span.start);
  // The item of an alias stands elsewhere; a dash behind a dash, or with the item on the next line, is left alone.
  if (dash < list.span.start || indent.trim() !== '' || !/^ +$/.test(blanks)) return undefined;
  return insertion(text, last.span.end, itemLines(item, indent, blanks));
}

function belowKey(text: string, end: number, item: Readonly<Record<string, string>>): readonly TextEdit[] | undefined {
  const rest = text.slice(end, lineEnd(text, end));
  return /^[ \t]*:[ \t]*(?:#.*)?$/.test(rest) ? insertion(text, end, itemLines(item, '  ', ' ')) : undefined;
}

function atTheEnd(text: string, end: number | undefined, key: string, item: Readonly<Record<string, string>>): readonly TextEdit[] | undefined {
  if (end === undefined) return undefined;
  // Sections stand apart where the text sets any of them apart.
  const apart = /\n[ \t]*\r?\n[^\s#]/.test(text.slice(0, end)) ? [''] : [];
  return insertion(text, end, [...apart, `${key}:`, ...itemLines(item, '  ', ' ')]);
}

/** Lines below the line on which something ends. */
function insertion(text: string, end: number, lines: readonly string[]): readonly TextEdit[] {
  let last = end;
  while (last > 0 && /\s/.test(text[last - 1] ?? '')) last--;
  const at = lineEnd(text, last);
  const newline = text.includes('\r\n') ? '\r\n' : '\n';
  return [{ span: { start: at, end: at }, text: lines.map((line) => newline + line).join('') }];
}
