import type { FigureRow, LimitRow, Range } from '../services/figures-table.ts';
import { prettySymbol } from '../services/formula-numbers.ts';
import { hang, padEnd, printable, widthOf, wrap } from './cells.ts';
import type { Page } from './style.ts';
import { byElement, bySubject, subjectTitle } from './figure-rows.ts';

/** A number in SI with four digits; with a power of ten where it is very large or small. */
export function siNumber(value: number): string {
  const rounded = Number(value.toPrecision(4));
  const size = Math.abs(rounded);
  return size === 0 || (size >= 1e-3 && size < 1e6) ? String(rounded) : rounded.toExponential().replace('e+', 'e');
}

export function siText(value: Range, unit: string): string {
  const after = unit === '' ? '' : ` ${unit}`;
  const [low, nominal, high] = [siNumber(value.low), siNumber(value.nominal), siNumber(value.high)];
  return low === high ? `${nominal}${after}` : `${nominal}${after} (${low} to ${high}${after})`;
}

/** What stands where a value is due. */
export function valueText(row: FigureRow): string {
  if (row.state === 'computed') return row.text ?? '';
  if (row.state === 'unable') return `none: ${row.reason ?? ''}`;
  return `missing: ${(row.missing ?? []).join(', ')}`;
}

/** A limit with the check that names it and how much of it is used. */
export function limitSentence(limit: LimitRow): string {
  const used = limit.used === undefined ? '' : `, ${siNumber(Number((limit.used * 100).toPrecision(3)))} % used`;
  const state = limit.state === 'kept' ? '' : limit.state === 'broken' ? `: fails (${limit.severity})` : ': may fail';
  return `${limit.text} (${limit.basis}; ${limit.check})${used}${state}`;
}

/** A part list by itself: what its parts do depends on the axis that they are built into. */
export const partListReport = (path: string, { style }: Page): string => `${style.bold(printable(path))}\n\n  A part list has no figures of its own. Ask for those of a machine that uses it.\n`;

/** All figures of one file, by subject and element. */
export function figuresReport(path: string, rows: readonly FigureRow[], hidden: number, page: Page): string {
  const { style } = page;
  const blocks: string[][] = [[style.bold(printable(path))]];
  for (const [subject, ofSubject] of bySubject(rows)) {
    for (const [element, ofElement] of byElement(ofSubject)) {
      blocks.push([`  ${style.bold(printable(`${subjectTitle(subject)}: ${element}`))}`, ...elementLines(ofElement, page)]);
    }
  }
  if (rows.length === 0) blocks.push(['  No figures.']);
  if (hidden > 0) blocks.push([`  ${hidden} more ${hidden === 1 ? 'figure is' : 'figures are'} not computable; --all shows what they lack.`]);
  return `${blocks.map((lines) => lines.join('\n')).join('\n\n')}\n`;
}

/** Two or more lines a figure: identifier, symbol and values aligned, then what it is, its formula, and its limits. */
function elementLines(rows: readonly FigureRow[], { columns, style }: Page): string[] {
  const idCells = Math.max(...rows.map((row) => widthOf(row.id)));
  const symbolCells = Math.max(...rows.map((row) => widthOf(prettySymbol(row.symbol))));
  const indent = 4 + idCells + 2 + symbolCells + 2;
  const under = (text: string): string[] => hang(printable(text), 6, columns).map(style.faint);
  return rows.flatMap((row) => {
    const value = valueText(row);
    const si = row.value === undefined || row.siUnit === '' || row.siUnit === row.unit ? '' : `= ${siNumber(row.value.nominal)} ${row.siUnit}`;
    const [first = '', ...rest] = wrap(printable(`${value}${si === '' ? '' : `  ${si}`}`), columns - indent);
    return [
      `    ${padEnd(row.id, idCells)}  ${padEnd(prettySymbol(row.symbol), symbolCells)}  ${first}`.trimEnd(),
      ...rest.map((line) => `${' '.repeat(indent)}${line}`),
      ...under(`${row.title}: ${prettySymbol(row.formula)}`),
      ...row.limits.flatMap((limit) => under(`limit: ${limitSentence(limit)}`)),
      ...(row.note === undefined ? [] : under(`note: ${row.note}`)),
    ];
  });
}
