import type { Evaluation } from '../../figures/evaluation.ts';
import { blocks, escapeMarkdown, table } from '../markdown.ts';
import { subjectTitle } from '../subject-title.ts';
import { commissioningOf } from './commissioning-table.ts';

/** What is set and measured when the machine is first run, for each chosen drive and heated part. */
export function commissioningMarkdown(evaluations: readonly Evaluation[]): string {
  const tables = evaluations.filter(({ subject }) => subject.chosen).flatMap((evaluation) => {
    const rows = commissioningOf(evaluation).map(({ title, value, range, note, caution }) => [title, value, range ?? '', note ?? '', caution].map(escapeMarkdown));
    const written = table(['Set or measure', 'Value', 'Range', 'Remark', 'Take care'], rows);
    return written === undefined ? [] : [`### ${escapeMarkdown(subjectTitle(evaluation.subject.id))}`, written];
  });
  return tables.length === 0 ? 'Nothing to set could be computed.' : blocks('Set these with the power off where that can be done, one at a time, and try each slowly.', ...tables);
}
