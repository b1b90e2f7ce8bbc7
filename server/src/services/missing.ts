import type { Evaluation } from '../figures/evaluation.ts';
import type { Figure } from '../figures/figure.ts';
import { entrySchema } from '../machine/entry-schema.ts';
import { describeInput, fallbacksFor } from '../machine/fallback-registry.ts';
import { code, escapeMarkdown } from './markdown.ts';

/** Names in one sentence. */
const MOST_NAMES = 4;

/** What a screw's size decides: where several of these lack, the size is what one would write. */
const FROM_SIZE: ReadonlySet<string> = new Set(['screw.thread', 'screw.major-diameter', 'screw.pitch-diameter', 'screw.root-diameter', 'screw.lead']);

/** ``write `screw.material` and what gives the moved mass``: what would make something computable. */
export function missingMarkdown(missing: readonly string[]): string {
  const sized = missing.filter((input) => FROM_SIZE.has(input));
  const names = sized.length < 2 ? missing : ['screw.size', ...missing.filter((input) => !FROM_SIZE.has(input))];
  // What one writes under its own name leads; the rest follows from other entries.
  const ordered = [...names.filter(isWritten), ...names.filter((input) => !isWritten(input))].map(nameOf);
  return `write ${listed(ordered.length <= MOST_NAMES ? ordered : [...ordered.slice(0, MOST_NAMES - 1), `${ordered.length - MOST_NAMES + 1} more`])}`;
}

const isWritten = (input: string): boolean => entrySchema(input) !== undefined;

/** An entry by the name under which it is written; what is put together from several entries by its title. */
const nameOf = (input: string): string => (isWritten(input) ? code(input) : `what gives the ${escapeMarkdown(lowerFirst(describeInput(input).title))}`);

/**
 * The same as plain identifiers, for a list: what one would write, each once. What is put together from entries, and cannot be written itself,
 * is left out; what it is put together from lacks too, and is named where it does.
 */
export function entriesToWrite(missing: readonly string[]): readonly string[] {
  const sized = missing.filter((input) => FROM_SIZE.has(input)).length > 0;
  const written = missing.filter((input) => isWritten(input) && !FROM_SIZE.has(input));
  // What has a handbook's value as soon as the others are there need not be written.
  const own = written.filter((input) => fallbacksFor(input).length === 0);
  // A reduction that is begun but whose ratio no stage tells yet has no entry of its own that could be named.
  const ratio = missing.includes('drive.reduction-ratio') ? ['the ratio or teeth of a stage of drive.reduction'] : [];
  const first = [...(sized ? ['screw.size'] : []), ...ratio];
  return [...first, ...(own.length > 0 || first.length > 0 ? own : written)];
}

/** For each set of missing entries, one sentence naming the figures that wait for it; at most `most` of them, the most important first. */
export function missingSentences(figures: readonly Figure[], evaluation: Evaluation, most: number): readonly string[] {
  const waiting = new Map<string, { readonly missing: readonly string[]; readonly figures: Figure[] }>();
  for (const figure of figures) {
    const result = evaluation.result(figure.id);
    if (result.state !== 'missing') continue;
    const key = [...result.missing].sort().join();
    const group = waiting.get(key) ?? { missing: result.missing, figures: [] };
    group.figures.push(figure);
    waiting.set(key, group);
  }
  return [...waiting.values()].slice(0, most).map(({ missing, figures: group }) => {
    const titles = group.slice(0, 3).map((figure) => `"${escapeMarkdown(figure.title)}"`);
    if (group.length > 3) titles.push(`${group.length - 3} more`);
    return `To compute ${listed(titles)}, ${missingMarkdown(missing)}${unreadable(missing, evaluation)}.`;
  });
}

function unreadable(missing: readonly string[], evaluation: Evaluation): string {
  const typed = missing.filter((id) => evaluation.input(id).state === 'unreadable');
  return typed.length === 0 ? '' : ` (${listed(typed.map(nameOf))} ${typed.length === 1 ? 'is' : 'are'} there but cannot be read yet)`;
}

/** `a, b and c` */
export function listed(items: readonly string[]): string {
  return items.length <= 1 ? (items[0] ?? '') : `${items.slice(0, -1).join(', ')} and ${items.at(-1) ?? ''}`;
}

/** A title inside a sentence: its first letter small, unless the word is an abbreviation or someone's name. */
export const lowerFirst = (title: string): string => (/^\p{Lu}(?!\p{Lu})(?!oung’?'?s|uler|ohnson|ertz)/u.test(title) ? title.charAt(0).toLowerCase() + title.slice(1) : title);
