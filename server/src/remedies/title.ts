import { percent, type Check } from '../checks/check.ts';
import type { Finding } from '../checks/judge.ts';
import { multipleBeside } from '../checks/multiples.ts';
import { checksFor } from '../checks/registry.ts';
import type { Evaluation } from '../figures/evaluation.ts';
import type { Figure } from '../figures/figure.ts';
import { formatQuantity } from '../language/format-quantity.ts';
import { scaled, type Bounded } from '../machine/values.ts';
import { isAboutHolding } from './families.ts';
import { orders as sentenceOf } from './entry-proposals.ts';
import { resultWords, toldBy } from './result-words.ts';

/** No longer, so that a menu shows it whole. */
export const LONGEST_TITLE = 100;

/** What a title is made of. */
export interface TitleParts {
  /** One order, or several that belong together, the first with a capital letter. */
  readonly orders: readonly string[];
  /** Part lists that are changed, by file name. */
  readonly lists: readonly string[];
  /** The result in full and in fewer and fewer words: with how it was, without, the number alone. Empty where nothing is to be said. */
  readonly result: readonly string[];
  readonly prices: readonly string[];
}

/** `Support the far end: 41 % of the whirl speed instead of 118 %`. What is too long says less of the result; what it costs always stays. */
export function composeTitle({ orders, lists, result, prices }: TitleParts): string {
  const what = sentenceOf(orders) + (lists.length === 0 ? '' : ` in ${lists.join(' and ')}`);
  const price = prices.map((text) => `, ${text}`).join('');
  const candidates = result.map((text) => `${what}: ${text}${price}`);
  return candidates.find((title) => title.length <= LONGEST_TITLE) ?? `${what}${price}`;
}

const lowerFirst = (text: string): string => text.charAt(0).toLowerCase() + text.slice(1);

/** The figure that the finding is about at the end that decides, after and before. Empty where the check compares none, or it has no value any more. */
export function resultOf(finding: Finding, before: Evaluation, after: Evaluation): TitleParts['result'] {
  if (isAboutHolding(finding.check)) return heldAt(after);
  const id = toldBy[finding.check] ?? finding.figure;
  const figure = id === undefined ? undefined : after.figure(id);
  const now = id === undefined ? undefined : after.bounds(id);
  if (!figure || !now) return [];
  if (figure.inWords) return [figure.inWords(now)];
  const check = checksFor(after).find(({ id: other }) => other === finding.check);
  const end = endOf(check);
  const was = finding.worst ?? before.bounds(figure.id)?.[end];
  const words = resultWords[figure.id] ?? lowerFirst(figure.title);
  const unit = was === undefined ? undefined : unitOf(figure, Math.max(was, now[end]));
  const [then, value] = [was === undefined ? undefined : shown(was, figure, unit, finding.limit), shown(now[end], figure, unit, finding.limit)];
  const short = `${value} ${words}`;
  // Where the value stays as it was, the limit has moved; where that has not either, there is nothing to tell.
  if (then === value) return limitsOf(check, figure, unit, after).map((limit) => `${short}, limit ${limit}`);
  return [...(then === undefined ? [] : [`${short} instead of ${then}`]), short, value];
}

/** Limits that follow from the design, as it is now. */
function limitsOf(check: Check | undefined, figure: Figure, unit: string | undefined, after: Evaluation): readonly string[] {
  if (!check || 'judge' in check) return [];
  return check.limits.flatMap(({ at, times }) => {
    const bound = typeof at === 'string' ? scaled(after.bounds(at), times) : undefined;
    return bound ? [shown(bound[check.bad === 'above' ? 'low' : 'high'], figure, unit, undefined)] : [];
  }).slice(0, 1);
}

/** `2.1× the load held with power off`, at the worst end. */
function heldAt(after: Evaluation): readonly string[] {
  const factor = after.bounds('drive.holding-factor')?.low;
  return factor === undefined ? ['it holds with power off'] : [`${Number(factor.toPrecision(2))}× the load held with power off`];
}

function endOf(check: Check | undefined): keyof Bounded {
  return !check || 'judge' in check ? 'nominal' : check.bad === 'above' ? 'high' : 'low';
}

/** Both values of a title in one unit. */
function unitOf(figure: Figure, size: number): string | undefined {
  return figure.unit ?? /[^\d.,\s×⁰¹²³⁴⁵⁶⁷⁸⁹⁻-].*$/.exec(formatQuantity(size, figure.quantity))?.[0];
}

function shown(value: number, figure: Figure, unit: string | undefined, limit: number | undefined): string {
  if (figure.quantity === 'ratio') return unit === '%' ? percent(value) : multipleBeside(value, limit ?? value);
  return formatQuantity(value, figure.quantity, { ...(unit === undefined ? {} : { unit }), ...(limit === undefined ? {} : { besides: limit }) });
}
