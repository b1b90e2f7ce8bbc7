import type { Span, TextEdit } from './spans.ts';

export type Severity = 'error' | 'warning' | 'information' | 'hint';

/** Something wrong with the text itself: syntax, structure, units, names. Engineering findings come from the checks. */
export interface Problem {
  /** Stable, readable identifier such as `unit-missing`; has a page. */
  readonly code: string;
  readonly severity: Severity;
  /** Plain text, at most 240 characters. */
  readonly message: string;
  readonly span: Span;
  readonly related?: readonly { readonly message: string; readonly span: Span }[];
  /** Changes of spelling or units only, each of which cures the problem. The first is the preferred one when there is only one. */
  readonly fixes?: readonly { readonly title: string; readonly edits: readonly TextEdit[] }[];
}
