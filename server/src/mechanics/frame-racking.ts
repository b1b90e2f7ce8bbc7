/** How stiff a box frame is against leaning over, in one direction. */
import { requireNotNegative, requirePositive, requireWhole } from './require-argument.ts';

/**
 * Sway stiffness of upright columns between a stiff bottom and a stiff top, with joints that give.
 *
 * Formula: k = n (12 E I/h³)/(1 + 6 E I/(k_θ h)).
 *
 * @param count - n columns, 1 or more
 * @param bendingStiffness - E I in the direction of the sway, N·m², above 0
 * @param height - h between the joints, m, above 0
 * @param jointStiffness - k_θ of each joint, N·m/rad, above 0; `Infinity` for a rigid one
 * @returns N/m
 * @throws RangeError outside the stated domains
 *
 * Source: slope-deflection of a column with equal springs at both ends; by hand.
 * Checked against: the frame solver (test/mechanics/frame-racking.test.ts); the solver ccx (test/independent/frame.test.ts).
 */
export function columnSwayStiffness(count: number, bendingStiffness: number, height: number, jointStiffness = Infinity): number {
  requireWhole('count', count, 1);
  requirePositive('bendingStiffness', bendingStiffness);
  requirePositive('height', height);
  if (!(jointStiffness > 0)) throw new RangeError(`jointStiffness must be greater than zero, got ${jointStiffness}`);
  return (count * ((12 * bendingStiffness) / height ** 3)) / (1 + (6 * bendingStiffness) / (jointStiffness * height));
}

/**
 * Joint stiffness at which a column sways twice as far as with rigid joints.
 *
 * Formula: k_θ = 6 E I/h.
 *
 * @param bendingStiffness - E I, N·m², above 0
 * @param height - h, m, above 0
 * @returns N·m/rad
 * @throws RangeError outside the stated domains
 *
 * Source: `columnSwayStiffness` at half.
 * Checked against: test/mechanics/frame-racking.test.ts.
 */
export function breakEvenJoint(bendingStiffness: number, height: number): number {
  requirePositive('bendingStiffness', bendingStiffness);
  requirePositive('height', height);
  return (6 * bendingStiffness) / height;
}

/**
 * Sway stiffness of one portal: two columns clamped at their feet, joined by a beam.
 *
 * Formula: k = (24 E I_c/h³) (1 + 6 ρ)/(4 + 6 ρ), ρ = (I_b/L)/(I_c/h) of beam over column: 24 E I/h³ for a rigid beam, 6 E I/h³ for one that does not bend the columns back.
 *
 * @param columnBending - E I of one column, N·m², above 0
 * @param height - h, m, above 0
 * @param beamBending - E I of the beam, N·m², zero or above
 * @param width - L between the columns, m, above 0
 * @returns N/m
 * @throws RangeError outside the stated domains
 *
 * Source: slope-deflection of the portal, by hand; limits 24 E I/h³ and 6 E I/h³ from a structural note on portals.
 * Checked against: the frame solver (test/mechanics/frame-racking.test.ts).
 */
export function portalSwayStiffness(columnBending: number, height: number, beamBending: number, width: number): number {
  requirePositive('columnBending', columnBending);
  requirePositive('height', height);
  requireNotNegative('beamBending', beamBending);
  requirePositive('width', width);
  const ratio = (beamBending / width) / (columnBending / height);
  return ((24 * columnBending) / height ** 3) * ((1 + 6 * ratio) / (4 + 6 * ratio));
}

/**
 * Sway stiffness that one diagonal brace adds.
 *
 * Formula: k = (E A/L_d) cos² θ = E A w²/(w² + h²)^(3/2).
 *
 * @param tensionStiffness - E A of the brace, N, above 0
 * @param width - w of the bay along the sway, m, above 0
 * @param height - h of the bay, m, above 0
 * @returns N/m; a flat strip works in tension only, so of two crossed ones one counts
 * @throws RangeError outside the stated domains
 *
 * Source: pull of a bar that is stretched by cos θ of the sway.
 * Checked against: by hand and the frame solver (test/mechanics/frame-racking.test.ts).
 */
export function braceSwayStiffness(tensionStiffness: number, width: number, height: number): number {
  requirePositive('tensionStiffness', tensionStiffness);
  requirePositive('width', width);
  requirePositive('height', height);
  return (tensionStiffness * width ** 2) / (width ** 2 + height ** 2) ** 1.5;
}

/**
 * Sway stiffness that a shear panel adds.
 *
 * Formula: k = η G t w/h.
 *
 * @param shearModulus - G, Pa, above 0
 * @param thickness - t, m, above 0
 * @param width - w along the sway, m, above 0
 * @param height - h, m, above 0
 * @param fastening - η, the share that its fasteners leave, above 0, at most 1
 * @returns N/m
 * @throws RangeError outside the stated domains
 *
 * Source: even shear of a plate. `PANEL_FASTENING` is common practice, no published source.
 * Checked against: by hand (test/mechanics/frame-racking.test.ts).
 */
export function panelSwayStiffness(shearModulus: number, thickness: number, width: number, height: number, fastening: number): number {
  requirePositive('shearModulus', shearModulus);
  requirePositive('thickness', thickness);
  requirePositive('width', width);
  requirePositive('height', height);
  requirePositive('fastening', fastening);
  if (fastening > 1) throw new RangeError(`fastening must be at most 1, got ${fastening}`);
  return (fastening * shearModulus * thickness * width) / height;
}

/** Share of a panel's own stiffness that screws and slot nuts leave. Common practice, no published source: 0.05 to 0.3. */
export const PANEL_FASTENING = { nominal: 0.15, low: 0.05, high: 0.3 } as const;

/**
 * Angular frequency at which a box sways on its columns, braces or panels.
 *
 * Formula: ω = √(k/(M + 13/35 m)), m the mass of what bends between bottom and top.
 *
 * @param stiffness - k of all that resists in this direction, N/m, above 0
 * @param topMass - M that moves with the top, moving masses up there too, kg, zero or above
 * @param columnMass - m of all columns, kg, zero or above; one of both masses above 0
 * @returns rad/s
 * @throws RangeError outside the stated domains
 *
 * Source: Rayleigh's quotient with the shape of a column clamped at the bottom and guided at the top.
 * Checked against: the frame solver (test/mechanics/frame-racking.test.ts).
 */
export function swayFrequency(stiffness: number, topMass: number, columnMass: number): number {
  requirePositive('stiffness', stiffness);
  requireNotNegative('topMass', topMass);
  requireNotNegative('columnMass', columnMass);
  requirePositive('topMass and columnMass together', topMass + columnMass);
  return Math.sqrt(stiffness / (topMass + (13 / 35) * columnMass));
}
