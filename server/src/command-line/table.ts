import { padEnd, padStart, shorten, widthOf, wrap } from './cells.ts';

export interface Column {
  readonly title: string;
  /** The column that gives way when the table is too wide: its cells are broken into lines. One a table. */
  readonly gives?: boolean;
  readonly right?: boolean;
}

/** Fewest cells to which the column that gives way is pressed. */
const MIN_CELLS = 16;

/**
 * Rows as aligned lines. Columns are as wide as their widest cell, two spaces apart; empty columns are left out; the column that gives way takes
 * what is left. The first line holds the titles.
 */
export function tableLines(columns: readonly Column[], rows: readonly (readonly string[])[], indent: number, cells: number): string[] {
  const used = columns.map((_, index) => index).filter((index) => rows.some((row) => (row[index] ?? '') !== ''));
  const all = [columns.map((column) => column.title), ...rows];
  const widths = new Map(used.map((index) => [index, Math.max(...all.map((row) => widthOf(row[index] ?? '')))]));
  const total = indent + [...widths.values()].reduce((sum, width) => sum + width, 0) + 2 * (used.length - 1);
  const giving = used.find((index) => columns[index]?.gives === true);
  if (giving !== undefined && total > cells) widths.set(giving, Math.max(MIN_CELLS, (widths.get(giving) ?? 0) - (total - cells)));

  return all.flatMap((row) => {
    const broken = used.map((index) => {
      const width = widths.get(index) ?? 0;
      const lines = index === giving ? wrap(row[index] ?? '', width) : [row[index] ?? ''];
      return lines.map((line) => (index === giving ? shorten(line, width) : line));
    });
    const height = Math.max(1, ...broken.map((lines) => lines.length));
    return Array.from({ length: height }, (_, line) => {
      const parts = used.map((index, position) => {
        const text = broken[position]?.[line] ?? '';
        const width = widths.get(index) ?? 0;
        return columns[index]?.right === true ? padStart(text, width) : padEnd(text, width);
      });
      return `${' '.repeat(indent)}${parts.join('  ')}`.trimEnd();
    });
  });
}
