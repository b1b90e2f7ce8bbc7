import type { YAMLParseError } from 'yaml';
import type { Problem } from './problems.ts';
import type { ShadowText } from './shadow-text.ts';
import { bracketOpen, bracketStray, shortened } from './slip-messages.ts';
import type { Span } from './spans.ts';

/** Tells in our own words what the parser's error means. The parser's text is never shown: it speaks of its grammar, not of the person's file. */
export function parserProblem(error: YAMLParseError, shadow: ShadowText): Problem {
  const span = visible(shadow.spanToWritten({ start: error.pos[0], end: Math.max(error.pos[0], error.pos[1]) }), shadow.written);
  // An escape is a backslash with the character behind it.
  const shown = shortened(shadow.written.slice(span.start, error.code === 'BAD_DQ_ESCAPE' ? span.start + 2 : span.end));
  if (error.code === 'UNEXPECTED_TOKEN' && (shown === '}' || shown === ']')) return bracketStray(shown, span);
  const { code, message } = wording(error, shown);
  if (code === 'bracket-open') {
    const closer = error.message.includes('sequence') || error.message.includes(']') ? ']' : '}';
    const open = shadow.written.lastIndexOf(closer === ']' ? '[' : '{', span.start);
    if (open >= 0) return bracketOpen(closer === ']' ? '[' : '{', closer, { start: open, end: open + 1 }, lineEnd(shadow.written, open));
  }
  return { code, severity: 'error', message, span };
}

function wording(error: YAMLParseError, shown: string): { code: string; message: string } {
  switch (error.code) {
    case 'BAD_ALIAS':
    case 'ALIAS_PROPS':
      return { code: 'anchor-name-missing', message: 'A value that begins with "*" or "&" needs a name right after the sign. If the sign belongs to the text, use quotes.' };
    case 'BAD_DQ_ESCAPE':
      return { code: 'escape-unknown', message: `"${shown}" means nothing in double quotes. Write the backslash twice, or use single quotes.` };
    case 'BAD_SCALAR_START':
      return { code: 'value-start-reserved', message: `A value cannot begin with "${shown.slice(0, 1)}" unless it stands in quotes.` };
    case 'NON_STRING_KEY':
    case 'KEY_OVER_1024_CHARS':
      return { code: 'key-not-a-word', message: 'A key must be a plain word of fewer than 1,000 characters.' };
    case 'MULTIPLE_TAGS':
      return { code: 'tag-used', message: 'A value carries several tags here, and none of them has a meaning. Remove them.' };
    case 'TAB_AS_INDENT':
      return { code: 'tab-as-indent', message: 'Tabs are not allowed as indentation. Use two spaces for each level.' };
    case 'BAD_INDENT':
      if (/end with a [}\]]/.test(error.message)) return { code: 'bracket-open', message: 'A bracket is not closed.' };
      return { code: 'indent-wrong', message: 'The indentation does not fit the lines above. Start what belongs together in the same column.' };
    case 'MULTILINE_IMPLICIT_KEY':
    case 'BLOCK_AS_IMPLICIT_KEY':
      return { code: 'text-not-understood', message: 'This does not read as a key and its value. Look for a missing colon, or an indentation that does not fit, here or one line up.' };
    case 'MISSING_CHAR':
      if (/quote/.test(error.message)) return { code: 'quote-open', message: 'A closing quote is missing before this place.' };
      if (/Missing ,/.test(error.message)) return { code: 'comma-missing', message: shown === '' ? 'A comma is missing here.' : `A comma is missing before "${shown}".` };
      if (/space/.test(error.message)) return { code: 'text-not-understood', message: 'A space is missing here.' };
      return { code: 'colon-missing', message: shown === '' ? 'A colon is missing here.' : `No colon after "${shown}". Write a colon, then its value or its entries.` };
    case 'UNEXPECTED_TOKEN':
      if (/Unexpected ,/.test(error.message)) return { code: 'comma-stray', message: 'Nothing stands before this comma. Remove it.' };
      return { code: 'text-not-understood', message: shown === '' ? 'Something is missing or too much here.' : `"${shown}" does not fit here. Remove it, or put the whole value in quotes.` };
    default:
      return { code: 'text-not-understood', message: 'This place does not follow the rules of YAML. Look for a missing colon, quote or comma here or one line up.' };
  }
}

/** At least one character, inside the text and on its line, so that it can be seen. */
function visible(span: Span, text: string): Span {
  const start = Math.min(span.start, Math.max(0, text.length - 1));
  const end = Math.min(Math.max(span.end, start + 1), text.length);
  const lineBreak = text.slice(start, end).search(/[\r\n]/);
  if (lineBreak > 0) return { start, end: start + lineBreak };
  if (lineBreak === 0 && start > 0) return { start: start - (text[start - 1] === '\r' ? 2 : 1) < 0 ? 0 : start - 1, end: start };
  return { start, end };
}

function lineEnd(text: string, from: number): number {
  const at = text.indexOf('\n', from);
  return at < 0 ? text.length : from + text.slice(from, at).trimEnd().length;
}
