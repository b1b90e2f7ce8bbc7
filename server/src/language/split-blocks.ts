import type { Span } from './spans.ts';

/**
 * A stretch of whole lines that is parsed on its own. Splitting keeps a slip in one entry from swallowing its neighbours,
 * and lets an edit parse again only the entry that it touches.
 */
export interface Block {
  readonly span: Span;
  /** Set where the block is a key alone on its line with entries below it: the key's own characters, and the entries. */
  readonly header?: { readonly key: Span; readonly children: readonly Block[] };
}

/** How many levels of entries are split: sections such as `axes`, and the entries in them. */
const splitLevels = 2;

interface Line {
  readonly start: number;
  /** Start of the next line, or end of the stretch. */
  readonly next: number;
  /** Number of leading spaces; -1 for lines without content: blank ones, and comments. Endless where a tab follows, so that the line goes with the one before. */
  readonly indent: number;
}

/**
 * Splits the text between `read.start` and `read.end` into blocks, one for each entry of the outermost map, or undefined where that
 * is not sure to mean the same as parsing it whole: a root that is no map, entries to the left of the first one, anchors and aliases.
 */
export function splitBlocks(text: string, read: Span): readonly Block[] | undefined {
  if (mayHaveAnchors.test(text)) return undefined;
  const lines = linesOf(text, read);
  const first = lines.find((line) => line.indent >= 0);
  if (!first || !startsEntry(text, first)) return undefined;
  return splitAt(text, lines, first.indent, splitLevels);
}

/** An anchor or alias with its name, where a value or key can begin. May see one inside a longer text, which only costs the splitting. */
const mayHaveAnchors = /(?:^[ \t]*|[:?-][ \t]+|[[{,][ \t]*|![^\s]*[ \t]+)[&*][^\s]/m;

function linesOf(text: string, read: Span): Line[] {
  const lines: Line[] = [];
  for (let start = read.start; start < read.end; ) {
    let next = text.indexOf('\n', start) + 1;
    if (next === 0 || next > read.end) next = read.end;
    let at = start;
    while (at < next && text[at] === ' ') at += 1;
    const sign = at < next ? text[at] : '\n';
    const blank = sign === '\n' || sign === '\r' || sign === '#' || (sign === '\t' && isBlank(text, at, next));
    lines.push({ start, next, indent: blank ? -1 : sign === '\t' ? Number.MAX_SAFE_INTEGER : at - start });
    start = next;
  }
  return lines;
}

function isBlank(text: string, from: number, to: number): boolean {
  return /^[ \t]*(?:[\r\n#]|$)/.test(text.slice(from, to));
}

/** One block for each line at `indent` that begins an entry, together with the lines up to the next one. Undefined where a line stands further left. */
function splitAt(text: string, lines: readonly Line[], indent: number, levels: number): Block[] | undefined {
  const starts: number[] = [];
  for (const [index, line] of lines.entries()) {
    if (line.indent < 0 || line.indent > indent) continue;
    if (line.indent < indent) return undefined;
    if (starts.length === 0 || !continuesEntry(text, line)) starts.push(index);
  }
  return starts.map((from, order) => {
    const to = starts[order + 1] ?? lines.length;
    // Comments and blank lines before the first entry go with it.
    return block(text, lines.slice(order === 0 ? 0 : from, to), from - (order === 0 ? 0 : from), levels);
  });
}

function block(text: string, lines: readonly Line[], headerLine: number, levels: number): Block {
  const span = { start: lines[0]?.start ?? 0, end: lines.at(-1)?.next ?? 0 };
  const line = lines[headerLine];
  if (!line || levels <= 1) return { span };
  const key = keyAlone.exec(text.slice(line.start + line.indent, line.next))?.groups?.['key'];
  if (key === undefined) return { span };
  const inner = lines.slice(headerLine + 1);
  const first = inner.find((candidate) => candidate.indent >= 0);
  if (!first || first.indent <= line.indent || !startsEntry(text, first) || !keyLine.test(lineText(text, first))) return { span };
  const children = splitAt(text, inner, first.indent, levels - 1);
  if (!children) return { span };
  const start = line.start + line.indent;
  return { span, header: { key: { start, end: start + key.length }, children } };
}

/** A plain key with nothing behind its colon. */
const keyAlone = /^(?<key>[A-Za-z_][\w.-]*(?: [\w.-]+)*):[ \t]*(?:#.*)?\r?\n?$/;
/** A line that holds a key and its colon. */
const keyLine = /^(?:"[^"\n]*"|'[^'\n]*'|[^\s"'][^:#\n]*)[ \t]*:(?=\s|$)/;

function lineText(text: string, line: Line): string {
  return text.slice(line.start + line.indent, line.next);
}

/** Whether a line may begin an entry of a map, rather than a list, a map in braces, a block of text, an explicit key. */
function startsEntry(text: string, line: Line): boolean {
  const sign = text[line.start + line.indent] ?? '';
  return !'{[|>!?%,]}\t'.includes(sign) && !isListItem(text, line);
}

/** Whether a line in the column of the keys still belongs to the entry before it: an item of its list, a closing bracket. */
function continuesEntry(text: string, line: Line): boolean {
  const sign = text[line.start + line.indent] ?? '';
  return sign === ']' || sign === '}' || (sign === ':' && /\s/.test(text[line.start + line.indent + 1] ?? ' ')) || isListItem(text, line);
}

function isListItem(text: string, line: Line): boolean {
  const at = line.start + line.indent;
  if (text[at] !== '-') return false;
  const following = text[at + 1];
  return following === undefined || following === ' ' || following === '\t' || following === '\r' || following === '\n';
}
