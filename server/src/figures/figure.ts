import type { QuantityKind } from '../language/quantity-kinds.ts';

/** A value that cannot be given, with the reason in plain words: it does not apply, or physics has no answer. */
export interface Unable {
  readonly unable: string;
}

/** For `compute`: this figure has no value here, because … (a short clause: "the screw hangs, so it is in tension"). */
export const unable = (reason: string): Unable => ({ unable: reason });

/** A value with a remark that belongs to it ("the slender formula is 2.6 % high here"). */
export interface Remarked {
  readonly value: number;
  readonly note: string;
}

export type Computed = number | Remarked | Unable;

/** A book, a standard or `common practice`, as shown to the person. */
export interface Source {
  readonly title: string;
  /** Section, table or equation. */
  readonly where?: string;
  /** From memory or thinly sourced; said so on screen. */
  readonly weak?: boolean;
}

/** A curve with operating points, drawn in hovers and in the design sheet. All numbers SI. */
export interface Chart<V> {
  readonly title: string;
  /** What a screen reader says. */
  readonly alt: (values: V) => string;
  readonly x: { readonly title: string; readonly quantity: QuantityKind; readonly unit?: string; readonly from: (values: V) => number; readonly to: (values: V) => number };
  readonly y: { readonly title: string; readonly quantity: QuantityKind; readonly unit?: string };
  /** Curves; a `band` of low and high is shaded. Return NaN where a curve has no value. */
  readonly curves: readonly { readonly title: string; readonly y: (x: number, values: V) => number }[];
  readonly band?: { readonly title: string; readonly low: (x: number, values: V) => number; readonly high: (x: number, values: V) => number };
  readonly points?: readonly { readonly title: string; readonly x: (values: V) => number; readonly y: (values: V) => number }[];
}

type Numbers<N extends string> = { readonly [alias in N]: number };
type Maybe<O extends string> = { readonly [alias in O]: number | undefined };
type Texts<C extends string> = { readonly [alias in C]: string };
type MaybeTexts<T extends string> = { readonly [alias in T]: string | undefined };
type Names<R extends string> = { readonly [alias in R]: readonly string[] | undefined };
type Tables<T extends string> = { readonly [alias in T]: readonly (readonly number[])[] | undefined };

/**
 * One computed quantity. Hover rows, checks, the command line, charts and the reference page all come from this declaration.
 * Lives alone in a file `*.figure.ts` (or an array of close relatives) and is found by its place.
 */
export interface FigureDeclaration<N extends string, O extends string, C extends string, M extends string, T extends string, R extends string> {
  /** `screw.whirl-speed`: the scope that it belongs to, and its name. Never the same as an input's. */
  readonly id: string;
  readonly title: string;
  readonly symbol: string;
  readonly quantity: QuantityKind;
  /** Customary unit to show it in; the kind's first choice otherwise. */
  readonly unit?: string;
  /** One sentence: what it means. */
  readonly meaning: string;
  /** Inputs and figures that it cannot do without: alias → id. */
  readonly needs: Readonly<Record<N, string>>;
  /** Inputs and figures that it uses where they exist. */
  readonly optional?: Readonly<Record<O, string>>;
  /** Choices (`screw.end-supports`) that it cannot do without. */
  readonly choices?: Readonly<Record<C, string>>;
  readonly optionalChoices?: Readonly<Record<M, string>>;
  readonly tables?: Readonly<Record<T, string>>;
  /** What a person calls the rows of these tables: alias → id of the table. */
  readonly names?: Readonly<Record<R, string>>;
  /** Only where these choices have one of these values: `{ 'screw.thread': ['ball'] }`. Elsewhere the figure is left out without a word. */
  readonly onlyWhere?: Readonly<Record<string, readonly string[]>>;
  /** Only where the description has these maps: `['brake']`. */
  readonly onlyWith?: readonly string[];
  /** Inputs in which it is not monotonic: sampled between their ends too. */
  readonly notMonotonicIn?: readonly string[];
  readonly compute: (values: Numbers<N> & Maybe<O> & Texts<C> & MaybeTexts<M> & Tables<T> & Names<R>) => Computed;
  /** With the symbols of the inputs: `n₁ = β²/(2π L²) · √(E I / (ρ A))`. */
  readonly formula: string;
  readonly sources: readonly Source[];
  /** Rank among the rows of its scope: 1 decides, 2 matters, 3 is background (left out of hovers when there are many). */
  readonly rank: 1 | 2 | 3;
  /** Replaces the number in words, for verdicts: receives the bounds. */
  readonly inWords?: (value: { readonly nominal: number; readonly low: number; readonly high: number }) => string;
  /** Short text for the inlay hint of its scope, at most 18 characters, stable in width; only for rank 1. */
  readonly hint?: (value: { readonly nominal: number; readonly low: number; readonly high: number; /** The remark that belongs to the value. */ readonly note?: string }) => string | undefined;
  readonly chart?: Chart<Numbers<N> & Maybe<O> & Texts<C> & MaybeTexts<M> & Tables<T> & Names<R>>;
}

/** A figure as the evaluation sees it: aliases and their types are the declaration's private matter. */
export type Figure = FigureDeclaration<string, string, string, string, string, string>;

/** Declares a figure; the aliases in `needs` and its kin give `compute` its argument's type. */
export function figure<
  const N extends string = never,
  const O extends string = never,
  const C extends string = never,
  const M extends string = never,
  const T extends string = never,
  const R extends string = never,
>(declaration: FigureDeclaration<N, O, C, M, T, R>): Figure {
  // Inside, every alias is present because the evaluation fills exactly the declared ones.
  return declaration;
}

/** The scope of a figure: the part of its id before the dot. */
export const scopeOf = (id: string): string => id.slice(0, id.indexOf('.'));
