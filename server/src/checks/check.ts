import { formatQuantity } from '../language/format-quantity.ts';
import type { Severity } from '../language/problems.ts';
import type { QuantityKind } from '../language/quantity-kinds.ts';
import type { Source } from '../figures/figure.ts';
import type { SubjectKind } from '../machine/scopes.ts';
import type { Bounded } from '../machine/values.ts';
import type { CautionId } from './cautions.ts';

/** On what a limit rests, as said on screen. */
export type Basis = 'standard' | 'book' | 'common practice' | 'follows from the mechanics' | 'our threshold';

export interface Limit {
  /** A number in SI, or the id of a figure or input that holds it. */
  readonly at: number | string;
  /** What the limit is multiplied by where settings move one that a figure or input holds; 1 otherwise. */
  readonly times?: number;
  readonly severity: Severity;
  readonly basis: Basis;
  readonly source?: Source;
}

/** What a check may ask of the evaluated subject. */
export interface Facts {
  /** Bounds of a figure or numeric input; undefined where it cannot be computed. */
  readonly bounds: (id: string) => Bounded | undefined;
  readonly choice: (id: string) => string | undefined;
  readonly isPresent: (scope: string) => boolean;
  /**
   * The value as text in its customary unit, or in the unit in which the person wrote it: `763 rpm`. `end` picks an end of the range.
   * A figure that is uncertain by more than a third is told with two digits, since a third would claim more than is known.
   * `like` names an entry with which it is compared, so that both stand in the unit of that entry.
   */
  readonly show: (id: string, end?: 'nominal' | 'low' | 'high' | 'range', like?: string) => string;
  /** The remark that belongs to a figure's value, if there is one. */
  readonly note: (id: string) => string | undefined;
  /** Whether the value is a handbook's default and not the person's own. */
  readonly isDefault: (id: string) => boolean;
}

/** What a message is made of. */
export interface Judged extends Facts {
  /** The end of the figure that decides, and the limit that it breaks, in SI. */
  readonly worst: number;
  readonly limit: number;
  readonly severity: Severity;
  /** False when the limit is only broken at the uncertain end. */
  readonly certain: boolean;
}

interface CheckBase {
  /** Names the bad thing, so that "accept NAME" reads well: `screw-whirls`. The folder has the same name. */
  readonly id: string;
  readonly title: string;
  /** One line for lists and the reference page. */
  readonly summary: string;
  /** The kind of subject that it looks at; a drive unless said otherwise. */
  readonly subject?: SubjectKind;
  /** The entry that is underlined: an input id (`screw.unsupported-length`) or a scope (`screw`). Where it is not written, its map's key. */
  readonly place: string | ((facts: Facts) => string);
  /** Someone can be hurt: never lowered by uncertainty. */
  readonly concernsPeople?: boolean;
  readonly cautions?: readonly CautionId[];
  /** Inputs and figures that led to it, most telling first, at most four: shown as related places. */
  readonly because?: readonly string[];
  /** Only looked at where this holds. Also keeps silent what follows from a fault that another finding names. */
  readonly when?: (facts: Facts) => boolean;
  /** Counts one severity lower where this holds: the value compared is itself only assumed, or something else is known to make up for it. */
  readonly milder?: (facts: Facts) => boolean;
  /** Plain text: what with numbers and units, consequence, cure. At most 240 characters. */
  readonly message: (judged: Judged) => string;
}

/** Compares a figure with limits. The worst end decides; a limit that only the uncertain end breaks counts one severity lower, unless people are concerned. */
export interface LimitCheck extends CheckBase {
  readonly figure: string;
  readonly bad: 'above' | 'below';
  /** Worst first. */
  readonly limits: readonly Limit[];
}

/** Anything that is not one figure against a limit: contradictions, combinations of choices. */
export interface FactCheck extends CheckBase {
  /** The figure that it is about, if any, for the tables. */
  readonly figure?: string;
  readonly basis: Basis;
  readonly sources: readonly Source[];
  /** The severity (as it is to be reported: nothing is lowered for being uncertain), or undefined when all is well. */
  readonly judge: (facts: Facts) => Severity | FactVerdict | undefined;
}

/** A severity together with whether it also holds at the nominal values. */
export interface FactVerdict {
  readonly severity: Severity;
  readonly certain: boolean;
}

export type Check = LimitCheck | FactCheck;

export const check = <T extends Check>(declaration: T): T => declaration;

/** For messages: a share as a whole or near-whole percentage, never rounded across 100 %. */
export function percent(share: number): string {
  const value = share * 100;
  const digits = Math.abs(value) < 10 && value !== 0 ? 1 : 0;
  const rounded = Number(value.toFixed(digits));
  if (rounded === 100 && value !== 100) return `${value.toFixed(1)} %`;
  return `${rounded} %`;
}

/** For messages, before what is compared: `118 % of` the limit; `25 times` it, where hundreds of per cent would be hard to grasp. */
export const timesOf = (share: number): string => (share >= 9.95 ? `${Number(share.toPrecision(2))} times` : `${percent(share)} of`);

/** For messages: a factor such as `2.1×`. */
export const factor = (value: number): string => `${Number(value.toPrecision(2))}×`;

/** For messages: two values that are compared, in one unit, that of the larger, with two digits. */
export function sideBySide(one: number, other: number, quantity: QuantityKind): readonly [string, string] {
  const larger = formatQuantity(Math.max(Math.abs(one), Math.abs(other)), quantity);
  const unit = larger.slice(larger.indexOf(' ') + 1);
  return [formatQuantity(one, quantity, { unit, digits: 2 }), formatQuantity(other, quantity, { unit, digits: 2 })];
}

/** For messages: an SI number as text in the kind's customary unit. */
export const quantityText = (si: number, quantity: QuantityKind, unit?: string): string => formatQuantity(si, quantity, unit === undefined ? {} : { unit });
