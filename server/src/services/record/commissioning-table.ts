import type { CautionId } from '../../checks/cautions.ts';
import { factsOf, showValue } from '../../checks/judge.ts';
import type { Evaluation } from '../../figures/evaluation.ts';
import commissioningModules from '../../generated/commissioning.ts';
import { nodeAt } from '../../language/syntax-tree.ts';
import type { CommissioningDeclaration, CommissioningView } from './commissioning.ts';

/** A line of the table. */
export interface CommissioningRow {
  readonly id: string;
  readonly title: string;
  readonly value: string;
  /** `low to high`, where the value is uncertain. */
  readonly range?: string;
  readonly note?: string;
  readonly caution: string;
  readonly hazards: readonly CautionId[];
}

let shared: readonly CommissioningDeclaration[] | undefined;

/** The declarations found by their place, in the order of the table. */
export function commissioningDeclarations(): readonly CommissioningDeclaration[] {
  shared ??= (commissioningModules as readonly (CommissioningDeclaration | readonly CommissioningDeclaration[])[])
    .flat()
    .sort((a, b) => a.order - b.order || (a.id < b.id ? -1 : 1));
  return shared;
}

/** The lines that have a value for this subject. */
export function commissioningOf(evaluation: Evaluation): readonly CommissioningRow[] {
  const view = viewOf(evaluation);
  return commissioningDeclarations().flatMap((declaration) => {
    if ((declaration.subject ?? 'drive') !== evaluation.subject.kind || declaration.when?.(view) === false) return [];
    const shown = shownOf(declaration, evaluation, view);
    if (!shown) return [];
    const note = [shown.range === undefined ? undefined : ENDS[declaration.end ?? 'nominal'], declaration.note?.(view)].filter((part) => part !== undefined).join('; ');
    return [{ id: declaration.id, title: declaration.title, ...shown, ...(note === '' ? {} : { note }), caution: declaration.caution, hazards: declaration.hazards ?? [] }];
  });
}

/** Which end of an uncertain value is shown. */
const ENDS = { nominal: undefined, low: 'low end of its range', high: 'high end of its range' } as const;

function shownOf({ shows, end = 'nominal', digits = 3 }: CommissioningDeclaration, evaluation: Evaluation, view: CommissioningView): Pick<CommissioningRow, 'value' | 'range'> | undefined {
  if (typeof shows === 'function') {
    const value = shows(view);
    return value === undefined ? undefined : { value };
  }
  const id = shows.find((one) => evaluation.bounds(one) !== undefined);
  if (id === undefined) return undefined;
  const value = showValue(id, evaluation, end, { digits });
  const range = showValue(id, evaluation, 'range', { digits });
  return range === showValue(id, evaluation, 'nominal', { digits }) ? { value } : { value, range };
}

function viewOf(evaluation: Evaluation): CommissioningView {
  const { subject } = evaluation;
  return {
    ...factsOf(evaluation),
    list: (scope, key) => {
      const place = subject.isPresent(scope) ? subject.placeOf(scope, key) : undefined;
      const node = place && nodeAt(subject.machine.document(place.uri)?.root, place.path);
      return node?.type === 'list' ? node.items.flatMap((item) => (item?.type === 'scalar' && item.text !== '' ? [item.text] : [])) : undefined;
    },
  };
}
