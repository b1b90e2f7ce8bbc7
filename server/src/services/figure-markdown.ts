import { percent } from '../checks/check.ts';
import { showValue } from '../checks/judge.ts';
import { deriveFigure, showFigure, type Derivation } from '../figures/derivation.ts';
import type { Evaluation } from '../figures/evaluation.ts';
import type { Figure } from '../figures/figure.ts';
import { decidingLimit, limitsOf, type FigureLimit } from './figure-limits.ts';
import { numbersPutIn, prettySymbol } from './formula-numbers.ts';
import { blocks, code, escapeMarkdown, table } from './markdown.ts';
import { lowerFirst, missingMarkdown } from './missing.ts';
import { originMarkdown, sourceMarkdown } from './origin-text.ts';

/**
 * A figure's derivation as Markdown: meaning, value, formula with the numbers put in, every term with its origin, limit and source.
 * `depth` levels of figures among the terms are unfolded the same way: 0 none, 1 those that it is computed from directly.
 */
export function figureMarkdown(evaluation: Evaluation, figure: Figure, depth = 1): string {
  const derivation = deriveFigure(figure, evaluation);
  const deeper = depth <= 0 ? [] : derivation.terms.flatMap((term) => (term.origin.from === 'figure' ? (evaluation.figure(term.origin.figure) ?? []) : []));
  return blocks(
    `**${escapeMarkdown(figure.title)}** ${code(prettySymbol(figure.symbol))} ${valueClause(figure, evaluation)}`,
    escapeMarkdown(figure.meaning),
    filledFormula(derivation, evaluation).formula,
    table(
      ['Term', 'Value', 'From'],
      derivation.terms.map((term) => [`${escapeMarkdown(term.title)} ${escapeMarkdown(prettySymbol(term.symbol))}`, escapeMarkdown(term.shown), originMarkdown(term)]),
    ),
    limitSentence(figure, evaluation),
    noteOf(figure, evaluation),
    `Source: ${figure.sources.map(sourceMarkdown).join('; ')}`,
    ...deeper.map((term) => figureMarkdown(evaluation, term, depth - 1)),
  );
}

function valueClause(figure: Figure, evaluation: Evaluation): string {
  const result = evaluation.result(figure.id);
  switch (result.state) {
    case 'computed':
      return `= **${escapeMarkdown(showFigure(figure, result))}**`;
    case 'unable':
      return `has no value here: ${escapeMarkdown(result.reason)}`;
    case 'missing':
      return `cannot be computed yet: ${missingMarkdown(result.missing)}`;
    case 'left-out':
      return 'does not concern this drive';
  }
}

/** The formula, and below it the same with the numbers put in; `isFilled` is false where that does not go, and the numbers stand in the list of terms. */
export function filledFormula({ figure, formula, terms }: Derivation, evaluation: Evaluation): { readonly formula: string; readonly isFilled: boolean } {
  const result = evaluation.result(figure.id);
  const shown = formulaLines(formula);
  if (result.state !== 'computed') return { formula: shown, isFilled: false };
  const numbers = numbersPutIn(formula, terms.flatMap((term) => (term.value ? [{ symbol: term.symbol, text: showValue(term.id, evaluation) }] : [])));
  // A verdict in words does not stand behind an equals sign.
  const value = figure.inWords ? undefined : showValue(figure.id, evaluation);
  if (numbers === undefined) return { formula: value === undefined ? shown : `${shown} ${code(`= ${value}`)}`, isFilled: false };
  return { formula: `${shown}  \n${code(`${prettySymbol(figure.symbol)} = ${numbers}${value === undefined ? '' : ` = ${value}`}`)}`, isFilled: true };
}

/** A formula as code; one of several cases, parted by semicolons, has a line for each, so that none wraps in its middle. */
export function formulaLines(formula: string): string {
  return prettySymbol(formula).split('; ').map(code).join('  \n');
}

/** The terms in one line, for places without room for a table: `L = 395 mm, d₃ = 5.5 mm`. */
export function termsInLine({ terms }: Derivation): string {
  return terms.map((term) => `${escapeMarkdown(term.symbol === '' ? lowerFirst(term.title) : prettySymbol(term.symbol))} = ${escapeMarkdown(term.shown)}`).join(', ');
}

/** `at most 80 %`, `at least 1.5`: a limit in the figure's own unit. */
export function limitText(figure: Figure, { check, limit, at }: FigureLimit, evaluation: Evaluation): string {
  const text = typeof limit.at === 'string' ? showValue(limit.at, evaluation, check.bad === 'above' ? 'low' : 'high', limit.times === undefined ? {} : { times: limit.times }) : showFigure(withoutWords(figure), at);
  return `${check.bad === 'above' ? 'at most' : 'at least'} ${text}`;
}

/** The verdict on a limit in words; nothing where it is kept. */
export const STATE_WORDS = { kept: '', 'may-break': 'may fail', broken: 'fails' } as const;

/** `38 %`, with the verdict where the limit is broken, so that it is not told by a number alone. */
export function usedText({ used, state }: FigureLimit): string {
  return [used === undefined ? '' : percent(used), STATE_WORDS[state]].filter((text) => text !== '').join(', ');
}

function withoutWords(figure: Figure): Figure {
  const { inWords: _, ...rest } = figure;
  return rest;
}

function limitSentence(figure: Figure, evaluation: Evaluation): string | undefined {
  const limits = limitsOf(figure.id, evaluation);
  const deciding = decidingLimit(limits);
  if (!deciding) return undefined;
  const { limit, check } = deciding;
  const used = usedText(deciding);
  const source = limit.source ? `: ${sourceMarkdown(limit.source)}` : '';
  return `Limit: ${escapeMarkdown(limitText(figure, deciding, evaluation))}${used === '' ? '' : `, used ${escapeMarkdown(used)}`} (${escapeMarkdown(limit.basis)}${source}; check ${code(check.id)})`;
}

function noteOf(figure: Figure, evaluation: Evaluation): string | undefined {
  const result = evaluation.result(figure.id);
  return result.state === 'computed' && result.note !== undefined ? `Note: ${escapeMarkdown(result.note)}` : undefined;
}
