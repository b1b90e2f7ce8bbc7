import type { Severity } from '../../language/problems.ts';
import type { FigureChange, MarginChange } from './figure-changes.ts';
import type { Comparison } from './comparison.ts';
import type { RecordedFinding } from '../record/finding-rows.ts';

/** What may get worse without being refused. */
export interface Allowance {
  /** Findings as grave as this or graver may not come. */
  readonly failOn: Severity;
  /** Largest loss of margin, as a share of the limit; undefined allows any that breaks no limit. */
  readonly marginLoss?: number;
}

/** One thing that got worse, whether it is allowed or not. */
export type Worsening =
  | { readonly kind: 'finding'; readonly refused: boolean; readonly finding: RecordedFinding; readonly wasSeverity?: Severity }
  | { readonly kind: 'margin'; readonly refused: boolean; readonly figure: FigureChange; readonly margin: MarginChange; readonly lost: number };

const GRAVITY: Readonly<Record<Severity, number>> = { error: 0, warning: 1, information: 2, hint: 3 };

/** A loss that nobody would call one: less than a point of per cent. */
const DUST = 0.01;

/** Everything that got worse, worst first: what is refused, then findings by severity, then margins by how near the limit is. A deviation that is accepted is not worse. */
export function worseningsOf(comparison: Comparison, { failOn, marginLoss }: Allowance): readonly Worsening[] {
  const findings = comparison.findings.flatMap(({ change, before, after }): readonly Worsening[] => {
    if (!after || after.accepted !== undefined || (change !== 'new' && change !== 'graver')) return [];
    const refused = GRAVITY[after.severity] <= GRAVITY[failOn];
    return [{ kind: 'finding', refused, finding: after, ...(before ? { wasSeverity: before.severity } : {}) }];
  });
  const margins = comparison.figures.flatMap((figure): readonly Worsening[] => {
    const { margin } = figure;
    const lost = margin?.gained === undefined ? 0 : -margin.gained;
    if (!margin || lost < DUST) return [];
    return [{ kind: 'margin', figure, margin, lost, refused: marginLoss !== undefined && lost > marginLoss + 1e-9 && !isAccepted(figure, margin, comparison) }];
  });
  return [...findings.sort(byGravity), ...margins.sort(byLoss)].sort((a, b) => Number(b.refused) - Number(a.refused));
}

const byGravity = (a: Worsening, b: Worsening): number => (a.kind === 'finding' && b.kind === 'finding' ? GRAVITY[a.finding.severity] - GRAVITY[b.finding.severity] : 0);

/** What is nearest to its limit now, or beyond it, leads: a margin that is used up counts more than a large one that shrinks. */
const byLoss = (a: Worsening, b: Worsening): number => {
  if (a.kind !== 'margin' || b.kind !== 'margin') return 0;
  const state = ({ margin }: typeof a): number => ['broken', 'may-break', 'kept'].indexOf(margin.stateAfter ?? 'kept');
  return state(a) - state(b) || (b.margin.usedAfter ?? 0) - (a.margin.usedAfter ?? 0) || b.lost - a.lost;
};

/** Whether somebody stands by the finding that this margin leads to. */
function isAccepted({ subject }: FigureChange, { check }: MarginChange, comparison: Comparison): boolean {
  return comparison.acceptedNow.some((finding) => finding.code === check && finding.subject === subject);
}
