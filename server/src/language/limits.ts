/**
 * Bounds on what is read from a text, so that no text, however hostile, makes the tool hang or grow without end.
 * A real description stays far below every one of them.
 */
export const limits = {
  /** Longest text that is read, in UTF-16 code units. */
  textLength: 2_000_000,
  /** Most lines that are read. */
  lines: 50_000,
  /** Deepest nesting of maps and lists. The parser library can take the whole process down beyond some hundreds. */
  depth: 64,
  /** Most values in one text, with every use of an alias counted in full. */
  nodes: 200_000,
  /** Most uses of aliases in one text. */
  aliasUses: 1_000,
  /** Longest text of one quantity, in UTF-16 code units. */
  quantityLength: 80,
  /** Most problems that are gathered before the rest of a text is left unread: with so many it is no description. */
  problemsBeforeStop: 1_000,
  /** Most problems of one text that are listed one by one; the rest are counted. */
  problems: 200,
} as const;
