/** Longest stretch of a person's text that is shown inside a sentence. */
const LONGEST = 120;

/**
 * Text for Markdown that shows exactly as it is: no emphasis, link, picture, code, table cell, HTML or bare address comes of it.
 * For everything that stems from a file, and for all else that may hold such characters. Comes out on one line.
 */
export function escapeMarkdown(text: string): string {
  return (
    oneLine(text)
      .replace(/[\\`*_[\]<>|&~$#]/g, (character) => (character === '&' ? '&amp;' : character === '<' ? '&lt;' : character === '>' ? '&gt;' : `\\${character}`))
      // Some readers make links of bare addresses.
      .replace(/:\/\//g, '\\://')
      .replace(/\b(www|ftp|mailto)([.:])/gi, '$1\\$2')
      .replace(/@/g, '\\@')
      .replace(/!(?=\\\[)/g, '\\!')
  );
}

/** A person's text, escaped and cut to a length that leaves the sentence readable. */
export const escapeShort = (text: string): string => escapeMarkdown(shorten(oneLine(text)));

/** Text as inline code: the fence is longer than any run of backticks inside. */
export function code(text: string): string {
  const plain = shorten(oneLine(text), 400);
  const longest = Math.max(0, ...(plain.match(/`+/g) ?? []).map((run) => run.length));
  const fence = '`'.repeat(longest + 1);
  const room = plain.startsWith('`') || plain.endsWith('`') ? ' ' : '';
  return `${fence}${room}${plain}${room}${fence}`;
}

/** Inline code inside a table, where a bar would end the cell even in code. */
export const codeInTable = (text: string): string => code(text).replace(/\|/g, '\\|');

/** A table of at most four columns, aligned to the left like its cells; cells are Markdown already. Undefined without rows. */
export function table(header: readonly string[], rows: readonly (readonly string[])[]): string | undefined {
  if (rows.length === 0) return undefined;
  const line = (cells: readonly string[]): string => `| ${cells.join(' | ')} |`;
  return [line(header), line(header.map(() => ':---')), ...rows.map(line)].join('\n');
}

/** Text that is not to be broken at the end of a line: a number, its unit and its range. */
export const unbroken = (text: string): string => text.replace(/ /g, '\u00a0');

/** Blocks with an empty line between; those that are missing are left out. */
export const blocks = (...parts: readonly (string | undefined | false)[]): string => parts.filter((part): part is string => typeof part === 'string' && part !== '').join('\n\n');

/** Line ends and tabs become blanks; control characters and marks that turn the reading direction are left out. */
function oneLine(text: string): string {
  return (
    text
      .replace(/[\r\n\t\u2028\u2029]+/g, ' ')
      .replace(/[\u0000-\u001f\u007f-\u009f\u200b-\u200f\u202a-\u202e\u2060-\u2069\ufeff]/g, '')
      .trim()
  );
}

function shorten(text: string, most = LONGEST): string {
  const characters = [...text];
  return characters.length <= most ? text : `${characters.slice(0, most - 1).join('')}…`;
}
