import type { Problem } from './problems.ts';
import type { Span } from './spans.ts';
import type { Entry, ScalarNode, SyntaxNode } from './syntax-tree.ts';

/** Copies of parsed things with every position moved by `by`. */

export function shiftSpan(span: Span, by: number): Span {
  return { start: span.start + by, end: span.end + by };
}

export function shiftNode(node: SyntaxNode | null, by: number): SyntaxNode | null {
  if (node === null || by === 0) return node;
  switch (node.type) {
    case 'scalar':
      return shiftScalar(node, by);
    case 'list':
      return { type: 'list', span: shiftSpan(node.span, by), flow: node.flow, items: node.items.map((item) => shiftNode(item, by)) };
    case 'map':
      return { type: 'map', span: shiftSpan(node.span, by), flow: node.flow, entries: node.entries.map((entry) => shiftEntry(entry, by)) };
  }
}

function shiftScalar(node: ScalarNode, by: number): ScalarNode {
  return { type: 'scalar', span: shiftSpan(node.span, by), text: node.text, style: node.style };
}

export function shiftEntry(entry: Entry, by: number): Entry {
  return { key: shiftScalar(entry.key, by), value: shiftNode(entry.value, by), span: shiftSpan(entry.span, by) };
}

export function shiftProblem(problem: Problem, by: number): Problem {
  return {
    ...problem,
    span: shiftSpan(problem.span, by),
    ...(problem.related ? { related: problem.related.map((place) => ({ message: place.message, span: shiftSpan(place.span, by) })) } : {}),
    ...(problem.fixes
      ? { fixes: problem.fixes.map((fix) => ({ title: fix.title, edits: fix.edits.map((edit) => ({ span: shiftSpan(edit.span, by), text: edit.text })) })) }
      : {}),
  };
}
