import { analyse, keptOf, type Analysis } from '../checks/analysis.ts';
import { severityRank, type Finding } from '../checks/judge.ts';
import type { Evaluation } from '../figures/evaluation.ts';
import { removeEntry, setEntry } from '../language/edit-entry.ts';
import { readDocument, type LanguageDocument } from '../language/read-document.ts';
import { applyEdits } from '../language/spans.ts';
import type { Change, Proposal } from './remedy.ts';

/** The documents of a machine: its own first, then its part lists. */
export interface DocumentSet {
  readonly main: LanguageDocument;
  readonly lists: readonly LanguageDocument[];
}

/** A proposal that was carried out in memory, analysed, and found to cure without harm. */
export interface Proven {
  readonly title: string;
  readonly remedy: string;
  /** The changed documents. */
  readonly texts: ReadonlyMap<string, string>;
}

/** The texts after the changes, each made on the text that the one before left; undefined where one cannot be made. */
export function carryOut(changes: readonly Change[], documents: DocumentSet): DocumentSet | undefined {
  let { main, lists } = documents;
  for (const change of changes) {
    const document = [main, ...lists].find((candidate) => candidate.uri === change.place.uri);
    if (!document) return undefined;
    const edits = change.value === null ? removeEntry(document, change.place.path) : setEntry(document, change.place.path, change.value);
    if (!edits) return undefined;
    const changed = readDocument(document.uri, applyEdits(document.text, edits));
    if (document === main) main = changed;
    else lists = lists.map((list) => (list === document ? changed : list));
  }
  return { main, lists };
}

/**
 * Carries a proposal out in memory and analyses the result. Proven when the finding is gone, the text has no new problem,
 * and nothing of the finding's severity or graver has appeared that was not there before.
 */
export function prove(proposal: Proposal, remedyId: string, finding: Finding, documents: DocumentSet, before: Analysis): Proven | undefined {
  const changed = carryOut(proposal.changes, documents);
  if (!changed) return undefined;
  if (countProblems(changed) > countProblems(documents)) return undefined;
  const after = analyse(changed.main, changed.lists, keptOf(before));
  if (after.findings.some((candidate) => sameFinding(candidate, finding))) return undefined;
  const worst = Math.max(severityRank(finding.severity), severityRank('warning'));
  const fresh = after.findings.filter(
    (candidate) => severityRank(candidate.severity) <= worst && !before.findings.some((old) => sameFinding(old, candidate) && severityRank(old.severity) <= severityRank(candidate.severity)),
  );
  if (fresh.length > 0 || after.problems.length > before.problems.length) return undefined;
  const evaluation = evaluationOf(after, finding.subject);
  if (!evaluation) return undefined;
  const texts = new Map<string, string>();
  for (const document of [changed.main, ...changed.lists]) {
    const old = [documents.main, ...documents.lists].find((candidate) => candidate.uri === document.uri);
    if (old?.text !== document.text) texts.set(document.uri, document.text);
  }
  return texts.size === 0 ? undefined : { title: proposal.title(evaluation), remedy: remedyId, texts };
}

const countProblems = (documents: DocumentSet): number => [documents.main, ...documents.lists].reduce((sum, document) => sum + document.problems.length, 0);

export const sameFinding = (a: Finding, b: Finding): boolean => a.check === b.check && a.subject === b.subject;

export const evaluationOf = (analysis: Analysis, subject: string): Evaluation | undefined =>
  analysis.evaluations.find((evaluation) => evaluation.subject.id === subject);
