/** Lines of a text, and what a single line of YAML consists of, as far as it can be told without what is around it. */

/** Start of the line on which `offset` lies. */
export function lineStartAt(text: string, offset: number): number {
  return offset <= 0 ? 0 : text.lastIndexOf('\n', offset - 1) + 1;
}

/** End of the line on which `offset` lies, its line end excluded. */
export function lineEndAt(text: string, offset: number): number {
  const at = text.indexOf('\n', offset);
  if (at < 0) return text.length;
  return at > offset && text[at - 1] === '\r' ? at - 1 : at;
}

/** Start of the next line; the end of the text behind the last one. */
export function nextLineAt(text: string, offset: number): number {
  const at = text.indexOf('\n', offset);
  return at < 0 ? text.length : at + 1;
}

/** Where the plain text that begins at `from` ends: before a comment or the blanks at the end of its line. */
export function plainEnd(line: string, from: number): number {
  const comment = /[ \t]#/.exec(line.slice(from));
  return (comment ? line.slice(0, from + comment.index) : line).trimEnd().length;
}

/** The key at the beginning of a line and the place of its colon, which a blank or the end of the line must follow. */
export function findKey(line: string): { readonly text: string; readonly colon: number } | undefined {
  if (/^[\s{}[\],&*#?|>@`%!]/.test(line) || /^-(?:\s|$)/.test(line)) return undefined;
  const quoted = /^(?:"(?:[^"\\]|\\.)*"|'(?:[^']|'')*')/.exec(line)?.[0];
  if (quoted === undefined && /^["']/.test(line)) return undefined;
  const limit = quoted === undefined ? plainEnd(line, 0) : line.length;
  for (let colon = line.indexOf(':', quoted?.length ?? 1); colon >= 0 && colon < limit; colon = line.indexOf(':', colon + 1)) {
    if (!/[\s]/.test(line[colon + 1] ?? ' ')) continue;
    const text = line.slice(0, colon).trimEnd();
    return quoted === undefined || quoted === text ? { text, colon } : undefined;
  }
  return undefined;
}

/** A key that was joined to its value: the blank behind the colon is missing. */
export const wordColonValue = /^(?<key>[A-Za-z][\w-]*):(?<value>[^\s/:][^\n]*)$/;

/** A key without the quotes around it. */
export function unquoted(key: string): string {
  return /^(["']).*\1$/s.test(key) ? key.slice(1, -1) : key;
}
