import data from './data/panel-materials.json' with { type: 'json' };
import type { HandbookRange } from './nut-materials.ts';

/** A sheet that closes a side of a frame. */
export interface PanelMaterial {
  readonly name: string;
  readonly title: string;
  /** In its plane, Pa. */
  readonly shearModulus: HandbookRange;
}

/** All panels. */
export const PANEL_MATERIALS: readonly PanelMaterial[] = data.rows.map(({ name, title, shear_modulus_GPa: ends, source, weak }) => {
  const [low = 0, high = 0] = ends;
  return { name, title, shearModulus: { low: low * 1e9, nominal: ((low + high) / 2) * 1e9, high: high * 1e9, source, weak } };
});

/** The panel of that name; undefined for one that the table does not have. */
export const panelMaterial = (name: string): PanelMaterial | undefined => PANEL_MATERIALS.find((row) => row.name === name);
