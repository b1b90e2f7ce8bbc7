import { figuresShape, type FigureRow } from '../services/figures-table.ts';
import type { Failure } from './find-files.ts';
import type { Places } from './read-machines.ts';
import { version } from '../../../package.json';

/** A machine with the figures that are shown of it. */
export interface FileFigures {
  readonly path: string;
  readonly rows: readonly FigureRow[];
}

/** What `figures --format json` prints; described by schemas/figures-1.schema.json. */
export function figuresJson(
  files: readonly FileFigures[],
  run: { readonly status: number; readonly failures: readonly Failure[]; readonly unmatched: readonly string[] },
  places: Places,
): string {
  const document = {
    format: figuresShape,
    tool: { name: 'axiswright', version },
    status: run.status,
    files: files.map(({ path, rows }) => ({ path, figures: rows.map((row) => withPaths(row, places)) })),
    failures: run.failures,
    unmatched: run.unmatched,
  };
  return `${JSON.stringify(document, null, 2)}\n`;
}

/** Places by relative path instead of by URI, so that the output is the same on every machine. */
function withPaths(row: FigureRow, places: Places): object {
  return {
    ...row,
    terms: row.terms.map((term) => ({ ...term, places: term.places.map(({ uri, line, column }) => ({ path: places.pathOf(uri), line, column })) })),
  };
}
