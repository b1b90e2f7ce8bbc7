/** A stretch of a text in UTF-16 code units, end exclusive; the unit in which editors and this language count. */
export interface Span {
  readonly start: number;
  readonly end: number;
}

/** Replace `span` of the text by `text`. Edits of one change never overlap and refer to the same original text. */
export interface TextEdit {
  readonly span: Span;
  readonly text: string;
}

/** The text after `edits`, applied together; they must not overlap. */
export function applyEdits(text: string, edits: readonly TextEdit[]): string {
  const ordered = [...edits].sort((a, b) => b.span.start - a.span.start || b.span.end - a.span.end);
  let result = text;
  for (const edit of ordered) result = result.slice(0, edit.span.start) + edit.text + result.slice(edit.span.end);
  return result;
}
