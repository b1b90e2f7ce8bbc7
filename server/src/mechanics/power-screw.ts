import { requireFinite, requireNotNegative, requirePositive } from './require-argument.ts';
import { requireWithin } from './require-within.ts';

/**
 * Sliding screws. Every torque and efficiency below rests on one flank contact on the pitch cylinder: rigid thread, one friction value, nut free of side
 * load and tilt. A tilted nut adds torque that no formula here holds; measured torque of self-built axes is often 1.5 to 2 times the computed one
 * (common practice, no published source).
 */

/** Load, thread and contact of one screw. */
export interface ScrewContact {
  /** F, along the axis, in N, 0 or above. */
  readonly load: number;
  /** d2 in m, above 0. */
  readonly pitchDiameter: number;
  /** λ in rad, from 0 and below π/2. */
  readonly leadAngle: number;
  /** µ′ of `effectiveFriction`, 0 or above. */
  readonly effectiveFriction: number;
  /** The thrust face or bearing that takes the load; none when left out. */
  readonly collar?: ScrewCollar | undefined;
}

/** A face or bearing that turns under the axial load. */
export interface ScrewCollar {
  /** µc, 0 or above; of a rolling bearing the value that refers to its mean diameter. */
  readonly friction: number;
  /** dc, diameter at which the friction acts, in m, 0 or above. */
  readonly meanDiameter: number;
}

/**
 * Flank angle in the section normal to the thread.
 *
 * Formula: tan αn = tan α cos λ.
 * @param flankAngle α, half angle in the axial section, in rad, from 0 (square thread) and below π/2.
 * @param leadAngle λ in rad, from 0 and below π/2.
 * @returns αn in rad.
 * @throws RangeError when an angle is outside its domain.
 * Source: geometry of the helicoid; Mott, Machine Elements in Mechanical Design, section 17-2 (as φ_n).
 * Checked against: test/independent/thread-flank-balance.test.ts (normal by differentiation of the surface).
 */
export function normalFlankAngle(flankAngle: number, leadAngle: number): number {
  requireWithin('flankAngle', flankAngle, 0, Math.PI / 2);
  requireWithin('leadAngle', leadAngle, 0, Math.PI / 2);
  return Math.atan(Math.tan(flankAngle) * Math.cos(leadAngle));
}

/**
 * Friction of the sloping flank, as if the thread were square.
 *
 * Formula: µ′ = µ / cos αn, tan αn = tan α cos λ. Books often take cos α instead, up to 0.5 % more at λ ≤ 20°.
 * @param friction µ of the flanks, 0 or above.
 * @param flankAngle α, half angle in the axial section, in rad, from 0 and below π/2.
 * @param leadAngle λ in rad, from 0 and below π/2.
 * @returns µ′, without unit.
 * @throws RangeError when an argument is outside its domain.
 * Source: Mott, Machine Elements in Mechanical Design, section 17-2; Budynas and Nisbett, section 8-2.
 * Checked against: test/independent/thread-flank-balance.test.ts.
 */
export function effectiveFriction(friction: number, flankAngle: number, leadAngle: number): number {
  requireNotNegative('friction', friction);
  return friction / Math.cos(normalFlankAngle(flankAngle, leadAngle));
}

/**
 * Mean diameter of a ring-shaped thrust face.
 *
 * Formula: dc = (Do + Di) / 2 (even wear); of a solid end face 2 Do / 3 (even pressure).
 * @param outer Do in m, above 0.
 * @param inner Di in m, 0 for a solid face, below Do.
 * @returns dc in m.
 * @throws RangeError when outer is not positive or inner not between 0 and outer.
 * Source: Budynas and Nisbett, section 8-2 (even wear); the classical result for a pivot under even pressure, Khurmi and Gupta, Theory of Machines, section 10.
 * Checked against: test/published/power-screws.test.ts (Singh, examples 9.1 and 9.2).
 */
export function collarMeanDiameter(outer: number, inner: number): number {
  requirePositive('outer', outer);
  requireWithin('inner', inner, 0, outer);
  return inner === 0 ? (2 * outer) / 3 : (outer + inner) / 2;
}

/**
 * Torque lost in the thrust face or bearing, whichever way the screw turns.
 *
 * Formula: Tc = F µc dc / 2.
 * @param load F in N, 0 or above.
 * @param collar µc without unit and dc in m, both 0 or above; none counts as 0.
 * @returns Tc in N·m.
 * @throws RangeError when an argument is negative.
 * Source: Budynas and Nisbett, section 8-2, equation (8-6).
 * Checked against: test/published/power-screws.test.ts.
 */
export function collarTorque(load: number, collar: ScrewCollar | undefined): number {
  requireNotNegative('load', load);
  if (collar === undefined) return 0;
  requireNotNegative('collar friction', collar.friction);
  requireNotNegative('collar mean diameter', collar.meanDiameter);
  return (load * collar.friction * collar.meanDiameter) / 2;
}

function requireContact(contact: ScrewContact): void {
  requireNotNegative('load', contact.load);
  requirePositive('pitchDiameter', contact.pitchDiameter);
  requireWithin('leadAngle', contact.leadAngle, 0, Math.PI / 2);
  requireNotNegative('effectiveFriction', contact.effectiveFriction);
}

/**
 * Torque at the screw that moves the nut against the load.
 *
 * Formula: T = F d2/2 · tan(λ + φ′) + F µc dc/2, φ′ = atan µ′.
 * @param contact load in N, d2 in m, λ in rad, µ′, collar; domains as in `ScrewContact`.
 * @returns T in N·m, or undefined when µ′ tan λ ≥ 1: the flank jams and no torque turns it.
 * @throws RangeError when an argument is outside its domain.
 * Source: Budynas and Nisbett, section 8-2, equations (8-1), (8-5), (8-6).
 * Checked against: test/published/power-screws.test.ts (eleven book examples); test/independent/thread-flank-balance.test.ts.
 */
export function raisingTorque(contact: ScrewContact): number | undefined {
  requireContact(contact);
  const rise = Math.tan(contact.leadAngle);
  const jam = 1 - contact.effectiveFriction * rise;
  if (jam <= 0) return undefined;
  return (contact.load * contact.pitchDiameter * (rise + contact.effectiveFriction)) / (2 * jam) + collarTorque(contact.load, contact.collar);
}

/**
 * Torque that the load itself puts on the thread while it lets the nut down, collar left out.
 *
 * Formula: T = F d2/2 · tan(λ − φ′).
 * @param contact load in N, d2 in m, λ in rad, µ′; the collar is ignored.
 * @returns T in N·m: above 0 the load drives the screw, below 0 the thread holds with that much to spare.
 * @throws RangeError when an argument is outside its domain.
 * Source: Budynas and Nisbett, section 8-2, equation (8-2) with its sign turned.
 * Checked against: test/independent/thread-flank-balance.test.ts.
 */
export function backDrivingTorque(contact: ScrewContact): number {
  requireContact(contact);
  const rise = Math.tan(contact.leadAngle);
  return (contact.load * contact.pitchDiameter * (rise - contact.effectiveFriction)) / (2 * (1 + contact.effectiveFriction * rise));
}

/**
 * Torque at the screw that lets the load down.
 *
 * Formula: T = F d2/2 · tan(φ′ − λ) + F µc dc/2.
 * @param contact load in N, d2 in m, λ in rad, µ′, collar; domains as in `ScrewContact`.
 * @returns T in N·m: above 0 the motor must push, below 0 it must hold back.
 * @throws RangeError when an argument is outside its domain.
 * Source: Budynas and Nisbett, section 8-2, equations (8-2), (8-6).
 * Checked against: test/published/power-screws.test.ts; test/independent/thread-flank-balance.test.ts.
 */
export function loweringTorque(contact: ScrewContact): number {
  return collarTorque(contact.load, contact.collar) - backDrivingTorque(contact);
}

/** Thread and contact without a load: what an efficiency depends on. */
export type LoadlessContact = Omit<ScrewContact, 'load'>;

/**
 * Share of the motor's work that lifts the load.
 *
 * Formula: η = F l / (2π T) = tan λ / (tan(λ + φ′) + µc dc/d2).
 * @param contact d2 in m, λ in rad, µ′, collar (left out: of the thread alone).
 * @returns η from 0 to 1, 0 where the flank jams (µ′ tan λ ≥ 1).
 * @throws RangeError when an argument is outside its domain.
 * Source: Budynas and Nisbett, section 8-2, equation (8-4).
 * Checked against: test/published/power-screws.test.ts (Wentzell, Example 18.2; Singh, example 9.2; and three more).
 */
export function forwardEfficiency(contact: LoadlessContact): number {
  const torque = raisingTorque({ ...contact, load: 1 });
  const frictionless = (contact.pitchDiameter * Math.tan(contact.leadAngle)) / 2;
  if (torque === undefined || torque === 0) return torque === 0 ? 1 : 0;
  return frictionless / torque;
}

/**
 * Share of the falling load's work that reaches the screw's shaft.
 *
 * Formula: ηr = (tan(λ − φ′) − µc dc/d2) / tan λ.
 * @param contact d2 in m, λ in rad and above 0, µ′, collar (left out: of the thread alone).
 * @returns ηr up to 1; 0 or below: the load does not drive the screw.
 * @throws RangeError when an argument is outside its domain, or λ is 0.
 * Source: follows from the lowering torque; Budynas and Nisbett, section 8-2.
 * Checked against: test/published/power-screws.test.ts (sign in four book examples); test/independent/thread-flank-balance.test.ts.
 */
export function reverseEfficiency(contact: LoadlessContact): number {
  requirePositive('leadAngle', contact.leadAngle);
  return -loweringTorque({ ...contact, load: 1 }) / ((contact.pitchDiameter * Math.tan(contact.leadAngle)) / 2);
}

/**
 * How many times over the thread's friction holds the load, collar left out.
 *
 * Formula: s = µ′ / tan λ. Below 1 the thread runs down.
 * @param effectiveFriction µ′, 0 or above; for a verdict take the lowest believable value.
 * @param leadAngle λ in rad, above 0 and below π/2.
 * @returns s, without unit, 0 or above.
 * @throws RangeError when an argument is outside its domain.
 * Source: Budynas and Nisbett, section 8-2, self-locking condition (8-3).
 * Checked against: test/independent/thread-flank-balance.test.ts.
 */
export function selfLockingFactor(effectiveFriction: number, leadAngle: number): number {
  requireNotNegative('effectiveFriction', effectiveFriction);
  requirePositive('leadAngle', leadAngle);
  requireWithin('leadAngle', leadAngle, 0, Math.PI / 2);
  return effectiveFriction / Math.tan(leadAngle);
}

/**
 * Flank friction below which the thread runs down under its load.
 *
 * Formula: µ = tan λ cos αn.
 * @param flankAngle α in rad, from 0 and below π/2.
 * @param leadAngle λ in rad, from 0 and below π/2.
 * @returns µ, without unit.
 * @throws RangeError when an angle is outside its domain.
 * Source: Budynas and Nisbett, section 8-2, self-locking condition (8-3), solved for µ.
 * Checked against: test/published/trapezoidal-threads.test.ts; test/independent/thread-flank-balance.test.ts.
 */
export function runDownFriction(flankAngle: number, leadAngle: number): number {
  return Math.tan(leadAngle) * Math.cos(normalFlankAngle(flankAngle, leadAngle));
}

/**
 * Largest lead angle that the thread still holds with a wanted factor.
 *
 * Formula: the λ at which µ / cos αn(λ) = s tan λ; in t = tan² λ: s² t (1 + t) = µ² (1 + t + tan² α).
 * @param friction µ of the flanks, 0 or above.
 * @param flankAngle α in rad, from 0 and below π/2.
 * @param factor s, above 0.
 * @returns λ in rad, 0 for µ = 0.
 * @throws RangeError when an argument is outside its domain.
 * Source: the self-locking condition of `selfLockingFactor`, solved for the lead angle.
 * Checked against: test/mechanics/power-screw.test.ts (put back into `selfLockingFactor`).
 */
export function largestLockingLeadAngle(friction: number, flankAngle: number, factor: number): number {
  requireNotNegative('friction', friction);
  requireWithin('flankAngle', flankAngle, 0, Math.PI / 2);
  requirePositive('factor', factor);
  const squared = (friction / factor) ** 2;
  const linear = 1 - squared;
  const t = (-linear + Math.sqrt(linear ** 2 + 4 * squared * (1 + Math.tan(flankAngle) ** 2))) / 2;
  return Math.atan(Math.sqrt(Math.max(0, t)));
}

export type LoadHolder = 'thread' | 'collar' | 'nothing';

/**
 * What keeps the load up by friction when nothing drives the screw: the thread by itself, only the collar, or nothing.
 *
 * Formula: thread when tan(λ − φ′) ≤ 0; collar when tan(λ − φ′) ≤ µc dc/d2; else nothing.
 * @param contact d2 in m, λ in rad, µ′ (the lowest believable), collar.
 * @returns the holder. `collar` means that a rolling thrust bearing in its place would let the load run down.
 * @throws RangeError when an argument is outside its domain.
 * Source: follows from the lowering torque with and without its collar term, Budynas and Nisbett, section 8-2.
 * Checked against: test/published/power-screws.test.ts (three book screws that only their collar holds).
 */
export function frictionHolder(contact: LoadlessContact): LoadHolder {
  const unit = { ...contact, load: 1 };
  if (backDrivingTorque(unit) <= 0) return 'thread';
  return loweringTorque(unit) >= 0 ? 'collar' : 'nothing';
}

/** Stresses in the core of a screw, in Pa. */
export interface BodyStress {
  readonly axial: number;
  readonly shear: number;
  /** By distortion energy. */
  readonly equivalent: number;
  readonly maximumShear: number;
}

/**
 * Stresses in the screw's core under axial load and torque.
 *
 * Formula: σ = 4 F / (π d3²); τ = 16 T / (π d3³); σv = √(σ² + 3 τ²); τmax = √(σ²/4 + τ²).
 * @param load F in N, any sign (only its size counts).
 * @param torque T in N·m, any sign.
 * @param rootDiameter d3 in m, above 0; the smallest of its class for a verdict.
 * @returns the stresses in Pa, each 0 or above.
 * @throws RangeError when the diameter is not positive or a number not finite.
 * Source: Budynas and Nisbett, section 8-2, equations (8-7), (8-8); distortion energy, section 5-5.
 * Checked against: test/published/power-screws.test.ts (Singh, example 9.1).
 */
export function bodyStress(load: number, torque: number, rootDiameter: number): BodyStress {
  requireFinite('load', load);
  requireFinite('torque', torque);
  requirePositive('rootDiameter', rootDiameter);
  const axial = (4 * Math.abs(load)) / (Math.PI * rootDiameter ** 2);
  const shear = (16 * Math.abs(torque)) / (Math.PI * rootDiameter ** 3);
  return { axial, shear, equivalent: Math.hypot(axial, Math.sqrt(3) * shear), maximumShear: Math.hypot(axial / 2, shear) };
}
