import { requireNotNegative, requirePositive } from './require-argument.ts';

export type BallScrewDesignation =
  | {
      readonly kind: 'ball screw';
      /** d0, m. */
      readonly nominalDiameter: number;
      /** l, m. */
      readonly lead: number;
      /** What a reader should look at twice; plain words. */
      readonly doubts: readonly string[];
    }
  | { readonly kind: 'not a ball screw designation'; readonly reason: string };

/**
 * Reads the usual short designation of a ball screw.
 *
 * Formula: four digits `ddll` or three digits `dll`: nominal diameter and lead in millimetres; blanks and a leading letter group are skipped.
 *
 * @param text - as written, for instance `1605` or `802`
 * @returns diameter and lead in m with doubts (letters skipped, lead above the diameter), or the reason why it cannot be read
 *
 * Source: common practice, no published source; ISO 3408-1 writes diameter and lead out.
 * Checked against: test/mechanics/ball-screw.test.ts.
 */
export function parseBallScrewDesignation(text: string): BallScrewDesignation {
  const match = /^\s*([A-Za-z]{1,4})?[\s-]?(\d{3,4})\s*$/.exec(text);
  if (match === null) return { kind: 'not a ball screw designation', reason: 'three or four digits are expected: diameter, then two digits of lead' };
  const digits = match[2] as string;
  const diameter = Number(digits.slice(0, -2));
  const lead = Number(digits.slice(-2));
  if (lead === 0) return { kind: 'not a ball screw designation', reason: 'the last two digits are the lead in millimetres, and 00 is no lead' };
  if (diameter === 0) return { kind: 'not a ball screw designation', reason: 'the digits before the lead are the diameter in millimetres, and 0 is no diameter' };
  const doubts: string[] = [];
  if (match[1] !== undefined) doubts.push(`the letters ${match[1]} are not interpreted`);
  if (lead > diameter) doubts.push(`a lead of ${lead} mm on ${diameter} mm diameter is unusual`);
  return { kind: 'ball screw', nominalDiameter: diameter / 1000, lead: lead / 1000, doubts };
}

/**
 * Lead angle on the circle of the ball centres.
 *
 * Formula: beta = atan(l/(pi d_pw)).
 *
 * @param lead - l, m, above 0
 * @param pitchCircle - d_pw, m, above 0; the nominal diameter plus 0.1 to 0.3 ball diameters
 * @returns beta in rad
 * @throws RangeError for values that are not positive
 *
 * Source: geometry of a helix.
 * Checked against: test/mechanics/ball-screw.test.ts.
 */
export function ballScrewLeadAngle(lead: number, pitchCircle: number): number {
  requirePositive('lead', lead);
  requirePositive('pitchCircle', pitchCircle);
  return Math.atan(lead / (Math.PI * pitchCircle));
}

/**
 * Torque that moves a load with a ball screw.
 *
 * Formula: T = F l/(2 pi eta).
 *
 * @param force - F along the screw, N; the sign is kept
 * @param lead - l, m, above 0
 * @param efficiency - eta, above 0 and at most 1; 0.9 is common practice
 * @returns torque in N·m
 * @throws RangeError outside the stated domains
 *
 * Source: Wentzell, Machine Design, example 18.4 (factor 0.177 = 1/(2 pi · 0.9)); work balance over one turn.
 * Checked against: test/published/ball-screws.test.ts.
 */
export function ballScrewDriveTorque(force: number, lead: number, efficiency: number): number {
  requirePositive('lead', lead);
  requireEfficiency(efficiency);
  return (force * lead) / (2 * Math.PI * efficiency);
}

/**
 * Torque with which a load turns a ball screw by itself.
 *
 * Formula: T = F l eta_r/(2 pi).
 *
 * @param force - F along the screw, N; the sign is kept
 * @param lead - l, m, above 0
 * @param reverseEfficiency - eta_r, above 0 and at most 1; 0.8 to 0.9 is common practice; for holding the high end is the unsafe one
 * @returns torque in N·m; a ball screw always runs back unless something else holds it
 * @throws RangeError outside the stated domains
 *
 * Source: work balance over one turn; common practice for eta_r, no published source.
 * Checked against: test/published/ball-screws.test.ts, common practice; test/mechanics/ball-screw.test.ts.
 */
export function ballScrewBackDrivingTorque(force: number, lead: number, reverseEfficiency: number): number {
  requirePositive('lead', lead);
  requireEfficiency(reverseEfficiency);
  return (force * lead * reverseEfficiency) / (2 * Math.PI);
}

/**
 * Efficiency of a ball screw, forward and reverse, from an equivalent friction coefficient.
 *
 * Formula: eta = tan(beta)/tan(beta + phi); eta_r = tan(beta - phi)/tan(beta); phi = atan(mu).
 *
 * @param leadAngle - beta, rad, above 0, below pi/2 - phi
 * @param friction - mu, zero or above; 0.003 to 0.01 is usual
 * @returns forward and reverse efficiency; reverse is `locks` when mu reaches tan(beta), which a sound ball screw never does
 * @throws RangeError outside the stated domains
 *
 * Source: inclined plane, as for sliding screws (Budynas and Nisbett, section 8-2); friction range from memory.
 * Checked against: test/mechanics/ball-screw.test.ts.
 */
export function ballScrewEfficiency(leadAngle: number, friction: number): { readonly forward: number; readonly reverse: number | 'locks' } {
  requirePositive('leadAngle', leadAngle);
  requireNotNegative('friction', friction);
  const phi = Math.atan(friction);
  if (leadAngle + phi >= Math.PI / 2) throw new RangeError('ballScrewEfficiency: lead angle and friction angle together must stay below a right angle');
  return {
    forward: Math.tan(leadAngle) / Math.tan(leadAngle + phi),
    reverse: leadAngle > phi ? Math.tan(leadAngle - phi) / Math.tan(leadAngle) : 'locks',
  };
}

/**
 * Drag torque of a preloaded ball nut.
 *
 * Formula: T_p = k F_p l/(2 pi), k = 0.05/sqrt(tan beta).
 *
 * @param preload - F_p, N, zero or above
 * @param lead - l, m, above 0
 * @param leadAngle - beta, rad, above 0, below pi/2
 * @returns torque in N·m, wipers and seals not counted (5 to 30 N·mm more)
 * @throws RangeError outside the stated domains
 *
 * Source: form of JIS B 1192 (from memory).
 * Checked against: test/mechanics/ball-screw.test.ts.
 */
export function preloadDragTorque(preload: number, lead: number, leadAngle: number): number {
  requireNotNegative('preload', preload);
  requirePositive('lead', lead);
  if (!(leadAngle > 0) || leadAngle >= Math.PI / 2) throw new RangeError('preloadDragTorque: the lead angle must be between 0 and a right angle');
  return ((0.05 / Math.sqrt(Math.tan(leadAngle))) * preload * lead) / (2 * Math.PI);
}

/**
 * Axial force at which the slack half of a preloaded nut lets go.
 *
 * Formula: F = 2^1.5 F_p, since the approach of balls and races grows with the load to the power 2/3.
 *
 * @param preload - F_p, N, zero or above
 * @returns force in N
 * @throws RangeError when the preload is negative
 *
 * Source: Hertz contact (deflection as load^(2/3)), derived by hand: both halves start at delta_p; the slack one is free when the other stands at 2 delta_p.
 * Checked against: test/published/ball-screws.test.ts.
 */
export function liftOffForce(preload: number): number {
  requireNotNegative('preload', preload);
  return 2 ** 1.5 * preload;
}

/**
 * Load that the tight and the slack half of a preloaded nut carry.
 *
 * Formula: tight F_1 and slack F_2 with F_1 - F_2 = F and F_1^(2/3) + F_2^(2/3) = 2 F_p^(2/3); beyond lift-off F_1 = F, F_2 = 0.
 *
 * @param force - external axial force F, N, zero or above
 * @param preload - F_p, N, zero or above
 * @returns both loads in N
 * @throws RangeError outside the stated domains
 *
 * Source: Hertz contact and equal approach, derived by hand; the usual catalogue form F_1 = F_p (1 + F/(2.83 F_p))^1.5 (from memory) is its approximation, within 3 %.
 * Checked against: test/mechanics/ball-screw.test.ts.
 */
export function preloadedNutLoads(force: number, preload: number): { readonly tight: number; readonly slack: number } {
  requireNotNegative('force', force);
  requireNotNegative('preload', preload);
  if (force >= liftOffForce(preload)) return { tight: force, slack: 0 };
  // One unknown x: approach of the tight half in units of the preloaded approach, from 1 to 2. Newton falls short of nothing: the balance is smooth and rising.
  let x = 1;
  for (let step = 0; step < 60; step++) {
    const balance = x ** 1.5 - (2 - x) ** 1.5 - force / preload;
    const slope = 1.5 * (Math.sqrt(x) + Math.sqrt(2 - x));
    const next = Math.min(2, Math.max(1, x - balance / slope));
    if (Math.abs(next - x) < 1e-15) break;
    x = next;
  }
  return { tight: preload * x ** 1.5, slack: preload * (2 - x) ** 1.5 };
}

/**
 * Balls that lie in one turn of the thread.
 *
 * Formula: Z = pi d_pw/(cos(beta) D_w), balls touching.
 *
 * @param pitchCircle - d_pw, m, above 0
 * @param lead - l, m, above 0
 * @param ballDiameter - D_w, m, above 0, below d_pw
 * @returns number of balls, not rounded
 * @throws RangeError outside the stated domains
 *
 * Source: length of a helix turn over the ball diameter, by hand.
 * Checked against: test/mechanics/ball-screw.test.ts.
 */
export function ballsPerTurn(pitchCircle: number, lead: number, ballDiameter: number): number {
  requireBalls(pitchCircle, ballDiameter);
  return Math.hypot(Math.PI * pitchCircle, requiredLead(lead)) / ballDiameter;
}

/**
 * Travel between one ball entering the loaded zone and the next: the finest period that a ball nut prints through.
 *
 * Formula: l/z with z = Z/2 (1 - D_w cos(alpha)/d_pw) balls passing the nut per turn of the screw.
 *
 * @param pitchCircle - d_pw, m, above 0
 * @param lead - l, m, above 0
 * @param ballDiameter - D_w, m, above 0, below d_pw
 * @param contactAngle - alpha, rad, 0 to pi/2, default 45°
 * @returns balls per turn of the screw and travel in m between two of them
 * @throws RangeError outside the stated domains
 *
 * Source: rolling without slip between a turning inner and a resting outer race, as the cage of an angular-contact bearing (Harris, Rolling Bearing Analysis, from memory).
 * Checked against: test/mechanics/ball-screw.test.ts.
 */
export function ballPass(pitchCircle: number, lead: number, ballDiameter: number, contactAngle = Math.PI / 4): { readonly ballsPerScrewTurn: number; readonly period: number } {
  if (!(contactAngle >= 0) || contactAngle > Math.PI / 2) throw new RangeError('ballPass: the contact angle must be between 0 and a right angle');
  const passing = (ballsPerTurn(pitchCircle, lead, ballDiameter) / 2) * (1 - (ballDiameter * Math.cos(contactAngle)) / pitchCircle);
  return { ballsPerScrewTurn: passing, period: lead / passing };
}

/**
 * The speed factor of a ball nut, usually written d·n in mm·rpm.
 *
 * Formula: d0 omega; 1 m·rad/s is 9549 mm·rpm.
 *
 * @param nominalDiameter - d0, m, above 0
 * @param angularSpeed - omega, rad/s; the size counts
 * @returns d0 omega in m·rad/s, twice the surface speed at the nominal diameter
 * @throws RangeError when the diameter is not positive
 *
 * Source: common practice; limits of 50 000 mm·rpm (return tube) to 150 000 mm·rpm (end-cap return) from memory.
 * Checked against: test/mechanics/ball-screw.test.ts.
 */
export function speedFactor(nominalDiameter: number, angularSpeed: number): number {
  requirePositive('nominalDiameter', nominalDiameter);
  return nominalDiameter * Math.abs(angularSpeed);
}

function requireEfficiency(value: number): void {
  if (!(value > 0) || value > 1) throw new RangeError(`an efficiency must be above 0 and at most 1, got ${value}`);
}

function requireBalls(pitchCircle: number, ballDiameter: number): void {
  requirePositive('pitchCircle', pitchCircle);
  requirePositive('ballDiameter', ballDiameter);
  if (ballDiameter >= pitchCircle) throw new RangeError('a ball must be smaller than its circle');
}

function requiredLead(lead: number): number {
  requirePositive('lead', lead);
  return lead;
}
