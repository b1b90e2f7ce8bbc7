import type { Span } from '../language/spans.ts';
import { entryAt } from '../language/syntax-tree.ts';
import type { Place } from '../machine/origin.ts';
import { spanOfPlace, type Location } from './diagnostics.ts';
import { placeOfName, usesOfPlace } from './names.ts';
import { usesOf, type Snapshot } from './snapshot.ts';

/** Where the part, mass, supply or drive option under the offset is described: the span of its key. On the description itself, that one. */
export function definitionAt(snapshot: Snapshot, offset: number): Location | undefined {
  const place = targetAt(snapshot, offset);
  return place && locationOf(place, snapshot, true);
}

/** Every place of the snapshot's own text that names what is under the offset, in the order of the text; its description first where `withDefinition`. */
export function referencesAt(snapshot: Snapshot, offset: number, withDefinition = true): readonly Location[] {
  const place = targetAt(snapshot, offset);
  if (!place) return [];
  const uses = usesOfPlace(snapshot, place).map((use) => locationOf(use, snapshot, false));
  return withDefinition ? [locationOf(place, snapshot, true), ...uses] : uses;
}

/** A stretch of text that leads to another document. */
export interface DocumentLink {
  readonly span: Span;
  readonly target: string;
}

/** The paths under `uses` whose part lists can be read. */
export function documentLinks(snapshot: Snapshot): readonly DocumentLink[] {
  const { document, lists, uri } = snapshot;
  return usesOf(document).flatMap((use) => {
    const list = lists.find((candidate) => candidate.uri === use.uri);
    return list ? [{ span: spanOfPlace([document], { uri, path: ['uses', String(use.index)] }), target: list.uri }] : [];
  });
}

/** What the offset is on: a name that leads somewhere, or the key of a description. */
function targetAt(snapshot: Snapshot, offset: number): Place | undefined {
  const { document, uri } = snapshot;
  const { path, on } = document.pathAt(offset);
  if (on === 'value') return placeOfName(snapshot, path);
  if (on !== 'key' || !entryAt(document.root, path)) return undefined;
  // A key is a description where the map around it gives names to things.
  return document.schemaAt(path.slice(0, -1))?.defines === undefined ? placeOfName(snapshot, path) : { uri, path };
}

const locationOf = (place: Place, { document, lists }: Snapshot, onKey: boolean): Location => ({ uri: place.uri, span: spanOfPlace([document, ...lists], place, onKey) });
