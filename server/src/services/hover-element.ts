import { severityRank, type Finding } from '../checks/judge.ts';
import { deriveFigure, showFigure, showInput } from '../figures/derivation.ts';
import type { Evaluation } from '../figures/evaluation.ts';
import { scopeOf, type Figure } from '../figures/figure.ts';
import { entrySchema } from '../machine/entry-schema.ts';
import { describeInput } from '../machine/fallback-registry.ts';
import { scopeRow } from '../machine/scopes.ts';
import { isUncertain } from '../machine/values.ts';
import { nameOfSubject, type Element } from './elements.ts';
import { standingOf, type Standing } from './element-checks.ts';
import { decidingLimit, limitsOf, stateOf, urgency } from './figure-limits.ts';
import { filledFormula, formulaLines, limitText, STATE_WORDS, termsInLine, usedText } from './figure-markdown.ts';
import { prettySymbol } from './formula-numbers.ts';
import { cautionsMarkdown, findingsInFull, isGrave, verdictMarkdown, waitingSentence } from './hover-verdict.ts';
import { leadingPlace, toDoAbout } from './leading-figures.ts';
import { blocks, code, escapeMarkdown, escapeShort, table, unbroken } from './markdown.ts';
import { lowerFirst, missingSentences } from './missing.ts';
import { sourceMarkdown, WEAK } from './origin-text.ts';
import { planDataUri, planOf } from './plan-drawing.ts';
import { plotAlt, plotDataUri } from './plot.ts';
import { leadMarkdown, leadRow } from './designation.ts';
import type { Snapshot } from './snapshot.ts';

const MOST_ROWS = 12;
/** Formulas with the numbers put in; of the other rows formula and source alone. */
const MOST_FORMULAS = 4;
const MOST_ASSUMED = 5;

/**
 * An element's hover. Above the fold of a low editor window: the verdict, the hazards by name, and the decisive rows of the table. Below it the hazards
 * in their fixed wording, the findings in full, the governing formulas with the numbers put in, one plot, the other formulas, what was assumed and how to
 * override it, and what is missing.
 */
export function elementMarkdown(elements: readonly Element[], snapshot: Snapshot): string | undefined {
  const ranked = elements.map((element) => ({ element, standing: standingOf(element, snapshot) })).sort((a, b) => worstOf(a.standing) - worstOf(b.standing));
  const [first] = ranked;
  if (!first) return undefined;
  const { element, standing } = first;
  const { evaluation, scope } = element;
  const concerned = figuresOfElement(element);
  const findings = findingsAbout(evaluation, snapshot);
  const lead = scope.id === 'screw' ? leadRow(evaluation) : undefined;
  const rows = orderedRows(concerned.filter((figure) => isShown(figure, element)), element, findings).slice(0, lead ? MOST_ROWS - 1 : MOST_ROWS);
  const leading = rows.filter((figure) => leadingPlace(figure.id, scope.id) !== undefined).length;
  const cells = rows.map((figure) => rowOf(figure, evaluation, findings));
  const computed = rows.filter((figure) => evaluation.result(figure.id).state === 'computed');
  const elsewhere = findings.filter((finding) => !standing.findings.includes(finding) && rows.some((figure) => figure.id === finding.figure));
  return blocks(
    verdictMarkdown(element, standing, elsewhere),
    standing.findings.some(isGrave) ? undefined : toDoMarkdown(element),
    table(['Figure', 'Value', 'Limit', 'Used'], [...cells.slice(0, leading), ...(lead ? [lead] : []), ...cells.slice(leading)]),
    ...cautionsMarkdown([...standing.findings, ...elsewhere.filter(isGrave)]),
    evaluation.subject.chosen && findingsInFull(standing, elsewhere),
    // Without a finding it stands in the verdict.
    evaluation.subject.chosen && standing.findings.length > 0 && waitingSentence(standing),
    ...computed.slice(0, MOST_FORMULAS).map((figure) => governing(figure, evaluation)),
    lead && leadMarkdown(evaluation),
    plotOf(element, concerned),
    formulasAlone(computed.slice(MOST_FORMULAS)),
    assumedMarkdown(element, rows),
    ...missingSentences(concerned.filter((figure) => figure.rank <= 2), evaluation, 4),
    othersMarkdown(ranked.slice(1)),
  );
}

/** Those that lead the element first, then those that break a limit, then the rest; within each the worst first. Of those that lead, the ones without a value come last. */
function orderedRows(figures: readonly Figure[], { scope, evaluation }: Element, findings: readonly Finding[]): readonly Figure[] {
  return figures
    .map((figure) => {
      const place = leadingPlace(figure.id, scope.id);
      return { figure, urgency: urgency(figure, evaluation, findings), place, isVoid: place !== undefined && evaluation.result(figure.id).state !== 'computed' };
    })
    .sort((a, b) => Number(a.place === undefined) - Number(b.place === undefined) || Number(a.isVoid) - Number(b.isVoid) || a.urgency - b.urgency || (a.place ?? 0) - (b.place ?? 0))
    .map(({ figure }) => figure);
}

const worstOf = ({ findings }: Standing): number => severityRank(findings[0]?.severity ?? 'hint') + (findings.length === 0 ? 1 : 0);

/** An element's own figures and those that decide elsewhere because of it: decisive ones first. */
export function figuresOfElement({ scope, evaluation }: Element): readonly Figure[] {
  const all = evaluation.figures();
  const own = all.filter((figure) => scopeOf(figure.id) === scope.id);
  const decides = (figure: Figure): boolean => figure.rank === 1 && (figure.hint !== undefined || figure.inWords !== undefined || limitsOf(figure.id, evaluation).length > 0);
  const related = all.filter((figure) => !own.includes(figure) && decides(figure) && (isWhole(scope.id) || evaluation.inputsUnder(figure.id).some((input) => scopeOf(input) === scope.id)));
  return [...own.filter((figure) => figure.rank === 1), ...related, ...own.filter((figure) => figure.rank === 2), ...own.filter((figure) => figure.rank === 3)];
}

/** Elements that stand for everything inside them. */
const isWhole = (scope: string): boolean => scope === 'axis' || scope === 'drive';

/** "To level it: screw 1 +0.3 mm, then screw 2 −0.2 mm, in one go." Nothing where there is nothing to do. */
function toDoMarkdown({ scope, evaluation }: Element): string | undefined {
  const toDo = toDoAbout(scope.id);
  const result = toDo?.figures.map((id) => evaluation.result(id)).find(({ state }) => state === 'computed');
  if (!toDo || result?.state !== 'computed' || result.note === undefined || result.high === 0) return undefined;
  return `**${toDo.title}:** ${escapeMarkdown(result.note)}.`;
}

/** Rows: what is computed, and what decides about the element itself but has no value here. */
function isShown(figure: Figure, { scope, evaluation }: Element): boolean {
  const { state } = evaluation.result(figure.id);
  const isOwn = isWhole(scope.id) || scopeOf(figure.id) === scope.id || leadingPlace(figure.id, scope.id) !== undefined;
  return state === 'computed' || (state === 'unable' && figure.rank <= 2 && isOwn);
}

/** Findings of an evaluation's subject. */
export const findingsAbout = ({ subject }: Evaluation, { analysis }: Snapshot): readonly Finding[] => (analysis?.findings ?? []).filter((finding) => finding.subject === subject.id);

/** A row of the table: figure, value with range, limit, use of the limit. `findings` are those of the subject. */
export function rowOf(figure: Figure, evaluation: Evaluation, findings: readonly Finding[]): readonly string[] {
  const result = evaluation.result(figure.id);
  const name = `${escapeMarkdown(figure.title)} *${escapeMarkdown(prettySymbol(figure.symbol))}*`;
  if (result.state !== 'computed') return [name, result.state === 'unable' ? `none: ${escapeMarkdown(result.reason)}` : '', '', ''];
  const deciding = decidingLimit(limitsOf(figure.id, evaluation));
  const used = deciding ? usedText(deciding) : STATE_WORDS[stateOf(figure, evaluation, findings)];
  // Only the name and words may wrap where the hover is narrow.
  const value = escapeMarkdown(showFigure(figure, result));
  return [name, figure.inWords ? value : unbroken(value), deciding ? unbroken(escapeMarkdown(limitText(figure, deciding, evaluation))) : '', unbroken(escapeMarkdown(used))];
}

function governing(figure: Figure, evaluation: Evaluation): string {
  const derivation = deriveFigure(figure, evaluation);
  const result = evaluation.result(figure.id);
  const { formula, isFilled } = filledFormula(derivation, evaluation);
  // Numbers that are not in the formula follow in words.
  const terms = isFilled || derivation.terms.length === 0 ? undefined : `with ${termsInLine(derivation)}`;
  const note = result.state === 'computed' && result.note !== undefined ? `Note: ${escapeMarkdown(result.note)}` : undefined;
  return [`**${escapeMarkdown(figure.title)}:** ${formula}`, terms, note, `Source: ${figure.sources.map(sourceMarkdown).join('; ')}`].filter((line) => line !== undefined).join('  \n');
}

/** Formulas without numbers, each on lines of its own, those of one source together. */
function formulasAlone(figures: readonly Figure[]): string {
  const bySource = new Map<string, string[]>();
  for (const figure of figures) {
    const source = figure.sources.map(sourceMarkdown).join('; ');
    bySource.set(source, [...(bySource.get(source) ?? []), `**${escapeMarkdown(figure.title)}:** ${formulaLines(figure.formula)}`]);
  }
  return [...bySource].map(([source, formulas]) => [...formulas, `Source: ${source}`].join('  \n')).join('\n\n');
}

/** The plan of supports; else the first plot that there is: of the element's own figures, for a whole axis or drive of all that concern it. */
function plotOf({ scope, evaluation }: Element, concerned: readonly Figure[]): string | undefined {
  const plan = scope.id === 'supports' ? planOf(evaluation) : undefined;
  const drawn = plan && planDataUri(plan);
  if (plan && drawn !== undefined) return `![${escapeMarkdown(plan.alt)}](${drawn})`;
  for (const figure of concerned) {
    const { chart } = figure;
    const values = chart && (isWhole(scope.id) || scopeOf(figure.id) === scope.id) ? evaluation.valuesAt(figure) : undefined;
    if (!chart || !values) continue;
    const uri = plotDataUri(chart, values);
    if (uri !== undefined) return `![${escapeMarkdown(plotAlt(chart, values))}](${uri})`;
  }
  return undefined;
}

/** Handbook defaults under the figures shown: those that move most of them lead, the element's own before others that do as much. */
function assumedMarkdown({ scope, evaluation }: Element, rows: readonly Figure[]): string | undefined {
  const weights = new Map<string, number>();
  for (const figure of rows) {
    const result = evaluation.result(figure.id);
    const movedBy = result.state === 'computed' ? result.movedBy : [];
    // The first of a figure's list moves it most.
    for (const [place, id] of movedBy.entries()) weights.set(id, (weights.get(id) ?? 0) + (scopeOf(id) === scope.id ? 2 : 1) / (place + 1));
  }
  const moving = [...weights].sort(([, a], [, b]) => b - a).map(([id]) => id);
  const under = rows.flatMap((figure) => evaluation.inputsUnder(figure.id));
  const own = under.filter((input) => scopeOf(input) === scope.id);
  const assumed = [...new Set([...moving, ...own, ...under])].flatMap((id) => {
    const input = evaluation.input(id);
    return input.state === 'known' && input.origin.from === 'handbook' ? [{ id, origin: input.origin, uncertain: input.value.type !== 'number' || isUncertain(input.value) }] : [];
  });
  const shown = assumed.filter((entry, index) => entry.uncertain || index < 2).slice(0, MOST_ASSUMED);
  if (shown.length === 0) return undefined;
  const lines = shown.map(({ id, origin }) => {
    const weak = origin.weak && !origin.source.includes('memory') ? ` (${WEAK})` : '';
    const write = entrySchema(id) ? ` Write ${code(id)} to override it.` : '';
    return `- ${owner(id, scope.id)}${escapeMarkdown(lowerFirst(describeInput(id).title))} ${escapeMarkdown(showInput(id, evaluation))}; ${escapeMarkdown(origin.source)}${weak}.${write}`;
  });
  const more = assumed.length - shown.length;
  return ['**Assumed**, since it is not written:', ...lines, ...(more > 0 ? [`- ${more} more ${more === 1 ? 'default' : 'defaults'}`] : [])].join('\n');
}

/** Whose default it is, where that is another element: "thrust bearing: ". */
function owner(input: string, scope: string): string {
  const own = scopeOf(input);
  return own === scope || ['conditions', 'machine', 'axis', 'motion', 'drive'].includes(own) ? '' : `${scopeRow(own).title}: `;
}

/** Other drives that share the element's part. */
function othersMarkdown(others: readonly { readonly element: Element; readonly standing: Standing }[]): string | undefined {
  if (others.length === 0) return undefined;
  const shown = others.slice(0, 5).map(({ element: { evaluation }, standing }) => {
    const grave = standing.findings.filter((finding) => severityRank(finding.severity) <= severityRank('warning')).length;
    const name = escapeShort(nameOfSubject(evaluation.subject));
    return `${name} (${evaluation.subject.chosen ? (grave === 0 ? `${standing.computed} checks, none fails` : `${grave} of ${standing.computed} checks fail`) : 'not chosen'})`;
  });
  return `Also used by ${shown.join(', ')}${others.length > 5 ? ` and ${others.length - 5} more` : ''}.`;
}
