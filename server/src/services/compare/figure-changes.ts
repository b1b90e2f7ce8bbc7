import type { FigureRow, LimitRow } from '../figures-table.ts';
import { isInWords } from '../record/figure-cells.ts';

/** How a figure stands to one of its limits, before and after. */
export interface MarginChange {
  readonly check: string;
  /** The limit as text, as it is now; as it was where there is none now. */
  readonly limit: string;
  /** Share of the limit that is used; above 1 it is broken. Left out where a share means nothing, or there was no limit. */
  readonly usedBefore?: number;
  readonly usedAfter?: number;
  readonly stateBefore?: LimitRow['state'];
  readonly stateAfter?: LimitRow['state'];
  /** Gained where positive, as a share of the limit: 0.1 is ten points of per cent. */
  readonly gained?: number;
}

/** What became of one figure of one subject. */
export interface FigureChange {
  readonly change: 'changed' | 'new' | 'gone';
  readonly id: string;
  readonly subject: string;
  readonly before?: FigureRow;
  readonly after?: FigureRow;
  /** (after − before) / |before| of the nominal values; left out where one of them is missing, or before was nothing. */
  readonly relative?: number;
  /** The limit of which most was lost; where none was, the one to look at first. Left out where there is none. */
  readonly margin?: MarginChange;
}

/** Far below what any text shows: what rounding in the last places leaves is no change. */
const SAME = 1e-9;

/** Figures that are computed on one side at least and differ. */
export function compareFigures(before: readonly FigureRow[], after: readonly FigureRow[]): readonly FigureChange[] {
  const key = ({ subject, id }: FigureRow): string => `${subject}\n${id}`;
  const computed = (rows: readonly FigureRow[]): readonly FigureRow[] => rows.filter((row) => row.state === 'computed');
  const old = new Map(computed(before).map((row) => [key(row), row]));
  const fresh = new Map(computed(after).map((row) => [key(row), row]));
  const changes: FigureChange[] = [];
  for (const [name, row] of fresh) {
    const was = old.get(name);
    if (!was) changes.push(withMargin({ change: 'new', id: row.id, subject: row.subject, after: row }));
    else if (!sameRow(was, row)) changes.push(withMargin({ change: 'changed', id: row.id, subject: row.subject, before: was, after: row, ...relativeOf(was, row) }));
  }
  for (const [name, row] of old) if (!fresh.has(name)) changes.push(withMargin({ change: 'gone', id: row.id, subject: row.subject, before: row }));
  return changes;
}

function sameRow(a: FigureRow, b: FigureRow): boolean {
  const ends = (['nominal', 'low', 'high'] as const).every((end) => same(a.value?.[end], b.value?.[end]));
  return ends && a.limits.length === b.limits.length && marginsOf(a, b).every(({ usedBefore, usedAfter, stateBefore, stateAfter }) => same(usedBefore, usedAfter) && stateBefore === stateAfter);
}

function same(a: number | undefined, b: number | undefined): boolean {
  if (a === undefined || b === undefined) return a === b;
  return a === b || Math.abs(a - b) <= SAME * Math.max(Math.abs(a), Math.abs(b));
}

function relativeOf(before: FigureRow, after: FigureRow): { readonly relative?: number } {
  const [old, fresh] = [before.value?.nominal, after.value?.nominal];
  // A verdict has no size, and a temperature of 20 °C is 293 K: a share of it would mean nothing to anyone.
  if (old === undefined || fresh === undefined || old === 0 || before.quantity === 'temperature' || isInWords(before.id)) return {};
  return { relative: (fresh - old) / Math.abs(old) };
}

function withMargin(change: FigureChange): FigureChange {
  const margins = marginsOf(change.before, change.after);
  const [worst] = margins.filter((margin) => marginLost(margin) > 0).sort((a, b) => marginLost(b) - marginLost(a));
  // Where nothing is lost, the limit to look at first, which leads on each side.
  const margin = worst ?? margins.find(({ gained }) => gained !== undefined) ?? margins[0];
  return margin === undefined ? change : { ...change, margin };
}

/** What was lost, as a share of the limit; a limit without a share that is broken now counts as lost altogether. */
export const marginLost = ({ gained, stateAfter, stateBefore }: MarginChange): number => (gained === undefined ? (stateAfter === 'broken' && stateBefore === 'kept' ? 1 : 0) : -gained);

function marginsOf(before: FigureRow | undefined, after: FigureRow | undefined): readonly MarginChange[] {
  // A check may hold several limits, which come in the same order on both sides: mildest and gravest are told apart by severity.
  const key = ({ check, severity }: LimitRow): string => `${check} ${severity}`;
  const old = new Map((before?.limits ?? []).map((limit) => [key(limit), limit]));
  const fresh = new Map((after?.limits ?? []).map((limit) => [key(limit), limit]));
  return [...new Set([...fresh.keys(), ...old.keys()])].map((name) => marginOf(old.get(name), fresh.get(name)));
}

function marginOf(old: LimitRow | undefined, fresh: LimitRow | undefined): MarginChange {
  const known = fresh ?? old;
  const gained = old?.used === undefined || fresh?.used === undefined ? undefined : old.used - fresh.used;
  return {
    check: known?.check ?? '',
    limit: known?.text ?? '',
    ...(old?.used === undefined ? {} : { usedBefore: old.used }),
    ...(fresh?.used === undefined ? {} : { usedAfter: fresh.used }),
    ...(old ? { stateBefore: old.state } : {}),
    ...(fresh ? { stateAfter: fresh.state } : {}),
    // Rounding of the last place is neither gain nor loss.
    ...(gained === undefined ? {} : { gained: Math.abs(gained) < SAME ? 0 : gained }),
  };
}
