import { childOf } from '../../language/syntax-tree.ts';
import { figuresOf } from '../figures-table.ts';
import { blocks, code, escapeMarkdown } from '../markdown.ts';
import type { Snapshot } from '../snapshot.ts';
import { acceptancesOf } from './acceptances.ts';
import { recordedFindings } from './finding-rows.ts';
import { costOf, partsOf } from './machine-parts.ts';
import { cautionsMarkdown } from './record-cautions.ts';
import { commissioningMarkdown } from './record-commissioning.ts';
import { figuresMarkdown } from './record-figures.ts';
import { acceptedMarkdown, findingsMarkdown, summaryMarkdown } from './record-findings.ts';
import { partsMarkdown } from './record-parts.ts';
import { sourcesMarkdown } from './record-sources.ts';

/** The first line of every record; what does not begin with it was written by someone else. */
export const recordMark = '<!-- Design record, written by "axiswright record" from the description beside it. Do not edit. -->';

export interface RecordOptions {
  /** Of the tool. */
  readonly version: string;
  /** Hexadecimal SHA-256 of `hashedText(snapshot)`: the core has no cryptography of its own. */
  readonly sha256: string;
}

/**
 * The text whose hash identifies what was recorded: the description, its part lists in the order of `uses`, and the settings of the repository,
 * one after the other, with LF line ends and without a byte order mark, so that it is the same however a file was checked out.
 */
export function hashedText({ document, lists, settings }: Pick<Snapshot, 'document' | 'lists' | 'settings'>): string {
  return [document, ...lists, ...(settings ? [settings] : [])].map(({ text }) => text.replace(/^\ufeff/, '').replace(/\r\n?/g, '\n')).join('');
}

/**
 * The design record of a machine as GitHub-flavoured Markdown: what it is, what was found, every figure with its range and limit, what to set,
 * what it costs, on what it rests. Depends on the texts and the tool alone (so take the snapshot without a day): no time, no path, one figure a line, in an order that no value changes.
 */
export function designRecord(snapshot: Snapshot, { version, sha256 }: RecordOptions): string {
  const { document, analysis } = snapshot;
  const rows = figuresOf(snapshot);
  const findings = recordedFindings(snapshot, rows);
  const accepted = acceptancesOf(document.root);
  const parts = analysis ? partsOf(analysis) : [];
  const text = (key: string): string => {
    const node = childOf(document.root, key);
    return node?.type === 'scalar' ? escapeMarkdown(node.text) : '';
  };
  return `${blocks(
    recordMark,
    `# ${text('machine') === '' ? 'Machine without a name' : text('machine')}: design record`,
    text('purpose'),
    text('notes') !== '' && `Notes: ${text('notes')}`,
    `- Content of the description, its part lists and settings, SHA-256: ${code(sha256)}\n- Written by: axiswright ${escapeMarkdown(version)}`,
    '## Summary',
    summaryMarkdown(findings, accepted),
    '## Findings',
    findingsMarkdown(findings),
    '## Accepted deviations',
    acceptedMarkdown(accepted),
    '## Figures',
    'The worst end of a range is compared with the limit. Figures without a limit are there to be read, not judged.',
    figuresMarkdown(rows),
    '## Commissioning',
    commissioningMarkdown(analysis?.evaluations ?? []),
    '## Parts and cost',
    analysis && partsMarkdown(parts, costOf(parts, analysis)),
    '## Sources',
    sourcesMarkdown(rows, findings),
    '## Cautions',
    cautionsMarkdown(analysis, findings),
  )}\n`;
}
