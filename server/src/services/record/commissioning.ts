import type { CautionId } from '../../checks/cautions.ts';
import type { Facts } from '../../checks/check.ts';
import type { SubjectKind } from '../../machine/scopes.ts';

/** What a declaration may ask of the subject: what a check may, and the names in a list. */
export interface CommissioningView extends Facts {
  /** The texts of a list such as `levelling.lifts`, in its order; undefined where it is not written. */
  readonly list: (scope: string, key: string) => readonly string[] | undefined;
}

/**
 * One line of the commissioning table: what a person sets or measures when the machine is first run.
 * Lies alone in a file `*.commissioning.ts` in the folder `commissioning/` and is found by its place.
 */
export interface CommissioningDeclaration {
  /** The name of its file. */
  readonly id: string;
  /** What is set or measured, as an order or a noun: `Steps per millimetre`. */
  readonly title: string;
  /** Lines stand in this order; the tens are: 10 travel, 20 speed, 30 current, 40 belts, 50 levelling, 60 heat. */
  readonly order: number;
  /** A drive unless said otherwise. */
  readonly subject?: SubjectKind;
  /** Only where this holds. */
  readonly when?: (view: CommissioningView) => boolean;
  /** Figures or entries: the first that has a value is shown. Or the text itself. */
  readonly shows: readonly string[] | ((view: CommissioningView) => string | undefined);
  /** The end of its range to begin with; nominal unless said otherwise. */
  readonly end?: 'nominal' | 'low' | 'high';
  /** Significant digits: three, more where the number is copied into a controller and rounding would add up over the travel. */
  readonly digits?: number;
  /** What belongs to the value, such as how it was taken. */
  readonly note?: (view: CommissioningView) => string | undefined;
  /** What to take care of in setting it: a sentence or two. */
  readonly caution: string;
  /** Hazards that come with it: their sentences stand in full under the record's cautions. */
  readonly hazards?: readonly CautionId[];
}

export const commissioning = (declaration: CommissioningDeclaration): CommissioningDeclaration => declaration;
