import checkModules from '../generated/checks.ts';
import type { Evaluation } from '../figures/evaluation.ts';
import type { Machine } from '../machine/machine.ts';
import type { Check } from './check.ts';
import { judge, type Finding } from './judge.ts';

let shared: readonly Check[] | undefined;

/** The checks found by their place, in the order of their names. */
export function allChecks(): readonly Check[] {
  shared ??= (checkModules as readonly (Check | readonly Check[])[]).flat();
  return shared;
}

const changed = new WeakMap<Machine, readonly Check[]>();

/** Has a machine judged by other checks than all of them as they are declared. */
export function judgeBy(checks: readonly Check[], machine: Machine): void {
  changed.set(machine, checks);
}

/** The checks that judge a subject: all of them, as far as settings of the repository do not change them. */
export const checksFor = (evaluation: Evaluation): readonly Check[] => changed.get(evaluation.subject.machine) ?? allChecks();

/** Findings of one subject, in the order of the checks. */
export function findingsOf(evaluation: Evaluation, checks: readonly Check[] = checksFor(evaluation)): readonly Finding[] {
  return checks.flatMap((check) => {
    if ((check.subject ?? 'drive') !== evaluation.subject.kind) return [];
    const finding = judge(check, evaluation);
    return finding ? [finding] : [];
  });
}
