/** Sections of frame members. */
import { requirePositive } from './require-argument.ts';

/** What bending, pull and twist need of a section. */
export interface Section {
  /** m². */
  readonly area: number;
  /** Against bending in the plane of the up direction of the member, m⁴. */
  readonly secondUpright: number;
  /** Against bending sideways, m⁴. */
  readonly secondSideways: number;
  /** Saint-Venant torsion constant J, m⁴. */
  readonly torsion: number;
}

/**
 * Solid rectangle.
 *
 * Formula: A = b h, I = b h³/12 upright and h b³/12 sideways, J = a c³ (1/3 − 0.21 c/a (1 − c⁴/(12 a⁴))), c the shorter side.
 *
 * @param width - b sideways, m, above 0
 * @param height - h upright, m, above 0
 * @returns section
 * @throws RangeError outside the stated domains
 *
 * Source: Roark's Formulas for Stress and Strain, table of torsion, solid rectangle (from memory); within 0.5 % of the exact series (test/mechanics/frame-sections.test.ts).
 * Checked against: Saint-Venant's series (test/mechanics/frame-sections.test.ts).
 */
export function solidRectangle(width: number, height: number): Section {
  requirePositive('width', width);
  requirePositive('height', height);
  const a = Math.max(width, height);
  const c = Math.min(width, height);
  return {
    area: width * height,
    secondUpright: (width * height ** 3) / 12,
    secondSideways: (height * width ** 3) / 12,
    torsion: a * c ** 3 * (1 / 3 - 0.21 * (c / a) * (1 - c ** 4 / (12 * a ** 4))),
  };
}

/**
 * Round bar or round tube.
 *
 * Formula: A = π (D² − d²)/4, I = π (D⁴ − d⁴)/64, J = 2 I.
 *
 * @param outside - D, m, above 0
 * @param inside - d, m, zero (default) to below D
 * @returns section
 * @throws RangeError outside the stated domains
 *
 * Source: definition of the second moment of area.
 * Checked against: test/mechanics/frame-sections.test.ts.
 */
export function roundSection(outside: number, inside = 0): Section {
  requirePositive('outside', outside);
  if (!(inside >= 0 && inside < outside)) throw new RangeError(`inside must be zero or above and below outside, got ${inside}`);
  const second = (Math.PI * (outside ** 4 - inside ** 4)) / 64;
  return { area: (Math.PI * (outside ** 2 - inside ** 2)) / 4, secondUpright: second, secondSideways: second, torsion: 2 * second };
}

/**
 * Rectangular tube with even wall, its corners rounded.
 *
 * Formula: outer rectangle less inner one, each less its corners, A_corner = (1 − π/4) r² at its centroid; J = 4 A_m² t/s_m + s_m t³/3 on the middle line.
 *
 * @param width - outside, sideways, m
 * @param height - outside, upright, m
 * @param wall - t, m, above 0, below half of the smaller side
 * @param outerRadius - of the corners, m; default 2 t as for cold-formed tubes up to 6 mm wall; 0 for sharp corners
 * @returns section
 * @throws RangeError outside the stated domains
 *
 * Source: EN 10219-2, annex B (from memory): outer radius 2 t and inner t up to 6 mm; torsion constant of the middle line.
 * Checked against: EN 10219 table (test/published/frame.test.ts).
 */
export function rectangularTube(width: number, height: number, wall: number, outerRadius: number = 2 * wall): Section {
  requirePositive('width', width);
  requirePositive('height', height);
  requirePositive('wall', wall);
  if (2 * wall >= Math.min(width, height)) throw new RangeError(`wall must be below half of the smaller side, got ${wall}`);
  if (!(outerRadius >= 0 && 2 * outerRadius <= Math.min(width, height))) throw new RangeError(`outerRadius must be zero to half of the smaller side, got ${outerRadius}`);
  const innerRadius = Math.max(0, outerRadius - wall);
  const outer = roundedRectangle(width, height, outerRadius);
  const inner = roundedRectangle(width - 2 * wall, height - 2 * wall, innerRadius);
  const middle = (outerRadius + innerRadius) / 2;
  const [b, h] = [width - wall, height - wall];
  const line = 2 * (b + h) - 2 * middle * (4 - Math.PI);
  const enclosed = b * h - middle ** 2 * (4 - Math.PI);
  return {
    area: outer.area - inner.area,
    secondUpright: outer.upright - inner.upright,
    secondSideways: outer.sideways - inner.sideways,
    torsion: (4 * enclosed ** 2 * wall) / line + (line * wall ** 3) / 3,
  };
}

function roundedRectangle(width: number, height: number, radius: number): { area: number; upright: number; sideways: number } {
  const cut = (1 - Math.PI / 4) * radius ** 2;
  // The piece between a square corner and its quarter circle: centroid (10 − 3π)/(12 − 3π) r from both sides, and its own second moment about it, both by integration.
  const centroid = ((10 - 3 * Math.PI) / (12 - 3 * Math.PI)) * radius;
  const own = (1 / 3 - Math.PI / 16 - 1 / (9 * (4 - Math.PI))) * radius ** 4;
  const second = (b: number, h: number): number => (b * h ** 3) / 12 - 4 * (own + cut * (h / 2 - centroid) ** 2);
  return { area: width * height - 4 * cut, upright: second(width, height), sideways: second(height, width) };
}
