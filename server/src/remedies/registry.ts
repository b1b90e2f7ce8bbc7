import remedyModules from '../generated/remedies.ts';
import type { Analysis } from '../checks/analysis.ts';
import { judge, type Finding } from '../checks/judge.ts';
import { allChecks } from '../checks/registry.ts';
import { Evaluation } from '../figures/evaluation.ts';
import type { InputValue } from '../machine/values.ts';
import { evaluationOf, prove, type DocumentSet, type Proven } from './prove.ts';
import { number, type Remedy, type RemedyContext } from './remedy.ts';

let shared: readonly Remedy[] | undefined;

/** The remedies found by their place, in the order of their files. */
export function allRemedies(): readonly Remedy[] {
  shared ??= (remedyModules as readonly (Remedy | readonly Remedy[])[]).flat();
  return shared;
}

/** The cures of a finding that hold: each was carried out in memory and analysed. */
export function remediesFor(finding: Finding, documents: DocumentSet, analysis: Analysis, remedies: readonly Remedy[] = allRemedies()): readonly Proven[] {
  const before = evaluationOf(analysis, finding.subject);
  if (!before) return [];
  const context = contextOf(finding, before);
  const proven: Proven[] = [];
  for (const remedy of remedies) {
    if (!remedy.cures.includes(finding.check)) continue;
    for (const proposal of remedy.propose(context)) {
      const found = prove(proposal, remedy.id, finding, documents, analysis);
      if (found && !proven.some((other) => sameTexts(other, found))) proven.push(found);
    }
  }
  return proven;
}

const sameTexts = (a: Proven, b: Proven): boolean => a.texts.size === b.texts.size && [...a.texts].every(([uri, text]) => b.texts.get(uri) === text);

/** Halvings of an interval; far finer than any rounding that follows. */
const HALVINGS = 40;

export function contextOf(finding: Finding, before: Evaluation): RemedyContext {
  const check = allChecks().find((candidate) => candidate.id === finding.check);
  const tryWith = (inputs: Readonly<Record<string, InputValue>>): Evaluation => new Evaluation(before.subject.withInputs(new Map(Object.entries(inputs))), before.registry);
  const passes = (evaluation: Evaluation): boolean => check !== undefined && judge(check, evaluation) === undefined;
  return {
    finding,
    before,
    tryWith,
    passes,
    place: (input) => {
      const [scope = '', ...entry] = input.split('.');
      return before.subject.placeOf(scope, entry.length === 0 ? undefined : entry.join('.'));
    },
    solve: (input, towards) => {
      const present = before.bounds(input)?.nominal;
      if (present === undefined || !passes(tryWith({ [input]: number(towards) }))) return undefined;
      let failing = present;
      let passing = towards;
      for (let i = 0; i < HALVINGS; i++) {
        const middle = (failing + passing) / 2;
        if (passes(tryWith({ [input]: number(middle) }))) passing = middle;
        else failing = middle;
      }
      return passing;
    },
    first: (candidates, inputs) => candidates.find((candidate) => passes(tryWith(inputs(candidate)))),
  };
}
