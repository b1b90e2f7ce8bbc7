import data from './data/reductions.json' with { type: 'json' };
import type { HandbookRange } from './nut-materials.ts';

export const REDUCTION_KINDS = ['belt', 'spur', 'planetary', 'worm'] as const;
export type ReductionKind = (typeof REDUCTION_KINDS)[number];

/** What is usual for one stage of a kind of reduction. */
export interface ReductionUsual {
  readonly kind: string;
  readonly title: string;
  /** Share of the power that arrives when the motor drives. */
  readonly efficiency: HandbookRange;
  /** The same when the load drives; negative: it locks. */
  readonly reverseEfficiency: HandbookRange;
  /** Play at the driven shaft, rad. */
  readonly backlash: HandbookRange;
}

const DEGREE = Math.PI / 180;

/** All kinds. */
export const REDUCTIONS: readonly ReductionUsual[] = data.rows.map((row) => {
  const range = (raw: { low: number; nominal: number; high: number }, unit = 1): HandbookRange => ({
    low: raw.low * unit, nominal: raw.nominal * unit, high: raw.high * unit, source: row.source, weak: row.weak,
  });
  return {
    kind: row.kind, title: row.title, efficiency: range(row.efficiency), reverseEfficiency: range(row.reverse_efficiency), backlash: range(row.backlash_deg, DEGREE),
  };
});

/** What is usual for a kind of stage; undefined for an unknown kind. */
export const usualReduction = (kind: string): ReductionUsual | undefined => REDUCTIONS.find((row) => row.kind === kind);
