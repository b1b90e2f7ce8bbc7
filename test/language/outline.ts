import type { Problem } from '../../server/src/language/problems.ts';
import type { SyntaxNode } from '../../server/src/language/syntax-tree.ts';

/** A tree in one line, for tables: `{lift: {travel: 360 mm, moves: [plate, null]}}`. Quoted texts keep quotes, blocks of text a bar. */
export function outline(node: SyntaxNode | null): string {
  if (node === null) return 'null';
  if (node.type === 'list') return `[${node.items.map(outline).join(', ')}]`;
  if (node.type === 'map') return `{${node.entries.map((entry) => `${entry.key.text}: ${outline(entry.value)}`).join(', ')}}`;
  if (node.style === 'quoted') return JSON.stringify(node.text);
  return node.style === 'block' ? `|${node.text.replaceAll('\n', '/')}` : node.text;
}

/** A problem with the text that it marks: `colon-missing "dir"`. */
export function marked(problem: Problem, text: string): string {
  return `${problem.code} ${JSON.stringify(text.slice(problem.span.start, problem.span.end))}`;
}
