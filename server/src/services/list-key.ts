import type { LanguageDocument } from '../language/read-document.ts';

/** The key under which a file names part lists. */
export const listKey = ({ fileKind }: LanguageDocument): string => (fileKind === 'settings' ? 'part-lists' : 'uses');
