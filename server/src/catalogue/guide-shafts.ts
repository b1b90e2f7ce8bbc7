import data from './data/guide-shafts.json' with { type: 'json' };
import { type HandbookRange } from './nut-materials.ts';

/** A usual size of round guide shaft. SI. */
export interface GuideShaftSize {
  /** m. */
  readonly diameter: number;
  /** How far below the nominal diameter tolerance h6 lets it be, m. */
  readonly belowNominal: number;
}

/** What a shaft is made of. SI. */
export interface GuideShaftMaterial {
  readonly material: string;
  readonly title: string;
  /** E, Pa. */
  readonly modulus: HandbookRange;
  /** kg/m³. */
  readonly density: HandbookRange;
  /** Of the core, Pa. */
  readonly yieldStress: HandbookRange;
}

/** All sizes, from the thinnest. */
export const GUIDE_SHAFT_SIZES: readonly GuideShaftSize[] = data.rows.map((row) => ({ diameter: row.diameter_mm * 1e-3, belowNominal: -row.h6_lower_um * 1e-6 }));

/** Where the sizes and their tolerance come from. */
export const GUIDE_SHAFT_SOURCES: { readonly diameters: string; readonly tolerance: string; readonly weak: boolean } = {
  diameters: data.diameters_source, tolerance: data.tolerance_source, weak: data.weak,
};

/** All materials. */
export const GUIDE_SHAFT_MATERIALS: readonly GuideShaftMaterial[] = data.materials.map((row) => {
  const range = (raw: { low: number; nominal: number; high: number }, unit: number): HandbookRange => ({
    low: raw.low * unit, nominal: raw.nominal * unit, high: raw.high * unit, source: row.source, weak: row.weak,
  });
  return { material: row.material, title: row.title, modulus: range(row.modulus_GPa, 1e9), density: range(row.density_kg_per_m3, 1), yieldStress: range(row.yield_MPa, 1e6) };
});

/** The material of that name; undefined for an unknown one. */
export const guideShaftMaterial = (material: string): GuideShaftMaterial | undefined => GUIDE_SHAFT_MATERIALS.find((row) => row.material === material);

/** The next thicker size; undefined beyond the thickest. `diameter` in m. */
export const nextThickerShaft = (diameter: number): GuideShaftSize | undefined => GUIDE_SHAFT_SIZES.find((row) => row.diameter > diameter * (1 + 1e-9));
