import { milder, problemKey, relatedOf, withReason, type Verdict } from '../checks/accepted.ts';
import type { EntryProblem } from '../checks/entry-problem.ts';
import { cautionText, severityRank, type Acceptance, type Finding } from '../checks/judge.ts';
import type { LanguageDocument } from '../language/read-document.ts';
import type { Problem, Severity } from '../language/problems.ts';
import type { Span, TextEdit } from '../language/spans.ts';
import { entryAt, nodeAt, type EntryPath } from '../language/syntax-tree.ts';
import { scalarText } from '../language/edit-entry.ts';
import { removeItem } from '../language/edit-item.ts';
import type { PlacedProblem } from '../machine/name-problems.ts';
import type { Place } from '../machine/origin.ts';
import { listKey } from './list-key.ts';
import type { Snapshot, Use } from './snapshot.ts';

/** A span of one document. */
export interface Location {
  readonly uri: string;
  readonly span: Span;
}

/** A finding of any kind as an editor or the command line shows it. Plain text; offsets in UTF-16 units. */
export interface Diagnostic extends Location {
  /** Identifier of the check or of the language problem; its page has the same name. */
  readonly code: string;
  readonly severity: Severity;
  /** One sentence or two; hazard sentences follow, each on a line of its own. */
  readonly message: string;
  readonly related: readonly (Location & { readonly message: string })[];
  /** Something that has no effect: shown faded. */
  readonly unnecessary?: boolean;
  /** Changes of spelling, units or names that cure it at once. */
  readonly fixes: readonly { readonly title: string; readonly uri: string; readonly edits: readonly TextEdit[] }[];
  /** The engineering finding behind it, for which remedies can be computed. */
  readonly finding?: Finding;
  /** Set where the description accepts it with a reason. */
  readonly accepted?: Acceptance;
}

/** Everything to be said of a snapshot's own file, in the order of the text. */
export function diagnosticsOf(snapshot: Omit<Snapshot, 'diagnostics'>, unreadable: readonly Use[]): readonly Diagnostic[] {
  const { document, lists, analysis, settings, uri } = snapshot;
  const documents = [document, ...lists];
  const verdict = (code: string, path: () => EntryPath): Verdict | undefined => ((analysis?.acceptedProblems.size ?? 0) > 0 ? analysis?.acceptedProblems.get(problemKey(code, path())) : undefined);
  const all = [
    ...document.problems.map((problem) => judged(ofLanguage(problem, uri), verdict(problem.code, () => document.pathAt(problem.span.start).path), documents)),
    ...unreadable.map((use) => missingList(use, document)),
    ...(analysis?.problems ?? []).map((problem) => judged(ofNames(problem, documents), verdict(problem.code, () => problem.place.path), documents)),
    ...(analysis?.entryProblems ?? settings?.problems ?? []).map((problem) => ofEntry(problem, documents)),
    ...(analysis?.findings ?? []).map((finding) => ofFinding(finding, documents)),
  ];
  // A finding on a part of a shared list is shown in the machine that suffers from it, where the part is named.
  return all.map((diagnostic) => (diagnostic.uri === uri ? diagnostic : atHome(diagnostic, snapshot))).sort(inOrder);
}

export const inOrder = (a: Diagnostic, b: Diagnostic): number =>
  a.span.start - b.span.start || severityRank(a.severity) - severityRank(b.severity) || (a.code < b.code ? -1 : a.code > b.code ? 1 : 0);

function ofLanguage(problem: Problem, uri: string): Diagnostic {
  return {
    uri,
    code: problem.code,
    severity: problem.severity,
    message: problem.message,
    span: problem.span,
    related: (problem.related ?? []).map((related) => ({ uri, ...related })),
    fixes: (problem.fixes ?? []).map((fix) => ({ ...fix, uri })),
  };
}

function missingList(use: Use, document: LanguageDocument): Diagnostic {
  const saved = use.uri !== undefined || /^[/]|^[a-z]+:/i.test(use.path);
  const message = saved
    ? `The part list "${use.path}" cannot be read. Paths are relative to this file and stay inside the workspace.`
    : `The part list "${use.path}" is found relative to this file. Save the file first.`;
  return { uri: document.uri, code: 'part-list-missing', severity: 'error', message, span: spanOfPlace([document], { uri: document.uri, path: [listKey(document), String(use.index)] }), related: [], fixes: [] };
}

function ofNames(problem: PlacedProblem, documents: readonly LanguageDocument[]): Diagnostic {
  const span = spanOfPlace(documents, problem.place, problem.onKey);
  return {
    uri: problem.place.uri,
    code: problem.code,
    severity: problem.severity,
    message: problem.message,
    span,
    related: (problem.related ?? []).map(({ message, place }) => ({ message, uri: place.uri, span: spanOfPlace(documents, place) })),
    fixes: (problem.replacements ?? []).map((text) => ({ title: `Change to "${text}"`, uri: problem.place.uri, edits: [{ span, text: scalarText(text, true) }] })),
    ...(problem.severity === 'hint' && problem.code === 'unused-part' ? { unnecessary: true } : {}),
  };
}

/** A problem with an entry about findings and checks; what accepts nothing can be taken out. */
function ofEntry(problem: EntryProblem, documents: readonly LanguageDocument[]): Diagnostic {
  const { code, severity, message, place, removable } = problem;
  const span = spanOfPlace(documents, place, problem.onKey);
  const document = documents.find((candidate) => candidate.uri === place.uri);
  const removal = removable && document && removeItem(document, removable.path);
  return {
    uri: place.uri, code, severity, message, span,
    related: (problem.related ?? []).map((related) => ({ message: related.message, uri: related.place.uri, span: spanOfPlace(documents, related.place) })),
    fixes: [
      ...(problem.replacements ?? []).map((text) => ({ title: `Change to "${text}"`, uri: place.uri, edits: [{ span, text: scalarText(text, true) }] })),
      ...(removal ? [{ title: 'Remove the entry', uri: place.uri, edits: removal }] : []),
    ],
    ...(code === 'accepted-nothing' ? { unnecessary: true } : {}),
  };
}

/** A problem as the description accepts it, or did until a day that is over. */
function judged(diagnostic: Diagnostic, verdict: Verdict | undefined, documents: readonly LanguageDocument[]): Diagnostic {
  if (!verdict) return diagnostic;
  const { message, place } = 'accepted' in verdict ? relatedOf(verdict.accepted) : verdict.ended;
  const related = [{ message, uri: place.uri, span: spanOfPlace(documents, place) }, ...diagnostic.related];
  if (!('accepted' in verdict)) return { ...diagnostic, related };
  const { accepted } = verdict;
  return { ...diagnostic, related, severity: milder(diagnostic.severity), message: withReason(diagnostic.message, accepted.reason), accepted };
}

function ofFinding(finding: Finding, documents: readonly LanguageDocument[]): Diagnostic {
  return {
    uri: finding.place.uri,
    code: finding.check,
    severity: finding.severity,
    message: [finding.message, ...finding.cautions.map((caution) => `Caution: ${cautionText(caution)}`)].join('\n'),
    span: spanOfPlace(documents, finding.place),
    related: finding.related.map(({ message, place }) => ({ message, uri: place.uri, span: spanOfPlace(documents, place) })),
    fixes: [],
    finding,
    ...(finding.accepted ? { accepted: finding.accepted } : {}),
  };
}

/** Moves a diagnostic out of a part list to the place in the machine's own file that leads to it. */
function atHome(diagnostic: Diagnostic, snapshot: Omit<Snapshot, 'diagnostics'>): Diagnostic {
  const { document, analysis, uri } = snapshot;
  const subject = analysis?.machine.subjects.find((candidate) => candidate.id === diagnostic.finding?.subject);
  const place = subject?.placeOf(subject.kind === 'drive' ? 'drive' : subject.kind);
  const span = place ? spanOfPlace([document], place) : { start: 0, end: 0 };
  return { ...diagnostic, uri, span, related: [{ uri: diagnostic.uri, span: diagnostic.span, message: 'written in the part list here' }, ...diagnostic.related].slice(0, 4) };
}

/** The smallest stretch that shows a place: a scalar itself, the key of a map or list, and where it is not written the nearest key around it. */
export function spanOfPlace(documents: readonly LanguageDocument[], place: Place, onKey = false): Span {
  const document = documents.find((candidate) => candidate.uri === place.uri);
  for (let path = place.path; path.length > 0; path = path.slice(0, -1)) {
    const entry = entryAt(document?.root, path);
    const whole = path.length === place.path.length;
    const node = nodeAt(document?.root, path);
    if (node?.type === 'scalar' && whole && !onKey) return node.span;
    if (entry) return entry.key.span;
    if (node && !entry && whole) return node.span;
  }
  return { start: 0, end: Math.min(1, document?.text.length ?? 0) };
}
