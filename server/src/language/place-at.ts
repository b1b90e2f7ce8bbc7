import type { Entry, EntryPath, SyntaxNode } from './syntax-tree.ts';

export interface PlaceAtOffset {
  /** The deepest entry at the offset; for `between`, the map or list in which it lies. */
  readonly path: EntryPath;
  readonly on: 'key' | 'value' | 'between';
}

/** Finds the entry at an offset. Both ends of a key or value belong to it, so that a cursor just behind it still does. */
export function placeAt(root: SyntaxNode | null, offset: number): PlaceAtOffset {
  const path: string[] = [];
  let node = root;
  for (;;) {
    if (node === null) return { path, on: 'between' };
    if (node.type === 'scalar') return { path, on: 'value' };
    if (node.type === 'list') {
      const index = node.items.findIndex((item) => item !== null && holds(item, offset));
      if (index < 0) return { path, on: 'between' };
      path.push(String(index));
      node = node.items[index] ?? null;
      continue;
    }
    const entry = entryHolding(node.entries, offset);
    if (!entry) return { path, on: 'between' };
    const onKey = offset >= entry.key.span.start && offset <= entry.key.span.end;
    if (!onKey && (entry.value === null || !holds(entry.value, offset))) {
      // Behind the colon of an entry without a value, or on an alias: the value's place. Elsewhere the offset is between entries.
      return offset > entry.key.span.end && offset <= entry.span.end ? { path: [...path, entry.key.text], on: 'value' } : { path, on: 'between' };
    }
    path.push(entry.key.text);
    if (onKey) return { path, on: 'key' };
    node = entry.value;
  }
}

function holds(node: SyntaxNode, offset: number): boolean {
  return offset >= node.span.start && offset <= node.span.end;
}

/** The last entry that begins at or before the offset, where it reaches that far. */
function entryHolding(entries: readonly Entry[], offset: number): Entry | undefined {
  let low = 0;
  let high = entries.length;
  while (low < high) {
    const middle = (low + high) >> 1;
    if ((entries[middle]?.key.span.start ?? Infinity) <= offset) low = middle + 1;
    else high = middle;
  }
  const entry = entries[low - 1];
  if (!entry) return undefined;
  const end = Math.max(entry.span.end, entry.key.span.end);
  return offset <= end ? entry : undefined;
}
