import type { LimitCheck, Limit } from '../checks/check.ts';
import { factsOf, severityRank, type Finding } from '../checks/judge.ts';
import { checksFor } from '../checks/registry.ts';
import type { Evaluation } from '../figures/evaluation.ts';
import type { Figure } from '../figures/figure.ts';
import { exactly, scaled, type Bounded } from '../machine/values.ts';

/** One limit that a check sets to a figure, as things stand. */
export interface FigureLimit {
  readonly check: LimitCheck;
  readonly limit: Limit;
  readonly at: Bounded;
  /** Worst end of the figure over the strictest end of the limit (or the reverse for a limit from below); above 1 it is broken. Undefined where a share means nothing. */
  readonly used: number | undefined;
  /** `may-break`: only the uncertain end breaks it. */
  readonly state: 'kept' | 'may-break' | 'broken';
}

/** The limits that judge a figure here; empty where it is not computed or no check applies. */
export function limitsOf(figure: string, evaluation: Evaluation): readonly FigureLimit[] {
  const value = evaluation.bounds(figure);
  if (!value) return [];
  const facts = factsOf(evaluation);
  return checksFor(evaluation).flatMap((check) => {
    if ('judge' in check || check.figure !== figure || (check.subject ?? 'drive') !== evaluation.subject.kind) return [];
    if (!guarded(() => check.when?.(facts) ?? true)) return [];
    return check.limits.flatMap((limit) => {
      const at = typeof limit.at === 'number' ? exactly(limit.at) : scaled(evaluation.bounds(limit.at), limit.times);
      return at ? [measured(check, limit, value, at)] : [];
    });
  });
}

/** The limit to show beside the figure: the gravest that is broken, else the one that leaves least. */
export function decidingLimit(limits: readonly FigureLimit[]): FigureLimit | undefined {
  return [...limits].sort((a, b) => STATES[a.state] - STATES[b.state] || (a.state === 'kept' ? (b.used ?? 0) - (a.used ?? 0) : severityRank(a.limit.severity) - severityRank(b.limit.severity)))[0];
}

/**
 * How a figure stands: by its limits, or, where it is a verdict in words, by what a check of facts found about it.
 * `findings` are those of the figure's subject.
 */
export function stateOf(figure: Figure, evaluation: Evaluation, findings: readonly Finding[]): FigureLimit['state'] {
  const deciding = decidingLimit(limitsOf(figure.id, evaluation));
  if (deciding) return deciding.state;
  const grave = figure.inWords ? findings.find((finding) => finding.figure === figure.id && severityRank(finding.severity) <= severityRank('warning')) : undefined;
  return grave ? (grave.certain ? 'broken' : 'may-break') : 'kept';
}

/** For sorting: figures that break a limit first, then those that may, then the rest. */
export const urgency = (figure: Figure, evaluation: Evaluation, findings: readonly Finding[]): number => STATES[stateOf(figure, evaluation, findings)];

const STATES = { broken: 0, 'may-break': 1, kept: 2 } as const;

function measured(check: LimitCheck, limit: Limit, value: Bounded, at: Bounded): FigureLimit {
  const above = check.bad === 'above';
  const worst = above ? value.high : value.low;
  const strictest = above ? at.low : at.high;
  const breaks = (a: number, b: number): boolean => (above ? a > b : a < b);
  const share = above ? worst / strictest : strictest / worst;
  return {
    check,
    limit,
    at,
    used: worst > 0 && strictest > 0 && Number.isFinite(share) ? share : undefined,
    state: breaks(value.nominal, at.nominal) ? 'broken' : breaks(worst, strictest) ? 'may-break' : 'kept',
  };
}

/** A condition that throws is reported by the check itself; here its limit is left out. */
function guarded(condition: () => boolean): boolean {
  try {
    return condition();
  } catch {
    return false;
  }
}
