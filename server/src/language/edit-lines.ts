import type { Span } from './spans.ts';
import type { Entry, SyntaxNode } from './syntax-tree.ts';

/** Lines, comments and indentation of a text, as editing it needs them. */

export function lineStart(text: string, offset: number): number {
  return text.lastIndexOf('\n', offset - 1) + 1;
}

/** The end of the line at an offset, before its line break. */
export function lineEnd(text: string, offset: number): number {
  const newline = text.indexOf('\n', offset);
  const end = newline < 0 ? text.length : newline;
  return text[end - 1] === '\r' && end > offset ? end - 1 : end;
}

/** Where the comment begins that follows a value ending at `end` on its line; undefined where none does. */
export function commentStart(text: string, end: number): number | undefined {
  const rest = text.slice(end, lineEnd(text, end));
  const found = /^\s+#/.exec(rest);
  return found ? end + found[0].length - 1 : undefined;
}

/** The comments inside an entry that spans several lines, each as one text. */
export function commentsIn(text: string, entry: Entry): readonly string[] {
  const comments: string[] = [];
  const scalars = scalarsOf(entry.value).concat(entry.key.span);
  for (let at = text.indexOf('#', entry.span.start); at >= 0 && at < entry.span.end; at = text.indexOf('#', at + 1)) {
    const inScalar = scalars.some((span) => at >= span.start && at < span.end);
    if (inScalar || !/\s/.test(text[at - 1] ?? ' ')) continue;
    const end = lineEnd(text, at);
    comments.push(text.slice(at, end));
    at = end;
  }
  return comments;
}

function scalarsOf(node: SyntaxNode | null): Span[] {
  if (!node) return [];
  if (node.type === 'scalar') return [node.span];
  const inner = node.type === 'list' ? node.items : node.entries.map(({ value }) => value);
  return [...(node.type === 'map' ? node.entries.map(({ key }) => key.span) : []), ...inner.flatMap(scalarsOf)];
}

/** By how much the text indents a map under its key: what its first such map does, two blanks otherwise. */
export function indentStep(text: string, root: SyntaxNode | null): string {
  const column = (offset: number): number => offset - lineStart(text, offset);
  const look = (node: SyntaxNode | null): number | undefined => {
    if (node?.type !== 'map' || node.flow) return undefined;
    for (const { key, value } of node.entries) {
      const first = value?.type === 'map' && !value.flow && value.span.start > key.span.end ? value.entries[0] : undefined;
      if (first) return column(first.span.start) - column(key.span.start);
    }
    return node.entries.map(({ value }) => look(value)).find((step) => step !== undefined);
  };
  const step = look(root);
  return ' '.repeat(step !== undefined && step > 0 && step <= 8 ? step : 2);
}
