import checkModules from '../generated/checks.ts';
import type { Evaluation } from '../figures/evaluation.ts';
import type { Check } from './check.ts';
import { judge, type Finding } from './judge.ts';

let shared: readonly Check[] | undefined;

/** The checks found by their place, in the order of their names. */
export function allChecks(): readonly Check[] {
  shared ??= (checkModules as readonly (Check | readonly Check[])[]).flat();
  return shared;
}

/** Findings of one subject, in the order of the checks. */
export function findingsOf(evaluation: Evaluation, checks: readonly Check[] = allChecks()): readonly Finding[] {
  return checks.flatMap((check) => {
    if ((check.subject ?? 'drive') !== evaluation.subject.kind) return [];
    const finding = judge(check, evaluation);
    return finding ? [finding] : [];
  });
}
