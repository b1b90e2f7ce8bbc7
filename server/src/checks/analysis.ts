import { Evaluation } from '../figures/evaluation.ts';
import { allFigures } from '../figures/registry.ts';
import { Machine, type SourceDocument } from '../machine/machine.ts';
import { nameProblems, type PlacedProblem } from '../machine/name-problems.ts';
import { accepting, type Verdict } from './accepted.ts';
import type { EntryProblem } from './entry-problem.ts';
import { severityRank, type Finding } from './judge.ts';
import { findingsOf, judgeBy } from './registry.ts';
import type { RepositorySettings } from './settings.ts';
import { withItsLoads } from './supply-loads.ts';

/** What an analysis rests on besides the texts. */
export interface AnalysisOptions {
  /** The day on which it is made, YYYY-MM-DD: the core has no clock. Without it no acceptance ends. */
  readonly today?: string;
  readonly settings?: RepositorySettings;
}

/** What a machine's description comes to. */
export interface Analysis {
  readonly machine: Machine;
  /** One a subject: the machine, its drives, its heated parts, its supplies, each in the order of the text. Options that are not chosen are computed too. */
  readonly evaluations: readonly Evaluation[];
  /** Of the chosen drives only; what two axes that share a drive both say is told once. What the description accepts is information. */
  readonly findings: readonly Finding[];
  /** The findings of each subject, before what is said twice is left out, and before any is accepted. */
  readonly bySubject: ReadonlyMap<string, readonly Finding[]>;
  /** Names that lead nowhere, parts of the wrong kind, things that nothing uses. */
  readonly problems: readonly PlacedProblem[];
  /** What the description says of problems that it accepts, by `problemKey`. */
  readonly acceptedProblems: ReadonlyMap<string, Verdict>;
  /** What is wrong with the entries that accept. */
  readonly entryProblems: readonly EntryProblem[];
  readonly options: AnalysisOptions;
}

interface Kept {
  readonly evaluation: Evaluation;
  readonly findings: readonly Finding[];
}

/** Results by subject, kept from one version of a text to the next for as long as what they rest on reads the same. */
export type KeptResults = Map<string, Kept>;

/** The results of an analysis, to start another one from. */
export function keptOf(analysis: Analysis): KeptResults {
  return new Map(analysis.evaluations.map((evaluation) => {
    const { id } = evaluation.subject;
    return [id, { evaluation, findings: analysis.bySubject.get(id) ?? [] }];
  }));
}

/** Of what two axes that share their drive say of one place of it, the graver is told, and what is said in the same words only once. */
function withoutRepeats(results: readonly Kept[]): readonly Finding[] {
  const told = new Map<string, Finding>();
  for (const { evaluation, findings } of results) {
    const drive = evaluation.subject.fixed.get('drive') ?? [];
    for (const finding of findings) {
      const { check, place, message } = finding;
      const isShared = drive[0] === 'layout' && drive.every((key, index) => place.path[index] === key);
      const key = [check, place.uri, ...place.path, isShared ? '' : message].join('\n');
      const before = told.get(key);
      if (!before || severityRank(finding.severity) < severityRank(before.severity)) told.set(key, finding);
    }
  }
  return [...told.values()];
}

/** Whether two maps say the same: an axis may have come to share the drive of a layout. */
const sameMap = (one: ReadonlyMap<string, readonly string[]>, other: ReadonlyMap<string, readonly string[]>): boolean =>
  one.size === other.size && [...one].every(([scope, path]) => other.get(scope)?.join('/') === path.join('/'));

/**
 * Analyses a machine with its part lists. With `kept`, subjects whose text has not changed are not computed again, and `kept` is brought up to
 * date; it holds for the same settings only. What is accepted, and on what day, is decided afterwards and changes nothing that is kept.
 */
export function analyse(main: SourceDocument, lists: readonly SourceDocument[], kept?: KeptResults, options: AnalysisOptions = {}): Analysis {
  const machine = new Machine(main, lists, options.settings?.units);
  if (options.settings) judgeBy(options.settings.checks, machine);
  const results: Kept[] = [];
  for (const subject of machine.subjects) {
    const before = kept?.get(subject.id);
    // What a supply must give follows from the other subjects, which stand before it; it is little work.
    const stands = before && subject.kind !== 'supply' && before.evaluation.subject.chosen === subject.chosen && sameMap(before.evaluation.subject.fixed, subject.fixed) && machine.agreesWith(before.evaluation.subject.log);
    if (stands) {
      results.push(before);
      continue;
    }
    const evaluation = new Evaluation(subject.kind === 'supply' ? withItsLoads(subject, results.map((result) => result.evaluation)) : subject, allFigures());
    results.push({ evaluation, findings: subject.chosen ? findingsOf(evaluation) : [] });
  }
  if (kept) {
    kept.clear();
    for (const result of results) kept.set(result.evaluation.subject.id, result);
  }
  const problems = nameProblems(machine);
  const accepted = accepting(machine, withoutRepeats(results), problems, options.today);
  return {
    machine,
    evaluations: results.map((result) => result.evaluation),
    findings: accepted.findings,
    bySubject: new Map(results.map((result) => [result.evaluation.subject.id, result.findings])),
    problems,
    acceptedProblems: accepted.problems,
    entryProblems: accepted.entryProblems,
    options,
  };
}
