import type { EntryPath } from '../language/syntax-tree.ts';

/** A place in a document by path, so that it outlives edits elsewhere in the text. */
export interface Place {
  readonly uri: string;
  readonly path: EntryPath;
}

/** Where a value comes from; every number on screen can be unfolded down to one of these. */
export type Origin =
  /** Written in the machine's file, in the drive itself. */
  | { readonly from: 'here'; readonly place: Place }
  /** Written in a named part, in this file or in a part list. */
  | { readonly from: 'part'; readonly part: string; readonly place: Place }
  /** Follows from a standard size; `place` is where the size is named. */
  | { readonly from: 'standard'; readonly size: string; readonly source: string; readonly place: Place }
  /** A handbook's range, since the description is silent; `place` is where it can be written. */
  | { readonly from: 'handbook'; readonly source: string; readonly weak: boolean; readonly place: Place | undefined }
  /** Put together from several entries. */
  | { readonly from: 'several'; readonly parts: readonly { readonly title: string; readonly origin: Origin }[] };

/** The places in documents that an origin rests on, most telling first. */
export function placesOf(origin: Origin): readonly Place[] {
  switch (origin.from) {
    case 'several':
      return origin.parts.flatMap((part) => placesOf(part.origin));
    case 'handbook':
      return [];
    default:
      return [origin.place];
  }
}

export function isDefault(origin: Origin): boolean {
  return origin.from === 'handbook' || (origin.from === 'several' && origin.parts.length > 0 && origin.parts.every((part) => isDefault(part.origin)));
}
