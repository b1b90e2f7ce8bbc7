// STAND-IN by the lead. Language helper: overwrite this file with the real one.
import { readDocument, type LanguageDocument } from './read-document.ts';

export const editDocument = (previous: LanguageDocument, text: string): LanguageDocument => readDocument(previous.uri, text);
