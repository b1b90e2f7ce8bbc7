import { limits } from './limits.ts';
import type { Problem } from './problems.ts';
import type { Span } from './spans.ts';

/** A text made fit for the parser: same length, same positions, with what would mislead the parser blanked out. */
export interface GuardedText {
  readonly text: string;
  /** The stretch that is read: without a byte order mark, and up to the end of the first document. */
  readonly read: Span;
  readonly problems: readonly Problem[];
  /** Whether the text that is read differs from what was written. */
  readonly repaired: boolean;
}

/** Looks for what concerns the text as a whole, before any parsing. Undefined with a problem when the text is too long to be read at all. */
export function guardText(written: string): GuardedText {
  const tooLong = lengthProblem(written);
  if (tooLong) return { text: '', read: { start: 0, end: 0 }, problems: [tooLong], repaired: true };
  const problems: Problem[] = [];
  let text = blankInvisible(written, problems);
  text = mendCarriageReturns(text, problems);
  text = blankMergeMarks(text, problems);
  const document = findDocument(text, written.startsWith('\ufeff') ? 1 : 0, problems);
  return { ...document, problems, repaired: text !== written || document.read.end < written.length };
}

function lengthProblem(text: string): Problem | undefined {
  const cure = 'Nothing of it is checked; move shared parts into a part list.';
  if (text.length > limits.textLength) {
    return {
      code: 'text-too-long',
      severity: 'error',
      message: `The text has ${grouped(text.length)} characters; at most ${grouped(limits.textLength)} are read. ${cure}`,
      span: { start: 0, end: 1 },
    };
  }
  let lines = 1;
  for (let at = text.indexOf('\n'); at >= 0 && lines <= limits.lines; at = text.indexOf('\n', at + 1)) lines += 1;
  if (lines <= limits.lines) return undefined;
  return {
    code: 'text-too-long',
    severity: 'error',
    message: `The text has more than ${grouped(limits.lines)} lines, which is the most that is read. ${cure}`,
    span: { start: 0, end: 1 },
  };
}

function grouped(count: number): string {
  return String(count).replace(/\B(?=(\d{3})+$)/g, ',');
}

/**
 * Control characters except tab and line ends, halves of surrogate pairs, zero-width and direction marks, other line separators,
 * a byte order mark that is not at the start, and no-break spaces in the indentation.
 */
const invisible =
  /[\0-\x08\x0b\x0c\x0e-\x1f\x7f-\x9f\xad\u200b-\u200f\u2028-\u202e\u2060-\u2069\ufeff\ufff9-\uffff]|[\ud800-\udbff](?![\udc00-\udfff])|(?<![\ud800-\udbff])[\udc00-\udfff]|(?<=^[ \t\u00a0]*)\u00a0/gm;
const maybeInvisible =
  /[\0-\x08\x0b\x0c\x0e-\x1f\x7f-\xa0\u200b-\u200f\u2028-\u202e\u2060-\u2069\ud800-\udfff\ufeff\ufff9-\uffff]/;

function blankInvisible(text: string, problems: Problem[]): string {
  if (!maybeInvisible.test(text)) return text;
  const found: Span[] = [];
  const blanked = text.replace(invisible, (character, offset: number) => {
    if (offset === 0 && character === '\ufeff') return character;
    found.push({ start: offset, end: offset + 1 });
    return lineSeparator.test(character) ? '\n' : ' ';
  });
  const first = found[0];
  if (!first) return text;
  const code = text.charCodeAt(first.start).toString(16).toUpperCase().padStart(4, '0');
  const count = found.length === 1 ? 'An invisible character' : `${grouped(found.length)} invisible characters`;
  const where = found.length === 1 ? `(U+${code}) here` : `in this text, the first (U+${code}) here`;
  const edits = found.slice(0, 10_000).map((span) => ({ span, text: replacement(text[span.start] ?? '') }));
  problems.push({
    code: 'invisible-character',
    severity: 'error',
    message: `${count} ${where}. It was probably copied along from elsewhere; remove it.`,
    span: first,
    fixes: [{ title: found.length === 1 ? 'Remove the invisible character' : `Remove ${grouped(edits.length)} invisible characters`, edits }],
  });
  return blanked;
}

/** Line separators that other formats know; YAML 1.2 does not. */
const lineSeparator = /[\u0085\u2028\u2029]/;

function replacement(character: string): string {
  if (lineSeparator.test(character)) return '\n';
  return character === '\u00a0' ? ' ' : '';
}

function mendCarriageReturns(text: string, problems: Problem[]): string {
  const first = text.search(/\r(?!\n)/);
  if (first < 0) return text;
  problems.push({
    code: 'lone-carriage-return',
    severity: 'warning',
    message: 'Lines end with a lone carriage return. Save the file with LF or CR LF line ends.',
    span: { start: first, end: first + 1 },
    fixes: [{ title: 'Give every line a proper end', edits: [...text.matchAll(/\r(?!\n)/g)].map(({ index }) => ({ span: { start: index, end: index + 1 }, text: '\n' })) }],
  });
  return text.replace(/\r(?!\n)/g, '\n');
}

/** Blanks the marks of an unfinished merge together with every side but the first. */
function blankMergeMarks(text: string, problems: Problem[]): string {
  if (!text.includes('<<<<<<<')) return text;
  const mark = /^(?:<{7}|\|{7}|={7}|>{7})(?=[ \t\r\n]|$).*$/gm;
  const blanks: Span[] = [];
  let merge: { open: Span; second?: Span } | undefined;
  let reported = 0;
  const unfinished = (open: Span, close: Span | undefined, second: Span | undefined): void => {
    reported += 1;
    if (reported > limits.problems) return;
    const from = lineNumber(text, open.start);
    const where = close ? `lines ${from} to ${lineNumber(text, close.start)}` : `line ${from}`;
    problems.push({
      code: 'unfinished-merge',
      severity: 'error',
      message: `Unfinished merge: ${where}. Keep one side and remove the marks; until then the first side counts.`,
      span: { start: open.start, end: close?.end ?? open.end },
      ...(close && second ? { fixes: sidesToKeep(text, open, second, close) } : {}),
    });
  };
  for (const match of text.matchAll(mark)) {
    const span = { start: match.index, end: match.index + match[0].length };
    const sign = match[0][0];
    if (sign === '<') {
      if (merge) {
        blanks.push(merge.open);
        unfinished(merge.open, undefined, undefined);
      }
      merge = { open: span };
    } else if (!merge) {
      continue;
    } else if (sign === '>') {
      blanks.push(merge.open, { start: merge.second?.start ?? span.start, end: span.end });
      unfinished(merge.open, span, merge.second);
      merge = undefined;
    } else if (sign === '|' || !merge.second) {
      merge = { open: merge.open, second: merge.second ?? span };
    }
  }
  if (merge) {
    blanks.push(merge.open, ...(merge.second ? [merge.second] : []));
    unfinished(merge.open, undefined, undefined);
  }
  return withBlanks(text, blanks);
}

/** The text with stretches, in order, replaced by as many blanks; line ends stay. */
function withBlanks(text: string, spans: readonly Span[]): string {
  const parts: string[] = [];
  let from = 0;
  for (const span of spans) {
    parts.push(text.slice(from, span.start), text.slice(span.start, span.end).replace(/[^\r\n]/g, ' '));
    from = span.end;
  }
  return parts.join('') + text.slice(from);
}

function sidesToKeep(text: string, open: Span, second: Span, close: Span): NonNullable<Problem['fixes']> {
  const divider = /^={7}(?=[ \t\r\n]|$).*$/m.exec(text.slice(second.start, close.start));
  if (!divider) return [];
  const afterOpen = nextLine(text, open.end);
  const afterDivider = nextLine(text, second.start + divider.index + divider[0].length);
  const whole = { start: open.start, end: nextLine(text, close.end) };
  return [
    { title: 'Keep the first side', edits: [{ span: whole, text: text.slice(afterOpen, second.start) }] },
    { title: 'Keep the second side', edits: [{ span: whole, text: text.slice(afterDivider, close.start) }] },
  ];
}

function nextLine(text: string, lineEnd: number): number {
  const at = text.indexOf('\n', lineEnd);
  return at < 0 ? text.length : at + 1;
}

function lineNumber(text: string, offset: number): number {
  let line = 1;
  for (let at = text.indexOf('\n'); at >= 0 && at < offset; at = text.indexOf('\n', at + 1)) line += 1;
  return line;
}

/** Blanks directives and the mark that opens the document, and ends at the mark that closes it. */
function findDocument(text: string, from: number, problems: Problem[]): { text: string; read: Span } {
  const whole = { text, read: { start: from, end: text.length } };
  if (!/^(?:%|---|\.\.\.)/m.test(text.slice(from))) return whole;
  let shadow = text;
  let begun = false;
  let ended = false;
  for (let start = from; start < text.length; ) {
    const next = nextLine(text, start);
    const line = text.slice(start, next).replace(/[\r\n]+$/, '');
    const span = { start, end: start + line.length };
    const mark = /^(?:---|\.\.\.)(?=[ \t]|$)/.exec(line)?.[0];
    const blank = /^[ \t]*(?:#|$)/.test(line);
    if (mark === '...') {
      ended = true;
      if (!begun) shadow = withBlank(shadow, { start, end: start + 3 });
      else if (!blankAfter(text, next)) return endDocument(shadow, from, start, secondDocument(text, next), problems);
      else return { text: shadow, read: { start: from, end: start } };
    } else if (mark === '---') {
      if (begun || ended) return endDocument(shadow, from, start, { start, end: start + 3 }, problems);
      begun = true;
      shadow = withBlank(shadow, { start, end: start + 3 });
    } else if (!begun && line.startsWith('%') && /^%[A-Za-z]/.test(line)) {
      reportDirective(line, span, next, problems);
      shadow = withBlank(shadow, span);
    } else if (!blank) {
      begun = true;
    }
    start = next;
  }
  return { text: shadow, read: { start: from, end: text.length } };
}

function endDocument(text: string, from: number, end: number, second: Span, problems: Problem[]): { text: string; read: Span } {
  problems.push({
    code: 'several-documents',
    severity: 'error',
    message: 'A second document begins here, and a description is one document: nothing from here on is read. Remove the line, or move the rest to its own file.',
    span: second,
  });
  return { text, read: { start: from, end } };
}

function secondDocument(text: string, from: number): Span {
  const match = /^(?![ \t]*(?:#|\r?$)|\.\.\.[ \t]*\r?$).+$/m.exec(text.slice(from));
  const start = from + (match?.index ?? 0);
  return { start, end: start + (match?.[0].trimEnd().length ?? 0) };
}

function blankAfter(text: string, from: number): boolean {
  return /^(?:[ \t]*(?:#.*)?(?:\r?\n|$)|\.\.\.[ \t]*(?:\r?\n|$))*$/.test(text.slice(from));
}

function reportDirective(line: string, span: Span, next: number, problems: Problem[]): void {
  const version = /^%YAML[ \t]+(\S+)/.exec(line)?.[1];
  if (version === '1.2') return;
  const fixes = [{ title: 'Remove the line', edits: [{ span: { start: span.start, end: next }, text: '' }] }];
  if (version !== undefined) {
    problems.push({
      code: 'yaml-version',
      severity: 'error',
      message: `This line asks for YAML ${version.slice(0, 12)}, where words such as "no" can change their meaning. Descriptions are YAML 1.2; remove it.`,
      span,
      fixes,
    });
  } else {
    problems.push({ code: 'directive-unknown', severity: 'warning', message: 'Instructions to a YAML reader have no effect here. Remove the line.', span, fixes });
  }
}

function withBlank(text: string, span: Span): string {
  return text.slice(0, span.start) + ' '.repeat(span.end - span.start) + text.slice(span.end);
}
