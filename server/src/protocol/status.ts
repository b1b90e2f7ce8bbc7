import type { Element } from '../services/elements.ts';
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
  const status = { checks: 0, findings: 0 };
  for (const snapshot of snapshots) {
    status.findings += snapshot.diagnostics.length;
    const scopes = new Map<string, Element['scope'] | undefined>();
    for (const evaluation of snapshot.analysis?.evaluations ?? []) {
      const { kind, chosen } = evaluation.subject;
      const place = chosen ? evaluation.subject.placeOf(kind) : undefined;
      if (!place) continue;
      // What a drive is called in the description is the same for all of them, and looking for it is slow.
      if (!scopes.has(kind)) scopes.set(kind, elementsAt(snapshot, place).find(({ scope }) => scope.id === kind)?.scope);
      const scope = scopes.get(kind);
      if (scope) status.checks += standingOf({ scope, evaluation }, snapshot).computed;
    }
  }
  return status;
}
