import { removeEntry } from './edit-entry.ts';
import { lineEnd, lineStart } from './edit-lines.ts';
import type { TextEdit } from './spans.ts';
import { nodeAt, type EntryPath, type ListNode, type SyntaxNode } from './syntax-tree.ts';

interface Source {
  readonly text: string;
  readonly root: SyntaxNode | null;
}

/**
 * The edits that take an item out of a list, with its dash and lines, or with its comma; comments between items stay. A list that would be
 * left empty goes with its key. Undefined where there is no such item, or it shares its lines with something else.
 */
export function removeItem(source: Source, path: EntryPath): readonly TextEdit[] | undefined {
  const list = nodeAt(source.root, path.slice(0, -1));
  const index = Number(path.at(-1));
  const item = list?.type === 'list' ? list.items[index] : undefined;
  if (list?.type !== 'list' || !item) return undefined;
  if (list.items.length === 1) return removeEntry(source, path.slice(0, -1));
  return list.flow ? fromFlow(source.text, list, index, item) : fromBlock(source.text, list, index, item);
}

function fromFlow(text: string, list: ListNode, index: number, item: SyntaxNode): readonly TextEdit[] | undefined {
  const next = list.items[index + 1];
  const before = list.items[index - 1];
  const span = next ? { start: item.span.start, end: next.span.start } : before ? { start: before.span.end, end: item.span.end } : undefined;
  // A comment between the two may be about either.
  return span && !text.slice(span.start, span.end).replace(text.slice(item.span.start, item.span.end), '').includes('#') ? [{ span, text: '' }] : undefined;
}

function fromBlock(text: string, list: ListNode, index: number, item: SyntaxNode): readonly TextEdit[] | undefined {
  const dash = text.lastIndexOf('-', item.span.start - 1);
  const start = lineStart(text, dash);
  // What an alias stands for is written elsewhere; a list behind the dash of another one shares its line.
  if (dash < list.span.start || text.slice(start, dash).trim() !== '' || text.slice(dash + 1, item.span.start).includes('\n')) return undefined;
  const last = lineEnd(text, Math.max(item.span.end - 1, item.span.start));
  const newline = text.startsWith('\r\n', last) ? 2 : last < text.length ? 1 : 0;
  if (newline > 0) return [{ span: { start, end: last + newline }, text: '' }];
  const before = start > 0 ? start - (text[start - 2] === '\r' ? 2 : 1) : start;
  return [{ span: { start: before, end: last }, text: '' }];
}
