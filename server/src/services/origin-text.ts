import type { Term } from '../figures/derivation.ts';
import type { Source } from '../figures/figure.ts';
import { code, escapeMarkdown, escapeShort } from './markdown.ts';

/** Said of every value that rests on memory or on a single thin source. */
export const WEAK = 'from memory or thinly sourced';

/** Where a term comes from, as Markdown: `written here`, `part "lift-motor"`, `handbook default: …`. */
export function originMarkdown(term: Pick<Term, 'origin'>): string {
  const { origin } = term;
  switch (origin.from) {
    case 'figure':
      return `figure ${code(origin.figure)}`;
    case 'here':
      return 'written here';
    case 'part':
      return `part ${escapeShort(`"${origin.part}"`)}`;
    case 'standard':
      return `standard size ${escapeShort(origin.size)}: ${escapeMarkdown(origin.source)}`;
    case 'handbook':
      return `handbook default: ${escapeMarkdown(origin.source)}${origin.weak && !origin.source.includes('memory') ? ` (${WEAK})` : ''}`;
    case 'several':
      return origin.parts.length === 0 ? 'put together from other entries' : `put together: ${origin.parts.map((part) => `${escapeShort(part.title)}, ${originMarkdown(part)}`).join('; ')}`;
  }
}

/** A source with its place and, where it is thin, that it is. */
export function sourceMarkdown({ title, where, weak }: Source): string {
  return `${escapeMarkdown(title)}${where === undefined ? '' : `, ${escapeMarkdown(where)}`}${weak === true && !`${title}${where ?? ''}`.includes('memory') ? ` (${WEAK})` : ''}`;
}
