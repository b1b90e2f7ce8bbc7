/**
 * Two standing motors that move a carriage along two axes x and y through two crossed belts.
 * Motor A runs with the sum of both ways, motor B with their difference. Other routings only swap signs.
 */
import { requireFinite, requireNotNegative, requirePositive } from './require-argument.ts';

/** Something along both axes: a way (m), a speed (m/s), an acceleration (m/s²), a force (N). */
export interface Along {
  readonly x: number;
  readonly y: number;
}

/** The same at the two belts, at the pitch line of their driving pulleys. */
export interface AtBelts {
  readonly a: number;
  readonly b: number;
}

/**
 * How far (or how fast) the belts run when the carriage moves.
 *
 * Formula: a = x + y, b = x − y.
 *
 * @param along - way, speed or acceleration of the carriage, any unit
 * @returns the same of the belts
 * @throws RangeError for what is no number
 *
 * Source: derived from the lengths of the runs of both belts.
 * Checked against: lengths of the belts in the plane (test/independent/crossed-belts.test.ts).
 */
export function beltsFromCarriage({ x, y }: Along): AtBelts {
  requireFinite('x', x);
  requireFinite('y', y);
  return { a: x + y, b: x - y };
}

/**
 * How far (or how fast) the carriage moves when the belts run.
 *
 * Formula: x = (a + b)/2, y = (a − b)/2.
 *
 * @param belts - way, speed or acceleration of the belts, any unit
 * @returns the same of the carriage
 * @throws RangeError for what is no number
 *
 * Source: inverse of `beltsFromCarriage`.
 * Checked against: test/independent/crossed-belts.test.ts.
 */
export function carriageFromBelts({ a, b }: AtBelts): Along {
  requireFinite('a', a);
  requireFinite('b', b);
  return { x: (a + b) / 2, y: (a - b) / 2 };
}

/**
 * Forces that both belts must pull with so that the axes get theirs.
 *
 * Formula: a = (F_x + F_y)/2, b = (F_x − F_y)/2.
 *
 * @param force - needed along the axes, N
 * @returns N at the pitch lines of the driving pulleys
 * @throws RangeError for what is no number
 *
 * Source: virtual work, F_a δa + F_b δb = F_x δx + F_y δy.
 * Checked against: pulls on carriage and gantry in the plane (test/independent/crossed-belts.test.ts).
 */
export function beltForces({ x, y }: Along): AtBelts {
  requireFinite('force along x', x);
  requireFinite('force along y', y);
  return { a: (x + y) / 2, b: (x - y) / 2 };
}

/**
 * What both rotors together add to the mass of either axis.
 *
 * Formula: 2 J/r², for x, for y and for every direction between.
 *
 * @param inertia - J of one motor with all that turns with it, at the pulley, kg·m², 0 or above
 * @param pulleyRadius - r, m, above 0
 * @returns kg
 * @throws RangeError outside the stated domains
 *
 * Source: ½ J/r² ((v_x + v_y)² + (v_x − v_y)²) = ½ (2 J/r²) (v_x² + v_y²).
 * Checked against: test/mechanics/crossed-belts.test.ts.
 */
export function rotorsAlongAxis(inertia: number, pulleyRadius: number): number {
  requireNotNegative('inertia', inertia);
  requirePositive('pulley radius', pulleyRadius);
  return (2 * inertia) / pulleyRadius ** 2;
}

/** One axis during a move. Signs: along its positive direction. */
export interface MovingAxis {
  /** Mass that moves along it, kg, above 0. */
  readonly mass: number;
  /** m/s² */
  readonly acceleration: number;
  /** m/s */
  readonly speed: number;
  /** Force that the drive must bring against friction and work, N, with the sign that it needs. */
  readonly resistance: number;
}

/** What one of the two motors has to do, at its driving pulley. */
export interface PulleyDuty {
  /** rad/s */
  readonly speed: number;
  /** N·m, of the sign of the speed when it drives. */
  readonly torque: number;
}

/**
 * Speed and torque at both driving pulleys in a move along both axes at once.
 *
 * Formula: a: ω = (v_x + v_y)/r, T = r (F_x + F_y)/2 + J (a_x + a_y)/r; b: with differences; F = m a + resistance.
 *
 * @param x - the one axis
 * @param y - the other
 * @param pulleyRadius - r, m, above 0
 * @param inertia - J of one motor with all that turns with it, at the pulley, kg·m², 0 or above
 * @returns both duties
 * @throws RangeError outside the stated domains
 *
 * Source: `beltsFromCarriage`, `beltForces`.
 * Checked against: energy balance (test/mechanics/crossed-belts.test.ts).
 */
export function pulleyDuties(x: MovingAxis, y: MovingAxis, pulleyRadius: number, inertia: number): { readonly a: PulleyDuty; readonly b: PulleyDuty } {
  requirePositive('mass along x', x.mass);
  requirePositive('mass along y', y.mass);
  requirePositive('pulley radius', pulleyRadius);
  requireNotNegative('inertia', inertia);
  const speed = beltsFromCarriage({ x: x.speed, y: y.speed });
  const turning = beltsFromCarriage({ x: x.acceleration, y: y.acceleration });
  const force = beltForces({ x: x.mass * x.acceleration + x.resistance, y: y.mass * y.acceleration + y.resistance });
  const duty = (side: 'a' | 'b'): PulleyDuty => ({ speed: speed[side] / pulleyRadius, torque: force[side] * pulleyRadius + (inertia * turning[side]) / pulleyRadius });
  return { a: duty('a'), b: duty('b') };
}

/** Stiffness of the carriage against its motors: F_x = xx x + xy y, F_y = xy x + yy y; N/m. */
export interface PlaneStiffness {
  readonly xx: number;
  readonly xy: number;
  readonly yy: number;
}

/**
 * Stiffness of the carriage on both belts.
 *
 * Formula: [[k_a + k_b, k_a − k_b], [k_a − k_b, k_a + k_b]].
 *
 * @param a - stiffness of belt A with its motor, N/m along the belt, above 0
 * @param b - of belt B
 * @returns stiffness matrix; `xy` is 0 only with equal belts
 * @throws RangeError for values that are not positive
 *
 * Source: second derivatives of the elastic energy ½ k_a (x + y)² + ½ k_b (x − y)².
 * Checked against: finite differences of the energy from belt lengths in the plane (test/independent/crossed-belts.test.ts).
 */
export function stiffnessOnCrossedBelts(a: number, b: number): PlaneStiffness {
  requirePositive('stiffness of belt a', a);
  requirePositive('stiffness of belt b', b);
  return { xx: a + b, xy: a - b, yy: a + b };
}

/**
 * How the carriage gives under a force.
 *
 * Formula: x = (F_x (k_a + k_b) − F_y (k_a − k_b))/(4 k_a k_b), and y likewise.
 *
 * @param a - stiffness of belt A with its motor, N/m, above 0
 * @param b - of belt B
 * @param force - on the carriage, N
 * @returns give along both axes, m
 * @throws RangeError outside the stated domains
 *
 * Source: inverse of `stiffnessOnCrossedBelts`.
 * Checked against: test/mechanics/crossed-belts.test.ts, linear solve by elimination.
 */
export function giveOnCrossedBelts(a: number, b: number, force: Along): Along {
  const { xx, xy } = stiffnessOnCrossedBelts(a, b);
  const whole = 4 * a * b;
  return { x: (force.x * xx - force.y * xy) / whole, y: (force.y * xx - force.x * xy) / whole };
}

/**
 * Give across over give along, when the force is along one axis.
 *
 * Formula: |k_a − k_b|/(k_a + k_b).
 *
 * @param a - stiffness of belt A with its motor, N/m, above 0
 * @param b - of belt B
 * @returns 0 with equal belts, below 1
 * @throws RangeError for values that are not positive
 *
 * Source: `giveOnCrossedBelts`.
 * Checked against: test/mechanics/crossed-belts.test.ts.
 */
export function crossCoupling(a: number, b: number): number {
  const { xx, xy } = stiffnessOnCrossedBelts(a, b);
  return Math.abs(xy) / xx;
}

/** What twists the gantry, and what holds it. */
export interface GantryTwist {
  /** From the idlers at the one end of the gantry to those at the other, m, above 0. */
  readonly width: number;
  /** Tension of a run of belt A less that of B, N, any sign, with the gantry held square. */
  readonly tensionDifference: number;
  /** E A of one belt, N, above 0. */
  readonly specificStiffness: number;
  /** Length of one belt, m, above 0. */
  readonly pathLength: number;
  /** Moment that the guides need for a unit of twist, N·m/rad, 0 or above. 0: the gantry turns freely, and only the belts hold it square. */
  readonly guideStiffness: number;
}

/**
 * How far unequal tensions twist the gantry.
 *
 * Formula: φ = ΔT w/(k_g + 2 E A w²/L). Each belt pulls the one end of the gantry forward and the other back; a twist lengthens the one belt by φ w and
 * shortens the other, so that without guides the twist is φ w = ΔT L/(2 E A).
 *
 * @param gantry - see `GantryTwist`
 * @returns rad, the sign of the difference
 * @throws RangeError outside the stated domains
 *
 * Source: balance of moments on the gantry.
 * Checked against: least energy of both belts in the plane (test/independent/crossed-belts.test.ts).
 */
export function twistFromTensions({ width, tensionDifference, specificStiffness, pathLength, guideStiffness }: GantryTwist): number {
  requirePositive('width', width);
  requireFinite('tension difference', tensionDifference);
  requirePositive('specific stiffness', specificStiffness);
  requirePositive('path length', pathLength);
  requireNotNegative('stiffness of the guides', guideStiffness);
  return (tensionDifference * width) / (guideStiffness + (2 * specificStiffness * width ** 2) / pathLength);
}

/**
 * How far the gantry stands askew when one belt is cut longer than the other and both are pulled to the same tension.
 *
 * Formula: φ = ΔL/(2 w), with guides that let it turn.
 *
 * @param lengthDifference - length of belt A between its clamps less that of B, less the difference of their ways, m
 * @param width - from the idlers at the one end of the gantry to those at the other, m, above 0
 * @returns rad
 * @throws RangeError outside the stated domains
 *
 * Source: a twist lengthens the way of the one belt by φ w and shortens that of the other by as much.
 * Checked against: lengths of the belts in the plane (test/independent/crossed-belts.test.ts).
 */
export function twistFromLengths(lengthDifference: number, width: number): number {
  requireFinite('length difference', lengthDifference);
  requirePositive('width', width);
  return lengthDifference / (2 * width);
}
