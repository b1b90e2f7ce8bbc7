import { charactersOf, printable, widthOf } from './cells.ts';
import type { SourceLines } from './source-lines.ts';

/** A line of a file and the marks below it, both in cells from the same margin. */
export interface Excerpt {
  readonly line: number;
  readonly source: string;
  readonly marks: string;
}

/** Cells from one tab stop to the next: how a tab is shown, not what it means. */
const TAB = 4;

interface Piece {
  readonly text: string;
  readonly cells: number;
  readonly marked: boolean;
}

/**
 * The line on which a span begins, with `^` under exactly that part of it. A span over several lines is marked to the end of its first; an empty
 * one has one mark. A line longer than `columns` is cut where it must be, so that the beginning of the span stays in sight.
 */
export function excerptOf(lines: SourceLines, span: { readonly start: number; readonly end: number }, columns: number): Excerpt {
  const { line, column } = lines.placeOf(span.start);
  const pieces = piecesOf(lines.line(line), column - 1, column - 1 + Math.max(1, span.end - span.start));
  const [begin, end] = window(pieces, columns);
  const seen = pieces.slice(begin, end);
  const margin = begin > 0 ? 1 : 0;
  const source = '…'.repeat(margin) + seen.map((piece) => piece.text).join('') + (end < pieces.length ? '…' : '');
  const marks = ' '.repeat(margin) + seen.map((piece) => (piece.marked ? '^' : ' ').repeat(piece.cells)).join('');
  return { line, source: source.trimEnd(), marks: marks.trimEnd() };
}

/** The characters of a line as they are shown; one empty cell more where the span begins behind the last. */
function piecesOf(text: string, from: number, to: number): readonly Piece[] {
  const pieces: Piece[] = [];
  let offset = 0;
  let cells = 0;
  for (const character of charactersOf(text)) {
    const shown = character === '\t' ? ' '.repeat(TAB - (cells % TAB)) : printable(character);
    pieces.push({ text: shown, cells: widthOf(shown), marked: offset < to && offset + character.length > from });
    offset += character.length;
    cells += widthOf(shown);
  }
  return from >= text.length ? [...pieces, { text: ' ', cells: 1, marked: true }] : pieces;
}

const sum = (pieces: readonly Piece[]): number => pieces.reduce((total, piece) => total + piece.cells, 0);

/** Which pieces to show: all, else from the beginning, else from a little before the first mark; room for an ellipsis on either side. */
function window(pieces: readonly Piece[], columns: number): readonly [number, number] {
  if (sum(pieces) <= columns) return [0, pieces.length];
  const mark = pieces.findIndex((piece) => piece.marked);
  let begin = 0;
  if (sum(pieces.slice(0, mark)) > columns / 2) {
    begin = mark;
    while (begin > 0 && sum(pieces.slice(begin - 1, mark)) <= columns / 3) begin--;
  }
  let end = mark;
  while (end < pieces.length && sum(pieces.slice(begin, end + 1)) <= columns - 2) end++;
  return [begin, Math.max(end, mark + 1)];
}
