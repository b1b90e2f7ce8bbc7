import { deriveFigure, showFigure, type Term } from '../figures/derivation.ts';
import type { Evaluation, FigureResult } from '../figures/evaluation.ts';
import type { Figure, Source } from '../figures/figure.ts';
import type { Severity } from '../language/problems.ts';
import { kindDetails } from '../language/quantity-kinds.ts';
import { entrySchema } from '../machine/entry-schema.ts';
import { describeInput } from '../machine/fallback-registry.ts';
import { isDefault, placesOf, type Origin, type Place } from '../machine/origin.ts';
import type { Bounded } from '../machine/values.ts';
import { customaryUnit, siUnit } from './display-unit.ts';
import { decidingLimit, limitsOf, type FigureLimit } from './figure-limits.ts';
import { limitText } from './figure-markdown.ts';
import { spanOfSource } from './places.ts';
import type { Snapshot } from './snapshot.ts';

/** Version of the shape of `FigureRow`; rises with every change that breaks a reader. */
export const figuresShape = 'figures-1';

/** A number with how sure it is. */
export interface Range {
  readonly nominal: number;
  readonly low: number;
  readonly high: number;
}

/** A place in a file as people count: line and column from 1, columns in UTF-16 units. */
export interface FilePlace {
  readonly uri: string;
  readonly line: number;
  readonly column: number;
}

export interface SourceRow {
  readonly title: string;
  /** Section, table or equation. */
  readonly where?: string;
  /** From memory or thinly sourced. */
  readonly weak: boolean;
}

/** One thing that a figure was computed from. */
export interface TermRow {
  /** `screw.lead` for an entry, the figure's identifier for a figure. */
  readonly id: string;
  readonly symbol: string;
  readonly title: string;
  /** In its customary or written unit, with its range. */
  readonly text: string;
  /** In SI; left out for words and tables. */
  readonly value?: Range;
  readonly siUnit?: string;
  readonly origin: 'written here' | 'part' | 'standard size' | 'handbook default' | 'several entries' | 'figure';
  /** Name of the part, designation of the size, or identifier of the figure. */
  readonly of?: string;
  /** Of a standard size or a handbook default. */
  readonly source?: string;
  readonly weak: boolean;
  /** Where it is written; empty for a default. */
  readonly places: readonly FilePlace[];
  /** For a default: the entry that replaces it, such as `nut.friction`. */
  readonly override?: string;
}

/** A limit that a check sets, with how much of it is used. */
export interface LimitRow {
  /** Identifier of the check that compares. */
  readonly check: string;
  readonly bad: 'above' | 'below';
  readonly severity: Severity;
  /** In SI. */
  readonly value: Range;
  /** `at most 80 %` */
  readonly text: string;
  readonly basis: string;
  readonly source?: SourceRow;
  /** Worst end over the strictest end of the limit (the reverse for a limit from below); above 1 it is broken. Left out where a share means nothing. */
  readonly used?: number;
  /** `may-break`: only the uncertain end breaks it. */
  readonly state: 'kept' | 'may-break' | 'broken';
}

/**
 * One figure of one subject: the row of `axiswright figures`, and one member of the array `figures` of its JSON (shape `figures-1`).
 * All numbers are in SI, in the unit that `siUnit` names (empty for bare numbers); texts are for people, in customary units.
 * Fields with a `?` are left out, never null. Readers should ignore fields that they do not know.
 */
export interface FigureRow {
  /** `screw.whirl-speed` */
  readonly id: string;
  readonly symbol: string;
  readonly title: string;
  readonly meaning: string;
  /** Kind of quantity, `rotational-speed`. */
  readonly quantity: string;
  /** `axes/lift/drive`, `axes/lift/drive-options/belt`, `machine`, `heating/bed`. */
  readonly subject: string;
  /** False for a drive option that is only compared. */
  readonly chosen: boolean;
  /** 1 decides, 2 matters, 3 is background. */
  readonly rank: 1 | 2 | 3;
  /** `missing`: entries lack. `unable`: it has no value here, for the reason given. */
  readonly state: 'computed' | 'missing' | 'unable';
  /** In SI; only of a computed figure. */
  readonly value?: Range;
  readonly siUnit: string;
  /** The customary unit, and the value in it with its range, or the verdict in words. */
  readonly unit: string;
  readonly inUnit?: Range;
  readonly text?: string;
  readonly note?: string;
  /** Uncertain entries under it, the one that moves it most first. */
  readonly movedBy?: readonly string[];
  /** Entries that would make it computable. */
  readonly missing?: readonly string[];
  readonly reason?: string;
  /** The limit to look at first leads. */
  readonly limits: readonly LimitRow[];
  readonly formula: string;
  /** Everything that it is computed from directly; a figure among them has a row of its own. */
  readonly terms: readonly TermRow[];
  readonly sources: readonly SourceRow[];
}

/**
 * All figures of all subjects that concern them, subject by subject in the order of the text; within one by scope as declared. Pure and in a
 * fixed order. Rows that are not `wanted` are left out before the work of making them.
 */
export function figuresOf(snapshot: Snapshot, wanted: (row: Pick<FigureRow, 'rank' | 'state' | 'chosen'>) => boolean = () => true): readonly FigureRow[] {
  return (snapshot.analysis?.evaluations ?? []).flatMap((evaluation) =>
    evaluation.figures().flatMap((figure) => {
      const result = evaluation.result(figure.id);
      return result.state === 'left-out' || !wanted({ rank: figure.rank, state: result.state, chosen: evaluation.subject.chosen }) ? [] : [rowOf(figure, result, evaluation, snapshot)];
    }),
  );
}

function rowOf(figure: Figure, result: Exclude<FigureResult, { state: 'left-out' }>, evaluation: Evaluation, snapshot: Snapshot): FigureRow {
  const derivation = deriveFigure(figure, evaluation);
  const limits = limitsOf(figure.id, evaluation);
  const deciding = decidingLimit(limits);
  return {
    id: figure.id,
    symbol: figure.symbol,
    title: figure.title,
    meaning: figure.meaning,
    quantity: figure.quantity,
    subject: evaluation.subject.id,
    chosen: evaluation.subject.chosen,
    rank: figure.rank,
    state: result.state,
    ...outcomeOf(figure, result),
    siUnit: siUnit(figure.quantity),
    limits: (deciding ? [deciding, ...limits.filter((limit) => limit !== deciding)] : []).map((limit) => limitRow(limit, figure, evaluation)),
    formula: derivation.formula,
    terms: derivation.terms.map((term) => termRow(term, evaluation, snapshot)),
    sources: derivation.sources.map(sourceRow),
  };
}

function outcomeOf(figure: Figure, result: Exclude<FigureResult, { state: 'left-out' }>): Pick<FigureRow, 'unit' | 'value' | 'inUnit' | 'text' | 'note' | 'movedBy' | 'missing' | 'reason'> {
  const size = result.state === 'computed' ? Math.abs(result.nominal) : 0;
  const unit = customaryUnit(figure.quantity, figure.unit, size);
  switch (result.state) {
    case 'computed':
      return {
        unit: unit.symbol,
        value: rangeOf(result),
        inUnit: rangeOf({ nominal: unit.of(result.nominal), low: unit.of(result.low), high: unit.of(result.high) }),
        text: showFigure(figure, result),
        movedBy: result.movedBy,
        ...(result.note === undefined ? {} : { note: result.note }),
      };
    case 'missing':
      return { unit: unit.symbol, missing: result.missing };
    case 'unable':
      return { unit: unit.symbol, reason: result.reason };
  }
}

/** Zero has no sign in JSON, so it has none here. */
const rangeOf = ({ nominal, low, high }: Bounded): Range => ({ nominal: nominal + 0, low: low + 0, high: high + 0 });

const sourceRow = ({ title, where, weak }: Source): SourceRow => ({ title, ...(where === undefined ? {} : { where }), weak: weak ?? false });

function limitRow({ check, limit, at, used, state }: FigureLimit, figure: Figure, evaluation: Evaluation): LimitRow {
  return {
    check: check.id,
    bad: check.bad,
    severity: limit.severity,
    value: rangeOf(at),
    text: limitText(figure, { check, limit, at, used, state }, evaluation),
    basis: limit.basis,
    ...(limit.source ? { source: sourceRow(limit.source) } : {}),
    ...(used === undefined ? {} : { used }),
    state,
  };
}

function termRow(term: Term, evaluation: Evaluation, snapshot: Snapshot): TermRow {
  const quantity = evaluation.registry.get(term.id)?.quantity ?? describeInput(term.id).quantity;
  return {
    id: term.id,
    symbol: term.symbol,
    title: term.title,
    text: term.shown,
    ...(term.value ? { value: rangeOf(term.value), siUnit: quantity ? kindDetails(quantity).si : '' } : {}),
    ...originRow(term.origin),
    places: term.origin.from === 'figure' ? [] : placesOf(term.origin).flatMap((place) => filePlace(place, snapshot)),
    ...(term.origin.from !== 'figure' && isDefault(term.origin) && entrySchema(term.id) ? { override: term.id } : {}),
  };
}

function originRow(origin: Term['origin']): Pick<TermRow, 'origin' | 'of' | 'source' | 'weak'> {
  switch (origin.from) {
    case 'figure':
      return { origin: 'figure', of: origin.figure, weak: false };
    case 'here':
      return { origin: 'written here', weak: false };
    case 'part':
      return { origin: 'part', of: origin.part, weak: false };
    case 'standard':
      return { origin: 'standard size', of: origin.size, source: origin.source, weak: false };
    case 'handbook':
      return { origin: 'handbook default', source: origin.source, weak: origin.weak };
    case 'several':
      return { origin: 'several entries', weak: origin.parts.some((part) => isWeak(part.origin)) };
  }
}

function isWeak(origin: Origin): boolean {
  return origin.from === 'handbook' ? origin.weak : origin.from === 'several' && origin.parts.some((part) => isWeak(part.origin));
}

function filePlace(place: Place, { document, lists }: Snapshot): readonly FilePlace[] {
  const holder = [document, ...lists].find((candidate) => candidate.uri === place.uri);
  const span = holder && spanOfSource(holder, place.path);
  if (!holder || !span) return [];
  const { line, character } = holder.lines.positionAt(span.start);
  return [{ uri: place.uri, line: line + 1, column: character + 1 }];
}
