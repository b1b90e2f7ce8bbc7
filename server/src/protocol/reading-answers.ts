import type { DocumentLink, Hover, Location, MarkupContent } from 'vscode-languageserver';
import type { Desk } from './desk.ts';
import { locationOf } from './finding-messages.ts';
import { fieldAt, uriIn } from './parameters.ts';
import { plainText } from './plain-text.ts';
import { rangeOf } from './positions.ts';

/** Hover, definition, references and links. */
export function answerReading(desk: Desk): void {
  const { fence, client } = desk;

  fence.request<Hover | null>('textDocument/hover', null, async (params, token) => {
    const asked = await desk.at(params, token);
    const hover = asked?.fresh === true ? asked.analysis.hoverAt(asked.snapshot, asked.offset) : undefined;
    return asked && hover ? { contents: markup(hover.markdown, client.markdownHover), range: rangeOf(asked.snapshot.document.lines, hover.span) } : null;
  });

  fence.request<Location | null>('textDocument/definition', null, async (params, token) => {
    const asked = await desk.at(params, token);
    const location = asked?.fresh === true ? asked.analysis.definitionAt(asked.snapshot, asked.offset) : undefined;
    return asked && location ? locationOf(location, asked.snapshot) : null;
  });

  fence.request<readonly Location[]>('textDocument/references', [], async (params, token) => {
    const asked = await desk.at(params, token);
    if (asked?.fresh !== true) return [];
    const withDefinition = fieldAt(params, 'context', 'includeDeclaration') !== false;
    return asked.analysis.referencesAt(asked.snapshot, asked.offset, withDefinition).map((location) => locationOf(location, asked.snapshot));
  });

  fence.request<readonly DocumentLink[]>('textDocument/documentLink', [], async (params, token) => {
    const asked = await desk.open(uriIn(params), token);
    if (!asked) return [];
    return asked.analysis.documentLinks(asked.snapshot).map(({ span, target }) => ({
      range: rangeOf(asked.snapshot.document.lines, span),
      target,
      ...(client.linkTooltips ? { tooltip: 'Open the part list' } : {}),
    }));
  });
}

/** Markdown where the client shows it. */
export const markup = (markdown: string, shown: boolean): MarkupContent =>
  shown ? { kind: 'markdown', value: markdown } : { kind: 'plaintext', value: plainText(markdown) };
