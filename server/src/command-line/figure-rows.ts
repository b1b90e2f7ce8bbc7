import type { FigureRow } from '../services/figures-table.ts';

export { subjectTitle } from '../services/subject-title.ts';

/** What an element is called: `thrust-bearing.friction` belongs to the thrust bearing. */
export const elementTitle = (id: string): string => id.slice(0, id.indexOf('.')).replaceAll('-', ' ');

/** Subjects in the order of the text, each with its rows. */
export const bySubject = (rows: readonly FigureRow[]): ReadonlyMap<string, readonly FigureRow[]> => group(rows, (row) => row.subject);

/** Elements of one subject, each with its rows. */
export const byElement = (rows: readonly FigureRow[]): ReadonlyMap<string, readonly FigureRow[]> => group(rows, (row) => elementTitle(row.id));

function group(rows: readonly FigureRow[], keyOf: (row: FigureRow) => string): ReadonlyMap<string, readonly FigureRow[]> {
  const groups = new Map<string, FigureRow[]>();
  for (const row of rows) {
    const key = keyOf(row);
    const rowsThere = groups.get(key);
    if (rowsThere) rowsThere.push(row);
    else groups.set(key, [row]);
  }
  return groups;
}
