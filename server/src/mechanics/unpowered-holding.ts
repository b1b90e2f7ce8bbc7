import { requireFinite, requireNotNegative, requirePositive } from './require-argument.ts';

/**
 * What a gravity-loaded axis does when its motor has no current. People may be under it: wherever the answer is in doubt, the worse one is given.
 * All torques are at the screw (or pulley) of one drive, for the share of the load that hangs on it.
 */

export type HoldingVerdict = 'holds' | 'may-creep' | 'drops';

/** What the verdict rests on. */
export type Holder = 'thread' | 'brake' | 'balance' | 'reduction' | 'collar' | 'detent' | 'several' | 'nothing';

/** Factor from which friction or a brake counts as holding. Common practice, no published source. */
export const HOLDING_FACTOR = 1.5;

export interface HoldingSituation {
  /** Axial load left after any counterbalance, in N; its sign is the direction in which it would move (above 0: down). */
  readonly load: number;
  /** Torque that this load would put on a frictionless drive, |F| l/(2π), in N·m, 0 or above. */
  readonly frictionlessTorque: number;
  /** Torque that it really puts on the drive at the lowest believable moving friction, thread alone, in N·m; 0 or below: it does not drive. */
  readonly drivingTorque: number;
  /** µ′/tan λ at the lowest believable moving friction; 0 for drives that always run back (ball screw, belt). */
  readonly kineticFactor: number;
  /** The same at the lowest believable friction at rest. */
  readonly staticFactor: number;
  /** Lowest believable friction torque of a plain thrust face, or drag of a rolling bearing, in N·m, 0 or above. */
  readonly collarTorque: number;
  /** Lowest believable detent torque of the motor, referred to the screw through the reduction, in N·m, 0 or above. */
  readonly detentTorque: number;
  /** Torque of a brake that closes without power, referred to the screw, in N·m, 0 or above; undefined: no brake. */
  readonly brakeTorque?: number | undefined;
  /** Whether a stage between screw and motor cannot be driven from the screw, even at its best believable efficiency (a worm of low efficiency). */
  readonly reductionLocks?: boolean | undefined;
}

export interface Holding {
  readonly verdict: HoldingVerdict;
  readonly holder: Holder;
  /** Holding over driving. From 1.5: holds; below 1: drops. Infinity when nothing drives. Of the thread: µ′/tan λ; of a brake: brake over frictionless torque; of anything else: what resists over what drives. */
  readonly factor: number;
  /** It stays put until a knock starts it, and then runs: friction at rest holds, moving friction does not. */
  readonly holdsOnlyAtRest: boolean;
  /** Sliding friction carries the verdict, and vibration can take it away. */
  readonly vibrationCaveat: boolean;
}

/**
 * The verdict on one drive: holds, may creep, or drops.
 *
 * Formula, in this order: no load left: holds. Thread factor s = µ′/tan λ from 1.5: the thread holds. Brake from 1.5 × F l/(2π): the brake holds. s from 1: may creep.
 * Otherwise the thread runs down. A reduction that locks: may creep, since vibration unlocks it as it does a thread. Else what resists (collar + detent + brake) is compared with what drives (F d2/2 tan(λ − φ′)): from 1 it may creep, below it drops.
 * Collar and detent never earn "holds": the collar is replaced by a rolling bearing one day, and a detent is no brake.
 * @param situation torques in N·m, load in N, factors without unit; domains as in `HoldingSituation`.
 * @returns verdict, holder and factor.
 * @throws RangeError when a torque or factor that cannot be negative is, or a number is not finite.
 * Source: self-locking condition, Budynas and Nisbett, section 8-2; the factor 1.5, the brake's 1.5 and the ranking are common practice, no published source.
 * Checked against: test/mechanics/unpowered-holding.test.ts (hand calculations).
 */
export function judgeHolding(situation: HoldingSituation): Holding {
  const { load, frictionlessTorque, drivingTorque, kineticFactor, staticFactor, collarTorque, detentTorque } = situation;
  requireFinite('load', load);
  requireFinite('drivingTorque', drivingTorque);
  const brakeTorque = situation.brakeTorque ?? 0;
  for (const [name, value] of Object.entries({ frictionlessTorque, kineticFactor, staticFactor, collarTorque, detentTorque, brakeTorque })) {
    requireNotNegative(name, value);
  }
  if (load === 0 || frictionlessTorque === 0) {
    return { verdict: 'holds', holder: 'balance', factor: Infinity, holdsOnlyAtRest: false, vibrationCaveat: false };
  }
  if (kineticFactor >= HOLDING_FACTOR) {
    return { verdict: 'holds', holder: 'thread', factor: kineticFactor, holdsOnlyAtRest: false, vibrationCaveat: true };
  }
  const brakeFactor = brakeTorque / frictionlessTorque;
  if (brakeFactor >= HOLDING_FACTOR) {
    return { verdict: 'holds', holder: 'brake', factor: brakeFactor, holdsOnlyAtRest: false, vibrationCaveat: false };
  }
  if (kineticFactor >= 1) {
    return { verdict: 'may-creep', holder: 'thread', factor: kineticFactor, holdsOnlyAtRest: false, vibrationCaveat: true };
  }
  const holdsOnlyAtRest = staticFactor >= 1;
  const resisting = collarTorque + detentTorque + brakeTorque;
  if (drivingTorque <= 0) {
    return { verdict: 'may-creep', holder: 'thread', factor: Math.max(kineticFactor, 1), holdsOnlyAtRest, vibrationCaveat: true };
  }
  const factor = resisting / drivingTorque;
  if (situation.reductionLocks === true) return { verdict: 'may-creep', holder: 'reduction', factor: Math.max(factor, 1), holdsOnlyAtRest, vibrationCaveat: true };
  if (factor < 1) return { verdict: 'drops', holder: 'nothing', factor, holdsOnlyAtRest, vibrationCaveat: staticFactor >= 1 };
  const alone = (['collar', 'detent', 'brake'] as const).filter(
    (name) => ({ collar: collarTorque, detent: detentTorque, brake: brakeTorque })[name] >= drivingTorque,
  );
  return { verdict: 'may-creep', holder: alone[0] ?? 'several', factor, holdsOnlyAtRest, vibrationCaveat: true };
}

/**
 * Torque of a motor-side device (detent, brake) seen at the screw through a reduction.
 *
 * Formula: T_screw = T_motor · i. Friction of the reduction would add to it and is left out, the cautious side.
 * @param torque at the motor shaft, in N·m, 0 or above.
 * @param ratio i, motor turns per screw turn, above 0.
 * @returns the torque at the screw in N·m.
 * @throws RangeError when an argument is outside its domain.
 * Source: power balance of a reduction.
 * Checked against: test/mechanics/unpowered-holding.test.ts.
 */
export function torqueThroughReduction(torque: number, ratio: number): number {
  requireNotNegative('torque', torque);
  requirePositive('ratio', ratio);
  return torque * ratio;
}

/**
 * Energy that the falling load brings to the bottom.
 *
 * Formula: E = m g h.
 * @param mass m in kg, 0 or above.
 * @param height h in m, 0 or above.
 * @param gravity g in m/s², above 0.
 * @returns E in J; with a counterbalance pass the unbalanced mass.
 * @throws RangeError when an argument is outside its domain.
 * Source: mechanics of a falling body.
 * Checked against: test/mechanics/unpowered-holding.test.ts.
 */
export function dropEnergy(mass: number, height: number, gravity: number): number {
  requireNotNegative('mass', mass);
  requireNotNegative('height', height);
  requirePositive('gravity', gravity);
  return mass * gravity * height;
}

export interface FallingDrive {
  /** Mass that moves, on this drive, in kg, above 0. */
  readonly mass: number;
  /** Force that pulls it down at rest, in N, above 0: the weight less a counterbalance of constant force. */
  readonly pull: number;
  /** Travel per turn in m, above 0. */
  readonly lead: number;
  /** ηr of screw and collar, 0 to 1. */
  readonly reverseEfficiency: number;
  /** What turns with the screw (screw, coupling, motor through the reduction), in kg·m², 0 or above. */
  readonly rotatingInertia: number;
  /** Torque at the screw that resists whatever the load (detent, seal drag), in N·m, 0 or above. */
  readonly resistingTorque: number;
}

/**
 * Acceleration of the load when nothing holds it.
 *
 * Formula: a = (F ηr − T_r 2π/l) / (m ηr + J (2π/l)²). Thread friction follows the thread's load, which the fall itself lightens by m a; hence m ηr and not m.
 * @param drive masses, forces, inertia of one drive; domains as in `FallingDrive`.
 * @returns a in m/s², 0 when it does not start.
 * @throws RangeError when an argument is outside its domain.
 * Source: Newton's law of mass and rotor coupled by the screw, F − m a = thread load, thread load · ηr l/(2π) − T_r = J α.
 * Checked against: test/independent/thread-flank-balance.test.ts (fall on a flank, solved from the forces).
 */
export function fallAcceleration(drive: FallingDrive): number {
  requirePositive('mass', drive.mass);
  requirePositive('pull', drive.pull);
  requirePositive('lead', drive.lead);
  requireNotNegative('rotatingInertia', drive.rotatingInertia);
  requireNotNegative('resistingTorque', drive.resistingTorque);
  requireFinite('reverseEfficiency', drive.reverseEfficiency);
  if (drive.reverseEfficiency > 1) throw new RangeError(`reverseEfficiency must be at most 1, but is ${drive.reverseEfficiency}`);
  if (drive.reverseEfficiency <= 0) return 0;
  const turn = (2 * Math.PI) / drive.lead;
  const force = drive.pull * drive.reverseEfficiency - drive.resistingTorque * turn;
  return force <= 0 ? 0 : force / (drive.mass * drive.reverseEfficiency + drive.rotatingInertia * turn ** 2);
}

/** A fall from rest. */
export interface Fall {
  /** s */
  readonly time: number;
  /** m/s, at the end */
  readonly speed: number;
}

/**
 * How long a fall lasts and how fast it ends.
 *
 * Formula: t = √(2 h / a); v = √(2 a h).
 * @param acceleration a in m/s², 0 or above.
 * @param height h in m, 0 or above.
 * @returns time in s and speed in m/s, or undefined when it does not fall (a = 0 and h above 0).
 * @throws RangeError when an argument is negative.
 * Source: motion under constant acceleration.
 * Checked against: test/mechanics/unpowered-holding.test.ts.
 */
export function fallFromRest(acceleration: number, height: number): Fall | undefined {
  requireNotNegative('acceleration', acceleration);
  requireNotNegative('height', height);
  if (height === 0) return { time: 0, speed: 0 };
  if (acceleration === 0) return undefined;
  return { time: Math.sqrt((2 * height) / acceleration), speed: Math.sqrt(2 * acceleration * height) };
}
