import type { Span } from '../language/spans.ts';
import type { Snapshot } from './snapshot.ts';

/** What is shown over a stretch of the text. */
export interface Hover {
  readonly span: Span;
  /** Markdown without HTML and without commands; everything from a file is escaped. */
  readonly markdown: string;
}

export { figureMarkdown } from './figure-markdown.ts';

export function hoverAt(snapshot: Snapshot, offset: number): Hover | undefined {
  void snapshot;
  void offset;
  return undefined;
}
