import { braceSwayStiffness, columnSwayStiffness, panelSwayStiffness } from '../../mechanics/frame-racking.ts';
import { unable, type Computed } from '../figure.ts';

/** Columns of a box. */
export const COLUMNS = 4;

/** What keeps a box from leaning over in one direction. */
export const rackingNeeds = (along: 'x' | 'y') =>
  ({
    second: `frame-box.second-moment-${along}`, way: along === 'x' ? 'frame-box.width' : 'frame-box.depth', height: 'frame-box.height', modulus: 'frame-box.youngs-modulus', joint: 'frame-box.joint-stiffness',
    braceArea: 'frame-box.brace-area', braceShare: 'frame-box.brace-fastening', shearModulus: 'frame-box.panel-shear-modulus', thickness: 'frame-box.panel-thickness', panelShare: 'frame-box.panel-fastening',
  }) as const;

export interface RackingValues {
  readonly second: number; readonly way: number; readonly height: number; readonly modulus: number; readonly joint: number; readonly braceArea: number; readonly braceShare: number;
  readonly shearModulus: number; readonly thickness: number; readonly panelShare: number; readonly braced: string;
}

/** Stiffness of columns and of what braces them, N/m; a reason where there is none. */
export function rackingStiffness({ second, way, height, modulus, joint, braceArea, braceShare, shearModulus, thickness, panelShare, braced }: RackingValues): Computed {
  if (!(second > 0 && way > 0 && height > 0 && modulus > 0)) return unable('sizes and section of the box must be above zero');
  // Columns on pins lean over without resistance.
  const columns = joint > 0 ? columnSwayStiffness(COLUMNS, modulus * second, height, joint) : 0;
  const diagonals = braced === 'one-diagonal' ? 1 : braced === 'two-diagonals' ? 2 : 0;
  const isPanel = braced === 'panel';
  if (diagonals > 0 && !(braceArea > 0 && braceShare > 0)) return unable('the section of the brace must be above zero');
  if (isPanel && !(shearModulus > 0 && thickness > 0 && panelShare > 0)) return unable('the panel must be thicker than nothing');
  const braces = diagonals > 0 ? diagonals * braceShare * braceSwayStiffness(modulus * braceArea, way, height) : 0;
  const panel = isPanel ? panelSwayStiffness(shearModulus, thickness, way, height, Math.min(1, panelShare)) : 0;
  return columns + braces + panel;
}
