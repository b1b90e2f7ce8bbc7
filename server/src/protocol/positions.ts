import type { Position, Range } from 'vscode-languageserver';
import type { Location } from '../services/diagnostics.ts';

/** A stretch of a text in UTF-16 code units, which is what positions of the protocol count too. */
export type Span = Location['span'];

/** The lines of a text, as every document of a snapshot has them. Positions outside of the text are brought inside. */
export interface Lines {
  positionAt(offset: number): Position;
  offsetAt(position: Position): number;
}

export const rangeOf = (lines: Lines, span: Span): Range => ({ start: lines.positionAt(span.start), end: lines.positionAt(span.end) });

/** The span of a range; a range written backwards is turned round. */
export function spanOf(lines: Lines, range: Range): Span {
  const a = lines.offsetAt(range.start);
  const b = lines.offsetAt(range.end);
  return { start: Math.min(a, b), end: Math.max(a, b) };
}
