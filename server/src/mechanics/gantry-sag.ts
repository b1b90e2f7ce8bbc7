/** How a beam sags and twists as a tool travels along it. */
import { requireFinite, requireNotNegative, requirePositive } from './require-argument.ts';

/** The ends of a beam are somewhere between these two. */
export type BeamEnds = 'supported' | 'clamped';

/**
 * Sag of a beam under a load at the load.
 *
 * Formula: supported P a² b²/(3 E I L), clamped P a³ b³/(3 E I L³), b = L − a.
 *
 * @param ends - both supported, or both clamped
 * @param load - P, N
 * @param at - a from one end, m, 0 to L
 * @param length - L, m, above 0
 * @param bendingStiffness - E I, N·m², above 0
 * @returns m, with the sign of the load
 * @throws RangeError outside the stated domains
 *
 * Source: Roark's Formulas for Stress and Strain, beam table (from memory).
 * Checked against: the frame solver (test/mechanics/gantry-sag.test.ts); the slotted profile of a trade handbook (test/published/frame.test.ts).
 */
export function sagAtLoad(ends: BeamEnds, load: number, at: number, length: number, bendingStiffness: number): number {
  requireFinite('load', load);
  requirePositive('length', length);
  requirePositive('bendingStiffness', bendingStiffness);
  if (!(at >= 0 && at <= length)) throw new RangeError(`at must be 0 to ${length}, got ${at}`);
  const product = at * (length - at);
  return ends === 'supported' ? (load * product ** 2) / (3 * bendingStiffness * length) : (load * product ** 3) / (3 * bendingStiffness * length ** 3);
}

/**
 * Greatest sag under a beam's own weight.
 *
 * Formula: supported 5 w L⁴/(384 E I), clamped w L⁴/(384 E I).
 *
 * @param ends - both supported, or both clamped
 * @param weightPerLength - w, N/m, zero or above
 * @param length - L, m, above 0
 * @param bendingStiffness - E I, N·m², above 0
 * @returns m; it stays the same as the tool travels, so shims or a mesh of measured heights take it out
 * @throws RangeError outside the stated domains
 *
 * Source: Roark's Formulas for Stress and Strain, beam table (from memory).
 * Checked against: the frame solver (test/mechanics/gantry-sag.test.ts).
 */
export function ownWeightSag(ends: BeamEnds, weightPerLength: number, length: number, bendingStiffness: number): number {
  requireNotNegative('weightPerLength', weightPerLength);
  requirePositive('length', length);
  requirePositive('bendingStiffness', bendingStiffness);
  return ((ends === 'supported' ? 5 : 1) * weightPerLength * length ** 4) / (384 * bendingStiffness);
}

/**
 * Twist of a beam at a torque, both ends held against twisting.
 *
 * Formula: φ = T a b/(G J L).
 *
 * @param torque - T = m g e of a tool that overhangs by e, N·m
 * @param at - a from one end, m, 0 to L
 * @param length - L, m, above 0
 * @param torsionStiffness - G J, N·m², above 0
 * @returns rad; nose down for an overhung tool
 * @throws RangeError outside the stated domains
 *
 * Source: two shafts in parallel on either side.
 * Checked against: the frame solver (test/mechanics/gantry-sag.test.ts).
 */
export function twistAtTorque(torque: number, at: number, length: number, torsionStiffness: number): number {
  requireFinite('torque', torque);
  requirePositive('length', length);
  requirePositive('torsionStiffness', torsionStiffness);
  if (!(at >= 0 && at <= length)) throw new RangeError(`at must be 0 to ${length}, got ${at}`);
  return (torque * at * (length - at)) / (torsionStiffness * length);
}

export interface TravellingTool {
  /** Weight that travels, N, zero or above. */
  readonly load: number;
  /** Of its centre of gravity in front of the beam's shear centre, m. */
  readonly overhang: number;
  /** Of the tool's tip in front of the beam, m; usually the overhang again. */
  readonly reach: number;
  /** Between which places from one end, m. */
  readonly from: number;
  readonly to: number;
}

export interface SagOverTravel {
  /** Of bending and of the twist at the reach, between its least and its most over the travel, m. */
  readonly variation: number;
  /** The same of the bending alone, m. */
  readonly bendingVariation: number;
  /** Greatest twist over the travel, rad. */
  readonly twist: number;
  /** The twist between its least and its most, rad. */
  readonly twistVariation: number;
}

/**
 * How far the tip of a tool goes up and down as it travels along a gantry beam, by its own weight.
 *
 * Formula: y(a) = sag(a) + reach · φ(a); both rise to the middle, so the most is where the travel is nearest to it, the least at the farther end of the travel.
 *
 * @param ends - both supported, or both clamped
 * @param tool - weight, overhang, travel
 * @param length - L, m, above 0
 * @param bendingStiffness - E I, N·m², above 0
 * @param torsionStiffness - G J, N·m², above 0
 * @returns variation and twist, all zero or above for a tool in front
 * @throws RangeError outside the stated domains
 *
 * Source: `sagAtLoad`, `twistAtTorque`.
 * Checked against: test/mechanics/gantry-sag.test.ts.
 */
export function sagOverTravel(ends: BeamEnds, tool: TravellingTool, length: number, bendingStiffness: number, torsionStiffness: number): SagOverTravel {
  requireNotNegative('load', tool.load);
  if (!(tool.from <= tool.to)) throw new RangeError(`the travel must not end before it begins, got ${tool.from} to ${tool.to}`);
  const middle = Math.min(Math.max(length / 2, tool.from), tool.to);
  const edge = Math.abs(tool.from - length / 2) > Math.abs(tool.to - length / 2) ? tool.from : tool.to;
  const bending = (at: number): number => sagAtLoad(ends, tool.load, at, length, bendingStiffness);
  const twist = (at: number): number => twistAtTorque(tool.load * tool.overhang, at, length, torsionStiffness);
  const bendingVariation = bending(middle) - bending(edge);
  const twistVariation = twist(middle) - twist(edge);
  return { variation: bendingVariation + tool.reach * twistVariation, bendingVariation, twist: twist(middle), twistVariation };
}
