import { LanguageDocument } from './read-document.ts';

/**
 * The document for an edited text, taking over from the version before whatever has not changed: only the entries that the edit
 * touches are parsed again. The result is the same as reading the new text afresh, because an entry is always parsed by itself,
 * from its own lines alone, unless the whole text has to be (see `splitBlocks`).
 */
export function editDocument(previous: LanguageDocument, newText: string): LanguageDocument {
  if (newText === previous.text) return previous;
  return new LanguageDocument(previous.uri, newText, previous.parseMemory);
}
