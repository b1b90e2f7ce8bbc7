import data from './data/couplings.json' with { type: 'json' };
import type { HandbookRange } from './nut-materials.ts';

/** What is usual for a form of coupling. SI. */
export interface CouplingUsual {
  readonly form: string;
  readonly title: string;
  /** N·m/rad. */
  readonly torsionalStiffness: HandbookRange;
  /** N/m; zero: it comes apart when pulled. */
  readonly axialStiffness: HandbookRange;
  /** N·m. */
  readonly torqueRating: HandbookRange;
  /** m. */
  readonly parallelOffset: HandbookRange;
  /** rad. */
  readonly angularOffset: HandbookRange;
  /** Whether it may carry a pull along the shaft. */
  readonly carriesAxialLoad: boolean;
}

const DEGREE = Math.PI / 180;

/** All forms. */
export const COUPLINGS: readonly CouplingUsual[] = data.rows.map((row) => {
  const range = (raw: { low: number; nominal: number; high: number }, unit = 1): HandbookRange => ({
    low: raw.low * unit, nominal: raw.nominal * unit, high: raw.high * unit, source: row.source, weak: row.weak,
  });
  return {
    form: row.form,
    title: row.title,
    torsionalStiffness: range(row.torsional_stiffness_Nm_per_rad),
    axialStiffness: range(row.axial_stiffness_N_per_mm, 1e3),
    torqueRating: range(row.rated_torque_Nm),
    parallelOffset: range(row.parallel_misalignment_mm, 1e-3),
    angularOffset: range(row.angular_misalignment_deg, DEGREE),
    carriesAxialLoad: row.carries_axial_load,
  };
});

/** What is usual for a form of coupling; undefined for an unknown form. */
export const usualCoupling = (form: string): CouplingUsual | undefined => COUPLINGS.find((row) => row.form === form);
