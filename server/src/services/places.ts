import type { Span } from '../language/spans.ts';
import { entryAt, nodeAt, type EntryPath, type SyntaxNode } from '../language/syntax-tree.ts';
import type { Place } from '../machine/origin.ts';

/** The span of what is written at a path: the value where it is a scalar, else the key; undefined where nothing is written. */
export function spanOfSource(document: { readonly root: SyntaxNode | null }, path: EntryPath): Span | undefined {
  const node = nodeAt(document.root, path);
  if (node?.type === 'scalar') return node.span;
  return entryAt(document.root, path)?.key.span ?? node?.span;
}

export const samePath = (a: EntryPath, b: EntryPath): boolean => a.length === b.length && a.every((key, index) => key === b[index]);

export const samePlace = (a: Place, b: Place): boolean => a.uri === b.uri && samePath(a.path, b.path);

/** Whether `inner` lies at or below `outer`. */
export const isWithin = (inner: Place, outer: Place): boolean => inner.uri === outer.uri && outer.path.every((key, index) => inner.path[index] === key);
