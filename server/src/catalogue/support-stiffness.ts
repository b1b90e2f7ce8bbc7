import type { HandbookRange } from './nut-materials.ts';
import data from './data/support-stiffness.json';

export type StiffnessKind = 'axial' | 'radial' | 'torsion';

/** Stiffness of a bearing, nut, block or coupling: wide ranges that a person should override with the maker's figure. */
export interface PartStiffness {
  readonly part: string;
  readonly title: string;
  readonly kind: StiffnessKind;
  /** N/m for axial and radial, N·m/rad for torsion. */
  readonly stiffness: HandbookRange;
}

const UNITS: Readonly<Record<string, { kind: StiffnessKind; unit: number }>> = {
  axial_N_per_um: { kind: 'axial', unit: 1e6 },
  radial_N_per_um: { kind: 'radial', unit: 1e6 },
  torsion_Nm_per_rad: { kind: 'torsion', unit: 1 },
};

/** All parts. */
export const PART_STIFFNESSES: readonly PartStiffness[] = data.parts.map((row) => {
  const unit = UNITS[row.kind];
  if (unit === undefined) throw new RangeError(`support-stiffness.json: ${row.part} has the unknown kind ${row.kind}`);
  return {
    part: row.part,
    title: row.title,
    kind: unit.kind,
    stiffness: {
      low: row.low * unit.unit,
      // Over ranges of a factor of two and more the middle of the logarithm is the fair guess.
      nominal: Math.sqrt(row.low * row.high) * unit.unit,
      high: row.high * unit.unit,
      source: row.source,
      weak: row.weak,
    },
  };
});

/** The part of that name; undefined for a name the catalogue does not have. */
export function partStiffness(part: string): PartStiffness | undefined {
  return PART_STIFFNESSES.find((one) => one.part === part);
}

/** The next stiffer part of the same kind by its low end; undefined for an unknown part or the stiffest. */
export function nextStifferPart(part: string): PartStiffness | undefined {
  const from = partStiffness(part);
  if (from === undefined) return undefined;
  return PART_STIFFNESSES.filter((one) => one.kind === from.kind && one.stiffness.low > from.stiffness.low).sort((a, b) => a.stiffness.low - b.stiffness.low)[0];
}
