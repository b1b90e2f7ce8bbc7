import type { DocumentSymbol, SymbolInformation } from 'vscode-languageserver';
import type { OutlineItem } from '../services/outline.ts';
import type { Desk } from './desk.ts';
import { uriIn } from './parameters.ts';
import { rangeOf, type Lines } from './positions.ts';

/** The numbers that the protocol has for kinds of symbols: they choose the picture beside the name. */
const kinds = { machine: 2, section: 3, axis: 5, drive: 19, element: 8, mass: 14, supply: 24, heater: 7, part: 23 } as const;

/** The outline, which is also the bread crumbs above the text. */
export function answerOutline(desk: Desk): void {
  const { fence, client } = desk;
  fence.request<readonly DocumentSymbol[] | readonly SymbolInformation[]>('textDocument/documentSymbol', [], async (params, token) => {
    const asked = await desk.open(uriIn(params), token);
    if (!asked) return [];
    const { lines } = asked.snapshot.document;
    const items = asked.analysis.outlineOf(asked.snapshot);
    return client.nestedSymbols ? items.map((item) => nested(item, lines)) : items.flatMap((item) => flat(item, lines, asked.document.uri, undefined));
  });
}

function nested({ name, detail, kind, span, selection, children }: OutlineItem, lines: Lines): DocumentSymbol {
  return {
    name,
    ...(detail === '' ? {} : { detail }),
    kind: kinds[kind],
    range: rangeOf(lines, span),
    selectionRange: rangeOf(lines, selection),
    children: children.map((child) => nested(child, lines)),
  };
}

function flat(item: OutlineItem, lines: Lines, uri: string, container: string | undefined): readonly SymbolInformation[] {
  const own: SymbolInformation = { name: item.name, kind: kinds[item.kind], location: { uri, range: rangeOf(lines, item.span) }, ...(container === undefined ? {} : { containerName: container }) };
  return [own, ...item.children.flatMap((child) => flat(child, lines, uri, item.name))];
}
