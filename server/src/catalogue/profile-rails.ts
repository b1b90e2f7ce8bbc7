import data from './data/profile-rails.json' with { type: 'json' };
import { type HandbookRange } from './nut-materials.ts';

/** What is usual for a profile rail with one carriage. SI. */
export interface ProfileRail {
  readonly form: string;
  /** The number that names the size. */
  readonly size: number;
  /** m. */
  readonly railWidth: number;
  /** kg/m. */
  readonly railMass: number;
  /** m. */
  readonly carriageLength: HandbookRange;
  /** C, N. */
  readonly dynamicRating: HandbookRange;
  /** Travel that C stands for, m. */
  readonly ratedTravel: number;
  /** C0, N. */
  readonly staticRating: HandbookRange;
  /** M0x, M0y, M0z, N·m. */
  readonly rollMoment: HandbookRange;
  readonly pitchMoment: HandbookRange;
  readonly yawMoment: HandbookRange;
  /** Of one carriage across the rail, N/m. */
  readonly stiffness: HandbookRange;
  /** Permitted height difference of two rails over their spacing. */
  readonly heightFactor: { readonly plain: number; readonly preloaded: number };
  /** Permitted parallelism of two rails, m; undefined where no table was read. */
  readonly parallelism: { readonly plain: number; readonly preloaded: number } | undefined;
}

/** Where the mounting limits come from. */
export const RAIL_MOUNTING_SOURCE: string = data.mounting_source;

/** All rails, by form and size. */
export const PROFILE_RAILS: readonly ProfileRail[] = data.rows.map((row) => {
  // Over ranges of a factor of two the middle of the logarithm is the fair guess.
  const range = ({ low, high }: { low: number; high: number }, unit = 1): HandbookRange => ({
    low: low * unit, nominal: Math.sqrt(low * high) * unit, high: high * unit, source: row.source, weak: row.weak,
  });
  return {
    form: row.form,
    size: row.size,
    railWidth: row.rail_width_mm * 1e-3,
    railMass: row.rail_mass_kg_per_m,
    carriageLength: range(row.carriage_length_mm, 1e-3),
    dynamicRating: range(row.dynamic_N),
    ratedTravel: row.rated_travel_km * 1e3,
    staticRating: range(row.static_N),
    rollMoment: range(row.roll_Nm),
    pitchMoment: range(row.pitch_Nm),
    yawMoment: range(row.yaw_Nm),
    stiffness: range(row.stiffness_N_per_um, 1e6),
    heightFactor: row.height_factor,
    parallelism: row.parallelism_um && { plain: row.parallelism_um.plain * 1e-6, preloaded: row.parallelism_um.preloaded * 1e-6 },
  };
});

/** The rail of that form and size; undefined for an unknown one. */
export const profileRail = (form: string, size: number): ProfileRail | undefined => PROFILE_RAILS.find((row) => row.form === form && row.size === size);

/** The next larger size of the same form; undefined for an unknown form or beyond the largest. */
export const nextLargerRail = (form: string, size: number): ProfileRail | undefined => PROFILE_RAILS.find((row) => row.form === form && row.size > size);
