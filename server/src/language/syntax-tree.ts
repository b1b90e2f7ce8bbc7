import type { Span } from './spans.ts';

/** A value as written. Scalars keep their decoded text only: what they mean is decided by the schema, never by YAML's own guessing. */
export type SyntaxNode = MapNode | ListNode | ScalarNode;

export interface MapNode {
  readonly type: 'map';
  readonly span: Span;
  /** Written in braces. */
  readonly flow: boolean;
  readonly entries: readonly Entry[];
}

export interface ListNode {
  readonly type: 'list';
  readonly span: Span;
  readonly flow: boolean;
  readonly items: readonly (SyntaxNode | null)[];
}

export interface ScalarNode {
  readonly type: 'scalar';
  /** Quotes included. */
  readonly span: Span;
  /** Decoded: quotes and escapes resolved, folded lines joined. */
  readonly text: string;
  readonly style: 'plain' | 'quoted' | 'block';
}

export interface Entry {
  readonly key: ScalarNode;
  readonly value: SyntaxNode | null;
  /** From the key's first character to the value's last. */
  readonly span: Span;
}

/** Where an entry stands in a document, from the top: `['axes', 'lift', 'drive', 'screw']`. List items by index as text. */
export type EntryPath = readonly string[];

export function entryOf(node: SyntaxNode | null | undefined, key: string): Entry | undefined {
  if (node?.type !== 'map') return undefined;
  return node.entries.find((entry) => entry.key.text === key);
}

export function childOf(node: SyntaxNode | null | undefined, key: string): SyntaxNode | null | undefined {
  if (node?.type === 'list') return node.items[Number(key)];
  return entryOf(node, key)?.value;
}

export function nodeAt(root: SyntaxNode | null | undefined, path: EntryPath): SyntaxNode | null | undefined {
  let node = root;
  for (const key of path) {
    node = childOf(node, key);
    if (node === undefined) return undefined;
  }
  return node;
}

/** The entry (key and value) at `path`; undefined for the root and for list items. */
export function entryAt(root: SyntaxNode | null | undefined, path: EntryPath): Entry | undefined {
  const last = path.at(-1);
  return last === undefined ? undefined : entryOf(nodeAt(root, path.slice(0, -1)), last);
}
