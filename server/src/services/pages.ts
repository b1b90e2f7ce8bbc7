import { cautions } from '../checks/cautions.ts';
import type { Check, Limit, LimitCheck } from '../checks/check.ts';
import { entryProblemCodes } from '../checks/entry-problem-codes.ts';
import { allChecks } from '../checks/registry.ts';
import { directNeeds, allFigures } from '../figures/registry.ts';
import type { Figure, Source } from '../figures/figure.ts';
import { cases, type CaseRow } from '../generated/cases.ts';
import { pages } from '../generated/pages.ts';
import { formatQuantity } from '../language/format-quantity.ts';
import { problemCodes, type ProblemCode } from '../language/problem-codes.ts';
import { kindDetails } from '../language/quantity-kinds.ts';
import { describeInput } from '../machine/fallback-registry.ts';
import { nameProblemCodes } from '../machine/name-problem-codes.ts';
import { allRemedies } from '../remedies/registry.ts';
import { prettySymbol } from './formula-numbers.ts';
import { blocks, code, codeInTable, escapeMarkdown, table } from './markdown.ts';
import { listed, lowerFirst } from './missing.ts';
import { sourceMarkdown } from './origin-text.ts';

/** What a page is about: a check, a problem of the language, or a figure. */
export type PageKind = 'check' | 'problem' | 'figure';

export interface PageId {
  readonly id: string;
  readonly kind: PageKind;
  readonly title: string;
}

const problems: Readonly<Record<string, ProblemCode>> = { ...problemCodes, ...nameProblemCodes, ...entryProblemCodes };

/** Everything that has a page: problems of the language and of names, checks, figures, each by identifier. */
export function pageIds(): readonly PageId[] {
  return [
    ...Object.entries(problems).map(([id, { title }]): PageId => ({ id, kind: 'problem', title })),
    ...allChecks().map(({ id, title }): PageId => ({ id, kind: 'check', title })),
    ...firstOfEach(allFigures().figures).map(({ id, title }): PageId => ({ id, kind: 'figure', title })),
  ].sort((a, b) => (a.id < b.id ? -1 : a.id > b.id ? 1 : 0));
}

/** The page of a check, a problem or a figure as Markdown; undefined for an identifier that means none. */
export function page(id: string): string | undefined {
  const check = allChecks().find((candidate) => candidate.id === id);
  if (check) return checkPage(check);
  const [figure, ...others] = allFigures().variants(id);
  if (figure) return figurePage(figure, others);
  const problem = Object.hasOwn(problems, id) ? problems[id] : undefined;
  return problem && problemPage(id, problem);
}

/** Whether an identifier has a page. */
export const hasPage = (id: string): boolean => Object.hasOwn(problems, id) || allFigures().get(id) !== undefined || allChecks().some((check) => check.id === id);

const heading = (title: string, id: string): string => `# ${escapeMarkdown(title)}\n\n${code(id)}`;

function problemPage(id: string, { title, explanation }: ProblemCode): string {
  return `${blocks(heading(title, id), escapeMarkdown(explanation))}\n`;
}

function checkPage(check: Check): string {
  return `${blocks(
    heading(check.title, check.id),
    escapeMarkdown(check.summary),
    severitySection(check),
    pages[check.id]?.trim(),
    check.cautions !== undefined && check.cautions.length > 0 && `## Cautions\n\n${check.cautions.map((caution) => `- ${escapeMarkdown(cautions[caution])}`).join('\n')}`,
    remedySection(check),
    caseSection(check),
  )}\n`;
}

/** What is compared with what, how grave it is, and on what that rests. */
function severitySection(check: Check): string {
  if ('judge' in check) {
    const severities = [...new Set((cases[check.id]?.fails ?? []).flatMap((row) => row.severity ?? []))];
    return blocks(
      '## When it is reported',
      severities.length > 0 && `As ${oneOf(severities)}.`,
      `Rests on: ${basisClause(check.basis, check.sources)}.`,
      check.figure !== undefined && `Figure: ${figureLink(check.figure)}.`,
    );
  }
  const rows = check.limits.map((limit) => [limit.severity, limitClause(check, limit), basisClause(limit.basis, limit.source ? [limit.source] : [])]);
  return blocks(
    '## When it is reported',
    table(['Severity', 'When', 'The limit rests on'], rows),
    check.concernsPeople === true
      ? 'The worst end of an uncertain value decides, and uncertainty never lowers the severity: people can be hurt.'
      : 'The worst end of an uncertain value decides. When only that end is beyond the limit, the finding counts one severity lower.',
  );
}

function limitClause(check: LimitCheck, limit: Limit): string {
  const figure = allFigures().get(check.figure);
  const name = figure ? `${figureLink(figure.id)} (${escapeMarkdown(prettySymbol(figure.symbol))})` : code(check.figure);
  return `${name} is ${check.bad} ${typeof limit.at === 'number' ? escapeMarkdown(limitNumber(limit.at, figure)) : nameOf(limit.at)}`;
}

const limitNumber = (at: number, figure: Figure | undefined): string =>
  figure ? formatQuantity(at, figure.quantity, figure.unit === undefined ? {} : { unit: figure.unit }) : String(at);

/** A figure or input inside a sentence or a table. */
function nameOf(id: string): string {
  return allFigures().get(id) ? figureLink(id) : `${escapeMarkdown(lowerFirst(describeInput(id).title))} ${codeInTable(id)}`;
}

const figureLink = (id: string): string => `${escapeMarkdown(lowerFirst(allFigures().get(id)?.title ?? id))} ${codeInTable(id)}`;

/** `standard: ISO 2902, …`; a source that begins with the words of the basis says both. */
function basisClause(basis: string, sources: readonly Source[]): string {
  const told = sources.map(sourceMarkdown).join('; ');
  if (told.toLowerCase().startsWith(basis)) return told;
  return told === '' ? escapeMarkdown(basis) : `${escapeMarkdown(basis)}: ${told}`;
}

const oneOf = (items: readonly string[]): string => (items.length < 2 ? items.join('') : `${items.slice(0, -1).join(', ')} or ${items.at(-1) ?? ''}`);

function remedySection(check: Check): string | undefined {
  const cures = allRemedies().filter((remedy) => remedy.cures.includes(check.id));
  if (cures.length === 0) return undefined;
  return blocks(
    '## Remedies on offer',
    cures.map((remedy) => `- ${escapeMarkdown(remedy.summary)}`).join('\n'),
    'Each is offered only where the changed description was analysed and the finding was gone, with nothing new that is as grave.',
  );
}

function caseSection(check: Check): string | undefined {
  const table = cases[check.id];
  if (!table) return undefined;
  const rows = (title: string, list: readonly CaseRow[]): string =>
    `${title}\n\n${list.map((row) => `- ${escapeMarkdown(row.name)}${row.severity === undefined ? '' : ` (${row.severity})`}${row.entries.length === 0 ? '' : `: ${row.entries.map(code).join(', ')}`}`).join('\n')}`;
  return blocks('## Cases', 'A healthy machine with these entries changed; each is run as a test.', rows('Reported:', table.fails), rows('Passed over:', table.passes));
}

/** One page tells of all variants of a figure: how it is computed for each kind of drive or motor. */
function figurePage(figure: Figure, others: readonly Figure[]): string {
  const all = [figure, ...others];
  return `${blocks(
    heading(figure.title, figure.id),
    ...(others.length === 0 ? [escapeMarkdown(figure.meaning)] : []),
    ...all.flatMap((variant) => [
      others.length > 0 && `${escapeMarkdown(variant.meaning)}`,
      table(
        ['Symbol', codeInTable(prettySymbol(variant.symbol))],
        [
          ['Unit', escapeMarkdown(unitsOf(variant))],
          ['Formula', codeInTable(prettySymbol(variant.formula))],
          ['Sources', variant.sources.map(sourceMarkdown).join('; ')],
          ...conditionRows(variant),
        ],
      ),
      needsOf(variant),
    ]),
    usersOf(figure),
  )}\n`;
}

/** The first declaration of each id. */
const firstOfEach = (figures: readonly Figure[]): readonly Figure[] => [...new Map([...figures].reverse().map((figure) => [figure.id, figure])).values()].reverse();

/** `rpm (SI: rad/s)`; figures without a unit are numbers. */
export function unitsOf({ quantity, unit }: Figure): string {
  const { si, shown } = kindDetails(quantity);
  const customary = unit ?? shown.map((step) => step.unit).join(' or ');
  if (customary === '' && si === '') return 'a number';
  return si === '' || customary === si ? customary : `${customary} (SI: ${si})`;
}

function conditionRows(figure: Figure): readonly (readonly string[])[] {
  const where = Object.entries(figure.onlyWhere ?? {}).map(([choice, allowed]) => `${nameOf(choice)} is ${oneOf(allowed.map(codeInTable))}`);
  const present = (figure.onlyWith ?? []).map((scope) => `the drive has a ${escapeMarkdown(scope.replaceAll('-', ' '))}`);
  return where.length + present.length === 0 ? [] : [['Only where', [...where, ...present].join('; ')]];
}

function needsOf(figure: Figure): string | undefined {
  const optional = new Set(Object.values({ ...figure.optional, ...figure.optionalChoices, ...figure.tables }));
  const needs = [...new Set(directNeeds(figure))];
  return needs.length === 0 ? undefined : `Computed from:\n\n${needs.map((id) => `- ${nameOf(id)}${optional.has(id) ? ', where it is there' : ''}`).join('\n')}`;
}

function usersOf(figure: Figure): string | undefined {
  const checks = allChecks().filter((check) => check.figure === figure.id || (!('judge' in check) && check.limits.some((limit) => limit.at === figure.id)));
  const figures = firstOfEach(allFigures().figures.filter((other) => directNeeds(other).includes(figure.id)));
  return blocks(
    checks.length > 0 && `Looked at by the ${checks.length === 1 ? 'check' : 'checks'} ${listed(checks.map((check) => code(check.id)))}.`,
    figures.length > 0 && `Used by the ${figures.length === 1 ? 'figure' : 'figures'} ${listed(figures.map((other) => code(other.id)))}.`,
  );
}
