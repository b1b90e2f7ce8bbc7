import type { Snapshot } from '../services/snapshot.ts';
import type { Analysis } from './scheduling.ts';

/** What stands in the status item. */
export interface Status {
  /** Checks that could be run. */
  readonly checks: number;
  readonly findings: number;
}

/** Counts over the chosen drives and the heated parts of machines. */
export function statusOf(snapshots: readonly Snapshot[], { elementsAt, standingOf }: Analysis): Status {
  let checks = 0;
  let findings = 0;
  for (const snapshot of snapshots) {
    findings += snapshot.diagnostics.length;
    for (const { subject } of snapshot.analysis?.evaluations ?? []) {
      const place = subject.chosen ? subject.placeOf(subject.kind) : undefined;
      const element = place && elementsAt(snapshot, place).find(({ scope, evaluation }) => scope.id === subject.kind && evaluation.subject === subject);
      if (element) checks += standingOf(element, snapshot).computed;
    }
  }
  return { checks, findings };
}
