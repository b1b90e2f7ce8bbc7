import type { Evaluation } from '../figures/evaluation.ts';
import { formatQuantity, formatRange } from '../language/format-quantity.ts';
import { describeInput } from '../machine/fallback-registry.ts';
import type { Bounded } from '../machine/values.ts';
import { writtenValue } from './nice-values.ts';
import { choice, type Change, type Proposal, type RemedyContext } from './remedy.ts';

/** The figure that the finding is about, after and before: `whirl use 41 % instead of 118 %`. Empty where the check compares no figure. */
export function resultText(context: RemedyContext, after: Evaluation): string {
  const id = context.finding.figure;
  const figure = id === undefined ? undefined : after.registry.get(id);
  const now = id === undefined ? undefined : after.bounds(id);
  const then = id === undefined ? undefined : context.before.bounds(id);
  if (!figure || !now) return '';
  // The end that decided is the one that is told, as in the finding's own message.
  const end = endOf(then, context.finding.worst);
  const text = (value: number): string => formatQuantity(value, figure.quantity, figure.unit === undefined ? {} : { unit: figure.unit });
  if (figure.inWords) return `: ${figure.inWords(now)}`;
  const was = then ? ` instead of ${text(context.finding.worst ?? then.nominal)}` : '';
  return `: ${lowerFirst(figure.title)} ${text(now[end])}${was}`;
}

function endOf(value: Bounded | undefined, worst: number | undefined): 'low' | 'nominal' | 'high' {
  if (!value || worst === undefined || value.low === value.high) return 'nominal';
  return worst === value.low ? 'low' : worst === value.high ? 'high' : 'nominal';
}

const lowerFirst = (text: string): string => (/^[A-Z][a-z]/.test(text) ? text.charAt(0).toLowerCase() + text.slice(1) : text);

/** Writes a value into an entry; undefined where it has no place in the text. */
export function changeOf(context: RemedyContext, input: string, value: string): Change | undefined {
  const place = context.place(input);
  return place && { place, value };
}

interface Solved {
  readonly input: string;
  /** The farthest value to try, in SI: the best that is reasonable. */
  readonly towards: number;
  /** What the person reads: `Slow the axis to 42 mm/s`. */
  readonly say: (written: string) => string;
  /** Round to a nice number instead of two digits: for things that are bought. */
  readonly coarse?: boolean;
}

/** The value of a numeric entry, nearest to the present one, at which the check passes, rounded to the passing side and in the person's own unit. */
export function solvedProposal(context: RemedyContext, { input, towards, say, coarse }: Solved): readonly Proposal[] {
  const present = context.before.input(input);
  const { quantity } = describeInput(input);
  if (present.state !== 'known' || present.value.type !== 'number' || !quantity) return [];
  const { nominal } = present.value;
  const value = context.solve(input, towards);
  if (value === undefined || value === nominal) return [];
  const written = writtenValue(value, quantity, present.value.unit, towards > nominal ? 'up' : 'down', coarse);
  const change = written === undefined ? undefined : changeOf(context, input, written);
  if (!change || written === undefined) return [];
  return [{ changes: [change], title: (after) => `${say(written)}${resultText(context, after)}` }];
}

/** The first of some choices for which the check passes. */
export function chosenProposal(context: RemedyContext, input: string, candidates: readonly string[], say: (text: string) => string): readonly Proposal[] {
  const present = context.before.choice(input);
  const found = context.first(candidates.filter((candidate) => candidate !== present), (candidate) => ({ [input]: choice(candidate) }));
  const change = found === undefined ? undefined : changeOf(context, input, found);
  return change && found !== undefined ? [{ changes: [change], title: (after) => `${say(found)}${resultText(context, after)}` }] : [];
}

/** A value as a person reads it, for titles that show more than the finding's own figure. */
export function shown(evaluation: Evaluation, id: string): string {
  const figure = evaluation.registry.get(id);
  const value = evaluation.bounds(id);
  if (!figure || !value) return 'unknown';
  return formatRange(value, figure.quantity, figure.unit === undefined ? {} : { unit: figure.unit });
}
