import data from './data/guide-stiffness.json' with { type: 'json' };
import type { HandbookRange } from './nut-materials.ts';

/** How far one part of a guide gives sideways. */
export interface GuideStiffness {
  readonly name: string;
  readonly title: string;
  /** N/m. */
  readonly stiffness: HandbookRange;
}

/** All parts; orders of magnitude, the middle is the geometric one. */
export const GUIDE_STIFFNESSES: readonly GuideStiffness[] = data.rows.map((row) => {
  const [low = 0, high = 0] = row.stiffness_N_per_um;
  return { name: row.name, title: row.title, stiffness: { low: low * 1e6, nominal: Math.sqrt(low * high) * 1e6, high: high * 1e6, source: data.source, weak: true } };
});

/** The part of that name; undefined for one that the table does not have. */
export const guideStiffness = (name: string): GuideStiffness | undefined => GUIDE_STIFFNESSES.find((row) => row.name === name);
