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
  /** What is done, as a short order with number and unit: `Slow the axis to 42 mm/s`. The result is put behind it. */
  readonly what: string;
  /** What comes of it, number first where there is one; only where the finding's own figure does not tell it: `in tension, it cannot buckle`. */
  readonly result?: (after: Evaluation) => string | undefined;
  /** What else it costs, in few words: `stored energy`, `travel 30 mm shorter`. */
  readonly price?: string;
  /** The danger stays, but something catches what comes of it: proven where no more than information is left of the finding. */
  readonly catches?: boolean;
  /** How much it asks, on the scale of `Remedy.cost`, where this proposal asks for more or less than others of its kind. */
  readonly cost?: number;
}

/** What a remedy may use to find its value. */
export interface RemedyContext {
  readonly finding: Finding;
  /** As the design stands. */
  readonly before: Evaluation;
  /** The same subject with some inputs replaced, evaluated afresh. */
  readonly tryWith: (inputs: Inputs) => Evaluation;
  /** Whether the finding's check has nothing to say any more, and no check that is watched for its sake has anything new. */
  readonly passes: (evaluation: Evaluation) => boolean;
  /** Where an entry stands or would be written; undefined where it has no place. A part shared by others is changed in its own place. */
  readonly place: (input: string) => Place | undefined;
  /**
   * The value nearest to the present one that passes, between the present value and `towards` (both SI): the first of a row of values
   * that passes, and then by halving. Undefined when none of the row passes. What comes out is proven later in any case.
   */
  readonly solve: (input: string, towards: number) => number | undefined;
  /** As `solve`, along a path through several inputs: the share of the path, above 0 and up to 1, at which it first passes. */
  readonly solveAlong: (path: (share: number) => Inputs) => number | undefined;
  /** The first of the candidates that passes, each a set of inputs. */
  readonly first: <T>(candidates: readonly T[], inputs: (candidate: T) => Inputs) => T | undefined;
}

export type Inputs = Readonly<Record<string, InputValue>>;

/** One way to cure: what it changes, and how it finds the value. Lives alone in `*.remedy.ts` and is found by its place. */
export interface Remedy {
  readonly id: string;
  /** For the reference page: what it does. */
  readonly summary: string;
  /** Identifiers of the checks that it may cure. */
  readonly cures: readonly string[];
  /** Roughly what it asks of the person: 1 a setting, 2 an adjustment or a small part, 3 a main part exchanged, 4 a part added, 5 much rebuilt. Gentler ones are offered first. */
  readonly cost: number;
  /** Tried only where no other remedy holds: several things are changed at once, or a wish is taken back. */
  readonly lastResort?: boolean;
  /** Proposals are proven before they are offered; none is ever applied by itself. */
  readonly propose: (context: RemedyContext) => readonly Proposal[];
}

export const remedy = (declaration: Remedy): Remedy => declaration;

/** A number in SI as an input's value, exact. */
export const number = (nominal: number): InputValue => ({ type: 'number', nominal, low: nominal, high: nominal });

export const choice = (text: string): InputValue => ({ type: 'choice', text });
