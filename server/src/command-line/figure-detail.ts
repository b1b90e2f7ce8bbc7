import type { FigureRow, SourceRow, TermRow } from '../services/figures-table.ts';
import { prettySymbol } from '../services/formula-numbers.ts';
import { hang, padEnd, printable, widthOf, wrap } from './cells.ts';
import type { Page } from './style.ts';
import { subjectTitle } from './figure-rows.ts';
import { limitSentence, siText, valueText } from './figures-report.ts';
import type { Places } from './read-machines.ts';

/** One figure of one subject with its whole derivation, down to the lines of the file and the sources. */
export function figureDetail(path: string, row: FigureRow, all: readonly FigureRow[], places: Places, page: Page): string {
  const { columns, style } = page;
  const text = (label: string, content: string): string[] => {
    const [first = '', ...rest] = wrap(printable(content), columns - 13);
    return [`  ${padEnd(label, 11)}${first}`, ...rest.map((line) => `${' '.repeat(13)}${line}`)];
  };
  const same = new Map(all.filter((other) => other.subject === row.subject).map((other) => [other.id, other]));
  const lines = [
    style.bold(printable(`${path}: ${subjectTitle(row.subject)}`)),
    '',
    style.bold(printable(`${row.title}, ${prettySymbol(row.symbol)}`)) + style.faint(`  ${row.id}`),
    ...text('value', valueText(row)),
    ...(row.value ? text('in SI', siText(row.value, row.siUnit)) : []),
    ...text('meaning', row.meaning),
    ...(row.note === undefined ? [] : text('note', row.note)),
    ...(row.movedBy === undefined || row.movedBy.length === 0 ? [] : text('moved by', `${row.movedBy.join(', ')} (most first)`)),
    ...row.limits.flatMap((limit, index) => text(index === 0 ? 'limits' : '', limitSentence(limit))),
    '',
    ...derivation(row, same, places, path, page),
  ];
  return `${lines.join('\n')}\n`;
}

/** The figure and every figure under it, each once, in the order in which they are first met. */
function derivation(row: FigureRow, rows: ReadonlyMap<string, FigureRow>, places: Places, path: string, { columns, style }: Page): string[] {
  const order: FigureRow[] = [];
  const visit = (figure: FigureRow): void => {
    if (order.includes(figure)) return;
    order.push(figure);
    for (const term of figure.terms) {
      const under = term.origin === 'figure' ? rows.get(term.id) : undefined;
      if (under) visit(under);
    }
  };
  visit(row);
  const blocks = order.map((figure) => {
    const symbols = Math.max(0, ...figure.terms.map((term) => widthOf(prettySymbol(term.symbol))));
    return [
      `  ${style.bold(printable(figure.id))}`,
      ...indented(prettySymbol(figure.formula), 4, columns),
      ...figure.terms.flatMap((term) => {
        const first = indented(`${padEnd(prettySymbol(term.symbol), symbols)} = ${term.text}   ${term.title}`, 6, columns);
        return [...first, ...indented(originText(term, places, path), 6 + symbols + 3, columns).map(style.faint)];
      }),
      ...figure.sources.flatMap((source) => indented(`source: ${sourceText(source)}`, 4, columns)),
    ].join('\n');
  });
  return blocks.join('\n\n').split('\n');
}

function indented(text: string, indent: number, columns: number): string[] {
  const shown = printable(text);
  // What fits stays as it is, since wrapping would close the gaps between its columns.
  return widthOf(shown) <= columns - indent ? [`${' '.repeat(indent)}${shown}`] : hang(shown, indent, columns);
}

const WEAK = 'from memory or thinly sourced';

function sourceText({ title, where, weak }: SourceRow): string {
  const text = `${title}${where === undefined ? '' : `, ${where}`}`;
  return weak && !text.includes('memory') ? `${text} (${WEAK})` : text;
}

/** Where a term comes from, in words. */
function originText(term: TermRow, places: Places, path: string): string {
  const here = [...new Set(term.places.filter((place) => places.pathOf(place.uri) === path).map((place) => String(place.line)))];
  const elsewhere = term.places.map((place) => `${places.pathOf(place.uri)}:${place.line}`).filter((place) => !place.startsWith(`${path}:`));
  const at = [...(here.length === 0 ? [] : [`${here.length === 1 ? 'line' : 'lines'} ${here.join(', ')}`]), ...new Set(elsewhere)].join(', ');
  const source = term.source === undefined ? '' : ` (${term.source}${term.weak && !term.source.includes('memory') ? `; ${WEAK}` : ''})`;
  switch (term.origin) {
    case 'figure':
      return `figure ${term.of ?? term.id}`;
    case 'part':
      return `part ${term.of ?? ''}, ${at}`;
    case 'standard size':
      return `standard size ${term.of ?? ''}${source}, named on ${at}`;
    case 'handbook default':
      return `assumed${source}${term.override === undefined ? '' : `; write ${term.override} to replace it`}`;
    case 'several entries':
      return at === '' ? `put together${source}` : `from ${at}`;
    case 'written here':
      return `written on ${at}`;
  }
}
