import type { Check } from '../checks/check.ts';
import { factsOf, severityRank, type Finding } from '../checks/judge.ts';
import { checksFor } from '../checks/registry.ts';
import type { Evaluation } from '../figures/evaluation.ts';
import { scopeOf } from '../figures/figure.ts';
import type { Element } from './elements.ts';
import type { Snapshot } from './snapshot.ts';

/** How an element stands with the checks that concern it. */
export interface Standing {
  /** Checks that could be computed. */
  readonly computed: number;
  /** Checks that wait for entries that are not there. */
  readonly waiting: number;
  /** Findings of the element, the gravest first. */
  readonly findings: readonly Finding[];
}

/** Elements that gather what concerns everything inside them. */
const WHOLE = new Set(['axis', 'drive', 'heater']);

/** Scopes whose checks count for an element: its own, and those of maps inside it. A check counts by the entry that it underlines and by its figure. */
function scopesUnder(scope: string): ReadonlySet<string> | 'all' {
  if (WHOLE.has(scope)) return 'all';
  return new Set(scope === 'screw' ? ['screw', 'thrust-bearing'] : [scope]);
}

/** The checks of an element and what they found. Findings come from the snapshot, so that they agree with what is underlined. */
export function standingOf({ scope, evaluation }: Element, snapshot: Snapshot): Standing {
  const scopes = scopesUnder(scope.id);
  const facts = factsOf(evaluation);
  const concerned = checksFor(evaluation).filter((check) => (check.subject ?? 'drive') === evaluation.subject.kind && (scopes === 'all' || scopes.has(scopeOfCheck(check, evaluation)) || (check.figure !== undefined && scopes.has(scopeOf(check.figure)))));
  const ids = new Set(concerned.map((check) => check.id));
  const findings = (snapshot.analysis?.findings ?? []).filter((finding) => finding.subject === evaluation.subject.id && ids.has(finding.check));
  let computed = 0;
  let waiting = 0;
  for (const check of concerned) {
    if (findings.some((finding) => finding.check === check.id)) {
      computed++;
      continue;
    }
    try {
      if (check.when && !check.when(facts)) continue;
    } catch {
      continue;
    }
    if ('judge' in check || limitsKnown(check, evaluation)) computed++;
    else if (evaluation.result(check.figure).state === 'missing') waiting++;
  }
  return { computed, waiting, findings: [...findings].sort((a, b) => severityRank(a.severity) - severityRank(b.severity)) };
}

function limitsKnown(check: Check & { readonly limits: readonly { readonly at: number | string }[]; readonly figure: string }, evaluation: Evaluation): boolean {
  return evaluation.bounds(check.figure) !== undefined && check.limits.some(({ at }) => typeof at === 'number' || evaluation.bounds(at) !== undefined);
}

/** The scope to which a check belongs: that of the entry that it underlines. */
function scopeOfCheck(check: Check, evaluation: Evaluation): string {
  let place: string;
  try {
    place = typeof check.place === 'function' ? check.place(factsOf(evaluation)) : check.place;
  } catch {
    place = check.figure ?? '';
  }
  return place.includes('.') ? scopeOf(place) : place;
}
