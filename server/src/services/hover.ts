import type { Span } from '../language/spans.ts';
import { nodeAt, type EntryPath } from '../language/syntax-tree.ts';
import { checkMarkdown } from './check-help.ts';
import { designationMarkdown } from './designation.ts';
import { elementsAt } from './elements.ts';
import { elementMarkdown } from './hover-element.ts';
import { memberMarkdown } from './hover-member.ts';
import { supportMarkdown } from './hover-support.ts';
import { dependents, keyMarkdown, valueMarkdown } from './hover-value.ts';
import { blocks, escapeMarkdown } from './markdown.ts';
import { placeOfName } from './names.ts';
import type { Snapshot } from './snapshot.ts';

export { figureMarkdown } from './figure-markdown.ts';

/** What is shown over a stretch of the text. */
export interface Hover {
  readonly span: Span;
  /** Markdown without HTML and without commands; everything from a file is escaped. */
  readonly markdown: string;
}

/**
 * What is to be said of the key, name, designation or value at an offset of the snapshot's own text; undefined between them
 * and where nothing is known.
 */
export function hoverAt(snapshot: Snapshot, offset: number): Hover | undefined {
  const { document } = snapshot;
  const { path, on } = document.pathAt(offset);
  const span = on === 'between' ? undefined : document.spanOf(path, on);
  // Behind the colon of an entry without a value there is nothing to hover on.
  if (!span || offset < span.start || offset > span.end) return undefined;
  const element = elementMarkdown(elementsAt(snapshot, { uri: snapshot.uri, path }), snapshot);
  const markdown = element === undefined ? (on === 'key' ? ofKey(path, snapshot) : ofValue(path, snapshot)) : blocks(element, meaningOf(path, snapshot));
  return markdown === '' ? undefined : { span, markdown };
}

/** What an element is, for those who meet the word here first. */
function meaningOf(path: EntryPath, { document }: Snapshot): string | undefined {
  const schema = document.schemaAt(path);
  return schema && schema.description !== '' ? `${escapeMarkdown(schema.title)}: ${escapeMarkdown(schema.description)}` : undefined;
}

/** The meaning of the key; where a value follows on it, what that comes to as well; for a map, what rests on its entries. */
function ofKey(path: EntryPath, snapshot: Snapshot): string {
  const { document } = snapshot;
  const schema = document.schemaAt(path);
  const value = nodeAt(document.root, path);
  const defines = document.schemaAt(path.slice(0, -1))?.defines;
  const isName = defines !== undefined;
  const check = defines === 'check' ? checkMarkdown(path.at(-1) ?? '') : undefined;
  if (check !== undefined) return check;
  const meaning = schema && keyMarkdown(path.at(-1) ?? '', schema, isName);
  if (value?.type === 'scalar') return blocks(meaning, valueMarkdown(value.text, schema, path, snapshot, 'below its key'), ...restingOnName(path, snapshot));
  const support = isName ? supportMarkdown(path, snapshot) : undefined;
  // Of a whole section it would be nearly everything.
  return blocks(support, memberMarkdown(path, snapshot), meaning, ...(support === undefined && schema && schema.defines === undefined ? dependents(path, snapshot) : []));
}

function ofValue(path: EntryPath, snapshot: Snapshot): string {
  const { document } = snapshot;
  const node = nodeAt(document.root, path);
  if (node?.type !== 'scalar') return '';
  const schema = document.schemaAt(path);
  const check = schema?.refersTo === 'check' ? checkMarkdown(node.text) : undefined;
  if (check !== undefined) return check;
  const decoded = schema?.refersTo === 'size:screw' ? designationMarkdown(node.text) : undefined;
  // The kind of a part is a word of its own; what it means is said of the whole part.
  const part = path.at(-1) === 'kind' ? document.schemaAt(path.slice(0, -1)) : undefined;
  return blocks(
    decoded,
    valueMarkdown(node.text, schema, path, snapshot),
    part && `${escapeMarkdown(part.title)}: ${escapeMarkdown(part.description)}`,
    ...restingOnName(path, snapshot),
  );
}

/** What rests on the thing that a value names, where it is described in this text. */
function restingOnName(path: EntryPath, snapshot: Snapshot): readonly string[] {
  const named = placeOfName(snapshot, path);
  return named?.uri === snapshot.uri ? dependents(named.path, snapshot) : [];
}
