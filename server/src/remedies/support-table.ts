import type { Evaluation } from '../figures/evaluation.ts';
import { rowOf, supportOf, type SupportJoint } from '../machine/support-joint.ts';
import type { Inputs, RemedyContext } from './remedy.ts';

/** The supports of an axis and what the person calls them. */
export interface SupportTable {
  readonly supports: readonly SupportJoint[];
  readonly titles: readonly string[];
}

export function supportTable(context: RemedyContext): SupportTable | undefined {
  const input = context.before.input('axis.support-joints');
  return input.state === 'known' && input.value.type === 'table' && input.value.titles ? { supports: input.value.rows.map(supportOf), titles: input.value.titles } : undefined;
}

/** Other supports as inputs to try. */
export const inputsOf = (supports: readonly SupportJoint[], titles: readonly string[]): Inputs => ({ 'axis.support-joints': { type: 'table', rows: supports.map(rowOf), titles } });

/** The new count: what the check compares is no number that a title could tell. */
export function countLeft(before: Evaluation): (after: Evaluation) => string | undefined {
  const was = before.bounds('supports.redundant-held')?.nominal;
  return (after) => {
    const left = after.bounds('supports.redundant-held')?.nominal;
    if (left === undefined) return undefined;
    // What is still free is a matter of its own, and no layout that leaves a motion is exact.
    if (left === 0) return (after.bounds('supports.freedoms-drives-held')?.nominal ?? 0) > 0 ? 'nothing is held twice' : 'exactly constrained';
    return `${left} redundant${was === undefined || was <= left ? '' : ` instead of ${was}`}`;
  };
}
