import type { QuantityKind } from '../language/quantity-kinds.ts';
import type { Origin, Place } from './origin.ts';
import type { Bounded, InputValue } from './values.ts';

/** What a subject says of one input. */
export type Input =
  | { readonly id: string; readonly state: 'known'; readonly value: InputValue; readonly origin: Origin; readonly note?: string }
  /** Not written, and no standard or handbook speaks for it. `write` is where it would go. */
  | { readonly id: string; readonly state: 'missing'; readonly write: Place | undefined }
  /** Written, but not readable yet; the language's own finding says why. */
  | { readonly id: string; readonly state: 'unreadable'; readonly place: Place };

/** Reads other inputs of the same subject; undefined where they are missing. */
export interface InputReader {
  readonly number: (id: string) => Bounded | undefined;
  readonly choice: (id: string) => string | undefined;
  readonly origin: (id: string) => Origin | undefined;
  /** Whether the entry is written at all, be it a map, a list or a value. */
  readonly isWritten: (id: string) => boolean;
}

/**
 * What stands in for an entry that is not written, or puts an input together from several entries.
 * Default exports of `inputs/*.inputs.ts` are found by their place.
 */
export interface Fallback {
  /** `nut.friction` */
  readonly input: string;
  /** Required where the schema has no such entry (an input that is put together). */
  readonly title?: string;
  readonly quantity?: QuantityKind;
  readonly symbol?: string;
  /** From the standard size that the description names. */
  readonly standard?: (read: InputReader) => { readonly value: InputValue; readonly size: string; readonly sizeInput: string; readonly source: string } | undefined;
  /** A handbook's range. `weak`: from memory or thinly sourced, and said so on screen. */
  readonly handbook?: (read: InputReader) => { readonly value: InputValue; readonly source: string; readonly weak?: boolean; readonly note?: string } | undefined;
  /** Put together from entries that no single key holds. */
  readonly compose?: (read: InputReader, lists: ListReader) => { readonly value: InputValue; readonly origin: Origin; readonly note?: string } | undefined;
}

/** One member of a list or of a set of named entries, as read by `compose`. */
export interface Member {
  readonly title: string;
  readonly place: Place;
  readonly number: (entry: string) => Bounded | undefined;
  readonly choice: (entry: string) => string | undefined;
  /** The quantities of a list entry such as `at`, in SI; undefined where it is missing or one of them cannot be read. */
  readonly quantities: (entry: string, quantity: QuantityKind) => readonly Bounded[] | undefined;
  /** The map under a key of the member, such as the `motion` of an axis; undefined where it is not written. */
  readonly within: (key: string) => Member | undefined;
  /** The entries of a section that a list of names in the member refers to, such as the masses under the `moves` of an axis. Names that resolve to nothing are left out. */
  readonly named: (entry: string, section: string) => readonly Member[] | undefined;
}

export interface ListReader {
  /** The maps of a list entry such as `drive.reduction`; undefined when it is not written, 'unreadable' when a part of it is. */
  members(input: string): readonly Member[] | undefined;
  /** The entries of a map whose names are the person's own, such as `axis.supports`, in the order of the text; one that is no map itself, as while it is being typed, says nothing. */
  entries(input: string): readonly Member[] | undefined;
  /** The entries of a section that a list of names refers to, such as the `masses` named by `axis.moves`. Names that resolve to nothing are left out. */
  named(input: string, section: string): readonly Member[] | undefined;
  /** The texts of a list of names, such as `levelling.lifts`; undefined where it is not written. */
  texts(input: string): readonly string[] | undefined;
  /** The scalar texts of a list of quantities, such as `coupling.bores`. */
  quantities(input: string, quantity: QuantityKind): readonly { readonly value: Bounded; readonly origin: Origin }[] | undefined;
}

export const fallbacks = (...list: readonly Fallback[]): readonly Fallback[] => list;
