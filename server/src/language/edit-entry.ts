import type { Span, TextEdit } from './spans.ts';
import { childOf, entryAt, nodeAt, type Entry, type EntryPath, type MapNode, type SyntaxNode } from './syntax-tree.ts';

/** A value to write: a scalar's text, a small map, or a short list. */
export type NewValue = string | readonly NewValue[] | { readonly [key: string]: NewValue };

interface Source {
  readonly text: string;
  readonly root: SyntaxNode | null;
}

/**
 * The edits that make the entry at `path` read `value`, touching nothing else: an existing scalar is replaced in its own range,
 * a new entry goes below (or, in braces, behind) the last of its map, maps on the way are made.
 * Undefined where that cannot be done without rewriting what stands there.
 */
export function setEntry(source: Source, path: EntryPath, value: NewValue): readonly TextEdit[] | undefined {
  const entry = entryAt(source.root, path);
  if (entry) return replaceValue(source, entry, value);
  const listItem = nodeAt(source.root, path);
  if (listItem?.type === 'scalar') return typeof value === 'string' ? [{ span: listItem.span, text: scalarText(value, insideFlow(source.root, path)) }] : undefined;
  const parentPath = path.slice(0, -1);
  const key = path.at(-1);
  if (key === undefined) return undefined;
  const parent = parentPath.length === 0 ? source.root : nodeAt(source.root, parentPath);
  if (parent?.type === 'map') return parent.flow ? appendToFlow(source, parent, key, value) : appendToBlock(source, parent, key, value);
  if (parent === undefined || parent === null) return parentPath.length === 0 ? undefined : setEntry(source, parentPath, { [key]: value });
  return undefined;
}

/** The edits that take the entry at `path` away, with its line where it has one of its own. */
export function removeEntry(source: Source, path: EntryPath): readonly TextEdit[] | undefined {
  const entry = entryAt(source.root, path);
  const parent = nodeAt(source.root, path.slice(0, -1));
  if (!entry || parent?.type !== 'map') return undefined;
  const index = parent.entries.indexOf(entry);
  if (parent.flow) {
    const next = parent.entries[index + 1];
    const before = parent.entries[index - 1];
    if (next) return [{ span: { start: entry.span.start, end: next.span.start }, text: '' }];
    if (before) return [{ span: { start: before.span.end, end: entry.span.end }, text: '' }];
    return [{ span: entry.span, text: '' }];
  }
  if (parent.entries.length === 1) return removeEntry(source, path.slice(0, -1));
  const start = lineStart(source.text, entry.span.start);
  const end = lineEnd(source.text, entry.span.end);
  const past = source.text.startsWith('\r\n', end) ? end + 2 : Math.min(end + 1, source.text.length);
  return [{ span: { start, end: past }, text: '' }];
}

function replaceValue(source: Source, entry: Entry, value: NewValue): readonly TextEdit[] | undefined {
  const old = entry.value;
  const flow = isFlowAt(source.text, entry);
  if (old === null) {
    const colon = source.text.indexOf(':', entry.key.span.end);
    if (colon < 0) return undefined;
    return [{ span: { start: colon + 1, end: colon + 1 }, text: ` ${flowText(value, flow)}` }];
  }
  if (old.type === 'scalar' && old.style !== 'block') {
    return [{ span: old.span, text: flowText(value, flow) }];
  }
  return undefined;
}

function appendToFlow(source: Source, parent: MapNode, key: string, value: NewValue): readonly TextEdit[] {
  const text = `${key}: ${flowText(value, true)}`;
  const last = parent.entries.at(-1);
  if (last) return [{ span: { start: last.span.end, end: last.span.end }, text: `, ${text}` }];
  const inside: Span = { start: parent.span.start + 1, end: Math.max(parent.span.start + 1, parent.span.end - 1) };
  return [{ span: inside, text: ` ${text} ` }];
}

function appendToBlock(source: Source, parent: MapNode, key: string, value: NewValue): readonly TextEdit[] | undefined {
  const [first] = parent.entries;
  const last = parent.entries.at(-1);
  if (!first || !last) return undefined;
  const newline = source.text.includes('\r\n') ? '\r\n' : '\n';
  const column = first.span.start - lineStart(source.text, first.span.start);
  // The entry of a list item may follow its dash on the same line; blanks stand in for it below.
  const indent = ' '.repeat(column);
  const end = lineEnd(source.text, endOfEntry(last));
  return [{ span: { start: end, end }, text: blockLines(key, value, indent).map((line) => newline + line).join('') }];
}

/** Where an entry's text really ends: an open map without value ends at its colon. */
function endOfEntry(entry: Entry): number {
  return Math.max(entry.span.end, entry.key.span.end);
}

function blockLines(key: string, value: NewValue, indent: string): readonly string[] {
  if (typeof value === 'string' || isList(value)) return [`${indent}${key}: ${flowText(value, false)}`];
  return [`${indent}${key}:`, ...Object.entries(value).flatMap(([child, inner]) => blockLines(child, inner, `${indent}  `))];
}

const isList = (value: NewValue): value is readonly NewValue[] => Array.isArray(value);

/** A value on one line; `inFlow` when it stands in braces or brackets itself. */
function flowText(value: NewValue, inFlow: boolean): string {
  if (typeof value === 'string') return scalarText(value, inFlow);
  if (isList(value)) return `[${value.map((item) => flowText(item, true)).join(', ')}]`;
  return `{ ${Object.entries(value).map(([key, inner]) => `${key}: ${flowText(inner, true)}`).join(', ')} }`;
}

/** A text as YAML scalar: plain where that reads back the same, else in double quotes. */
export function scalarText(text: string, inFlow: boolean): string {
  const special = inFlow ? /[[\]{},]/ : /^[[\]{},]/;
  const plain = text.length > 0 && text === text.trim() && !/^[-?:](\s|$)|^[#&*!|>'"%@`]|: |:$| #|[\n\t]/.test(text) && !special.test(text);
  return plain ? text : JSON.stringify(text);
}

function insideFlow(root: SyntaxNode | null, path: EntryPath): boolean {
  let node: SyntaxNode | null | undefined = root;
  for (const key of path) {
    if (node && node.type !== 'scalar' && node.flow) return true;
    node = childOf(node, key);
  }
  return false;
}

/** Whether an entry stands in braces, judged by the text before it on its line. */
function isFlowAt(text: string, entry: Entry): boolean {
  const before = text.slice(lineStart(text, entry.span.start), entry.span.start);
  return /[{,]\s*$/.test(before);
}

function lineStart(text: string, offset: number): number {
  return text.lastIndexOf('\n', offset - 1) + 1;
}

function lineEnd(text: string, offset: number): number {
  const newline = text.indexOf('\n', offset);
  const end = newline < 0 ? text.length : newline;
  return text[end - 1] === '\r' && end > offset ? end - 1 : end;
}
