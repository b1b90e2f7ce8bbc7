import type { HandbookRange } from './nut-materials.ts';
import data from './data/materials.json';

/** A material of screws, frames and plates; every value a range over the usual alloys and tempers. */
export interface Material {
  readonly name: string;
  readonly title: string;
  /** Pa. */
  readonly youngsModulus: HandbookRange;
  /** Pa. */
  readonly shearModulus: HandbookRange;
  /** kg/m³. */
  readonly density: HandbookRange;
  /** 1/K. */
  readonly expansion: HandbookRange;
  readonly poissonRatio: HandbookRange;
  /** Pa. */
  readonly yieldStrength: HandbookRange;
  readonly source: string;
  readonly weak: boolean;
}

/** All materials. */
export const MATERIALS: readonly Material[] = data.materials.map((row) => {
  const range = (ends: readonly number[], unit = 1): HandbookRange => {
    const [low, high] = ends as [number, number];
    return { low: low * unit, nominal: ((low + high) / 2) * unit, high: high * unit, source: row.source, weak: row.weak };
  };
  return {
    name: row.name,
    title: row.title,
    youngsModulus: range(row.youngs_modulus_GPa, 1e9),
    shearModulus: range(row.shear_modulus_GPa, 1e9),
    density: range(row.density_kg_per_m3),
    expansion: range(row.expansion_per_K),
    poissonRatio: range(row.poisson_ratio),
    yieldStrength: range(row.yield_strength_MPa, 1e6),
    source: row.source,
    weak: row.weak,
  };
});

/** The material of that name; undefined for a name the catalogue does not have. */
export function material(name: string): Material | undefined {
  return MATERIALS.find((one) => one.name === name);
}
