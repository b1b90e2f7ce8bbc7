import { acceptableProblems, reasonPlaceholder } from '../checks/accepted-entries.ts';
import { pathsOf } from '../checks/accepted.ts';
import { appendItem } from '../language/append-section.ts';
import { editDocument } from '../language/incremental.ts';
import { applyEdits, type TextEdit } from '../language/spans.ts';
import { childOf } from '../language/syntax-tree.ts';
import type { Diagnostic } from './diagnostics.ts';
import type { Snapshot } from './snapshot.ts';

/** What a person says when accepting a finding. */
export interface AcceptanceWords {
  readonly reason: string;
  readonly by?: string;
  /** YYYY-MM-DD */
  readonly until?: string;
}

/** Months for which a deviation is accepted unless something else is said. */
const MONTHS = 6;

/** Whether a finding can be accepted: it tells of the design, it stands in a machine's own description, and it is not accepted yet. */
export const canBeAccepted = (diagnostic: Diagnostic, snapshot: Snapshot): boolean =>
  snapshot.analysis !== undefined && diagnostic.accepted === undefined && (diagnostic.finding !== undefined || acceptableProblems.has(diagnostic.code)) && placeToAccept(diagnostic, snapshot) !== undefined;

/** Where a finding is accepted, as it is written: `axes/lift/drive/nut`. */
export function placeToAccept({ finding, span }: Diagnostic, { analysis, document }: Snapshot): string | undefined {
  const path = finding ? analysis && pathsOf(finding, analysis.machine)[0] : document.pathAt(span.start).path;
  // A key that holds the sign between the keys could not be told from two.
  return path === undefined || path.length === 0 || path.some((key) => key === '' || key.includes('/')) ? undefined : path.join('/');
}

/**
 * The edits that accept a finding in its description, in the style of the entries that are there. Without words the reason is a placeholder,
 * which accepts nothing until it is replaced. Undefined where it cannot be written without touching what stands there.
 */
export function acceptanceEdits(diagnostic: Diagnostic, snapshot: Snapshot, words?: AcceptanceWords): readonly TextEdit[] | undefined {
  const at = canBeAccepted(diagnostic, snapshot) ? placeToAccept(diagnostic, snapshot) : undefined;
  if (at === undefined) return undefined;
  const until = words ? words.until : usualEnd(snapshot.analysis?.options.today);
  const reason = words ? words.reason.replace(/\s+/g, ' ').trim() : reasonPlaceholder;
  const by = words?.by?.replace(/\s+/g, ' ').trim() ?? '';
  if (reason === '') return undefined;
  const item = { check: diagnostic.code, at, reason, ...(by === '' ? {} : { by }), ...(until === undefined ? {} : { until }) };
  const edits = appendItem(snapshot.document, 'accepted', item);
  if (!edits) return undefined;
  const list = childOf(editDocument(snapshot.document, applyEdits(snapshot.document.text, edits)).root, 'accepted');
  // In a text that is half typed the lines may come to stand where they are not read.
  const written = list?.type === 'list' ? list.items.at(-1) : undefined;
  return Object.entries(item).every(([key, value]) => textOf(written, key) === value) ? edits : undefined;
}

function textOf(item: Parameters<typeof childOf>[0], key: string): string | undefined {
  const node = childOf(item, key);
  return node?.type === 'scalar' ? node.text : undefined;
}

/** Half a year from a day; the last day of its month where that has fewer. */
export function usualEnd(today: string | undefined): string | undefined {
  const [, year, month, day] = /^(\d{4})-(\d{2})-(\d{2})$/.exec(today ?? '') ?? [];
  if (year === undefined || month === undefined || day === undefined) return undefined;
  const months = Number(year) * 12 + Number(month) - 1 + MONTHS;
  const [toYear, toMonth] = [Math.floor(months / 12), (months % 12) + 1];
  const leap = toYear % 4 === 0 && (toYear % 100 !== 0 || toYear % 400 === 0);
  const days = toMonth === 2 ? (leap ? 29 : 28) : [4, 6, 9, 11].includes(toMonth) ? 30 : 31;
  const two = (value: number): string => String(value).padStart(2, '0');
  return `${String(toYear).padStart(4, '0')}-${two(toMonth)}-${two(Math.min(Number(day), days))}`;
}
