import { cautionText } from '../../checks/judge.ts';
import { blocks, code, escapeMarkdown, table } from '../markdown.ts';
import { sourceMarkdown } from '../origin-text.ts';
import type { Severity } from '../../language/problems.ts';
import type { Acceptance } from './acceptances.ts';
import type { RecordedFinding } from './finding-rows.ts';

const HEADINGS: Readonly<Record<Severity, string>> = { error: 'Errors', warning: 'Warnings', information: 'Information', hint: 'Hints' };

/** How many there are of each; an accepted one counts as that and not as information. */
export function summaryMarkdown(findings: readonly RecordedFinding[], accepted: readonly Acceptance[]): string | undefined {
  const open = findings.filter((finding) => finding.accepted === undefined);
  const count = (severity: Severity): string => String(open.filter((finding) => finding.severity === severity).length);
  return table(['Finding', 'Count'], [
    ['Errors', count('error')],
    ['Warnings', count('warning')],
    ['Information', count('information')],
    ['Hints', count('hint')],
    ['Accepted findings', String(findings.length - open.length)],
    ['Entries of accepted deviations', String(accepted.length)],
  ]);
}

/** Findings by severity, within one in the order of the text. Each tells its place by keys: line numbers change with every edit above them. */
export function findingsMarkdown(findings: readonly RecordedFinding[]): string {
  if (findings.length === 0) return 'None: every check that could be made was passed.';
  const open = findings.filter((finding) => finding.accepted === undefined);
  const groups = (Object.keys(HEADINGS) as Severity[]).map((severity) => {
    const those = open.filter((finding) => finding.severity === severity);
    return those.length === 0 ? undefined : `### ${HEADINGS[severity]}\n\n${those.map(findingMarkdown).join('\n')}`;
  });
  const accepted = findings.filter((finding) => finding.accepted !== undefined);
  return blocks(...groups, accepted.length > 0 && `### Accepted\n\n${accepted.map(findingMarkdown).join('\n')}`);
}

function findingMarkdown(finding: RecordedFinding): string {
  const { code: check, place, message, basis, sources, cautions } = finding;
  const lines = [
    `- ${code(check)}${place === '' ? '' : ` at ${code(place)}`}`,
    `  - ${escapeMarkdown(message)}`,
    ...(basis === undefined ? [] : [`  - Limit: ${basisText(basis, sources.map(sourceMarkdown))}`]),
    ...(cautions.length === 0 ? [] : [`  - Caution: ${cautions.map((caution) => escapeMarkdown(hazardName(cautionText(caution)))).join('; ')}. In full under Cautions.`]),
  ];
  return lines.join('\n');
}

/** The basis with its sources; where a source says the same itself, it is told once. */
function basisText(basis: string, sources: readonly string[]): string {
  const said = sources.filter((source) => !source.startsWith(basis));
  return [said.length < sources.length ? undefined : escapeMarkdown(basis), ...sources].filter((part) => part !== undefined).join('; ');
}

/** `Gravity-loaded axis` of its sentence. */
const hazardName = (sentence: string): string => sentence.slice(0, sentence.indexOf(':'));

/** Every deviation that is written, whether it applies or not. The date until when is told, never compared: the record does not change by itself. */
export function acceptedMarkdown(accepted: readonly Acceptance[]): string {
  const cell = (text: string): string => (text === '' ? '–' : escapeMarkdown(text));
  return table(['Check', 'Place', 'Reason', 'By', 'Until'], accepted.map(({ check, at, reason, by, until }) => [code(check), at === '' ? '–' : code(at).replace(/\|/g, '\\|'), cell(reason), cell(by), cell(until)])) ?? 'None.';
}
