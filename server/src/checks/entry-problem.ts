import type { Severity } from '../language/problems.ts';
import type { Place } from '../machine/origin.ts';
import type { EntryProblemCode } from './entry-problem-codes.ts';

/** A problem with an entry about findings and checks, at a place by path. */
export interface EntryProblem {
  readonly code: EntryProblemCode;
  readonly severity: Severity;
  /** Plain text, at most 240 characters. */
  readonly message: string;
  readonly place: Place;
  /** Underline the key instead of the value. */
  readonly onKey?: boolean;
  readonly related?: readonly { readonly message: string; readonly place: Place }[];
  /** Texts that the underlined value could be replaced with, likeliest first. */
  readonly replacements?: readonly string[];
  /** The entry, or item of a list, that can be taken out as a cure. */
  readonly removable?: Place;
}

/** `Did you mean "a" or "b"?`; empty without names. */
export const meant = (names: readonly string[]): string => (names.length === 0 ? '' : ` Did you mean ${names.map((name) => `"${name}"`).join(' or ')}?`);

/** A text of the person's, short enough to stand in a message. */
export const shortText = (text: string, most = 40): string => ([...text].length <= most ? text : `${[...text].slice(0, most - 1).join('')}…`);
