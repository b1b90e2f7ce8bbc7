import { cautionText, severityRank, type Finding } from '../checks/judge.ts';
import { nameOfElement, type Element } from './elements.ts';
import type { Standing } from './element-checks.ts';
import { escapeMarkdown, escapeShort } from './markdown.ts';
import { listed, lowerFirst } from './missing.ts';

/** Findings told in full below the table. */
const MOST_TOLD = 4;

export const isGrave = (finding: Finding): boolean => severityRank(finding.severity) <= severityRank('warning');

/**
 * What stands above the table, in few lines since an editor's hover is low: the verdict, the worst finding's first sentence, and the hazards by name.
 * It says what was checked, never that anything is safe. `elsewhere`: findings of figures that the element has a part in.
 */
export function verdictMarkdown(element: Element, standing: Standing, elsewhere: readonly Finding[]): string {
  const { chosen } = element.evaluation.subject;
  const graveElsewhere = elsewhere.filter(isGrave);
  const hazards = hazardsOf([...standing.findings, ...graveElsewhere]);
  return [
    `**${verdict(element, standing)}**${chosen ? behindVerdict(standing) : ''}`,
    graveElsewhere.length > 0 && !standing.findings.some(isGrave) ? `**It has a part in:** ${escapeMarkdown(titlesOf(graveElsewhere))}.` : '',
    hazards.length > 0 ? `**Caution:** ${escapeMarkdown(listed(hazards.map((text) => lowerFirst(hazardName(text)))))}; see below the table.` : '',
  ].filter((line) => line !== '').join('  \n');
}

function verdict(element: Element, { computed, waiting, findings }: Standing): string {
  const name = escapeShort(nameOfElement(element));
  if (!element.evaluation.subject.chosen) return `${name} is an option that is not chosen: it is computed, but not checked.`;
  const grave = findings.filter(isGrave);
  if (findings.length === 0 && computed === 0) return waiting === 0 ? `${name} has no checks of its own.` : `${name} cannot be checked yet.`;
  if (findings.length === 0) return `${name} passes ${computed} ${computed === 1 ? 'check' : 'checks'} of ${computed}.`;
  if (grave.length > 0) return `${name} ${grave.some((finding) => finding.certain) ? 'fails' : 'may fail'} ${grave.length} of ${computed} checks.`;
  const passed = computed - findings.length;
  if (passed === 0) return `${name} has ${findings.length === 1 ? 'something' : `${findings.length} things`} to note.`;
  return `${name} passes ${passed} of ${computed} checks; ${findings.length} ${findings.length === 1 ? 'has' : 'have'} something to note.`;
}

/** The worst finding; without one, what a good verdict leaves open. */
function behindVerdict(standing: Standing): string {
  const [worst] = standing.findings;
  const text = worst ? escapeMarkdown(firstSentence(worst.message)) : waitingSentence(standing);
  return text === undefined ? '' : ` ${text}`;
}

/** Each hazard in its fixed wording, whole. */
export function cautionsMarkdown(findings: readonly Finding[]): readonly string[] {
  return hazardsOf(findings).map((text) => `**Caution:** ${escapeMarkdown(text)}`);
}

/** The findings with consequence and cure, the gravest first; nothing where the first sentence above the table has said it all. */
export function findingsInFull({ findings }: Standing, elsewhere: readonly Finding[]): string | undefined {
  const [only] = findings;
  const told = findings.length === 1 && only && firstSentence(only.message) === only.message ? [] : findings.slice(0, MOST_TOLD);
  const lines = told.map((finding) => `- ${escapeMarkdown(finding.message)}`);
  if (findings.length > MOST_TOLD) lines.push(`- ${findings.length - MOST_TOLD} more to note`);
  const grave = elsewhere.filter(isGrave);
  if (grave.length > 0 && findings.some(isGrave)) lines.push(`- It has a part in: ${escapeMarkdown(titlesOf(grave))}.`);
  return lines.length === 0 ? undefined : ['**Findings**', ...lines].join('\n');
}

/** How many checks could say more if more were written. */
export function waitingSentence({ waiting }: Standing): string | undefined {
  return waiting === 0 ? undefined : `${waiting} more ${waiting === 1 ? 'check waits' : 'checks wait'} for entries that are missing.`;
}

const hazardsOf = (findings: readonly Finding[]): readonly string[] => [...new Set(findings.flatMap((finding) => finding.cautions.map(cautionText)))];

/** The name of a hazard: its fixed wording up to the colon. */
const hazardName = (text: string): string => text.slice(0, text.indexOf(':'));

const titlesOf = (findings: readonly Finding[]): string => listed([...new Set(findings.map(({ title }) => lowerFirst(title)))]);

/** Up to the first full stop that ends a sentence; one inside a number does not. */
export function firstSentence(message: string): string {
  return /^.*?\.(?=\s+\p{Lu})/su.exec(message)?.[0] ?? message;
}
