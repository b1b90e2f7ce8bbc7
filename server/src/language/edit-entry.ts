import { commentsIn, commentStart, indentStep, lineEnd, lineStart } from './edit-lines.ts';
import type { Span, TextEdit } from './spans.ts';
import { childOf, entryAt, nodeAt, type Entry, type EntryPath, type ListNode, type MapNode, type SyntaxNode } from './syntax-tree.ts';

/** A value to write: a scalar's text, a small map, or a short list. */
export type NewValue = string | readonly NewValue[] | { readonly [key: string]: NewValue };

interface Source {
  readonly text: string;
  readonly root: SyntaxNode | null;
}

/**
 * The edits that make the entry (or list item) at `path` read `value`, touching nothing else: an existing scalar is replaced in its own
 * range and keeps its quotes, a new entry goes below (or, in braces, behind) the last of its map, maps on the way are made. An alias gives
 * way to the value; what it stood for stays. No edits where the text says so already; undefined where it cannot be done without
 * rewriting what stands there.
 */
export function setEntry(source: Source, path: EntryPath, value: NewValue): readonly TextEdit[] | undefined {
  const entry = entryAt(source.root, path);
  if (entry) return setValue(source, path, entry, value);
  const key = path.at(-1);
  if (key === undefined) return undefined;
  const parentPath = path.slice(0, -1);
  const parent = parentPath.length === 0 ? source.root : nodeAt(source.root, parentPath);
  if (parent?.type === 'list') return setItem(source, parent, path, key, value);
  if (parent?.type === 'map') return parent.flow ? appendToFlow(source, parent, key, value) : appendToBlock(source, parent, key, value);
  if (parent === undefined || parent === null) return parentPath.length === 0 ? undefined : setEntry(source, parentPath, { [key]: value });
  return undefined;
}

/**
 * The edits that take the entry at `path` away, with its line where it has one of its own; a map that would be left empty goes too.
 * Comments stay, on lines of their own. Undefined where there is no such entry.
 */
export function removeEntry(source: Source, path: EntryPath): readonly TextEdit[] | undefined {
  const entry = entryAt(source.root, path);
  const parent = nodeAt(source.root, path.slice(0, -1));
  if (!entry || parent?.type !== 'map') return undefined;
  if (parent.flow) return removeFromFlow(source, parent, entry);
  // A map under a key goes with its last entry; the text itself and the item of a list stay.
  if (parent.entries.length === 1) return entryAt(source.root, path.slice(0, -1)) ? removeEntry(source, path.slice(0, -1)) : undefined;
  return removeFromBlock(source, parent, entry);
}

function setValue(source: Source, path: EntryPath, entry: Entry, value: NewValue): readonly TextEdit[] | undefined {
  const { value: old } = entry;
  const flow = insideFlow(source.root, path);
  if (old === null || old.span.start < entry.key.span.end) return fillIn(source, entry, value, flow);
  if (old.type === 'scalar') return replaceScalar(source, old, value, flow);
  if (isMap(value) && old.type === 'map') return together(Object.entries(value).map(([key, inner]) => setEntry(source, [...path, key], inner)));
  if (isList(value) && old.type === 'list' && value.length === old.items.length) return together(value.map((inner, index) => setEntry(source, [...path, String(index)], inner)));
  return undefined;
}

/** All edits, or none at all; what goes in at one place goes in as one, in the order in which it came. */
function together(edits: readonly (readonly TextEdit[] | undefined)[]): readonly TextEdit[] | undefined {
  const all: TextEdit[] = [];
  for (const some of edits) {
    if (!some) return undefined;
    for (const edit of some) {
      const { start, end } = edit.span;
      const same = start === end ? all.findIndex((other) => other.span.start === start && other.span.end === end) : -1;
      const other = all[same];
      if (other) all[same] = { span: other.span, text: other.text + edit.text };
      else all.push(edit);
    }
  }
  return all;
}

/** Writes a value behind a key that has none, or an alias. */
function fillIn({ text }: Source, { key, value: old }: Entry, value: NewValue, flow: boolean): readonly TextEdit[] | undefined {
  const colon = /^[ \t]*:/.exec(text.slice(key.span.end, key.span.end + 200));
  if (!colon) return flow && old === null ? [{ span: { start: key.span.end, end: key.span.end }, text: `: ${flowText(value, true)}` }] : undefined;
  const start = key.span.end + colon[0].length;
  const rest = text.slice(start, lineEnd(text, start));
  const written = (flow ? /^[^,[\]{}]*?(?=\s*(?:[,\]}]|\s#|$))/ : /^.*?(?=\s*(?:\s#|$))/).exec(rest)?.[0] ?? '';
  const held = written.trim();
  // Blanks that would be left hanging before the end of the line or a comma go.
  const blanks = /^[ \t]*(?=,|$)/.exec(rest.slice(written.length))?.[0].length ?? 0;
  // An alias without a value of ours cannot be read, and is left to its own finding.
  const replaceable = held === '' || held === '~' || (old !== null && /^\*[^\s,[\]{}]+$/.test(held));
  return replaceable ? [{ span: { start, end: start + written.length + blanks }, text: ` ${flowText(value, flow)}` }] : undefined;
}

function replaceScalar({ text }: Source, old: SyntaxNode & { type: 'scalar' }, value: NewValue, flow: boolean): readonly TextEdit[] | undefined {
  if (old.style === 'block') return undefined;
  const fresh = typeof value === 'string' && old.style === 'quoted' ? inQuotes(value, text[old.span.start] ?? '"') : flowText(value, flow);
  if (typeof value === 'string' && old.text === value) return [];
  return [{ span: old.span, text: fresh }];
}

/** Writes an item of a list: in place of a scalar, or behind the last. */
function setItem(source: Source, list: ListNode, path: EntryPath, key: string, value: NewValue): readonly TextEdit[] | undefined {
  const index = Number(key);
  const { text, root } = source;
  const old = list.items[index];
  if (old) {
    const before = list.items.slice(0, index).findLast((item) => item !== null);
    // What stands before its place in the list is what an alias stands for.
    const own = old.span.start >= list.span.start && (!before || before.span.start > old.span.start || old.span.start >= before.span.end);
    if (!own) return undefined;
    if (old.type === 'scalar') return replaceScalar(source, old, value, insideFlow(root, path));
    return isMap(value) && old.type === 'map' ? together(Object.entries(value).map(([inner, item]) => setEntry(source, [...path, inner], item))) : undefined;
  }
  const last = list.items.at(-1);
  if (index !== list.items.length || (list.items.length > 0 && !last)) return undefined;
  if (list.flow) {
    if (last) return [{ span: { start: last.span.end, end: last.span.end }, text: `, ${flowText(value, true)}` }];
    return [{ span: { start: list.span.start + 1, end: Math.max(list.span.start + 1, list.span.end - 1) }, text: flowText(value, true) }];
  }
  if (!last) return undefined;
  const dash = text.lastIndexOf('-', last.span.start);
  const indent = ' '.repeat(dash - lineStart(text, dash));
  const end = lineEnd(text, last.span.end);
  return [{ span: { start: end, end }, text: `${newlineOf(text)}${indent}- ${flowText(value, false)}` }];
}

function appendToFlow(source: Source, parent: MapNode, key: string, value: NewValue): readonly TextEdit[] {
  const text = `${scalarText(key, true)}: ${flowText(value, true)}`;
  const last = parent.entries.at(-1);
  if (last) {
    const end = endOfEntry(source.text, last, true);
    return [{ span: { start: end, end }, text: `, ${text}` }];
  }
  const inside: Span = { start: parent.span.start + 1, end: Math.max(parent.span.start + 1, parent.span.end - 1) };
  return [{ span: inside, text: ` ${text} ` }];
}

function appendToBlock(source: Source, parent: MapNode, key: string, value: NewValue): readonly TextEdit[] | undefined {
  const [first] = parent.entries;
  const last = parent.entries.at(-1);
  if (!first || !last) return undefined;
  const newline = newlineOf(source.text);
  // The entry of a list item may follow its dash on the same line; blanks stand in for it below.
  const indent = ' '.repeat(first.span.start - lineStart(source.text, first.span.start));
  const end = lineEnd(source.text, endOfEntry(source.text, last, false));
  const lines = isMap(value) && othersInBraces(parent) ? [`${indent}${scalarText(key, false)}: ${flowText(value, false)}`] : blockLines(key, value, indent, indentStep(source.text, source.root));
  return [{ span: { start: end, end }, text: lines.map((line) => newline + line).join('') }];
}

/** Whether a map holds at least two maps and all of them stand in braces: a new one follows their style. */
function othersInBraces({ entries }: MapNode): boolean {
  const maps = entries.flatMap(({ value }) => (value?.type === 'map' ? [value] : []));
  return maps.length > 1 && maps.length === entries.length && maps.every(({ flow }) => flow);
}

/** Where an entry's text really ends: an alias or an empty value ends with what stands behind the colon. */
function endOfEntry(text: string, entry: Entry, flow: boolean): number {
  const { key, value, span } = entry;
  if (value && value.span.start >= key.span.end) return span.end;
  const rest = text.slice(span.end, lineEnd(text, span.end));
  return span.end + ((flow ? /^[ \t]*[^\s,#[\]{}]*/ : /^[ \t]*[^\s#]*/).exec(rest)?.[0].trimEnd().length ?? 0);
}

function removeFromFlow({ text }: Source, parent: MapNode, entry: Entry): readonly TextEdit[] {
  const index = parent.entries.indexOf(entry);
  const next = parent.entries[index + 1];
  const before = parent.entries[index - 1];
  const end = endOfEntry(text, entry, true);
  if (!next && !before) return [{ span: { start: parent.span.start + 1, end: Math.max(end, parent.span.end - 1) }, text: '' }];
  const gap: Span = next ? { start: entry.span.start, end: next.span.start } : { start: endOfEntry(text, before ?? entry, true), end };
  // Over several lines there may be comments between: then only the entry and its comma go.
  if (!text.slice(gap.start, gap.end).includes('#')) return [{ span: gap, text: '' }];
  const comma = text.indexOf(',', next ? end : gap.start);
  return [{ span: { start: comma, end: comma + 1 }, text: '' }, { span: { start: entry.span.start, end }, text: '' }].sort((a, b) => a.span.start - b.span.start);
}

function removeFromBlock({ text }: Source, parent: MapNode, entry: Entry): readonly TextEdit[] {
  const { start } = entry.span;
  const end = endOfEntry(text, entry, false);
  const line = lineStart(text, start);
  const lineOver = lineEnd(text, end);
  const newline = text.startsWith('\r\n', lineOver) ? 2 : lineOver < text.length ? 1 : 0;
  const comment = commentStart(text, end);
  const indent = text.slice(line, start);
  const kept = commentsIn(text, entry);
  if (indent.trim() !== '') {
    // Behind the dash of a list item: the next entry moves up, or the comment takes the place.
    const next = parent.entries[parent.entries.indexOf(entry) + 1];
    return [{ span: { start, end: comment ?? next?.span.start ?? end }, text: '' }];
  }
  const comments = [...kept, ...(comment === undefined ? [] : [text.slice(comment, lineOver)])];
  if (comments.length > 0) return [{ span: { start: line, end: lineOver }, text: comments.map((one) => indent + one).join(newlineOf(text)) }];
  // The last line of a text that does not end with one takes the line end before it along.
  const from = newline === 0 && line > 0 ? line - (text[line - 2] === '\r' ? 2 : 1) : line;
  return [{ span: { start: from, end: lineOver + newline }, text: '' }];
}

function blockLines(key: string, value: NewValue, indent: string, step: string): readonly string[] {
  const name = scalarText(key, false);
  if (!isMap(value)) return [`${indent}${name}: ${flowText(value, false)}`];
  return [`${indent}${name}:`, ...Object.entries(value).flatMap(([child, inner]) => blockLines(child, inner, indent + step, step))];
}

const isList = (value: NewValue): value is readonly NewValue[] => Array.isArray(value);
const isMap = (value: NewValue): value is { readonly [key: string]: NewValue } => typeof value === 'object' && !Array.isArray(value);

/** A value on one line; `inFlow` when it stands in braces or brackets itself. */
function flowText(value: NewValue, inFlow: boolean): string {
  if (typeof value === 'string') return scalarText(value, inFlow);
  if (isList(value)) return `[${value.map((item) => flowText(item, true)).join(', ')}]`;
  return `{ ${Object.entries(value).map(([key, inner]) => `${scalarText(key, true)}: ${flowText(inner, true)}`).join(', ')} }`;
}

/** A text as YAML scalar: plain where that reads back the same, else in double quotes. */
export function scalarText(text: string, inFlow: boolean): string {
  const special = inFlow ? /[[\]{},]/ : /^[[\]{},]/;
  const plain = text.length > 0 && text === text.trim() && !/^[-?:](\s|$)|^[#&*!|>'"%@`]|^~$|^(?:---|\.\.\.)|: |:$| #|[\n\t]/.test(text) && !special.test(text);
  return plain ? text : JSON.stringify(text);
}

/** A text in the quotes in which its forerunner stood. */
function inQuotes(text: string, quote: string): string {
  return quote === "'" && !/[\n\t]/.test(text) ? `'${text.replaceAll("'", "''")}'` : JSON.stringify(text);
}

function insideFlow(root: SyntaxNode | null, path: EntryPath): boolean {
  let node: SyntaxNode | null | undefined = root;
  for (const key of path) {
    if (node && node.type !== 'scalar' && node.flow) return true;
    node = childOf(node, key);
  }
  return false;
}

const newlineOf = (text: string): string => (text.includes('\r\n') ? '\r\n' : '\n');
