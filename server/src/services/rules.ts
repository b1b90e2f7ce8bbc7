import type { Check } from '../checks/check.ts';
import { severityRank } from '../checks/judge.ts';
import { entryProblemCodes } from '../checks/entry-problem-codes.ts';
import { allChecks } from '../checks/registry.ts';
import type { Source } from '../figures/figure.ts';
import { cases } from '../generated/cases.ts';
import { problemCodes, type ProblemCode } from '../language/problem-codes.ts';
import type { Severity } from '../language/problems.ts';
import { nameProblemCodes } from '../machine/name-problem-codes.ts';
import { page } from './pages.ts';
import { plainText } from './plain-text.ts';

/** What stands behind the code of a finding, for reports that other programs read. */
export interface Rule {
  readonly id: string;
  readonly title: string;
  /** A sentence or a paragraph. */
  readonly summary: string;
  /** Its page, as Markdown and as plain text. */
  readonly markdown: string;
  readonly text: string;
  /** The gravest severity with which a check reports; a problem of the text has none of its own. */
  readonly severity?: Severity;
  /** On what its limits rest. */
  readonly bases: readonly string[];
  readonly sources: readonly Source[];
}

const problems: Readonly<Record<string, ProblemCode>> = { ...problemCodes, ...nameProblemCodes, ...entryProblemCodes };

/** The rule of a code; undefined for a code that there is not. */
export function ruleOf(id: string): Rule | undefined {
  const markdown = page(id);
  if (markdown === undefined) return undefined;
  const told = { id, markdown, text: plainText(markdown) };
  const check = allChecks().find((candidate) => candidate.id === id);
  if (check) return { ...told, title: check.title, summary: check.summary, ...restsOn(check) };
  const problem = Object.hasOwn(problems, id) ? problems[id] : undefined;
  return problem && { ...told, title: problem.title, summary: problem.explanation, bases: [], sources: [] };
}

function restsOn(check: Check): Pick<Rule, 'severity' | 'bases' | 'sources'> {
  const severities = 'judge' in check ? (cases[check.id]?.fails ?? []).flatMap(({ severity }) => (isSeverity(severity) ? [severity] : [])) : check.limits.map((limit) => limit.severity);
  const [gravest] = [...severities].sort((a, b) => severityRank(a) - severityRank(b));
  const bases = 'judge' in check ? [check.basis] : check.limits.map((limit) => limit.basis);
  const sources = 'judge' in check ? check.sources : check.limits.flatMap((limit) => limit.source ?? []);
  return { ...(gravest === undefined ? {} : { severity: gravest }), bases: [...new Set(bases)], sources: [...new Map(sources.map((source) => [`${source.title}\n${source.where ?? ''}`, source])).values()] };
}

const isSeverity = (text: string | undefined): text is Severity => text === 'error' || text === 'warning' || text === 'information' || text === 'hint';
