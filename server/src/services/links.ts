import type { Span } from '../language/spans.ts';
import type { Location } from './diagnostics.ts';
import type { Snapshot } from './snapshot.ts';

/** Where the part, mass, supply or drive option under the offset is described: the span of its key. */
export function definitionAt(snapshot: Snapshot, offset: number): Location | undefined {
  void [snapshot, offset];
  return undefined;
}

/** Every place that names what is under the offset; its description first where `withDefinition`. */
export function referencesAt(snapshot: Snapshot, offset: number, withDefinition = true): readonly Location[] {
  void [snapshot, offset, withDefinition];
  return [];
}

/** A stretch of text that leads to another document. */
export interface DocumentLink {
  readonly span: Span;
  readonly target: string;
}

/** The paths under `uses` whose part lists can be read. */
export function documentLinks(snapshot: Snapshot): readonly DocumentLink[] {
  void snapshot;
  return [];
}
