import type { CompletionItem as Message, CompletionList } from 'vscode-languageserver';
import type { CompletionItem } from '../services/completion.ts';
import type { Snapshot } from '../services/snapshot.ts';
import type { Asked, Desk } from './desk.ts';
import type { OpenDocument } from './documents.ts';
import { fieldAt, fieldsOf, textIn, uriIn } from './parameters.ts';
import { rangeOf } from './positions.ts';
import { markup } from './reading-answers.ts';

/** The numbers that the protocol has for kinds of completions: they choose the picture beside the label. */
const kinds = { key: 10, choice: 20, name: 18, size: 21, unit: 11, example: 12, template: 15 } as const;
const asSnippet = 2;
const adjustIndentation = 2;

/** A list that was given, with the text that it was made for: more is told of an item when it is looked at. */
interface Given {
  readonly snapshot: Snapshot;
  readonly items: readonly CompletionItem[];
}

/** Completion, and what an item comes to for the axis when a person looks at it. */
export function answerCompletion(desk: Desk): void {
  const { fence, documents, client } = desk;
  const given = new WeakMap<OpenDocument, Given>();

  fence.request<CompletionList>('textDocument/completion', { isIncomplete: false, items: [] }, async (params, token) => {
    const before = documents.description(uriIn(params))?.text ?? '';
    const asked = await desk.at(params, token);
    if (!asked) return { isIncomplete: false, items: [] };
    const typed = asked.fresh ? 0 : typedSince(before, asked.snapshot.document.text, asked.offset);
    if (typed === undefined) return { isIncomplete: true, items: [] };
    const items = asked.analysis.completionsAt(asked.snapshot, asked.offset + typed);
    given.set(asked.document, { snapshot: asked.snapshot, items });
    return { isIncomplete: false, items: items.map((item, index) => messageOf(inTextAskedAbout(item, typed), index, asked, desk)) };
  });

  fence.request<unknown>('completionItem/resolve', null, async (message) => {
    const document = documents.description(textIn(fieldAt(message, 'data', 'uri')));
    const list = document && given.get(document);
    const item = list?.items[Number(fieldAt(message, 'data', 'index'))];
    if (!list || !item || item.label !== fieldsOf(message)['label']) return message;
    const analysis = await desk.scheduler.analysis();
    const figures = analysis.figuresOfCompletion(list.snapshot, item);
    const told = figures !== undefined && client.completionResolves.includes('detail') ? { detail: `${figures} · ${item.detail}` } : {};
    return { ...fieldsOf(message), ...told, ...(item.documentation === '' ? {} : { documentation: markup(item.documentation, client.markdownCompletion) }) };
  });
}

/**
 * How much of a word has been typed at `offset` since the text read `before`; undefined when anything else has changed. An editor asks once, at
 * the first letter, and sorts the answer out by itself while the typing goes on: an empty answer would close its list.
 */
function typedSince(before: string, now: string, offset: number): number | undefined {
  const typed = now.length - before.length;
  if (typed < 0 || !now.startsWith(before.slice(0, offset)) || !now.endsWith(before.slice(offset))) return undefined;
  return /^[\p{L}\p{N}_.()-]*$/u.test(now.slice(offset, offset + typed)) ? typed : undefined;
}

/** What is replaced is told as it stood in the text that was asked about; the editor moves it on itself. */
const inTextAskedAbout = (item: CompletionItem, typed: number): CompletionItem =>
  typed === 0 ? item : { ...item, replace: { start: item.replace.start, end: Math.max(item.replace.start, item.replace.end - typed) } };

function messageOf(item: CompletionItem, index: number, { snapshot, document, analysis }: Asked, { client }: Desk): Message {
  const { lines, text } = snapshot.document;
  const snippet = item.isSnippet && client.snippets;
  const inserted = item.isSnippet && !client.snippets ? analysis.withoutTabStops(item.insertText) : item.insertText;
  const later = client.completionResolves.includes('documentation');
  return {
    label: item.label,
    kind: kinds[item.kind],
    detail: item.detail,
    sortText: item.sortText,
    textEdit: { range: rangeOf(lines, item.replace), newText: withLineEnds(client.indentsCompletions ? inserted : indented(inserted, text, item.replace.start), text) },
    ...(client.indentsCompletions && inserted.includes('\n') ? { insertTextMode: adjustIndentation } : {}),
    ...(snippet ? { insertTextFormat: asSnippet } : {}),
    ...(later || item.documentation === '' ? {} : { documentation: markup(item.documentation, client.markdownCompletion) }),
    ...(later ? { data: { uri: document.uri, index } } : {}),
    ...(item.asksOn === true && client.pages ? { command: { title: 'Suggest', command: 'editor.action.triggerSuggest' } } : {}),
  };
}

/** Further lines with the indent of the line in which the first one is put, for editors that do not add it. */
function indented(inserted: string, text: string, offset: number): string {
  if (!inserted.includes('\n')) return inserted;
  const indent = /^ */.exec(text.slice(text.lastIndexOf('\n', offset - 1) + 1, offset))?.[0] ?? '';
  return inserted.replaceAll('\n', `\n${indent}`);
}

/** New lines end as the text's own do. */
const withLineEnds = (inserted: string, text: string): string => (inserted.includes('\n') && text.includes('\r\n') ? inserted.replaceAll('\n', '\r\n') : inserted);
