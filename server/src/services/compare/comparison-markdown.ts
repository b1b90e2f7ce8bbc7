import { blocks, code, escapeMarkdown, table } from '../markdown.ts';
import { moneyText } from '../record/machine-parts.ts';
import { subjectTitle } from '../subject-title.ts';
import { differenceText, gainedText, lowerFirst, relativeText, usedText, valueText, worseLine } from './change-texts.ts';
import type { Comparison } from './comparison.ts';
import { marginLost, type FigureChange } from './figure-changes.ts';
import type { FindingChange } from './finding-changes.ts';
import type { Worsening } from './worsening.ts';

/** Rows of each table of a review comment; such a comment has a limited length, and nobody reads a longer one. */
const MOST_ROWS = 60;

/** What is said of one machine in a review comment: worst first, the long tables folded away. */
export function comparisonMarkdown(title: string, comparison: Comparison, worse: readonly Worsening[]): string {
  return blocks(`### ${escapeMarkdown(title)}`, why(comparison, worse), findings(comparison.findings, comparison.state), accepted(comparison), cost(comparison), margins(comparison.figures), figures(comparison));
}

function why({ state }: Comparison, worse: readonly Worsening[]): string {
  if (state === 'gone') return 'The description is gone.';
  if (worse.length === 0) return state === 'unchanged' ? 'Nothing changed.' : 'Nothing got worse.';
  const lines = worse.slice(0, 3).map((one) => {
    const { what, where, text } = worseLine(one);
    return `- ${one.refused ? '**Worse' : 'Worse'}: ${what}${one.refused ? '**' : ''}, ${escapeMarkdown(where)}: ${escapeMarkdown(text)}`;
  });
  return [...lines, ...(worse.length > 3 ? [`- and ${worse.length - 3} more`] : [])].join('\n');
}

const ORDER: readonly FindingChange['change'][] = ['new', 'graver', 'changed', 'milder', 'accepted', 'gone'];

function findings(changes: readonly FindingChange[], state: Comparison['state']): string | undefined {
  if (changes.length === 0 || state === 'gone') return undefined;
  const rows = ORDER.flatMap((change) => changes.filter((one) => one.change === change)).map(({ change, before, after }) => {
    const finding = after ?? before;
    const severity = before && after && before.severity !== after.severity ? `${before.severity} → ${after.severity}` : (finding?.severity ?? '');
    const message = change === 'gone' ? '' : change === 'accepted' && after?.accepted ? `accepted by ${after.accepted.by}: ${after.accepted.reason}` : (finding?.message ?? '');
    return [change, severity, code(finding?.code ?? ''), escapeMarkdown(finding?.place ?? ''), escapeMarkdown(message)];
  });
  return folded(`Findings: ${ORDER.flatMap((change) => countOf(change, changes)).join(', ')}`, table(['', 'Severity', 'Check', 'Place', 'Message'], rows));
}

function countOf(change: FindingChange['change'], changes: readonly FindingChange[]): readonly string[] {
  const count = changes.filter((one) => one.change === change).length;
  return count === 0 ? [] : [`${count} ${change}`];
}

function accepted({ accepted: { new: added, gone } }: Comparison): string | undefined {
  const line = (word: string) => ({ check, at, reason, by, until }: Comparison['accepted']['new'][number]): string =>
    `- ${word}: ${code(check)} at ${code(at)}: ${escapeMarkdown(reason)}${by === '' ? '' : ` (${escapeMarkdown(by)}${until === '' ? '' : `, until ${escapeMarkdown(until)}`})`}`;
  const lines = [...added.map(line('Accepted')), ...gone.map(line('No longer accepted'))];
  return lines.length === 0 ? undefined : lines.join('\n');
}

function cost({ cost: { differences, changed, after }, state }: Comparison): string | undefined {
  if (!changed || state === 'gone') return undefined;
  const sums = differences.map((difference) => `${moneyText(after.totals.find((total) => total.currency === difference.currency) ?? { ...difference, nominal: 0, low: 0, high: 0 })}${difference.nominal === 0 ? '' : ` (${differenceText(difference)})`}`);
  return `Cost: ${sums.length === 0 ? 'no prices' : sums.map(escapeMarkdown).join('; ')}${after.unpriced > 0 ? `; ${after.unpriced} without a price` : ''}`;
}

function margins(changes: readonly FigureChange[]): string | undefined {
  const judged = changes.filter(({ change, margin }) => margin !== undefined && change === 'changed').sort((a, b) => lossOf(b) - lossOf(a));
  if (judged.length === 0) return undefined;
  const rows = judged.slice(0, MOST_ROWS).map(({ before, after, subject, margin }) =>
    [`${after?.title ?? ''}, ${lowerFirst(subjectTitle(subject))}`, valueText(before, after), valueText(after), margin?.limit ?? '', margin ? usedText(margin) : '', margin ? gainedText(margin) : ''].map(escapeMarkdown));
  const lost = judged.filter(({ margin }) => margin !== undefined && marginLost(margin) > 0).length;
  const gained = judged.filter(({ margin }) => margin !== undefined && marginLost(margin) < 0).length;
  return folded(`Margins: ${lost} lost, ${gained} gained (in points of per cent of the limit)`, table(['Figure', 'Before', 'After', 'Limit', 'Limit used', 'Points'], rows), judged.length - rows.length);
}

function figures({ figures: changes, state }: Comparison): string | undefined {
  if (state !== 'changed') return undefined;
  const others = changes.filter(({ change, margin }) => change !== 'changed' || margin === undefined).sort((a, b) => rankOf(a) - rankOf(b) || Math.abs(b.relative ?? 0) - Math.abs(a.relative ?? 0));
  if (others.length === 0) return undefined;
  const rows = others.slice(0, MOST_ROWS).map((one) => [`${(one.after ?? one.before)?.title ?? ''}, ${lowerFirst(subjectTitle(one.subject))}`, valueText(one.before, one.after), valueText(one.after), one.change === 'changed' ? relativeText(one) : one.change].map(escapeMarkdown));
  return folded(`Other figures: ${others.length}`, table(['Figure', 'Before', 'After', 'Change'], rows), others.length - rows.length);
}

const lossOf = ({ margin }: FigureChange): number => (margin ? marginLost(margin) : 0);

const rankOf = ({ before, after }: FigureChange): number => (after ?? before)?.rank ?? 3;

/** A table behind its summary; Markdown inside needs the empty lines. */
function folded(summary: string, content: string | undefined, hidden = 0): string {
  return blocks(`<details>\n<summary>${summary}</summary>`, content, hidden > 0 && `and ${hidden} more`, '</details>');
}
