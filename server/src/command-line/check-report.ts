import { figuresOf, type FigureRow } from '../services/figures-table.ts';
import { entriesToWrite } from '../services/missing.ts';
import { hang, printable } from './cells.ts';
import { excerptOf } from './excerpt.ts';
import { bySubject, subjectTitle } from './figure-rows.ts';
import type { FileFindings, FindingRow } from './findings.ts';
import type { Page } from './style.ts';
import { tableLines } from './table.ts';

/** One file's findings and, unless they are not wanted, its decisive figures, for people. */
export function fileReport(file: FileFindings, page: Page, figures = true): string {
  const { machine, findings } = file;
  const told = new Set<string>();
  const blocks = [
    [page.style.bold(printable(machine.path))],
    ...findings.map((finding) => findingLines(finding, file, told, page)),
    ...(findings.length === 0 ? [['  No findings.']] : []),
    ...(figures ? decidingFigures(file, page) : []),
  ];
  return `${blocks.map((lines) => lines.join('\n')).join('\n\n')}\n`;
}

/** `told` holds the cautions that stand in full further up in the same file. */
function findingLines(finding: FindingRow, { machine }: FileFindings, told: Set<string>, { columns, style }: Page): string[] {
  const { line, column } = finding.start;
  const number = String(line).padStart(6);
  const excerpt = excerptOf(machine.lines, finding.span, columns - 9);
  const paragraph = (label: string, text: string): string[] => hang(`${label}${printable(text)}`, 4, columns);
  return [
    `  ${style.severity(finding.severity, finding.severity)}  ${style.bold(printable(finding.code))}  ${line}:${column}`,
    ...hang(printable(finding.message), 2, columns, 0),
    style.faint(`${number} | `) + excerpt.source,
    style.faint(`${' '.repeat(number.length)} | `) + excerpt.marks.replace(/\^+/, (marks) => style.severity(finding.severity, marks)),
    ...finding.related.flatMap((related) => {
      const where = `${related.path === machine.path ? 'line ' : `${printable(related.path)}:`}${related.start.line}`;
      return paragraph(`${where}: `, related.message);
    }),
    ...finding.cautions.flatMap((caution) => {
      const short = told.has(caution);
      told.add(caution);
      return paragraph('caution: ', short ? `${caution.slice(0, caution.indexOf(':'))}, as above.` : caution);
    }),
    ...finding.fixes.flatMap((fix) => paragraph('fix: ', fix.title)),
  ];
}

/** Words for the state of a limit; what is kept needs none. */
const verdicts = { broken: 'fails', 'may-break': 'may fail', kept: '' } as const;

/** A table for each drive: what decides, against which limit; and what could not be computed, since silence would read as "fine". */
function decidingFigures({ machine }: FileFindings, { columns, style }: Page): string[][] {
  return [...bySubject(figuresOf(machine.snapshot, ({ chosen, rank, state }) => chosen && (rank === 1 || state === 'missing')))].flatMap(([subject, rows]) => {
    const deciding = rows.filter((row) => row.rank === 1 && row.state !== 'missing');
    const missing = rows.filter((row) => row.state === 'missing');
    const lacking = missingSentence(missing);
    if (deciding.length === 0 && lacking === undefined) return [];
    const cells = deciding.map((row) => {
      const [limit] = row.limits;
      const value = row.state === 'computed' ? (row.text ?? '') : `none: ${row.reason ?? ''}`;
      return [row.title, value, limit?.text ?? '', limit ? verdicts[limit.state] : ''].map(printable);
    });
    const lines = [
      `  ${style.bold(printable(subjectTitle(subject)))}: the figures that decide`,
      ...(cells.length === 0 ? [] : tableLines([{ title: 'figure' }, { title: 'value', gives: true }, { title: 'limit' }, { title: 'verdict' }], cells, 4, columns)),
    ];
    if (lacking !== undefined) lines.push(...hang(printable(lacking), 4, columns));
    return [lines];
  });
}

/** Entries named at most; a drive that is hardly begun lacks dozens. */
const MOST_ENTRIES = 6;

/** How many figures lack entries that one could write, and which entries most of them wait for; undefined where there is none. */
function missingSentence(rows: readonly FigureRow[]): string | undefined {
  const waiting = new Map<string, number>();
  for (const row of rows) for (const entry of entriesToWrite(row.missing ?? [])) waiting.set(entry, (waiting.get(entry) ?? 0) + 1);
  if (waiting.size === 0) return undefined;
  const entries = [...waiting].sort(([a, m], [b, n]) => n - m || (a < b ? -1 : 1)).map(([entry]) => entry);
  const rest = entries.length - MOST_ENTRIES;
  return `${rows.length} ${rows.length === 1 ? 'figure is' : 'figures are'} not computable for want of ${entries.slice(0, MOST_ENTRIES).join(', ')}${rest > 0 ? ` and ${rest} more` : ''}.`;
}
