import type { Problem } from './problems.ts';
import type { Span, TextEdit } from './spans.ts';

/** The wording of the slips that the repair recognises. Every text from the document is shortened before it is shown. */

export function shortened(text: string, most = 30): string {
  const line = text.replace(/\s+/g, ' ').trim();
  return line.length <= most ? line : `${line.slice(0, most - 1).replace(/[\ud800-\udbff]$/, '')}…`;
}

type Fix = NonNullable<Problem['fixes']>[number];

function slip(code: string, message: string, span: Span, fixes: readonly Fix[] = [], related: Problem['related'] = []): Problem {
  return {
    code,
    severity: 'error',
    message,
    span,
    ...(related.length > 0 ? { related } : {}),
    ...(fixes.length > 0 ? { fixes } : {}),
  };
}

function insert(title: string, at: number, text: string): Fix {
  return { title, edits: [{ span: { start: at, end: at }, text }] };
}

/** `stray` is a colon on the next line that was meant for the word. */
export function colonMissing(word: string, span: Span, stray?: number): Problem {
  const added = { span: { start: span.end, end: span.end }, text: ':' };
  const removed = stray === undefined ? [] : [{ span: { start: stray, end: stray + 1 }, text: '' }];
  return slip('colon-missing', `No colon after "${shortened(word)}". Write a colon, then its value or its entries.`, span, [{ title: 'Add the colon', edits: [added, ...removed] }]);
}

export function spaceAfterColonMissing(key: string, value: string, colonEnd: number, span: Span): Problem {
  return slip('space-after-colon-missing', `Put a space after the colon: "${shortened(key)}: ${shortened(value)}".`, span, [insert('Put a space after the colon', colonEnd, ' ')]);
}

export function spaceAfterDashMissing(item: string, dashEnd: number, span: Span): Problem {
  return slip('space-after-dash-missing', `Put a space after the dash: "- ${shortened(item)}".`, span, [insert('Put a space after the dash', dashEnd, ' ')]);
}

export function twoKeysOnOneLine(outer: string, inner: string, span: Span, ownLine: TextEdit, quoted: readonly TextEdit[]): Problem {
  return slip(
    'two-keys-on-one-line',
    `Two keys on one line. Put "${shortened(inner)}" on its own line below "${shortened(outer)}", two spaces in, or put quotes around the text.`,
    span,
    [
      { title: `Put "${shortened(inner)}" on its own line`, edits: [ownLine] },
      ...(quoted.length > 0 ? [{ title: 'Put quotes around the text', edits: quoted }] : []),
    ],
  );
}

/** `closers` close the brackets around the quote, where they are open too. */
export function quoteOpen(quote: string, span: Span, closeAt: number, closers = ''): Problem {
  const name = quote === '"' ? 'double' : 'single';
  const fix = insert(closers === '' ? 'Close the quote' : `Close the quote and the brackets around it`, closeAt, quote + closers);
  return slip('quote-open', `This ${name} quote is not closed. It is read up to the end of its line.`, span, [fix], [
    { message: 'read up to here', span: { start: closeAt, end: closeAt } },
  ]);
}

export function dashMissing(item: string, span: Span): Problem {
  return slip('dash-missing', `Put a dash and a space before "${shortened(item)}", as before the other items.`, span, [insert('Add the dash', span.start, '- ')]);
}

/** `closers` close this bracket and those inside it that are open as well. */
export function bracketOpen(bracket: string, closers: string, span: Span, closeAt: number): Problem {
  return slip('bracket-open', `This "${bracket}" is not closed. Write "${closers}" where it ends.`, span, [insert(`Add "${closers}"`, closeAt, closers)], [
    { message: 'read up to here', span: { start: closeAt, end: closeAt } },
  ]);
}

/** Before the first of several entries that end with a closing brace. */
export function openingMissing(word: string, at: number): Problem {
  const span = { start: at, end: at + word.length };
  return slip('bracket-missing', `A "{" is missing before "${shortened(word)}", since a "}" closes these entries.`, span, [insert('Add "{"', at, '{ ')]);
}

export function bracketOfOtherKind(written: string, opening: string, due: string, span: Span): Problem {
  return slip('bracket-stray', `A "${opening}" is closed by "${due}", not by "${written}".`, span, [{ title: `Change to "${due}"`, edits: [{ span, text: due }] }]);
}

export function bracketStray(bracket: string, span: Span): Problem {
  return slip('bracket-stray', `This "${bracket}" closes nothing. Remove it, or add the opening one.`, span, [{ title: `Remove "${bracket}"`, edits: [{ span, text: '' }] }]);
}

export function tabAsIndent(span: Span, edits: readonly TextEdit[]): Problem {
  return slip('tab-as-indent', 'Tabs are not allowed as indentation. Use two spaces for each level.', span, [{ title: 'Replace all tabs in the indentation by spaces', edits }]);
}

export function indentedTooLittle(word: string, span: Span, missing: number, edits: readonly TextEdit[]): Problem {
  return slip('indent-wrong', `"${shortened(word)}" stands ${spaces(missing)} too far left to belong to the entries above it.`, span, [
    { title: `Indent by ${spaces(missing)} more`, edits },
  ]);
}

export function indentedTooMuch(word: string, above: string, span: Span, extra: number, edits: readonly TextEdit[]): Problem {
  return slip('indent-wrong', `"${shortened(word)}" stands ${spaces(extra)} too far right: "${shortened(above)}" above it already has a value.`, span, [
    { title: `Indent by ${spaces(extra)} less`, edits },
  ]);
}

function spaces(count: number): string {
  return count === 1 ? 'one space' : `${count} spaces`;
}

export function valueStartReserved(sign: string, value: Span, text: string): Problem {
  const quotable = !text.includes("'");
  const edits = [
    { span: { start: value.start, end: value.start }, text: "'" },
    { span: { start: value.end, end: value.end }, text: "'" },
  ];
  return slip('value-start-reserved', `A value cannot begin with ${sign} unless it stands in quotes.`, { start: value.start, end: value.start + 1 }, quotable ? [{ title: 'Put it in quotes', edits }] : []);
}
