import { requireNotNegative, requirePositive } from './require-argument.ts';
import { requireWithin } from './require-within.ts';

/**
 * How far the first three engaged turns of a metal nut share the load: the first carries 0.38 of it, the second 0.25, the third 0.18, the seventh none.
 * Budynas and Nisbett, section 8-2, from memory. Turns beyond about six add wear life, not strength.
 */
export const FIRST_TURNS_SHARE: readonly number[] = [0.38, 0.25, 0.18];

/** Flanks of a nut under load. */
export interface NutContact {
  /** F in N, 0 or above. */
  readonly load: number;
  /** d2 in m, above 0. */
  readonly pitchDiameter: number;
  /** P in m, above 0. */
  readonly pitch: number;
  /** H1, radial height over which the flanks touch, in m, above 0; P/2 for trapezoidal threads. */
  readonly flankHeight: number;
  /** Ln, engaged thread length of all nuts that carry, in m, above 0. */
  readonly engagedLength: number;
  /** Share of the flank area that really carries, above 0 and up to 1: 1 for metal, 0.25 to 0.75 for plastics that give way. */
  readonly areaFactor?: number | undefined;
}

/**
 * Pressure on the thread flanks of a nut, evenly shared.
 *
 * Formula: p = F P / (π d2 H1 Ln c); for trapezoidal threads (H1 = P/2) p = 2 F / (π d2 Ln c), whatever the pitch or the starts.
 * @param contact load in N, lengths in m, area factor c without unit; domains as in `NutContact`.
 * @returns p in Pa, projected on the axis's normal plane.
 * @throws RangeError when an argument is outside its domain.
 * Source: Budynas and Nisbett, section 8-2, equation (8-10); the area factor of plastics is nut makers' practice.
 * Checked against: test/published/nuts.test.ts (straightening screw; Singh, example 9.1).
 */
export function bearingPressure(contact: NutContact): number {
  const { load, pitchDiameter, pitch, flankHeight, engagedLength, areaFactor = 1 } = contact;
  requireNotNegative('load', load);
  requirePositive('pitchDiameter', pitchDiameter);
  requirePositive('pitch', pitch);
  requirePositive('flankHeight', flankHeight);
  requirePositive('engagedLength', engagedLength);
  requirePositive('areaFactor', areaFactor);
  if (areaFactor > 1) throw new RangeError(`areaFactor must be at most 1, but is ${areaFactor}`);
  return (load * pitch) / (Math.PI * pitchDiameter * flankHeight * engagedLength * areaFactor);
}

/**
 * Nut length that keeps the pressure at a wanted value.
 *
 * Formula: Ln = F P / (π d2 H1 p c).
 * @param contact as for `bearingPressure`, without the length.
 * @param pressure p in Pa, above 0.
 * @returns Ln in m, 0 for no load.
 * @throws RangeError when an argument is outside its domain.
 * Source: `bearingPressure`, solved for the length.
 * Checked against: test/mechanics/nut-pressure.test.ts.
 */
export function lengthForPressure(contact: Omit<NutContact, 'engagedLength'>, pressure: number): number {
  requirePositive('pressure', pressure);
  return bearingPressure({ ...contact, engagedLength: 1 }) / pressure;
}

/**
 * Pressure on the most loaded turn of a metal nut.
 *
 * Formula: p1 = p · max(1, 0.38 Ln/P).
 * @param pressure p, evenly shared, in Pa, 0 or above.
 * @param engagedTurns Ln/P, above 0.
 * @returns p1 in Pa.
 * @throws RangeError when an argument is outside its domain.
 * Source: Budynas and Nisbett, section 8-2 (share of the first turn, from memory: weak).
 * Checked against: test/mechanics/nut-pressure.test.ts.
 */
export function firstTurnPressure(pressure: number, engagedTurns: number): number {
  requireNotNegative('pressure', pressure);
  requirePositive('engagedTurns', engagedTurns);
  return pressure * Math.max(1, (FIRST_TURNS_SHARE[0] ?? 1) * engagedTurns);
}

/**
 * Speed at which the flanks slide on each other.
 *
 * Formula: v = π d2 n / cos λ.
 * @param pitchDiameter d2 in m, above 0.
 * @param leadAngle λ in rad, from 0 and below π/2.
 * @param turnsPerSecond n in 1/s, 0 or above.
 * @returns v in m/s.
 * @throws RangeError when an argument is outside its domain.
 * Source: path of a point on the helix.
 * Checked against: test/published/nuts.test.ts (bearing in inch units, λ = 0); test/mechanics/nut-pressure.test.ts.
 */
export function slidingSpeed(pitchDiameter: number, leadAngle: number, turnsPerSecond: number): number {
  requirePositive('pitchDiameter', pitchDiameter);
  requireWithin('leadAngle', leadAngle, 0, Math.PI / 2);
  requireNotNegative('turnsPerSecond', turnsPerSecond);
  return (Math.PI * pitchDiameter * turnsPerSecond) / Math.cos(leadAngle);
}

/**
 * Pressure times sliding speed, the measure of frictional heat, averaged over the duty.
 *
 * Formula: PV = p v · duty.
 * @param pressure p in Pa, 0 or above.
 * @param speed v in m/s, 0 or above.
 * @param duty share of the time in motion, over about five minutes, 0 to 1.
 * @returns PV in Pa·m/s (W/m²).
 * @throws RangeError when an argument is outside its domain.
 * Source: Mott, section 16 (pV factor); counting the duty is common practice, no published source.
 * Checked against: test/published/nuts.test.ts (bearing in inch units).
 */
export function pressureVelocity(pressure: number, speed: number, duty = 1): number {
  requireNotNegative('pressure', pressure);
  requireNotNegative('speed', speed);
  requireNotNegative('duty', duty);
  if (duty > 1) throw new RangeError(`duty must be at most 1, but is ${duty}`);
  return pressure * speed * duty;
}

/**
 * How far the flanks slide while the nut travels.
 *
 * Formula: s = x / sin λ.
 * @param travel x, travelled distance along the axis, in m, 0 or above.
 * @param leadAngle λ in rad, above 0 and below π/2.
 * @returns s in m.
 * @throws RangeError when an argument is outside its domain.
 * Source: development of the helix.
 * Checked against: test/mechanics/nut-pressure.test.ts (turns times length of one turn).
 */
export function slidingDistance(travel: number, leadAngle: number): number {
  requireNotNegative('travel', travel);
  requirePositive('leadAngle', leadAngle);
  requireWithin('leadAngle', leadAngle, 0, Math.PI / 2);
  return travel / Math.sin(leadAngle);
}

/**
 * Depth worn off a flank, across the flank.
 *
 * Formula: h = k p s.
 * @param specificWear k in m²/N, 0 or above.
 * @param pressure p in Pa, 0 or above.
 * @param distance s, slid, in m, 0 or above.
 * @returns h in m, after running-in.
 * @throws RangeError when an argument is negative.
 * Source: Archard's law; The Tribology Handbook, section A5 (rate form).
 * Checked against: test/mechanics/nut-pressure.test.ts (hand calculation).
 */
export function wearDepth(specificWear: number, pressure: number, distance: number): number {
  requireNotNegative('specificWear', specificWear);
  requireNotNegative('pressure', pressure);
  requireNotNegative('distance', distance);
  return specificWear * pressure * distance;
}

/**
 * Axial play that a worn flank opens.
 *
 * Formula: Δ = h / (cos αn cos λ), per worn flank.
 * @param depth h, worn across the flank, in m, 0 or above.
 * @param normalFlankAngle αn in rad, from 0 and below π/2.
 * @param leadAngle λ in rad, from 0 and below π/2.
 * @returns Δ in m.
 * @throws RangeError when an argument is outside its domain.
 * Source: the axial component of the flank's normal is cos αn cos λ.
 * Checked against: test/independent/thread-flank-balance.test.ts.
 */
export function playFromWear(depth: number, normalFlankAngle: number, leadAngle: number): number {
  requireNotNegative('depth', depth);
  requireWithin('normalFlankAngle', normalFlankAngle, 0, Math.PI / 2);
  requireWithin('leadAngle', leadAngle, 0, Math.PI / 2);
  return depth / (Math.cos(normalFlankAngle) * Math.cos(leadAngle));
}

/**
 * Travelled distance after which wear has opened a given play.
 *
 * Formula: x = Δ cos αn cos λ sin λ / (k p).
 * @param play Δ in m, 0 or above.
 * @param specificWear k in m²/N, 0 or above.
 * @param pressure p in Pa, 0 or above.
 * @param normalFlankAngle αn in rad, from 0 and below π/2.
 * @param leadAngle λ in rad, above 0 and below π/2.
 * @returns x in m along the axis; Infinity where nothing wears (k p = 0).
 * @throws RangeError when an argument is outside its domain.
 * Source: `wearDepth`, `slidingDistance` and `playFromWear`, solved for the travel.
 * Checked against: test/mechanics/nut-pressure.test.ts.
 */
export function travelToPlay(play: number, specificWear: number, pressure: number, normalFlankAngle: number, leadAngle: number): number {
  requireNotNegative('play', play);
  const perMetre = playFromWear(wearDepth(specificWear, pressure, slidingDistance(1, leadAngle)), normalFlankAngle, leadAngle);
  return perMetre === 0 ? Infinity : play / perMetre;
}

/**
 * Shear stress at the base of a nut's trapezoidal threads.
 *
 * Formula: τ = F / (0.634 π d Ln). At the nut's major diameter a thread is 0.634 P wide (ISO 2901 profile, clearance left out).
 * @param load F in N, 0 or above.
 * @param majorDiameter d in m, above 0.
 * @param engagedLength Ln in m, above 0.
 * @returns τ in Pa.
 * @throws RangeError when an argument is outside its domain.
 * Source: Budynas and Nisbett, section 8-2 (transverse shear of the thread), with the width of the ISO 2901 profile.
 * Checked against: test/mechanics/nut-pressure.test.ts (hand calculation).
 */
export function nutThreadShear(load: number, majorDiameter: number, engagedLength: number): number {
  requireNotNegative('load', load);
  requirePositive('majorDiameter', majorDiameter);
  requirePositive('engagedLength', engagedLength);
  const widthShare = 0.5 + Math.tan((15 * Math.PI) / 180) / 2;
  return load / (widthShare * Math.PI * majorDiameter * engagedLength);
}
