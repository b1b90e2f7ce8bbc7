import type { Source } from '../../figures/figure.ts';
import type { FigureRow } from '../figures-table.ts';
import { escapeMarkdown } from '../markdown.ts';
import { sourceMarkdown, WEAK } from '../origin-text.ts';
import type { RecordedFinding } from './finding-rows.ts';

/** Every source behind what is told: of formulas, limits, standard sizes and handbook values. Sorted, each once. */
export function sourcesMarkdown(rows: readonly FigureRow[], findings: readonly RecordedFinding[]): string {
  const told = new Set<string>();
  const add = (source: Source): void => void told.add(sourceMarkdown(source));
  for (const row of rows) {
    if (row.state !== 'computed') continue;
    row.sources.forEach(add);
    for (const limit of row.limits) if (limit.source) add(limit.source);
    for (const { source, weak } of row.terms) if (source !== undefined) told.add(`${escapeMarkdown(source)}${weak && !source.includes('memory') ? ` (${WEAK})` : ''}`);
  }
  for (const { sources } of findings) sources.forEach(add);
  // By code units, so that the order is the same in every language.
  const sorted = [...told].sort((a, b) => (a < b ? -1 : 1));
  return sorted.length === 0 ? 'None.' : sorted.map((source) => `- ${source}`).join('\n');
}
