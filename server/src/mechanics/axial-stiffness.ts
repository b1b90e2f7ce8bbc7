import { requirePositive } from './require-argument.ts';

/** One link of the chain between what commands the position and the load. */
export interface StiffnessLink {
  /** Plain name, as shown. */
  readonly name: string;
  /** Axial stiffness seen at the load, N/m, above 0; `Infinity` for a rigid link. */
  readonly stiffness: number;
}

export interface StiffnessChain {
  /** Stiffness of all links in series, N/m. */
  readonly total: number;
  /** Name of the link that gives most. */
  readonly softest: string;
  /** Share of each link in the whole give, 0 to 1, adding up to 1 (all 0 when every link is rigid), softest first. */
  readonly shares: readonly { readonly name: string; readonly share: number }[];
}

/**
 * Stiffness of links in series, and which of them gives most.
 *
 * Formula: 1/k = sum of 1/k_i.
 *
 * @param links - at least one
 * @returns total in N/m (`Infinity` when every link is rigid), softest link, shares of the give
 * @throws RangeError for an empty list or stiffnesses that are not positive
 *
 * Source: springs in series, by hand.
 * Checked against: test/mechanics/screw-axis.test.ts.
 */
export function stiffnessInSeries(links: readonly StiffnessLink[]): StiffnessChain {
  if (links.length === 0) throw new RangeError('stiffnessInSeries: at least one link is needed');
  let give = 0;
  for (const link of links) {
    requireStiffness(link.name, link.stiffness);
    give += 1 / link.stiffness;
  }
  const ordered = [...links].sort((a, b) => a.stiffness - b.stiffness);
  return {
    total: 1 / give,
    softest: (ordered[0] as StiffnessLink).name,
    shares: ordered.map(({ name, stiffness }) => ({ name, share: give === 0 ? 0 : 1 / stiffness / give })),
  };
}

/**
 * Axial stiffness of the screw between nut and bearing.
 *
 * Formula: held at one end: E A/x. Held at both ends: E A (1/x + 1/(L - x)), least at mid-span: 4 E A/L.
 *
 * @param tensionStiffness - E A of the bending diameter, N, above 0
 * @param nutDistance - x from the (first) axially fixed bearing to the nut, m, above 0
 * @param secondBearing - distance L between both axially fixed bearings, m, above x; left out when one end only is fixed
 * @returns stiffness in N/m
 * @throws RangeError outside the stated domains
 *
 * Source: ISO 3408-4:2006 (form as quoted); bars in series and parallel, by hand.
 * Checked against: test/mechanics/screw-axis.test.ts.
 */
export function screwAxialStiffness(tensionStiffness: number, nutDistance: number, secondBearing?: number): number {
  requirePositive('tensionStiffness', tensionStiffness);
  requirePositive('nutDistance', nutDistance);
  if (secondBearing === undefined) return tensionStiffness / nutDistance;
  if (!(secondBearing > nutDistance)) throw new RangeError('screwAxialStiffness: the second bearing must stand beyond the nut');
  return tensionStiffness * (1 / nutDistance + 1 / (secondBearing - nutDistance));
}

/**
 * A torsion stiffness as the load feels it through the lead.
 *
 * Formula: k = k_theta (2 pi/l)².
 *
 * @param torsionStiffness - k_theta, N·m/rad, above 0, `Infinity` allowed
 * @param lead - l, m of travel per turn of the twisted part, above 0
 * @returns axial stiffness in N/m
 * @throws RangeError outside the stated domains
 *
 * Source: a twist theta moves the load theta l/(2 pi) under torque F l/(2 pi), by hand.
 * Checked against: test/mechanics/screw-axis.test.ts.
 */
export function torsionAlongAxis(torsionStiffness: number, lead: number): number {
  requireStiffness('torsionStiffness', torsionStiffness);
  requirePositive('lead', lead);
  return torsionStiffness * ((2 * Math.PI) / lead) ** 2;
}

/**
 * Torsion stiffness of the stretch of screw between drive and nut.
 *
 * Formula: k_theta = G I_p/x.
 *
 * @param torsionStiffness - G I_p of the bending diameter, N·m², above 0
 * @param driveDistance - x from the driven end to the nut, m, above 0
 * @returns N·m/rad
 * @throws RangeError for values that are not positive
 *
 * Source: torsion of a round bar, any textbook on strength of materials.
 * Checked against: test/mechanics/screw-axis.test.ts.
 */
export function shaftTorsionStiffness(torsionStiffness: number, driveDistance: number): number {
  requirePositive('torsionStiffness', torsionStiffness);
  requirePositive('driveDistance', driveDistance);
  return torsionStiffness / driveDistance;
}

/**
 * The magnetic spring of a stepping motor about its commanded position.
 *
 * Formula: k_theta = N_r T, from T sin(N_r theta) at small angles.
 *
 * @param holdingTorque - T at the set current, N·m, above 0
 * @param rotorTeeth - N_r, 50 for a step of 1.8°, 100 for 0.9°, above 0
 * @returns N·m/rad
 * @throws RangeError for values that are not positive
 *
 * Source: Acarnley, Stepping Motors: a guide to theory and practice, static torque characteristic (from memory).
 * Checked against: test/mechanics/screw-axis.test.ts.
 */
export function magneticSpring(holdingTorque: number, rotorTeeth: number): number {
  requirePositive('holdingTorque', holdingTorque);
  requirePositive('rotorTeeth', rotorTeeth);
  return rotorTeeth * holdingTorque;
}

/**
 * Resonance of the moved mass on the stiffness of its drive.
 *
 * Formula: omega = sqrt(k/m).
 *
 * @param stiffness - k, N/m, above 0
 * @param mass - m, kg, above 0
 * @returns angular frequency in rad/s, rotor taken as held by its field
 * @throws RangeError for values that are not positive
 *
 * Source: Den Hartog, Mechanical Vibrations, chapter 2 (from memory).
 * Checked against: test/mechanics/screw-axis.test.ts, Meriam and Kraige, sample problem 8/1.
 */
export function axialResonance(stiffness: number, mass: number): number {
  requirePositive('stiffness', stiffness);
  requirePositive('mass', mass);
  return Math.sqrt(stiffness / mass);
}

function requireStiffness(name: string, value: number): void {
  if (!(value > 0)) throw new RangeError(`stiffness of ${name} must be greater than zero, got ${value}`);
}
