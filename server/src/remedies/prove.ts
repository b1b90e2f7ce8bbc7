import { analyse, keptOf, type Analysis } from '../checks/analysis.ts';
import { severityRank, type Finding } from '../checks/judge.ts';
import type { Evaluation } from '../figures/evaluation.ts';
import { removeEntry, setEntry } from '../language/edit-entry.ts';
import { editDocument } from '../language/incremental.ts';
import type { LanguageDocument } from '../language/read-document.ts';
import { applyEdits } from '../language/spans.ts';
import { nodeAt } from '../language/syntax-tree.ts';
import { outOfSight } from './context.ts';
import { kinOf } from './families.ts';
import type { Change } from './remedy.ts';

/** The documents of a machine: its own first, then its part lists. */
export interface DocumentSet {
  readonly main: LanguageDocument;
  readonly lists: readonly LanguageDocument[];
}

/** A proposal that was carried out in memory, analysed, and found to cure without harm. */
export interface Proven {
  readonly title: string;
  /** Identifiers of the remedies behind it: one, or several that belong together. */
  readonly remedies: readonly string[];
  /** How much it asks of the person, on the scale of `Remedy.cost`; several changes ask for the sum. */
  readonly cost: number;
  /** The entries written; carrying them out again changes nothing. */
  readonly changes: readonly Change[];
  /** The changed documents. */
  readonly texts: ReadonlyMap<string, string>;
}

/** What carrying out some changes leads to. */
export interface Trial {
  readonly changed: DocumentSet;
  readonly analysis: Analysis;
  /** Of the finding's subject, after the changes. */
  readonly evaluation: Evaluation;
  /** The finding is gone, and not merely because its figure cannot be computed any more. */
  readonly cured: boolean;
  /** The finding was an error or a warning, and no more than information is left of it. */
  readonly softened: boolean;
  /** Errors and warnings, and anything as grave as the finding, that were not there before. */
  readonly fresh: readonly Finding[];
  /** The text itself, or a name in it, has a problem that it had not. */
  readonly spoiled: boolean;
}

export const allOf = ({ main, lists }: DocumentSet): readonly LanguageDocument[] => [main, ...lists];

/** The texts after the changes, each made on the text that the one before left; undefined where one cannot be made. */
export function carryOut(changes: readonly Change[], documents: DocumentSet): DocumentSet | undefined {
  let { main, lists } = documents;
  for (const change of changes) {
    const document = allOf({ main, lists }).find((candidate) => candidate.uri === change.place.uri);
    if (!document) return undefined;
    const { path } = change.place;
    // What is not there need not be taken away.
    if (change.value === null && nodeAt(document.root, path) === undefined) continue;
    const edits = change.value === null ? removeEntry(document, path) : setEntry(document, path, change.value);
    if (!edits) return undefined;
    const changed = editDocument(document, applyEdits(document.text, edits));
    if (document === main) main = changed;
    else lists = lists.map((list) => (list === document ? changed : list));
  }
  return { main, lists };
}

/** Carries changes out in memory and analyses the result. Undefined where they cannot be written, or change nothing. */
export function tryOut(changes: readonly Change[], finding: Finding, documents: DocumentSet, before: Analysis): Trial | undefined {
  const changed = carryOut(changes, documents);
  if (!changed || allOf(changed).every((document, index) => document.text === allOf(documents)[index]?.text)) return undefined;
  const after = analyse(changed.main, changed.lists, keptOf(before), before.options);
  const evaluation = evaluationOf(after, finding.subject);
  if (!evaluation) return undefined;
  const worst = Math.max(severityRank(finding.severity), severityRank('warning'));
  const kin = kinOf(finding.check);
  const fresh = after.findings.filter(
    (candidate) =>
      severityRank(candidate.severity) <= (kin.includes(candidate.check) && candidate.subject === finding.subject ? severityRank('information') : worst) &&
      !sameFinding(candidate, finding) &&
      !before.findings.some((old) => sameFinding(old, candidate) && severityRank(old.severity) <= severityRank(candidate.severity)),
  );
  return {
    changed,
    analysis: after,
    evaluation,
    cured: !after.findings.some((candidate) => sameFinding(candidate, finding)) && !outOfSight(finding, evaluationOf(before, finding.subject), evaluation),
    softened: severityRank(finding.severity) < severityRank('information') && after.findings.every((candidate) => !sameFinding(candidate, finding) || severityRank(candidate.severity) >= severityRank('information')),
    fresh,
    get spoiled() {
      return hasMore(codesOf(changed, after), codesOf(documents, before));
    },
  };
}

function codesOf(documents: DocumentSet, { problems }: Analysis): readonly string[] {
  return [...allOf(documents).flatMap((document) => document.problems), ...problems].map(({ code }) => code);
}

function hasMore(now: readonly string[], then: readonly string[]): boolean {
  const count = (codes: readonly string[], code: string): number => codes.filter((other) => other === code).length;
  return [...new Set(now)].some((code) => count(now, code) > count(then, code));
}

/** The texts that differ between two sets of the same documents. */
export function changedTexts(documents: DocumentSet, changed: DocumentSet): ReadonlyMap<string, string> {
  const texts = new Map<string, string>();
  for (const [index, document] of allOf(changed).entries()) {
    if (allOf(documents)[index]?.text !== document.text) texts.set(document.uri, document.text);
  }
  return texts;
}

export const sameFinding = (a: Finding, b: Finding): boolean => a.check === b.check && a.subject === b.subject;

export const evaluationOf = (analysis: Analysis, subject: string): Evaluation | undefined =>
  analysis.evaluations.find((evaluation) => evaluation.subject.id === subject);
