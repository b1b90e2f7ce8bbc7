/** Two drives, each with its own motor, that move one gantry: how they share, and how far it stands askew when they differ. */
import { requireFinite, requireNotNegative, requirePositive } from './require-argument.ts';

/** What rides on two drives, and where. */
export interface GantryLoad {
  /** Everything that the two drives move, the carriage included, kg, above 0. */
  readonly mass: number;
  /** The part of it that travels across, kg, 0 to `mass`. */
  readonly carriageMass: number;
  /** Distance of the two drives across, m, above 0. */
  readonly spacing: number;
  /** How far the carriage goes from the middle, m, 0 or above; beyond half the spacing it overhangs. */
  readonly offCentre: number;
}

/**
 * Share of the whole load that the more loaded drive carries while both run together.
 *
 * Formula: ½ + (m_c/m) (e/s). The rest of the mass is taken as lying in the middle.
 *
 * @param load - see `GantryLoad`
 * @returns 0.5 or above; above 1 when the carriage overhangs so far that the other drive is pulled the other way
 * @throws RangeError outside the stated domains
 *
 * Source: balance of moments of a stiff beam on two supports; both ends have the same acceleration, so its inertia about the middle does nothing. The guides
 * are taken not to help.
 * Checked against: reactions by elimination (test/mechanics/gantry.test.ts).
 */
export function worstLoadShare({ mass, carriageMass, spacing, offCentre }: GantryLoad): number {
  requirePositive('mass', mass);
  requireNotNegative('carriage mass', carriageMass);
  requirePositive('spacing', spacing);
  requireNotNegative('way from the middle', offCentre);
  if (carriageMass > mass) throw new RangeError(`the carriage ${carriageMass} must not be heavier than all that moves ${mass}`);
  return 0.5 + (carriageMass / mass) * (offCentre / spacing);
}

/** A gantry out of square. */
export interface Skew {
  /** How far one end is ahead of the other, m, 0 or above. */
  readonly distance: number;
  /** rad */
  readonly angle: number;
}

const skew = (distance: number, spacing: number): Skew => ({ distance: Math.abs(distance), angle: Math.abs(distance) / spacing });

/**
 * Skew because the two drives give by different amounts under the load of one side each.
 *
 * Formula: δ = |F_1/k_1 − F_2/k_2|, φ = δ/s.
 *
 * @param forces - on the two drives, N
 * @param stiffnesses - of the two drives along the axis, N/m, above 0
 * @param spacing - s, m, above 0
 * @returns skew with guides that let it turn; stiffer guides make it less
 * @throws RangeError outside the stated domains
 *
 * Source: springs; small angles.
 * Checked against: test/mechanics/gantry.test.ts.
 */
export function skewFromGive(forces: readonly [number, number], stiffnesses: readonly [number, number], spacing: number): Skew {
  forces.forEach((force) => requireFinite('force', force));
  stiffnesses.forEach((stiffness) => requirePositive('stiffness', stiffness));
  requirePositive('spacing', spacing);
  return skew(forces[0] / stiffnesses[0] - forces[1] / stiffnesses[1], spacing);
}

/**
 * Skew after one of the two motors has slipped by whole electrical periods.
 *
 * Formula: δ = n · 4 p/(s i): a stepping motor that slips falls into step again four full steps away (or a multiple of that).
 *
 * @param travelPerMotorTurn - p/i, m, above 0
 * @param stepsPerRevolution - full steps for a turn of the motor, above 0
 * @param spacing - of the drives, m, above 0
 * @param periods - n, 1 or above; left out: 1
 * @returns skew with guides and drives that let it turn
 * @throws RangeError outside the stated domains
 *
 * Source: the torque of a two-phase motor repeats after four full steps, Acarnley, Stepping Motors, chapter 3.
 * Checked against: test/mechanics/gantry.test.ts.
 */
export function skewFromSlip(travelPerMotorTurn: number, stepsPerRevolution: number, spacing: number, periods = 1): Skew {
  requirePositive('travel per turn', travelPerMotorTurn);
  requirePositive('steps per revolution', stepsPerRevolution);
  requirePositive('spacing', spacing);
  requirePositive('periods', periods);
  return skew((periods * 4 * travelPerMotorTurn) / stepsPerRevolution, spacing);
}

/**
 * Skew because the two drives travel a little differently for the same turns.
 *
 * Formula: at most 2 e, when one is long by its tolerance where the other is short.
 *
 * @param error - e, most that one drive is off over the travel, m, 0 or above
 * @param spacing - s, m, above 0
 * @returns skew with guides that let it turn
 * @throws RangeError outside the stated domains
 *
 * Source: worst case of two independent tolerances.
 * Checked against: test/mechanics/gantry.test.ts.
 */
export function skewFromPitchErrors(error: number, spacing: number): Skew {
  requireNotNegative('error', error);
  requirePositive('spacing', spacing);
  return skew(2 * error, spacing);
}

/** Two drives that want the gantry askew, and guides that do not let it. */
export interface RackedGantry {
  /** How far one drive is ahead of the other, m. */
  readonly lead: number;
  /** Stiffness of one drive along the axis, N/m, above 0. */
  readonly stiffness: number;
  /** Distance of the two drives across, m, above 0. */
  readonly spacing: number;
  /** Distance of the two bearings on one rail along the axis, m, above 0. */
  readonly bearingDistance: number;
  /** How many rails take the moment, 1 or 2. */
  readonly rails: number;
}

/** What racking does where the guides are rigid. */
export interface Racking {
  /** With which each drive pushes the gantry against the other, N. */
  readonly driveForce: number;
  /** Across each bearing of a rail, N. */
  readonly guideForce: number;
}

/**
 * Force between drives and guides when the drives stand apart and rigid guides keep the gantry square.
 *
 * Formula: each drive gives half: F = k δ/2; the couple F s is taken by rails with bearings b apart: N = F s/(n b).
 *
 * @param racked - see `RackedGantry`
 * @returns forces; an upper bound, since real guides give
 * @throws RangeError outside the stated domains
 *
 * Source: balance of moments.
 * Checked against: virtual work (test/mechanics/gantry.test.ts).
 */
export function rackingForces({ lead, stiffness, spacing, bearingDistance, rails }: RackedGantry): Racking {
  requireFinite('lead', lead);
  requirePositive('stiffness', stiffness);
  requirePositive('spacing', spacing);
  requirePositive('distance of the bearings', bearingDistance);
  requirePositive('rails', rails);
  const driveForce = (stiffness * Math.abs(lead)) / 2;
  return { driveForce, guideForce: (driveForce * spacing) / (rails * bearingDistance) };
}

/**
 * Frequency at which a gantry swings about its middle on its two drives.
 *
 * Formula: ω = √(k s²/(2 I)), I = m_b w²/12 + m_c e².
 *
 * @param stiffness - k of one drive along the axis, N/m, above 0
 * @param load - see `GantryLoad`; the carriage at its farthest
 * @param beamLength - w of the part that does not travel across, taken as an even beam, m, above 0
 * @returns rad/s, the guides taken not to help
 * @throws RangeError outside the stated domains
 *
 * Source: rigid body on two springs, Rao, Mechanical Vibrations, chapter 5 (from memory); coupling with the motion along the axis left out.
 * Checked against: two-coordinate model by `vibrationModes` with the carriage in the middle (test/mechanics/gantry.test.ts).
 */
export function skewResonance(stiffness: number, load: GantryLoad, beamLength: number): number {
  requirePositive('stiffness', stiffness);
  requirePositive('beam length', beamLength);
  worstLoadShare(load);
  const inertia = ((load.mass - load.carriageMass) * beamLength ** 2) / 12 + load.carriageMass * load.offCentre ** 2;
  requirePositive('inertia about the middle', inertia);
  return Math.sqrt((stiffness * load.spacing ** 2) / (2 * inertia));
}
