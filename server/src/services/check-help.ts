import { changeable, reasonNotChangeable } from '../checks/adjusted-check.ts';
import { acceptableProblems } from '../checks/accepted-entries.ts';
import { pathsOf } from '../checks/accepted.ts';
import type { Check } from '../checks/check.ts';
import { allChecks } from '../checks/registry.ts';
import { allFigures } from '../figures/registry.ts';
import { formatQuantity } from '../language/format-quantity.ts';
import { problemCodes, type ProblemCode } from '../language/problem-codes.ts';
import { kindDetails, type QuantityKind } from '../language/quantity-kinds.ts';
import { nameProblemCodes } from '../machine/name-problem-codes.ts';
import type { CompletionContext } from './completion-context.ts';
import type { Draft } from './completion-item.ts';
import { placeToAccept } from './accept.ts';
import { blocks, code, escapeMarkdown } from './markdown.ts';
import type { Snapshot } from './snapshot.ts';

const problems: Readonly<Record<string, ProblemCode | undefined>> = { ...problemCodes, ...nameProblemCodes };

/** What is said of a check where its identifier is written; undefined for a word that is none. */
export function checkMarkdown(id: string): string | undefined {
  const check = allChecks().find((candidate) => candidate.id === id);
  if (check) {
    const limits = limitsSentence(check);
    return blocks(`**${escapeMarkdown(check.title)}** ${code(id)}: ${escapeMarkdown(check.summary)}`, limits !== '' && escapeMarkdown(limits), escapeMarkdown(changeSentence(check)));
  }
  const problem = acceptableProblems.has(id) ? problems[id] : undefined;
  return problem && `**${escapeMarkdown(problem.title)}** ${code(id)}: ${escapeMarkdown(problem.explanation)}`;
}

/** `Reported as warning above 80 % (common practice), as error above 100 % (follows from the mechanics).` */
function limitsSentence(check: Check): string {
  if ('judge' in check) return `Rests on: ${check.basis}.`;
  const figure = allFigures().get(check.figure);
  const rows = check.limits.map(({ at, severity, basis }) => {
    const limit = typeof at === 'number' ? (figure ? formatQuantity(at, figure.quantity, figure.unit === undefined ? {} : { unit: figure.unit }) : String(at)) : `"${at}"`;
    return `as ${severity} ${check.bad} ${limit} (${basis})`;
  });
  return `Judges ${figure?.title.toLowerCase() ?? check.figure}, reported ${rows.join(', ')}.`;
}

function changeSentence(check: Check): string {
  switch (changeable(check)) {
    case 'none':
      return `Settings of a repository cannot change it: ${reasonNotChangeable(check)}. A finding can be accepted with a reason.`;
    case 'some':
      return 'Settings of a repository can change the limits that rest on practice; the others stay.';
    case 'all':
      return 'Settings of a repository can change its gravity and its limit.';
  }
}

const draft = (label: string, detail: string, documentation: string): Draft => ({ label, kind: 'name', detail, documentation, insertText: label, isSnippet: false });

/** Checks to be named in an entry of `accepted`: those that have a finding here, and no acceptance, first. */
export function checkDrafts(snapshot: Snapshot): readonly Draft[] {
  const open = [...new Set(snapshot.diagnostics.filter(({ accepted }) => accepted === undefined).map((diagnostic) => diagnostic.code))];
  const all = [...allChecks().map(({ id, title }) => ({ id, title })), ...[...acceptableProblems].map((id) => ({ id, title: problems[id]?.title ?? id }))];
  const found = all.filter(({ id }) => open.includes(id));
  return [...found, ...all.filter((one) => !found.includes(one))].map(({ id, title }) => draft(id, found.some((one) => one.id === id) ? `found here: ${title}` : title, checkMarkdown(id) ?? ''));
}

/** Checks that settings may change, as keys. */
export function checkKeyDrafts(context: CompletionContext): readonly Draft[] {
  return allChecks().filter((check) => changeable(check) !== 'none' && !context.siblings.has(check.id)).map((check) => {
    const key = context.colonFollows ? check.id : context.flow ? `${check.id}: { $1 }` : `${check.id}:\n  $1`;
    return { ...draft(check.id, check.title, checkMarkdown(check.id) ?? ''), kind: 'key', insertText: key, isSnippet: !context.colonFollows };
  });
}

/** Places of findings; of the check that the same entry names, where it names one. */
export function placeDrafts(snapshot: Snapshot, check: string | undefined): readonly Draft[] {
  const machine = snapshot.analysis?.machine;
  if (!machine) return [];
  const seen = new Map<string, string>();
  for (const diagnostic of snapshot.diagnostics) {
    if (check !== undefined && diagnostic.code !== check) continue;
    if (!diagnostic.finding && !acceptableProblems.has(diagnostic.code)) continue;
    const paths = diagnostic.finding ? pathsOf(diagnostic.finding, machine).map((path) => path.join('/')) : [placeToAccept(diagnostic, snapshot) ?? ''];
    for (const path of paths) if (path !== '' && !seen.has(path)) seen.set(path, diagnostic.finding?.title ?? diagnostic.code);
  }
  return [...seen].map(([path, title]) => draft(path, title, ''));
}

/** Units in which a kind of quantity can be shown. */
export const displayUnitDrafts = (kind: string): readonly Draft[] => {
  const details = kindDetails(kind as QuantityKind);
  return details.units.map((unit) => ({ ...draft(unit, `unit of ${details.title}`, ''), kind: 'unit' }));
};
