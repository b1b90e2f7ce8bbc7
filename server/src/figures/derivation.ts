import { formatRange } from '../language/format-quantity.ts';
import { describeInput } from '../machine/fallback-registry.ts';
import type { Origin } from '../machine/origin.ts';
import type { Bounded } from '../machine/values.ts';
import type { Evaluation } from './evaluation.ts';
import type { Figure, Source } from './figure.ts';

/** One thing that a figure was computed from. */
export interface Term {
  readonly id: string;
  readonly title: string;
  readonly symbol: string;
  /** In its customary unit, with its range where there is one. */
  readonly shown: string;
  readonly value: Bounded | undefined;
  /** Where it comes from; a figure among the terms unfolds further by its own derivation. */
  readonly origin: Origin | { readonly from: 'figure'; readonly figure: string };
}

/** How a figure came about: formula, the terms put in, and the source. */
export interface Derivation {
  readonly figure: Figure;
  readonly formula: string;
  readonly terms: readonly Term[];
  readonly sources: readonly Source[];
}

/** Unfolds a figure by one level. Terms that are not there (optional inputs) are left out. */
export function deriveFigure(figure: Figure, evaluation: Evaluation): Derivation {
  const named = [figure.needs, figure.optional, figure.choices, figure.optionalChoices, figure.tables].flatMap((group) => Object.values(group ?? {}));
  return {
    figure,
    formula: figure.formula,
    terms: [...new Set(named)].flatMap((id) => termOf(id, evaluation) ?? []),
    sources: figure.sources,
  };
}

function termOf(id: string, evaluation: Evaluation): Term | undefined {
  const figure = evaluation.figure(id);
  if (figure) {
    const value = evaluation.bounds(id);
    return value && { id, title: figure.title, symbol: figure.symbol, shown: showFigure(figure, value), value, origin: { from: 'figure', figure: id } };
  }
  const input = evaluation.input(id);
  if (input.state !== 'known') return undefined;
  const { title, symbol } = describeInput(id);
  return {
    id,
    title,
    symbol,
    shown: showInput(id, evaluation),
    value: input.value.type === 'number' ? input.value : undefined,
    origin: input.origin,
  };
}

/** A figure's value as text, in words where it has words. */
export function showFigure(figure: Figure, value: Bounded): string {
  if (figure.inWords) return figure.inWords(value);
  return formatRange(value, figure.quantity, figure.unit === undefined ? {} : { unit: figure.unit });
}

/** The names of a table's rows, as many as there is room for: `left rail, screw 1, screw 2 and 3 more`. */
function listedShort(titles: readonly string[]): string {
  return titles.length <= 4 ? titles.join(', ') : `${titles.slice(0, 3).join(', ')} and ${titles.length - 3} more`;
}

/** An input's value as text, in the unit in which it was written. */
export function showInput(id: string, evaluation: Evaluation): string {
  const input = evaluation.input(id);
  if (input.state !== 'known') return 'unknown';
  const { value } = input;
  if (value.type === 'choice') return value.text;
  if (value.type === 'table') return value.titles ? listedShort(value.titles) : `${value.rows.length} points`;
  const { quantity } = describeInput(id);
  return formatRange(value, quantity ?? 'count', value.unit === undefined || value.unit === '' ? {} : { unit: value.unit });
}
