/**
 * The body of a screw as a round bar: which diameter bends, stretches and twists, and which one weighs.
 * A thread's ridges add mass but hardly any stiffness, so the two differ.
 */
export interface ScrewBody {
  /** Bending stiffness E I, N·m². */
  readonly bendingStiffness: number;
  /** Mass per length, kg/m. */
  readonly massPerLength: number;
  /** Tension stiffness of one metre, E A, N. */
  readonly tensionStiffness: number;
  /** Torsion stiffness of one metre, G I_p, N·m². */
  readonly torsionStiffness: number;
}

export interface EquivalentDiameters {
  /** Diameter of the plain bar that bends, stretches and twists like the screw, m. */
  readonly bending: number;
  /** Diameter of the plain bar that weighs as much as the screw, m. */
  readonly mass: number;
}

export interface ScrewMaterial {
  /** Young's modulus, Pa. */
  readonly youngsModulus: number;
  /** Shear modulus, Pa. */
  readonly shearModulus: number;
  /** Density, kg/m³. */
  readonly density: number;
}

/**
 * Equivalent plain diameters of a trapezoidal screw by the safe, simple rule: the root bends, the pitch diameter weighs.
 *
 * Formula: bending d3, mass d2; whirl then goes with d3²/d2.
 *
 * @param rootDiameter - d3, m, above 0
 * @param pitchDiameter - d2, m, at least d3
 * @returns equivalent diameters in m
 * @throws RangeError when the diameters are not positive or d2 is below d3
 *
 * Source: common practice; 7 to 11 % on the safe side for whirl against an axisymmetric ring-groove finite-element model (our reference, screws and nuts, second reading 3.1).
 * Checked against: test/mechanics/screw-axis.test.ts.
 */
export function safeDiametersOfTrapezoidalScrew(rootDiameter: number, pitchDiameter: number): EquivalentDiameters {
  if (!(rootDiameter > 0) || !(pitchDiameter >= rootDiameter)) throw new RangeError('screw diameters: 0 < d3 <= d2 is needed');
  return { bending: rootDiameter, mass: pitchDiameter };
}

/**
 * Equivalent plain diameters of a trapezoidal screw with the small stiffness of its ridges counted.
 *
 * Formula: bending d3 + 0.12 P, mass d2 - 0.06 mm.
 *
 * @param rootDiameter - d3, m, above 0
 * @param pitchDiameter - d2, m, above d3 + 0.06 mm
 * @param pitch - P, m, above 0, at most 2 (d2 - d3); for multi-start screws the pitch, not the lead
 * @returns equivalent diameters in m; the helix angle is ignored: about ±5 % on whirl for leads as large as the diameter
 * @throws RangeError outside the stated domain
 *
 * Source: axisymmetric ring-groove finite elements for Tr8 to Tr20 (our reference, screws and nuts, second reading 3.1); no published source.
 * Checked against: test/mechanics/screw-axis.test.ts.
 */
export function refinedDiametersOfTrapezoidalScrew(rootDiameter: number, pitchDiameter: number, pitch: number): EquivalentDiameters {
  if (!(rootDiameter > 0) || !(pitchDiameter > rootDiameter + 0.06e-3) || !(pitch > 0) || pitch > 2 * (pitchDiameter - rootDiameter)) {
    throw new RangeError('screw diameters: 0 < d3 < d2 - 0.06 mm and 0 < P <= 2 (d2 - d3) are needed');
  }
  return { bending: rootDiameter + 0.12 * pitch, mass: pitchDiameter - 0.06e-3 };
}

/**
 * Equivalent plain diameters of a ball screw: the root bends, the full nominal diameter is taken to weigh.
 *
 * Formula: safe: bending d_r, mass d0. Refined: bending d_r + 0.25 mm, mass d0 - 0.7 mm.
 *
 * @param rootDiameter - d_r, m, above 0
 * @param nominalDiameter - d0, m, above d_r
 * @param how - `safe` for a check, `refined` for the likely value
 * @returns equivalent diameters in m
 * @throws RangeError when the diameters are not 0 < d_r < d0, or so close that the refined pair would cross
 *
 * Source: estimate (our reference, screws and nuts, second reading 3.1), no published source.
 * Checked against: test/mechanics/screw-axis.test.ts.
 */
export function diametersOfBallScrew(rootDiameter: number, nominalDiameter: number, how: 'safe' | 'refined'): EquivalentDiameters {
  if (!(rootDiameter > 0) || !(nominalDiameter > rootDiameter)) throw new RangeError('ball screw diameters: 0 < root < nominal is needed');
  if (how === 'safe') return { bending: rootDiameter, mass: nominalDiameter };
  // Small screws with shallow grooves: the ridges cannot add more than a third, nor lack more than half, of the groove's depth.
  const depth = nominalDiameter - rootDiameter;
  return { bending: rootDiameter + Math.min(0.25e-3, depth / 3), mass: nominalDiameter - Math.min(0.7e-3, depth / 2) };
}

/**
 * Stiffness and mass of a screw from its equivalent diameters, solid, hollow, or with a core of another material.
 *
 * Formula: EI = E pi (d_b^4 - b^4)/64 + E_c pi b^4/64; m = rho pi (d_m² - b²)/4 + rho_c pi b²/4; EA and G I_p likewise.
 *
 * @param diameters - equivalent diameters, m
 * @param material - of the screw
 * @param bore - diameter of the hole along the axis, m, 0 (the default) to below the bending diameter
 * @param core - material that fills the hole and is bonded to it; left out for an empty hole
 * @returns stiffness and mass per length, SI
 * @throws RangeError for diameters outside the stated domain or material values that are not positive
 *
 * Source: sections of a circle and a ring, any textbook on strength of materials (Timoshenko and Gere, Mechanics of Materials, from memory).
 * Checked against: test/published/column-buckling.test.ts (second moments of a trade table), test/mechanics/screw-axis.test.ts.
 */
export function screwBody(diameters: EquivalentDiameters, material: ScrewMaterial, bore = 0, core?: ScrewMaterial): ScrewBody {
  const { bending, mass } = diameters;
  if (!(bending > 0) || !(mass >= bending) || !(bore >= 0) || bore >= bending) {
    throw new RangeError('screw body: 0 <= bore < bending diameter <= mass diameter is needed');
  }
  for (const one of core === undefined ? [material] : [material, core]) {
    if (!(one.youngsModulus > 0) || !(one.shearModulus > 0) || !(one.density > 0)) throw new RangeError('screw body: material values must be above 0');
  }
  const square = Math.PI / 4;
  const fourth = Math.PI / 64;
  return {
    bendingStiffness: fourth * (material.youngsModulus * (bending ** 4 - bore ** 4) + (core?.youngsModulus ?? 0) * bore ** 4),
    massPerLength: square * (material.density * (mass ** 2 - bore ** 2) + (core?.density ?? 0) * bore ** 2),
    tensionStiffness: square * (material.youngsModulus * (bending ** 2 - bore ** 2) + (core?.youngsModulus ?? 0) * bore ** 2),
    torsionStiffness: 2 * fourth * (material.shearModulus * (bending ** 4 - bore ** 4) + (core?.shearModulus ?? 0) * bore ** 4),
  };
}
