import { printable, wrap } from './cells.ts';
import { excerptOf } from './excerpt.ts';
import { bySubject, figuresOfChosen, limitText, subjectTitle, tightestLimit } from './figure-rows.ts';
import type { FileFindings, FindingRow } from './findings.ts';
import type { Page } from './style.ts';
import { tableLines } from './table.ts';

/** One file's findings and its decisive figures, for people. */
export function fileReport(file: FileFindings, page: Page): string {
  const { machine, findings } = file;
  const told = new Set<string>();
  const blocks = [
    [page.style.bold(printable(machine.path))],
    ...findings.map((finding) => findingLines(finding, file, told, page)),
    ...(findings.length === 0 ? [['  No findings.']] : []),
    ...decidingFigures(file, page),
  ];
  return `${blocks.map((lines) => lines.join('\n')).join('\n\n')}\n`;
}

/** `told` holds the cautions that stand in full further up in the same file. */
function findingLines(finding: FindingRow, { machine }: FileFindings, told: Set<string>, { columns, style }: Page): string[] {
  const { line, column } = finding.start;
  const number = String(line).padStart(6);
  const excerpt = excerptOf(machine.lines, finding.span, columns - 9);
  const paragraph = (label: string, text: string): string[] =>
    wrap(`${label}${printable(text)}`, columns - 4).map((part, index) => (index === 0 ? `    ${part}` : `      ${part}`));
  return [
    `  ${style.severity(finding.severity, finding.severity)}  ${style.bold(printable(finding.code))}  ${line}:${column}`,
    ...wrap(printable(finding.message), columns - 2).map((part) => `  ${part}`),
    style.faint(`${number} | `) + excerpt.source,
    style.faint(`${' '.repeat(number.length)} | `) + style.severity(finding.severity, excerpt.marks),
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

/** A table for each drive: what decides, against which limit; and what could not be computed, since silence would read as "fine". */
function decidingFigures({ machine }: FileFindings, { columns, style }: Page): string[][] {
  return [...bySubject(figuresOfChosen(machine))].flatMap(([subject, rows]) => {
    const deciding = rows.filter((row) => row.rank === 1 && row.state !== 'missing');
    const missing = rows.filter((row) => row.state === 'missing');
    if (deciding.length === 0 && missing.length === 0) return [];
    const cells = deciding.map((row) => {
      const limit = tightestLimit(row.limits);
      const value = row.state === 'computed' ? (row.text ?? '') : `none: ${row.reason ?? ''}`;
      return [row.title, value, limit ? limitText(limit) : '', limit?.broken === true ? limit.severity : ''].map(printable);
    });
    const wanted = [...new Set(missing.flatMap((row) => row.missing ?? []))];
    const lines = [
      `  ${style.bold(printable(subjectTitle(subject)))}: the figures that decide`,
      ...(cells.length === 0 ? [] : tableLines([{ title: 'figure' }, { title: 'value', gives: true }, { title: 'limit' }, { title: 'finding' }], cells, 4, columns)),
    ];
    if (missing.length > 0) {
      const count = `${missing.length} ${missing.length === 1 ? 'figure' : 'figures'} not computable for want of: `;
      lines.push(...wrap(`${count}${printable(wanted.join(', '))}`, columns - 4).map((line) => `    ${line}`));
    }
    return [lines];
  });
}
