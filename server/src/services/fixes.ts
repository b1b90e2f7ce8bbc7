import type { Finding } from '../checks/judge.ts';
import { entryProblemCodes } from '../checks/entry-problem-codes.ts';
import { allChecks } from '../checks/registry.ts';
import { problemCodes, type ProblemCode } from '../language/problem-codes.ts';
import type { Problem } from '../language/problems.ts';
import { readDocument } from '../language/read-document.ts';
import { applyEdits, type Span, type TextEdit } from '../language/spans.ts';
import { editsBetween } from '../language/text-difference.ts';
import { nameProblemCodes } from '../machine/name-problem-codes.ts';
import type { Proven } from '../remedies/prove.ts';
import { searchFor } from '../remedies/registry.ts';
import { acceptanceEdits } from './accept.ts';
import type { Diagnostic } from './diagnostics.ts';
import type { Snapshot } from './snapshot.ts';

/** Changes of one document, all referring to its present text. */
export interface DocumentEdits {
  readonly uri: string;
  readonly edits: readonly TextEdit[];
}

/**
 * `spelling`: the same design, written right. `remedy`: a proven change of the design. `accept`: the finding stays, with a reason, as
 * information. `explain`: opens a page, changes nothing.
 */
export type FixKind = 'spelling' | 'remedy' | 'accept' | 'explain';

/** One entry of the light bulb. */
export interface Fix {
  readonly kind: FixKind;
  readonly title: string;
  /** What it cures or explains. */
  readonly diagnostic: Diagnostic;
  /** True for at most one fix of a diagnostic: the only one that changes something. */
  readonly isPreferred: boolean;
  /** Empty for `explain`. */
  readonly changes: readonly DocumentEdits[];
  /** For `explain`: identifier of the check or problem whose page is to be opened. */
  readonly page?: string;
}

const everyKind: readonly FixKind[] = ['spelling', 'remedy', 'accept', 'explain'];

/**
 * What can be done about the diagnostics that touch `range`, in their order: changes of spelling, proven changes of the design, then to
 * accept it, then the explanation. `only` leaves out other kinds, and with them the work of proving.
 */
export function fixesAt(snapshot: Snapshot, range: Span, only: readonly FixKind[] = everyKind): readonly Fix[] {
  const touched = snapshot.diagnostics.filter(({ uri, span }) => uri === snapshot.uri && span.start <= range.end && span.end >= range.start);
  const changing = touched.flatMap((diagnostic) => [
    ...(only.includes('spelling') ? spellingFixes(diagnostic) : []),
    ...(only.includes('remedy') ? remedyFixes(diagnostic, snapshot) : []),
  ]);
  const accepting = only.includes('accept') ? touched.flatMap((diagnostic) => acceptance(diagnostic, snapshot)) : [];
  return [...changing, ...accepting, ...(only.includes('explain') ? explanations(touched) : [])];
}

function spellingFixes(diagnostic: Diagnostic): readonly Fix[] {
  return diagnostic.fixes.map(({ title, uri, edits }) => ({ kind: 'spelling', title, diagnostic, isPreferred: diagnostic.fixes.length === 1, changes: [{ uri, edits }] }));
}

function remedyFixes(diagnostic: Diagnostic, snapshot: Snapshot): readonly Fix[] {
  const { finding } = diagnostic;
  if (!finding) return [];
  const proven = provenFor(finding, snapshot);
  const documents = [snapshot.document, ...snapshot.lists];
  return proven.map(({ title, texts }) => ({
    kind: 'remedy',
    title,
    diagnostic,
    isPreferred: proven.length === 1,
    changes: documents.flatMap((document) => {
      const after = texts.get(document.uri);
      return after === undefined ? [] : [{ uri: document.uri, edits: editsBetween(document.text, after) }];
    }),
  }));
}

/** Never preferred, and never part of mending all: to accept is the person's own decision. */
function acceptance(diagnostic: Diagnostic, snapshot: Snapshot): readonly Fix[] {
  const edits = acceptanceEdits(diagnostic, snapshot);
  const what = titleOfPage(diagnostic.code);
  return edits ? [{ kind: 'accept', title: `Accept with a reason${what === undefined ? '' : `: ${what}`}…`, diagnostic, isPreferred: false, changes: [{ uri: snapshot.uri, edits }] }] : [];
}

const remembered = new WeakMap<Snapshot, Map<Finding, readonly Proven[]>>();

/**
 * Looks for the cures of a diagnostic in steps of a few milliseconds, so that a server can see to other things in between. Once it is run
 * to its end, `fixesAt` knows them without further work; given up before, nothing is lost but the work.
 */
export function* searchFixes(snapshot: Snapshot, { finding }: Diagnostic): Generator<void, void, void> {
  if (finding) yield* proving(finding, snapshot);
}

function provenFor(finding: Finding, snapshot: Snapshot): readonly Proven[] {
  const search = proving(finding, snapshot);
  for (;;) {
    const step = search.next();
    if (step.done === true) return step.value;
  }
}

/** Proving takes an analysis for every proposal, so it is done once a snapshot and finding. */
function* proving(finding: Finding, snapshot: Snapshot): Generator<void, readonly Proven[], void> {
  if (!snapshot.analysis) return [];
  const ofSnapshot = remembered.get(snapshot) ?? new Map<Finding, readonly Proven[]>();
  remembered.set(snapshot, ofSnapshot);
  const known = ofSnapshot.get(finding);
  if (known) return known;
  const proven = yield* searchFor(finding, { main: snapshot.document, lists: snapshot.lists }, snapshot.analysis);
  ofSnapshot.set(finding, proven);
  return proven;
}

const problems: Readonly<Record<string, ProblemCode | undefined>> = { ...problemCodes, ...nameProblemCodes, ...entryProblemCodes };

/** The heading of the page of a check or problem; undefined where there is no page. */
function titleOfPage(code: string): string | undefined {
  return allChecks().find((check) => check.id === code)?.title ?? problems[code]?.title;
}

function explanations(touched: readonly Diagnostic[]): readonly Fix[] {
  const seen = new Set<string>();
  return touched.flatMap((diagnostic) => {
    const title = titleOfPage(diagnostic.code);
    if (title === undefined || seen.has(diagnostic.code)) return [];
    seen.add(diagnostic.code);
    return [{ kind: 'explain' as const, title: `Explain: ${title}`, diagnostic, isPreferred: false, changes: [], page: diagnostic.code }];
  });
}

/**
 * Problems whose only fix leaves the meaning as it is, so that all of them may be mended in one go. A closed list: no change of the
 * design, no guess at a name or a unit is ever among them.
 */
const SAFE_TO_MEND: ReadonlySet<string> = new Set([
  'invisible-character', 'yaml-version', 'directive-unknown', 'space-after-colon-missing', 'space-after-dash-missing', 'comma-stray', 'tab-as-indent', 'value-start-reserved',
  'decimal-comma', 'range-with-dash', 'lone-carriage-return',
]);

/** Mending one slip can bring another to light; real texts need two rounds. */
const MOST_ROUNDS = 5;

/** All changes of spelling and quoting at once, in the snapshot's own document. Never a change of the design; doing it twice is doing it once. */
export function fixAll(snapshot: Snapshot): readonly TextEdit[] {
  let { document } = snapshot;
  for (let round = 0; round < MOST_ROUNDS; round++) {
    const edits = withoutOverlap(document.problems.flatMap(onlyFix));
    if (edits.length === 0) break;
    document = readDocument(document.uri, applyEdits(document.text, edits));
  }
  return editsBetween(snapshot.document.text, document.text);
}

function onlyFix(problem: Problem): readonly (readonly TextEdit[])[] {
  const [fix, ...others] = problem.fixes ?? [];
  return fix && others.length === 0 && SAFE_TO_MEND.has(problem.code) ? [fix.edits] : [];
}

/** Fixes that touch what an earlier one changes wait for the next round. */
function withoutOverlap(fixes: readonly (readonly TextEdit[])[]): readonly TextEdit[] {
  const taken: TextEdit[] = [];
  for (const edits of fixes) {
    const clash = edits.some((edit) => taken.some((other) => edit.span.start <= other.span.end && other.span.start <= edit.span.end));
    if (!clash) taken.push(...edits);
  }
  return taken;
}
