import { cautions, type CautionId } from '../../checks/cautions.ts';
import type { Analysis } from '../../checks/analysis.ts';
import type { Evaluation } from '../../figures/evaluation.ts';
import { blocks, escapeMarkdown } from '../markdown.ts';
import { commissioningOf } from './commissioning-table.ts';
import type { RecordedFinding } from './finding-rows.ts';

/** What the machine brings with it, whether a check found fault with it or not. */
const PRESENT: Readonly<Partial<Record<CautionId, (evaluation: Evaluation) => boolean>>> = {
  'gravity-load': (evaluation) => evaluation.subject.kind === 'drive' && evaluation.choice('axis.direction') !== 'horizontal',
  'pinch-point': ({ subject }) => subject.kind === 'drive',
  'hot-surface': ({ subject }) => subject.kind === 'heater',
  'mains-voltage': (evaluation) => evaluation.subject.kind === 'supply' && evaluation.choice('supply.kind') === 'mains',
  'stored-energy': ({ subject }) => subject.kind === 'drive' && (subject.isPresent('belt') || subject.isPresent('counterbalance')),
};

const disclaimer =
  'This record tells what was computed from the description and which checks were passed. It does not say that the machine may be used without danger: what is not described was not looked at, and no computation replaces a trial. The local electrical and machinery code decides, and work that it reserves belongs to licensed people.';

/** The hazards in their fixed wording, in a fixed order. */
export function cautionsMarkdown(analysis: Analysis | undefined, findings: readonly RecordedFinding[]): string {
  const evaluations = (analysis?.evaluations ?? []).filter(({ subject }) => subject.chosen);
  const named = new Set<CautionId>([...findings.flatMap((finding) => finding.cautions), ...evaluations.flatMap((evaluation) => commissioningOf(evaluation).flatMap((row) => row.hazards))]);
  const due = (Object.keys(cautions) as CautionId[]).filter((id) => named.has(id) || evaluations.some((evaluation) => PRESENT[id]?.(evaluation) ?? false));
  return blocks(disclaimer, due.length > 0 && due.map((id) => `- ${escapeMarkdown(cautions[id])}`).join('\n'));
}
