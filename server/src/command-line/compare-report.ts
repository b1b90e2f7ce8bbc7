import { differenceText, gainedText, lowerFirst, nominalText, relativeText, usedText, valueText, worseLine } from '../services/compare/change-texts.ts';
import type { Comparison } from '../services/compare/comparison.ts';
import { marginLost, type FigureChange } from '../services/compare/figure-changes.ts';
import type { FindingChange } from '../services/compare/finding-changes.ts';
import type { Worsening } from '../services/compare/worsening.ts';
import type { Acceptance } from '../services/record/acceptances.ts';
import { moneyText, type Money, type PartRow } from '../services/record/machine-parts.ts';
import { subjectTitle } from '../services/subject-title.ts';
import { gravity } from './exit-status.ts';
import { hang, padEnd, printable, shorten, widthOf } from './cells.ts';
import type { Page } from './style.ts';
import { tableLines } from './table.ts';

/** A comparison with its names and what got worse in it. */
export interface Compared {
  readonly before: string;
  readonly after: string;
  readonly comparison: Comparison;
  readonly worse: readonly Worsening[];
}

/** Lines of "why" at the top. */
export const MOST_REASONS = 3;

/** Rows of figures without a limit that are shown without --all, those that changed most. */
const MOST_FIGURES = 12;

/** Cells of a value in a table; verdicts in words can be longer. */
const MOST_CELLS = 26;

/** A point of per cent: less is not worth a line. */
const LEAST_MARGIN = 0.01;

export const comparedTitle = ({ before, after, comparison }: Compared): string =>
  comparison.state === 'new' ? `${after} (new)` : comparison.state === 'gone' ? `${before} (gone)` : before === after ? after : `${before} → ${after}`;

/** One comparison for people: in three lines what got worse most, then everything. */
export function comparisonReport(compared: Compared, all: boolean, page: Page): string {
  const { comparison } = compared;
  const blocks = [
    [page.style.bold(printable(comparedTitle(compared)))],
    whyLines(compared, page),
    findingLines(comparison.findings, comparison.state, all, page),
    marginLines(comparison.figures, all, page),
    ...(comparison.state === 'changed' ? figureLines(comparison.figures, all, page) : []),
    acceptedLines(comparison, page),
    costLines(comparison, page),
  ];
  return `${blocks.filter((lines) => lines.length > 0).map((lines) => lines.join('\n')).join('\n\n')}\n`;
}

/** Each reason on one line, whatever its length, and one line for what got better. */
export function whyLines({ worse, comparison }: Pick<Compared, 'worse' | 'comparison'>, { columns, style }: Page): string[] {
  if (comparison.state === 'gone') return ['  The file is gone.'];
  if (comparison.state === 'unchanged') return ['  Nothing changed.'];
  const told = worse.slice(0, MOST_REASONS).map((one) => {
    const { what, where, text } = worseLine(one);
    const line = shorten(printable(`  ${one.refused ? 'refused' : 'allowed'}  ${padEnd(what, 11)}  ${where}: ${text}`), columns);
    return one.refused ? style.severity(one.kind === 'finding' ? what : 'warning', line) : line;
  });
  const rest = worse.length - told.length;
  if (rest > 0) told.push(`  and ${rest} more that got worse, below`);
  return [...(told.length === 0 ? ['  Nothing got worse.'] : told), ...betterLine(comparison)];
}

function betterLine({ findings, figures }: Comparison): string[] {
  const count = (change: FindingChange['change']): number => findings.filter((one) => one.change === change).length;
  const gained = figures.filter(({ change, margin }) => change === 'changed' && (margin?.gained ?? 0) >= 0.01).length;
  const parts = [[count('gone'), 'findings gone'], [count('milder'), 'milder'], [count('accepted'), 'accepted'], [gained, 'margins gained']] as const;
  const told = parts.filter(([number]) => number > 0).map(([number, what]) => `${number} ${number === 1 ? what.replace(/^(finding|margin)s/, '$1') : what}`);
  return told.length === 0 ? [] : [`  better: ${told.join(', ')}`];
}

const COUNTS: Readonly<Record<FindingChange['change'], string>> = { new: 'new', graver: 'graver', changed: 'changed', milder: 'milder', accepted: 'accepted', gone: 'gone' };

function findingLines(changes: readonly FindingChange[], state: Comparison['state'], all: boolean, { columns, style }: Page): string[] {
  if (changes.length === 0) return [];
  const order = Object.keys(COUNTS) as FindingChange['change'][];
  const counts = order.flatMap((change) => {
    const count = changes.filter((one) => one.change === change).length;
    return count === 0 ? [] : [`${count} ${COUNTS[change]}`];
  });
  const title = `  ${style.bold('Findings')}: ${counts.join(', ')}`;
  if (state === 'gone' && !all) return [title];
  const cells = Math.max(...changes.map((one) => severityText(one).length));
  const lines = order.flatMap((change) => changes.filter((one) => one.change === change).sort(byGravity)).flatMap(({ change, before, after }) => {
    const finding = after ?? before;
    if (!finding) return [];
    const severity = severityText({ change, ...(before ? { before } : {}), ...(after ? { after } : {}) });
    const start = `    ${padEnd(change, 8)}  ${padEnd(severity, cells)}  ${printable(finding.code)}`;
    const place = printable(finding.place);
    const fits = widthOf(start) + 2 + widthOf(place) <= columns;
    const head = `    ${padEnd(change, 8)}  ${style.severity(finding.severity, padEnd(severity, cells))}  ${style.bold(printable(finding.code))}${fits ? `  ${place}` : ''}`;
    // Of what is gone, its name is enough.
    const text = change === 'gone' ? [] : change === 'accepted' && after?.accepted ? [`Accepted by ${after.accepted.by === '' ? 'nobody named' : after.accepted.by}: ${after.accepted.reason}`] : [finding.message];
    return [head, ...(fits ? [] : hang(`at ${place}`, 14, columns, 0)), ...text.flatMap((one) => hang(printable(one), 14, columns, 0))];
  });
  return [title, ...lines];
}

const byGravity = (a: FindingChange, b: FindingChange): number => gravity((a.after ?? a.before)?.severity ?? '') - gravity((b.after ?? b.before)?.severity ?? '');

const severityText = ({ before, after }: FindingChange): string => (before && after && before.severity !== after.severity ? `${before.severity} → ${after.severity}` : ((after ?? before)?.severity ?? ''));

const COLUMNS = [{ title: 'figure', gives: true }, { title: 'before' }, { title: 'after' }, { title: 'limit' }, { title: 'limit used' }, { title: 'points', right: true }];

/** Figures with a limit, most lost first. */
function marginLines(changes: readonly FigureChange[], all: boolean, page: Page): string[] {
  const judged = changes.flatMap((one) => (one.change === 'changed' && one.margin ? [{ ...one, margin: one.margin }] : []));
  if (judged.length === 0) return [];
  const told = all ? judged : judged.filter(({ margin }) => Math.abs(marginLost(margin)) >= LEAST_MARGIN || margin.stateBefore !== margin.stateAfter);
  const rows = [...told].sort((a, b) => marginLost(b.margin) - marginLost(a.margin)).map(({ before, after, subject, margin }) =>
    [nameOf(after ?? before, subject, judged), shorten(nominalText(before, after), MOST_CELLS), shorten(nominalText(after), MOST_CELLS), margin.limit, usedText(margin), gainedText(margin)].map(printable));
  const lost = judged.filter(({ margin }) => marginLost(margin) >= LEAST_MARGIN).length;
  const gained = judged.filter(({ margin }) => -marginLost(margin) >= LEAST_MARGIN).length;
  const hidden = judged.length - told.length;
  return [
    `  ${page.style.bold('Margins')}: ${lost} lost, ${gained} gained (in points of per cent of the limit)`,
    ...(rows.length === 0 ? [] : tableLines(COLUMNS, rows, 4, page.columns)),
    ...(hidden > 0 ? [`    and ${hidden} by less than a point; --all shows them`] : []),
  ];
}

/** Figures without a limit, by how much they changed; and those that are new or gone. */
function figureLines(changes: readonly FigureChange[], all: boolean, page: Page): string[][] {
  const changed = changes.filter(({ change, margin }) => change === 'changed' && margin === undefined);
  const order = [...changed].sort((a, b) => (a.after?.rank ?? 3) - (b.after?.rank ?? 3) || Math.abs(b.relative ?? 0) - Math.abs(a.relative ?? 0));
  const shown = all ? order : order.slice(0, MOST_FIGURES);
  const blocks: string[][] = [];
  if (shown.length > 0) {
    const rows = shown.map((one) => [nameOf(one.after, one.subject, changed), shorten(nominalText(one.before, one.after), MOST_CELLS), shorten(nominalText(one.after), MOST_CELLS), relativeText(one)].map(printable));
    const hidden = order.length - shown.length;
    blocks.push([
      `  ${page.style.bold('Other figures')}: ${changed.length} changed`,
      ...tableLines([{ title: 'figure', gives: true }, { title: 'before' }, { title: 'after' }, { title: 'change', right: true }], rows, 4, page.columns),
      ...(hidden > 0 ? [`    and ${hidden} more; --all shows them`] : []),
    ]);
  }
  for (const kind of ['new', 'gone'] as const) {
    const those = changes.filter(({ change }) => change === kind);
    if (those.length === 0) continue;
    const names = those.map(({ before, after, subject }) => `${nameOf(after ?? before, subject, those)} ${valueText(after ?? before)}`);
    const told = all ? names : names.slice(0, 6);
    const rest = names.length - told.length;
    blocks.push(hang(printable(`Figures that are ${kind}: ${told.join('; ')}${rest > 0 ? `; and ${rest} more` : ''}`), 2, page.columns));
  }
  return blocks;
}

/** The title; with its subject where several drives are told of, and always where it is no drive. */
function nameOf(row: FigureChange['after'], subject: string, among: readonly FigureChange[]): string {
  const title = row?.title ?? '';
  const drives = new Set(among.map((one) => one.subject).filter(isDrive));
  return isDrive(subject) && drives.size < 2 ? title : `${title} (${lowerFirst(subjectTitle(subject))})`;
}

const isDrive = (subject: string): boolean => subject.startsWith('axes/');

/** A word in a column of its own, then a text that may take several lines. */
function labelled(label: string, text: string, columns: number): string[] {
  const [first = '', ...rest] = hang(printable(text), 14, columns, 0);
  return [`    ${padEnd(label, 10)}${first.trimStart()}`, ...rest];
}

function acceptedLines({ accepted }: Comparison, { columns, style }: Page): string[] {
  const line = (word: string) => ({ check, at, reason, by, until }: Acceptance): string[] =>
    labelled(word, `${check} at ${at}: ${reason}${by === '' ? '' : ` (${by}${until === '' ? '' : `, until ${until}`})`}`, columns);
  const lines = [...accepted.new.flatMap(line('new')), ...accepted.gone.flatMap(line('gone'))];
  return lines.length === 0 ? [] : [`  ${style.bold('Accepted deviations')}`, ...lines];
}

function costLines({ cost, state }: Comparison, { columns, style }: Page): string[] {
  if (state === 'gone' || (!cost.changed && cost.parts.length === 0)) return [];
  const sum = (currency: string, totals: readonly Money[]): string => {
    const total = totals.find((one) => one.currency === currency);
    return total ? moneyText(total) : 'nothing';
  };
  const sums = cost.differences.map((difference) => `${sum(difference.currency, cost.before.totals)} → ${sum(difference.currency, cost.after.totals)}${difference.nominal === 0 ? '' : ` (${differenceText(difference)})`}`);
  const over = cost.after.totals.find((total) => total.currency === cost.after.budget?.currency && total.high > cost.after.budget.nominal);
  const unpriced = cost.after.unpriced > 0 ? [`${cost.after.unpriced} without a price`] : [];
  const title = `  ${style.bold('Cost')}: ${[...(sums.length === 0 ? ['no prices'] : sums), ...unpriced, ...(over ? [`over the budget of ${cost.after.budget ? moneyText(cost.after.budget) : ''}`] : [])].join('; ')}`;
  return [title, ...cost.parts.flatMap((part) => labelled(part.change, partText(part), columns))];
}

/** What is bought; of a part that is bought otherwise, only what differs. */
function partText({ before, after }: Comparison['cost']['parts'][number]): string {
  const cells = (part: PartRow): readonly string[] => [`${part.pieces} ×`, part.size, part.price ? `at ${moneyText(part.price)}` : 'without a price', part.supplierNote ?? ''];
  const known = after ?? before;
  if (!known) return '';
  if (!before || !after) return [cells(known)[0], known.title, ...cells(known).slice(1)].filter((text) => text !== '').join(' ');
  const [old, fresh] = [cells(before), cells(after)];
  return `${known.title}: ${fresh.flatMap((cell, index) => (cell === old[index] ? [] : [`${old[index] === '' ? 'nothing' : (old[index] ?? '')} → ${cell === '' ? 'nothing' : cell}`])).join(', ')}`;
}
