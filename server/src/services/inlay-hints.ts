import { scopeOf, type Figure } from '../figures/figure.ts';
import type { Evaluation } from '../figures/evaluation.ts';
import type { Span } from '../language/spans.ts';
import type { Place } from '../machine/origin.ts';
import { scopeRows, type ScopeRow } from '../machine/scopes.ts';
import { keyPlaceOf } from './elements.ts';
import { decidingLimit, limitsOf } from './figure-limits.ts';
import { figureMarkdown } from './figure-markdown.ts';
import { leadingPlace } from './leading-figures.ts';
import { blocks } from './markdown.ts';
import { spanOfPlace } from './diagnostics.ts';
import type { Snapshot } from './snapshot.ts';

/** Editors cut a line's hints at 43 characters; this leaves room for the blanks around. */
export const LONGEST_HINT = 40;

/** Figures of one element on one line. */
const MOST_FIGURES = 2;

/** Place of the figures that do not lead their element: behind those that do. */
const AFTER_LEADING = 99;

const SEPARATOR = ' · ';

/** Texts that are kept for half-typed lines; far more than one file has elements. */
const MOST_KEPT = 5_000;

/** A short text at the end of an element's line. */
export interface InlayHint {
  readonly offset: number;
  /** At most 40 characters, all hints of a line together: there is one hint a line. */
  readonly text: string;
  /** Markdown: what the figures mean and how they came about. Computed when asked for. */
  readonly tooltip: () => string;
}

/** Texts by element, kept from one version to the next, so that a half-typed value does not make its line flicker. */
export type KeptHints = Map<string, string>;

/**
 * The deciding figures at the end of the key line of each element whose line begins in `range`; everywhere without one.
 * With `kept`, an element with a value that cannot be read yet shows what it showed before, and `kept` is brought up to date.
 */
export function inlayHints(snapshot: Snapshot, range?: Span, kept?: KeptHints): readonly InlayHint[] {
  const { document, analysis, uri } = snapshot;
  const byLine = new Map<number, Shown[]>();
  for (const evaluation of analysis?.evaluations ?? []) {
    for (const scope of scopeRows) {
      const place = keyPlaceOf(scope, evaluation.subject);
      if (place?.uri !== uri) continue;
      const line = document.lines.lineAt(spanOfPlace([document], place, true).start);
      if (range && (document.lines.lineStart(line) > range.end || document.lines.lineEnd(line) < range.start)) continue;
      const shown = shownFor(scope, place, evaluation, snapshot, kept);
      if (shown) byLine.set(line, [...(byLine.get(line) ?? []), shown]);
    }
  }
  return [...byLine].sort(([a], [b]) => a - b).map(([line, shown]) => hintOf(shown, endOfLine(snapshot, line)));
}

/** What one figure says at the end of a line, and how much of its limit it uses. */
interface Part {
  readonly id: string;
  readonly text: string;
  readonly used: number;
}

interface Shown {
  readonly text: string;
  /** Of which the text is joined; empty for one that is kept. */
  readonly parts: readonly Part[];
  readonly figures: readonly Figure[];
  readonly evaluation: Evaluation;
}

function shownFor(scope: ScopeRow, place: Place, evaluation: Evaluation, snapshot: Snapshot, kept: KeptHints | undefined): Shown | undefined {
  const key = `${evaluation.subject.id} ${scope.id} ${place.path.join('/')}`;
  const speaking = evaluation
    .figures()
    .filter((figure) => figure.hint && scopeOf(figure.id) === scope.id)
    .map((figure, index) => ({ figure, index, place: leadingPlace(figure.id, scope.id) ?? AFTER_LEADING, text: hintText(figure, evaluation), used: decidingLimit(limitsOf(figure.id, evaluation))?.used ?? 0 }))
    .filter(({ text }) => text !== undefined)
    .sort((a, b) => b.used - a.used || a.index - b.index)
    .slice(0, MOST_FIGURES)
    // Which two are shown follows the margins; their order does not, so that nothing swaps places.
    .sort((a, b) => a.place - b.place || a.index - b.index);
  const text = joined(speaking.map((entry) => entry.text ?? ''));
  if (text !== '') {
    if (kept && kept.size >= MOST_KEPT) kept.clear();
    kept?.set(key, text);
    return { text, parts: speaking.map(({ figure, text: part = '', used }) => ({ id: figure.id, text: part, used })), figures: speaking.map(({ figure }) => figure), evaluation };
  }
  const before = kept?.get(key);
  if (before !== undefined && isBeingTyped(evaluation, snapshot)) return { text: before, parts: [], figures: [], evaluation };
  kept?.delete(key);
  return undefined;
}

function hintText(figure: Figure, evaluation: Evaluation): string | undefined {
  const result = evaluation.result(figure.id);
  const text = result.state === 'computed' ? figure.hint?.(result) : undefined;
  return text === undefined || text === '' ? undefined : text;
}

/** Whether something that the subject may rest on cannot be read yet: in its own axis, or in a section that all share. */
function isBeingTyped({ subject }: Evaluation, { document }: Snapshot): boolean {
  const own = subject.fixed.get('axis') ?? subject.fixed.get('heater');
  return document.problems.some(({ severity, span }) => {
    if (severity !== 'error') return false;
    const { path } = document.pathAt(span.start);
    return path[0] === 'axes' || path[0] === 'heating' ? path.length < 2 || (path[0] === own?.[0] && path[1] === own[1]) : true;
  });
}

/** As many texts as fit, first ones first. */
function joined(texts: readonly string[]): string {
  let line = '';
  for (const text of texts) {
    const longer = line === '' ? text : `${line}${SEPARATOR}${text}`;
    if ([...longer].length <= LONGEST_HINT) line = longer;
  }
  return line;
}

/** Of elements that share a line, as two axes do that share their drive, the worse one speaks for a figure. */
function worstOfEach(shown: readonly Shown[]): readonly string[] {
  const texts = new Map<string, { readonly text: string; readonly used: number }>();
  for (const { text, parts } of shown) {
    for (const part of parts.length === 0 ? [{ id: text, text, used: 0 }] : parts) {
      const known = texts.get(part.id);
      if (!known || part.used > known.used) texts.set(part.id, part);
    }
  }
  return [...new Set([...texts.values()].map(({ text }) => text))];
}

function hintOf(shown: readonly Shown[], offset: number): InlayHint {
  return {
    offset,
    text: joined(worstOfEach(shown)),
    tooltip: () => {
      const figures = shown.flatMap(({ figures: list, evaluation }) => list.map((figure) => figureMarkdown(evaluation, figure, 0)));
      return figures.length === 0 ? 'As it was before the value that is being typed.' : blocks(...figures);
    },
  };
}

/** Behind the last character of a line that is not blank, so that a remark on the line is not pushed aside. */
function endOfLine({ document }: Snapshot, line: number): number {
  const start = document.lines.lineStart(line);
  return start + document.text.slice(start, document.lines.lineEnd(line)).trimEnd().length;
}
