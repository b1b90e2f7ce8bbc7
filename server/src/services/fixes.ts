import type { Span, TextEdit } from '../language/spans.ts';
import type { Diagnostic } from './diagnostics.ts';
import type { Snapshot } from './snapshot.ts';

/** Changes of one document, all referring to its present text. */
export interface DocumentEdits {
  readonly uri: string;
  readonly edits: readonly TextEdit[];
}

/** `spelling`: the same design, written right. `remedy`: a proven change of the design. `explain`: opens a page, changes nothing. */
export type FixKind = 'spelling' | 'remedy' | 'explain';

/** One entry of the light bulb. */
export interface Fix {
  readonly kind: FixKind;
  readonly title: string;
  /** What it cures or explains. */
  readonly diagnostic: Diagnostic;
  /** True for at most one fix of a diagnostic: the only one there is. */
  readonly isPreferred: boolean;
  /** Empty for `explain`. */
  readonly changes: readonly DocumentEdits[];
  /** For `explain`: identifier of the check or problem whose page is to be opened. */
  readonly page?: string;
}

/** What can be done about the diagnostics that touch `range`; `only` leaves out other kinds and the work for them. */
export function fixesAt(snapshot: Snapshot, range: Span, only?: readonly FixKind[]): readonly Fix[] {
  void [snapshot, range, only];
  return [];
}

/** All changes of spelling and units at once, in the snapshot's own document. Never a change of the design; doing it twice is doing it once. */
export function fixAll(snapshot: Snapshot): readonly TextEdit[] {
  void snapshot;
  return [];
}
