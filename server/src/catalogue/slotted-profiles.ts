import data from './data/slotted-profiles.json' with { type: 'json' };
import type { HandbookRange } from './nut-materials.ts';

/** A slotted aluminium profile; the longer side stands upright. */
export interface SlottedProfile {
  readonly name: string;
  readonly title: string;
  /** m. */
  readonly width: number;
  /** m. */
  readonly height: number;
  /** kg/m. */
  readonly massPerLength: HandbookRange;
  /** m⁴. */
  readonly secondUpright: HandbookRange;
  /** m⁴. */
  readonly secondSideways: HandbookRange;
  /** m⁴. */
  readonly torsion: HandbookRange;
}

const range = ([low, high]: readonly number[], unit: number, source: string): HandbookRange => {
  if (low === undefined || high === undefined) throw new RangeError('a range of the catalogue has two ends');
  return { low: low * unit, nominal: ((low + high) / 2) * unit, high: high * unit, source, weak: true };
};

/** All slotted profiles; every value is weak. */
export const SLOTTED_PROFILES: readonly SlottedProfile[] = data.rows.map((row) => {
  const sideways = range(row.second_sideways_cm4, 1e-8, data.source);
  const [least = 0, most = 0] = data.torsion_share;
  return {
    name: row.name,
    title: row.title,
    width: row.width_mm / 1000,
    height: row.height_mm / 1000,
    massPerLength: range(row.mass_kg_per_m, 1, data.source),
    secondUpright: range(row.second_upright_cm4, 1e-8, data.source),
    secondSideways: sideways,
    torsion: range([least * sideways.low, most * sideways.high], 1, data.torsion_source),
  };
});

/** The profile of that name; undefined for one that the table does not have. */
export const slottedProfile = (name: string): SlottedProfile | undefined => SLOTTED_PROFILES.find((row) => row.name === name);
