import { limits } from './limits.ts';
import { findKey, plainEnd, unquoted, wordColonValue } from './line-parts.ts';
import type { Problem } from './problems.ts';
import { closingQuote, FlowRepair, type Repairs } from './repair-brackets.ts';
import { Levels, type Level } from './repair-levels.ts';
import { ShadowText, type ShadowEdit } from './shadow-text.ts';
import {
  colonMissing,
  dashMissing,
  indentedTooLittle,
  indentedTooMuch,
  openingMissing,
  quoteOpen,
  spaceAfterColonMissing,
  spaceAfterDashMissing,
  tabAsIndent,
  twoKeysOnOneLine,
  valueStartReserved,
} from './slip-messages.ts';
import type { Span, TextEdit } from './spans.ts';

export interface RepairedText {
  readonly shadow: ShadowText;
  /** One for each slip, with spans in the written text. */
  readonly problems: readonly Problem[];
}

/**
 * Recognises the common slips of half-typed text, line by line, and mends them in a shadow copy, so that the parser does not lose the
 * neighbours: a word without a colon, a colon or dash without its space, two keys on one line, open quotes and brackets, tabs, and
 * lines that are indented a little too much or too little. Called only when the parser met an error or something suspicious.
 */
export function repairText(written: string): RepairedText {
  const pass = new RepairPass(written);
  pass.run();
  return { shadow: new ShadowText(written, pass.edits), problems: pass.problems };
}

class RepairPass implements Repairs {
  readonly edits: ShadowEdit[] = [];
  readonly problems: Problem[] = [];
  readonly text: string;
  readonly #flow: FlowRepair;
  readonly #tabs: TextEdit[] = [];
  readonly #levels = new Levels();
  #lastLine = { from: 1, end: 0 };
  /** A colon at the beginning of a line that belongs behind the word on the line above. */
  #strayColon: number | undefined;
  /** Identifies the line on which two keys were last reported. */
  #twoKeysAt = -1;
  /** Column of the key whose block of text is being skipped. */
  #blockOfText: number | undefined;
  /** Lines deeper than this column belong to an entry that already has a value, and are left out. */
  #leftOut: number | undefined;
  /** Lines that stand like the one before, which was mended by as many spaces. */
  #shift: { readonly applies: (column: number) => boolean; readonly by: number } | undefined;

  constructor(text: string) {
    this.text = text;
    this.#flow = new FlowRepair(this);
  }

  report(problem: Problem): void {
    if (this.problems.length < limits.problems) this.problems.push(problem);
  }

  run(): void {
    for (let at = 0; at < this.text.length; ) at = this.#line(at);
    const first = this.#tabs[0];
    if (first) this.report(tabAsIndent(first.span, this.#tabs));
  }

  /** Reads what begins on the line at `start` and returns where the next line to read starts. */
  #line(start: number): number {
    const end = this.lineEnd(start);
    const next = this.#nextLine(start);
    const content = this.#skipBlanks(start, end);
    if (content >= end || this.text[content] === '#') return next;
    let column = content - start;
    const leading = this.text.slice(start, content);
    if (this.#blockOfText !== undefined) {
      if (column > this.#blockOfText && !leading.startsWith('\t')) return next;
      this.#blockOfText = undefined;
    }
    if (leading.includes('\t')) column = this.#replaceTabs(start, leading);
    if (content === this.#strayColon) return this.#behindStrayColon(start, content, next);
    if (this.#leftOut !== undefined) {
      if (column > this.#leftOut) {
        this.edits.push({ at: content, remove: end - content, insert: '' });
        return next;
      }
      this.#leftOut = undefined;
    }
    if (this.#shift?.applies(column) === false) this.#shift = undefined;
    if (this.#shift) {
      this.edits.push(reindent(start, this.#shift.by));
      column += this.#shift.by;
    }
    return this.#entry(start, content, column, next);
  }

  #replaceTabs(start: number, leading: string): number {
    const spaces = ' '.repeat(this.#columnFor(leading));
    const span = { start, end: start + leading.length };
    this.edits.push({ at: start, remove: leading.length, insert: spaces });
    if (this.#tabs.length < 10_000) this.#tabs.push({ span, text: spaces });
    return spaces.length;
  }

  /** Two columns for a tab; where it stands among blanks, the column of the entries above where that is as good a reading. */
  #columnFor(leading: string): number {
    const tabs = leading.split('\t').length - 1;
    const column = leading.length + tabs;
    if (tabs === leading.length) return column;
    const near = this.#levels.columns.filter((candidate) => Math.abs(candidate - column) <= tabs);
    return near.sort((a, b) => Math.abs(a - column) - Math.abs(b - column))[0] ?? column;
  }

  /** The rest of a line whose colon belongs to the word above. */
  #behindStrayColon(start: number, colon: number, next: number): number {
    this.edits.push({ at: colon, remove: 1, insert: '' });
    const content = this.#skipBlanks(colon + 1, this.lineEnd(colon));
    return content >= this.lineEnd(colon) || this.text[content] === '#' ? next : this.#entry(start, content, content - start - 1, next);
  }

  /** Reads dashes, a key, a value, from `at` in `column`. */
  #entry(lineStart: number, at: number, column: number, next: number): number {
    const end = this.lineEnd(at);
    if (/^-(?:[ \t]|$)/.test(this.text.slice(at, Math.min(end, at + 2)))) {
      this.#levels.enter(column, true);
      const inner = this.#skipBlanks(at + 1, end);
      if (inner >= end || this.text[inner] === '#') return next;
      this.#levels.top().last = 'value';
      return this.#entry(lineStart, inner, column + inner - at, next);
    }
    const line = this.text.slice(at, end);
    const begun = /^(?<word>[A-Za-z][\w-]*)[ \t]+(?=[{[])/.exec(line)?.groups?.['word'];
    if (begun !== undefined) {
      const span = { start: at, end: at + begun.length };
      this.report(colonMissing(begun, span));
      this.edits.push({ at: span.end, remove: 0, insert: ':' });
      const placed = this.#placeKey(lineStart, at, column, begun) ?? column;
      return this.#value(span.end, placed, next, { text: begun, span });
    }
    const key = findKey(line);
    if (!key) return this.#withoutKey(lineStart, at, column, next);
    const shifted = this.#placeKey(lineStart, at, column, unquoted(key.text));
    if (shifted === undefined) {
      this.edits.push({ at, remove: end - at, insert: '' });
      return next;
    }
    return this.#value(at + key.colon + 1, shifted, next, { text: key.text, span: { start: at, end: at + key.text.length } });
  }

  /** Decides which column a key belongs to, mending small slips of indentation. Undefined where the line has to be left out. */
  #placeKey(lineStart: number, at: number, column: number, key: string): number | undefined {
    const span = { start: at, end: at + key.length };
    const ownLine = /^[ \t]*$/.test(this.text.slice(lineStart, at));
    const closed = this.#levels.closeTo(column);
    const level = this.#levels.last;
    if (ownLine && level && closed && !level.list && column > level.column && column < closed.column && !closed.list) {
      const by = closed.column - column;
      const applies = (other: number): boolean => other === column;
      this.report(indentedTooLittle(key, span, by, this.#alike(lineStart, applies, by)));
      this.edits.push(reindent(lineStart, by));
      this.#shift = { applies, by };
      this.#levels.reopen(closed);
      return this.#begin(closed, key);
    }
    if (ownLine && level && column > level.column && level.last === 'value' && !level.list) {
      const { column: above, lastKey } = level;
      const by = above - column;
      // A line that stands less far in has not so many spaces to give.
      const applies = (other: number): boolean => other >= column;
      this.report(indentedTooMuch(key, lastKey, span, -by, this.#alike(lineStart, applies, by)));
      if (by < -1) {
        this.#leftOut = above;
        return undefined;
      }
      this.edits.push(reindent(lineStart, by));
      this.#shift = { applies, by };
      return this.#begin(level, key);
    }
    return this.#begin(this.#levels.enter(column, false), key);
  }

  /** The edits that move a line and those below that stand like it. */
  #alike(lineStart: number, applies: (column: number) => boolean, by: number): TextEdit[] {
    const edits: TextEdit[] = [];
    for (let at = lineStart; at < this.text.length; at = this.#nextLine(at)) {
      const content = this.#skipBlanks(at, this.lineEnd(at));
      if (content >= this.lineEnd(at)) continue;
      if (!applies(content - at)) break;
      const { remove, insert } = reindent(at, by);
      edits.push({ span: { start: at, end: at + remove }, text: insert });
    }
    return edits;
  }

  #begin(level: Level, key: string): number {
    level.last = 'nothing';
    level.lastKey = key;
    return level.column;
  }

  /** Reads a value that begins at or after `from`, behind a key in `column`. */
  #value(from: number, column: number, next: number, key: { text: string; span: Span }): number {
    const end = this.lineEnd(from);
    let at = this.#skipBlanks(from, end);
    for (let property = /^[&!][^\s,[\]{}]*[ \t]*/.exec(this.text.slice(at, end)); property?.[0]; property = /^[&!][^\s,[\]{}]*[ \t]*/.exec(this.text.slice(at, end))) {
      at += property[0].length;
    }
    const sign = this.text[at] ?? '';
    if (at >= end || (sign === '#' && at > from)) return next;
    const level = this.#levels.top();
    level.last = 'value';
    if (sign === '"' || sign === "'") return this.#quoted(at, column);
    if (sign === '{' || sign === '[') return this.#nextLine(this.#flow.read(at, column));
    if ((sign === '|' || sign === '>') && /^[|>][-+0-9]*[ \t]*(?:#.*)?$/.test(this.text.slice(at, end))) {
      this.#blockOfText = column;
      return next;
    }
    if (sign === '*') return next;
    return this.#plainValue(at, end, column, next, key);
  }

  #plainValue(at: number, end: number, column: number, next: number, key: { text: string; span: Span }): number {
    const line = this.text.slice(at, end);
    const value = { start: at, end: at + plainEnd(line, 0) };
    const text = this.text.slice(value.start, value.end);
    const second = findKey(text);
    if (second && text.endsWith('}') && !text.includes('{') && /^[A-Za-z][\w-]*$/.test(second.text)) {
      this.report(openingMissing(second.text, at));
      this.edits.push({ at, remove: 0, insert: '{' });
      return next;
    }
    if (second) {
      const indent = ' '.repeat(column + 2);
      const ownLine: TextEdit = { span: { start: this.text.indexOf(':', key.span.end) + 1, end: at }, text: `${this.#lineBreak()}${indent}` };
      const quoted = text.includes("'") ? [] : quotes(value);
      // Three keys on one line are still one slip.
      if (this.#twoKeysAt !== next) this.report(twoKeysOnOneLine(unquoted(key.text), unquoted(second.text), { start: at, end: at + second.text.length }, ownLine, quoted));
      this.#twoKeysAt = next;
      this.edits.push({ at: ownLine.span.start, remove: ownLine.span.end - ownLine.span.start, insert: `\n${indent}` });
      this.#levels.top().last = 'nothing';
      this.#begin(this.#levels.enter(column + 2, false), unquoted(second.text));
      return this.#value(at + second.colon + 1, column + 2, next, { text: second.text, span: { start: at, end: at + second.text.length } });
    }
    const sign = text[0] ?? '';
    if ('@`%'.includes(sign)) {
      this.report(valueStartReserved(sign, value, text));
      if (!text.includes("'")) for (const edit of quotes(value)) this.edits.push({ at: edit.span.start, remove: 0, insert: "'" });
    }
    return next;
  }

  #quoted(at: number, column: number): number {
    const close = closingQuote(this, at, column);
    if (close.closed) return this.#nextLine(close.at);
    const quote = this.text[at] ?? '"';
    this.report(quoteOpen(quote, { start: at, end: at + 1 }, close.at));
    this.edits.push({ at: close.at, remove: 0, insert: quote });
    return this.#nextLine(close.at);
  }

  /** A line, or the rest of one behind a dash, that holds no key with a colon. */
  #withoutKey(lineStart: number, at: number, column: number, next: number): number {
    const end = this.lineEnd(at);
    const sign = this.text[at] ?? '';
    const ownLine = /^[ \t]*$/.test(this.text.slice(lineStart, at));
    if (!ownLine || '"\'{[&*!|>?'.includes(sign)) return this.#value(at, ownLine ? column - 1 : column, next, { text: '', span: { start: at, end: at } });
    const span = { start: at, end: at + plainEnd(this.text.slice(at, end), 0) };
    const text = this.text.slice(span.start, span.end);
    this.#levels.closeTo(column);
    const level = this.#levels.last;
    const wantsEntries = !level || (level.column < column && level.last === 'nothing');
    const amongKeys = level !== undefined && level.column === column && !level.list;
    const joined = wordColonValue.exec(text)?.groups;
    if (joined?.['key'] !== undefined && joined['value'] !== undefined && (wantsEntries || amongKeys)) {
      const colonEnd = at + joined['key'].length + 1;
      this.report(spaceAfterColonMissing(joined['key'], joined['value'], colonEnd, { start: at, end: span.end }));
      this.edits.push({ at: colonEnd, remove: 0, insert: ' ' });
      const placed = this.#begin(this.#levels.enter(column, false), joined['key']);
      return this.#value(colonEnd, placed, next, { text: joined['key'], span: { start: at, end: colonEnd - 1 } });
    }
    if (/^-[A-Za-z"'[{]/.test(text) && (wantsEntries || (level.list && level.column === column))) {
      this.report(spaceAfterDashMissing(text.slice(1), at + 1, span));
      this.edits.push({ at: at + 1, remove: 0, insert: ' ' });
      this.#levels.enter(column, true).last = 'value';
      return next;
    }
    if (level?.list && level.column === column && ownLine) {
      this.report(dashMissing(text, span));
      this.edits.push({ at, remove: 0, insert: '- ' });
      level.last = 'value';
      return next;
    }
    const stray = /^[ \t]*:(?=[ \t]|$)/.exec(this.text.slice(next, this.lineEnd(next)));
    if (amongKeys || (wantsEntries && (level === undefined || stray !== null || this.#entriesFollow(next, column)))) {
      this.#strayColon = stray ? next + stray[0].length - 1 : undefined;
      this.report(colonMissing(text, span, this.#strayColon));
      this.edits.push({ at: span.end, remove: 0, insert: ':' });
      this.#begin(this.#levels.enter(column, false), text);
      return next;
    }
    if (level) level.last = 'value';
    return next;
  }

  /** Whether the lines from `from` on, as far as they are not further left than `column`, hold a key. */
  #entriesFollow(from: number, column: number): boolean {
    for (let at = from; at < this.text.length; at = this.#nextLine(at)) {
      const end = this.lineEnd(at);
      const content = this.#skipBlanks(at, end);
      if (content >= end || this.text[content] === '#') continue;
      if (content - at < column) break;
      const line = this.text.slice(content, end);
      if (findKey(line) || wordColonValue.test(line)) return true;
    }
    return false;
  }

  lineEnd(from: number): number {
    // The last answer is kept: a long line is asked for at each of its tokens.
    if (from < this.#lastLine.from || from > this.#lastLine.end) {
      const at = this.text.indexOf('\n', from);
      const end = at < 0 ? this.text.length : at > from && this.text[at - 1] === '\r' ? at - 1 : at;
      this.#lastLine = { from, end };
    }
    return this.#lastLine.end;
  }

  #nextLine(from: number): number {
    const at = this.text.indexOf('\n', from);
    return at < 0 ? this.text.length : at + 1;
  }

  #skipBlanks(from: number, to: number): number {
    let at = from;
    while (at < to && (this.text[at] === ' ' || this.text[at] === '\t')) at += 1;
    return at;
  }

  #lineBreak(): string {
    return this.text.includes('\r\n') ? '\r\n' : '\n';
  }
}

/** Moves a line by some spaces, to the left where `by` is negative. */
function reindent(lineStart: number, by: number): ShadowEdit {
  return { at: lineStart, remove: Math.max(0, -by), insert: ' '.repeat(Math.max(0, by)) };
}

function quotes(value: Span): TextEdit[] {
  return [
    { span: { start: value.start, end: value.start }, text: "'" },
    { span: { start: value.end, end: value.end }, text: "'" },
  ];
}
