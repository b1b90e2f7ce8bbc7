import data from './data/tooth-materials.json' with { type: 'json' };
import type { HandbookRange } from './nut-materials.ts';

/** What the teeth of pinions and racks of a material bear. */
export interface ToothMaterial {
  readonly name: string;
  readonly title: string;
  /** Allowed bending stress at the root, as Lewis reckons it, Pa. */
  readonly stressLimit: HandbookRange;
}

/** All materials of teeth. */
export const TOOTH_MATERIALS: readonly ToothMaterial[] = data.rows.map(({ name, title, stress_limit_MPa: limit, source, weak }) => ({
  name, title, stressLimit: { low: limit.low * 1e6, nominal: limit.nominal * 1e6, high: limit.high * 1e6, source, weak },
}));

/** The row of a material; undefined for one that the table does not have. */
export const toothMaterial = (name: string): ToothMaterial | undefined => TOOTH_MATERIALS.find((row) => row.name === name);
