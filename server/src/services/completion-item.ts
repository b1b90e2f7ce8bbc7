import type { Span } from '../language/spans.ts';

/** One thing that can be put in at the cursor. Plain data: what a protocol makes of it is its own matter. */
export interface CompletionItem {
  readonly label: string;
  readonly kind: 'key' | 'choice' | 'name' | 'size' | 'unit' | 'example' | 'template';
  /** One line beside the label. */
  readonly detail: string;
  /** Markdown. */
  readonly documentation: string;
  /** With tab stops where `isSnippet`. Further lines are indented as seen from the line of the cursor; the host adds that line's own indent. */
  readonly insertText: string;
  readonly isSnippet: boolean;
  /** What gives way: the token at the cursor, always on one line. */
  readonly replace: Span;
  /** Items are shown in the order of this text. */
  readonly sortText: string;
  /** Behind this item a value is due at once: worth asking for again. */
  readonly asksOn?: boolean;
  /** What it takes to tell more of the item when it is looked at. */
  readonly data?: CompletionData;
}

export interface CompletionData {
  /** A standard size or a part: what the axis comes to with it can be computed. */
  readonly tries: string;
}

/** An item before its order is known. */
export type Draft = Omit<CompletionItem, 'sortText' | 'replace'> & { readonly replace?: Span };

/** Gives drafts the token that they replace and the order in which they stand. */
export function ordered(drafts: readonly Draft[], token: Span): CompletionItem[] {
  return drafts.map((draft, index) => ({ ...draft, replace: draft.replace ?? token, sortText: String(index).padStart(4, '0') }));
}

/** The text of a snippet for a host that knows none: every tab stop with its own text, or the first of its choices. */
export function withoutTabStops(snippet: string): string {
  return snippet
    .replace(/\$\{\d+\|((?:\\.|[^|\\])*)\|\}/g, (_, choices: string) => (/^(?:\\.|[^,\\])*/.exec(choices)?.[0] ?? '').replace(/\\(.)/g, '$1'))
    .replace(/\$\{\d+:((?:\\.|[^}\\])*)\}/g, (_, text: string) => text.replace(/\\(.)/g, '$1'))
    .replace(/(?<!\\)\$(?:\d+|\{\d+\})/g, '')
    .replace(/\\([$}\\])/g, '$1');
}

/** A text as it has to stand in a snippet outside of tab stops. */
export const inSnippet = (text: string): string => text.replace(/[\\$}]/g, '\\$&');
