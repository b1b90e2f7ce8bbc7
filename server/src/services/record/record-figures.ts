import { prettySymbol } from '../formula-numbers.ts';
import type { FigureRow } from '../figures-table.ts';
import { escapeMarkdown, blocks, code, table } from '../markdown.ts';
import { entriesToWrite } from '../missing.ts';
import { subjectTitle } from '../subject-title.ts';
import { scopeRow } from '../../machine/scopes.ts';
import { scopeOf } from '../../figures/figure.ts';
import { figureCells } from './figure-cells.ts';

/**
 * The figures of every subject: those that decide, then the rest. The order never depends on a value, so that a change of the machine
 * shows as changed lines and not as moved ones.
 */
export function figuresMarkdown(rows: readonly FigureRow[]): string {
  const subjects = [...new Set(rows.map((row) => row.subject))];
  return blocks(...subjects.map((subject) => subjectMarkdown(subject, rows.filter((row) => row.subject === subject))));
}

function subjectMarkdown(subject: string, rows: readonly FigureRow[]): string {
  const chosen = rows.every((row) => row.chosen);
  const shown = rows.filter((row) => row.state !== 'missing');
  const decides = (row: FigureRow): boolean => row.rank === 1 || row.limits.length > 0;
  const deciding = [...shown.filter((row) => row.rank === 1), ...shown.filter((row) => row.rank !== 1 && decides(row))];
  const rest = chosen ? shown.filter((row) => !decides(row)) : [];
  const told = [...deciding, ...rest];
  if (told.length === 0 && rows.every((row) => row.state !== 'missing')) return '';
  return blocks(
    `### ${escapeMarkdown(subjectTitle(subject))}${chosen ? '' : ' (not chosen, only compared)'}`,
    table(['Of', 'Figure', 'Symbol', 'Value', 'Range', 'Limit', 'Limit used'], deciding.map((row) => {
      const { value, range, limit, use } = figureCells(row);
      return [...nameCells(row), value, range, limit, use].map((cell, index) => (index < 3 ? cell : escapeMarkdown(cell)));
    })),
    rest.length > 0 && `#### Further figures: ${escapeMarkdown(subjectTitle(subject))}`,
    table(['Of', 'Figure', 'Symbol', 'Value', 'Range'], rest.map((row) => {
      const { value, range } = figureCells(row);
      return [...nameCells(row), escapeMarkdown(value), escapeMarkdown(range)];
    })),
    remarks(told),
    missing(rows),
  );
}

function nameCells(row: FigureRow): readonly string[] {
  return [escapeMarkdown(scopeRow(scopeOf(row.id)).title), escapeMarkdown(row.title), escapeMarkdown(prettySymbol(row.symbol))];
}

/** What belongs to a value, and why there is none. */
function remarks(rows: readonly FigureRow[]): string | undefined {
  const lines = rows.flatMap((row) => {
    const remark = row.state === 'unable' ? `none, because ${row.reason ?? ''}` : row.note;
    return remark === undefined ? [] : [`- ${escapeMarkdown(row.title)} (${code(row.id)}): ${escapeMarkdown(remark)}`];
  });
  return lines.length === 0 ? undefined : `Remarks:\n\n${lines.join('\n')}`;
}

/** Silence would read as "fine": what could not be computed is counted by the entry that it waits for. */
function missing(rows: readonly FigureRow[]): string | undefined {
  const waiting = new Map<string, number>();
  for (const row of rows) if (row.state === 'missing') for (const entry of entriesToWrite(row.missing ?? [])) waiting.set(entry, (waiting.get(entry) ?? 0) + 1);
  if (waiting.size === 0) return undefined;
  const lines = [...waiting].sort(([a], [b]) => (a < b ? -1 : 1)).map(([entry, count]) => `- ${code(entry)}: ${count} ${count === 1 ? 'figure waits' : 'figures wait'} for it`);
  return `Not computed, for want of an entry:\n\n${lines.join('\n')}`;
}
