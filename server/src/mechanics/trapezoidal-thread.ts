import { requireNotNegative, requirePositive } from './require-argument.ts';

/** Half angle of an ISO metric trapezoidal flank in the axial section, in rad: 15° (ISO 2901). */
export const TRAPEZOIDAL_FLANK_ANGLE = (15 * Math.PI) / 180;

/** Half angle of an inch trapezoidal flank (29° thread) in the axial section, in rad: 14.5° (ASME B1.5, basic profile). */
export const INCH_TRAPEZOIDAL_FLANK_ANGLE = (14.5 * Math.PI) / 180;

/** What the standard's basic profile gives for one thread. Lengths in m, angle in rad. */
export interface TrapezoidalGeometry {
  readonly exists: true;
  /** d, over the crests of the screw. */
  readonly majorDiameter: number;
  /** P, from thread to neighbouring thread. */
  readonly pitch: number;
  readonly starts: number;
  /** Travel per turn. */
  readonly lead: number;
  /** d2 = D2, where thread and gap are equally wide. */
  readonly pitchDiameter: number;
  /** d3, the screw's core. */
  readonly rootDiameter: number;
  /** D1, the bore of the nut. */
  readonly nutMinorDiameter: number;
  /** D4, the ground of the nut's thread. */
  readonly nutMajorDiameter: number;
  /** ac, gap between crest and ground. */
  readonly crestClearance: number;
  /** H1, radial height over which the flanks of screw and nut touch. */
  readonly flankHeight: number;
  readonly leadAngle: number;
}

/** Why a thread of such numbers cannot be made. */
export interface NoSuchThread {
  readonly exists: false;
  readonly reason: 'pitch-outside-standard' | 'no-core-left' | 'starts-not-whole';
}

/**
 * Clearance between the crest of one thread and the ground of its mate.
 *
 * Formula: ac = 0.15 mm for P < 2 mm, 0.25 mm for 2 to 5 mm, 0.5 mm for 6 to 12 mm, 1 mm for 14 to 44 mm; between the standard's pitches the band of the next larger pitch.
 * @param pitch P in m, above 0.
 * @returns ac in m, or undefined outside the standard's pitches of 1.5 to 44 mm.
 * @throws RangeError when the pitch is not a positive number.
 * Source: ISO 2901, basic profile (the three smaller values recomputed from tabulated threads; the last from memory).
 * Checked against: test/published/trapezoidal-threads.test.ts, eight tabulated threads.
 */
export function crestClearance(pitch: number): number | undefined {
  requirePositive('pitch', pitch);
  // A pitch of "2 mm" may arrive as 1.9999999999999998e-3 after unit conversion.
  const millimetres = Math.round(pitch * 1e9) / 1e6;
  if (millimetres < 1.5 || millimetres > 44) return undefined;
  if (millimetres < 2) return 0.15e-3;
  if (millimetres <= 5) return 0.25e-3;
  if (millimetres <= 12) return 0.5e-3;
  return 1e-3;
}

/**
 * Angle of the thread's rise on the pitch cylinder.
 *
 * Formula: λ = atan(l / (π d2)).
 * @param lead l, travel per turn, in m, above 0.
 * @param pitchDiameter d2 in m, above 0.
 * @returns λ in rad, between 0 and π/2.
 * @throws RangeError when an argument is not positive.
 * Source: Budynas and Nisbett, Shigley's Mechanical Engineering Design, section 8-2.
 * Checked against: test/published/power-screws.test.ts (Wentzell, Example 18.2; Mott, Example Problem 17-1).
 */
export function leadAngle(lead: number, pitchDiameter: number): number {
  requirePositive('lead', lead);
  requirePositive('pitchDiameter', pitchDiameter);
  return Math.atan(lead / (Math.PI * pitchDiameter));
}

/**
 * Dimensions of an ISO metric trapezoidal thread from its diameter, pitch and number of starts.
 *
 * Formula: l = n P; d2 = d − P/2; d3 = d − P − 2 ac; D1 = d − P; D4 = d + 2 ac; H1 = P/2; λ = atan(l / (π d2)).
 * @param majorDiameter d in m, above 0.
 * @param pitch P in m, above 0.
 * @param starts n, number of threads side by side, from 1.
 * @returns the dimensions in m and rad, or why no such thread exists: its pitch is outside the standard's 1.5 to 44 mm, nothing is left of the core, or the starts are not a whole number from 1.
 * @throws RangeError when diameter or pitch is not a positive number.
 * Source: ISO 2901 (profile), ISO 2902 (general plan), ISO 2904 (basic dimensions).
 * Checked against: test/published/trapezoidal-threads.test.ts.
 */
export function trapezoidalGeometry(majorDiameter: number, pitch: number, starts = 1): TrapezoidalGeometry | NoSuchThread {
  requirePositive('majorDiameter', majorDiameter);
  requirePositive('pitch', pitch);
  if (!Number.isInteger(starts) || starts < 1) return { exists: false, reason: 'starts-not-whole' };
  const clearance = crestClearance(pitch);
  if (clearance === undefined) return { exists: false, reason: 'pitch-outside-standard' };
  const rootDiameter = majorDiameter - pitch - 2 * clearance;
  if (rootDiameter <= 0) return { exists: false, reason: 'no-core-left' };
  const pitchDiameter = majorDiameter - pitch / 2;
  const lead = starts * pitch;
  return {
    exists: true,
    majorDiameter,
    pitch,
    starts,
    lead,
    pitchDiameter,
    rootDiameter,
    nutMinorDiameter: majorDiameter - pitch,
    nutMajorDiameter: majorDiameter + 2 * clearance,
    crestClearance: clearance,
    flankHeight: pitch / 2,
    leadAngle: leadAngle(lead, pitchDiameter),
  };
}

/** What the tolerance standard allows around the basic profile of one thread. All in m. */
export interface ThreadTolerance {
  /** |es|, how far below the basic profile the external thread's upper limit lies. */
  readonly fundamentalDeviation: number;
  /** Td2, width of the pitch diameter's tolerance. */
  readonly pitchDiameterTolerance: number;
  /** Td, width of the major diameter's tolerance. */
  readonly majorDiameterTolerance: number;
}

/** Largest and smallest diameters of a screw thread of the class. All in m. */
export interface ScrewThreadLimits {
  readonly pitchDiameterMax: number;
  readonly pitchDiameterMin: number;
  readonly rootDiameterMax: number;
  readonly rootDiameterMin: number;
  readonly majorDiameterMin: number;
}

/**
 * Limits of a screw's diameters within its tolerance class; with the class 7e values, those of ordinary rolled bar.
 *
 * Formula: d2max = d2 − |es|; d2min = d2max − Td2; d3max = d3; d3min = d3 − |es| − 1.25 Td2; dmin = d − Td.
 * @param thread the basic dimensions in m.
 * @param tolerance |es|, Td2 and Td in m, each 0 or above.
 * @returns the limits in m. A limit may come out at or below 0 where the tolerance does not belong to the thread: the caller pairs them by size.
 * @throws RangeError when a tolerance is negative.
 * Source: ISO 2903, tolerances; the rule for d3min reproduces tabulated limits to 1 µm.
 * Checked against: test/published/trapezoidal-threads.test.ts (five tabulated threads).
 */
export function screwThreadLimits(
  thread: Pick<TrapezoidalGeometry, 'majorDiameter' | 'pitchDiameter' | 'rootDiameter'>,
  tolerance: ThreadTolerance,
): ScrewThreadLimits {
  requireNotNegative('fundamentalDeviation', tolerance.fundamentalDeviation);
  requireNotNegative('pitchDiameterTolerance', tolerance.pitchDiameterTolerance);
  requireNotNegative('majorDiameterTolerance', tolerance.majorDiameterTolerance);
  const pitchDiameterMax = thread.pitchDiameter - tolerance.fundamentalDeviation;
  return {
    pitchDiameterMax,
    pitchDiameterMin: pitchDiameterMax - tolerance.pitchDiameterTolerance,
    rootDiameterMax: thread.rootDiameter,
    rootDiameterMin: thread.rootDiameter - tolerance.fundamentalDeviation - 1.25 * tolerance.pitchDiameterTolerance,
    majorDiameterMin: thread.majorDiameter - tolerance.majorDiameterTolerance,
  };
}
