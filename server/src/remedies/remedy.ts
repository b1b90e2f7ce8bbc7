import type { Evaluation } from '../figures/evaluation.ts';
import type { Finding } from '../checks/judge.ts';
import type { NewValue } from '../language/edit-entry.ts';
import type { Place } from '../machine/origin.ts';
import type { InputValue } from '../machine/values.ts';

/** One entry to be written (or, with null, taken away). */
export interface Change {
  readonly place: Place;
  readonly value: NewValue | null;
}

/** A change of the design, not yet proven. */
export interface Proposal {
  readonly changes: readonly Change[];
  /** Change and result: `Support the far end: whirl at 41 % instead of 118 %`. What else it costs stands in it too. At most 100 characters. */
  readonly title: (after: Evaluation) => string;
}

/** What a remedy may use to find its value. */
export interface RemedyContext {
  readonly finding: Finding;
  /** As the design stands. */
  readonly before: Evaluation;
  /** The same subject with some inputs replaced, evaluated afresh. */
  readonly tryWith: (inputs: Readonly<Record<string, InputValue>>) => Evaluation;
  /** Whether the finding's check has nothing to say any more. */
  readonly passes: (evaluation: Evaluation) => boolean;
  /** Where an entry stands or would be written; undefined where it has no place. A part shared by others is changed in its own place. */
  readonly place: (input: string) => Place | undefined;
  /**
   * The value nearest to the present one at which the check passes, between the present value and `towards` (both SI), found by halving;
   * undefined when it fails even at `towards`. Monotonic in between by assumption; what comes out is proven later in any case.
   */
  readonly solve: (input: string, towards: number) => number | undefined;
  /** The first of the candidates for which the check passes, each a set of inputs. */
  readonly first: <T>(candidates: readonly T[], inputs: (candidate: T) => Readonly<Record<string, InputValue>>) => T | undefined;
}

/** One way to cure: what it changes, and how it finds the value. Lives alone in `*.remedy.ts` and is found by its place. */
export interface Remedy {
  readonly id: string;
  /** For the reference page: what it does. */
  readonly summary: string;
  /** Identifiers of the checks that it may cure. */
  readonly cures: readonly string[];
  /** How sure it is: a change of the design, or something that only the person can decide. Never applied by itself. */
  readonly propose: (context: RemedyContext) => readonly Proposal[];
}

export const remedy = (declaration: Remedy): Remedy => declaration;

/** A number in SI as an input's value, exact. */
export const number = (nominal: number): InputValue => ({ type: 'number', nominal, low: nominal, high: nominal });

export const choice = (text: string): InputValue => ({ type: 'choice', text });
