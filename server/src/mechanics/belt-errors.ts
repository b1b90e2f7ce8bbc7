/** Errors of position that come back with every turn or every tooth. */
import { requireNotNegative, requirePositive, requireWhole } from './require-argument.ts';

/**
 * Swing of the carriage because the driving pulley runs out of true.
 *
 * Formula: 2e sqrt(L1² + L2² + 2 L1 L2 cos θ)/(L1 + L2) from peak to peak; at half a turn of wrap 2e |L2 - L1|/(L1 + L2). Period one turn, p z of travel.
 * Both runs leave the pulley to the same side, so its offset pulls the carriage one way through one span and the other way through the other:
 * with equal spans nothing is left, close to the pulley the whole 2e.
 *
 * @param eccentricity - e of the pitch circle from the axis of rotation, m, zero or above; half of what an indicator shows
 * @param wrap - θ on the pulley, rad, 0 to 2π
 * @param firstSpan - L1 from the driving pulley straight to the carriage, m, above 0
 * @param secondSpan - L2 the other way round, m, above 0
 * @returns from peak to peak, m; both spans taut
 * @throws RangeError outside the stated domains
 *
 * Source: derived. The usual ±e counts one span only and is the upper bound.
 * Checked against: an eccentric circle with a belt of fixed length and a loop of springs, both numerically (test/independent/belts.test.ts).
 */
export function drivingEccentricityError(eccentricity: number, wrap: number, firstSpan: number, secondSpan: number): number {
  requireEccentric(eccentricity, wrap, firstSpan, secondSpan);
  const both = Math.sqrt(Math.max(0, firstSpan ** 2 + secondSpan ** 2 + 2 * firstSpan * secondSpan * Math.cos(wrap)));
  return (2 * eccentricity * both) / (firstSpan + secondSpan);
}

/**
 * Swing of the carriage because an idler runs out of true: it lengthens the second span and lets it go again.
 *
 * Formula: the path changes by 4e sin(θ/2) from peak to peak; the carriage follows by L1/(L1 + L2) of it, since the first span holds on the other side.
 *
 * @param eccentricity - e, m, zero or above
 * @param wrap - θ on the idler, rad, 0 to 2π
 * @param firstSpan - L1 from the driving pulley to the carriage, m, above 0
 * @param secondSpan - L2 with the idler in it, m, above 0
 * @returns from peak to peak, m; period one turn of the idler
 * @throws RangeError outside the stated domains
 *
 * Source: derived; two springs of one specific stiffness, one of which is shortened.
 * Checked against: a loop of springs with a moved idler (test/independent/belts.test.ts).
 */
export function idlerEccentricityError(eccentricity: number, wrap: number, firstSpan: number, secondSpan: number): number {
  requireEccentric(eccentricity, wrap, firstSpan, secondSpan);
  return ((4 * eccentricity * Math.sin(wrap / 2)) * firstSpan) / (firstSpan + secondSpan);
}

/**
 * Ripple in the path of a belt that lies on its pulley as on a polygon.
 *
 * Formula: r (1 - cos(π/z)), period one tooth.
 *
 * @param pitchDiameter - 2r, m, above 0
 * @param teeth - z, whole, 3 or more
 * @returns from peak to peak, m: an upper bound, since a belt bends round its pulley and the ripples of entry and exit cancel where the span is a whole number of teeth
 * @throws RangeError outside the stated domains
 *
 * Source: polygon action as of roller chains; Budynas and Nisbett, Shigley's Mechanical Engineering Design, section 17-5 (from memory); that belts show less is from memory.
 * Checked against: hand calculation (test/mechanics/belt-errors.test.ts).
 */
export function polygonRipple(pitchDiameter: number, teeth: number): number {
  requirePositive('pitchDiameter', pitchDiameter);
  requireWhole('teeth', teeth, 3);
  return (pitchDiameter / 2) * (1 - Math.cos(Math.PI / teeth));
}

function requireEccentric(eccentricity: number, wrap: number, firstSpan: number, secondSpan: number): void {
  requireNotNegative('eccentricity', eccentricity);
  requireNotNegative('wrap', wrap);
  requirePositive('firstSpan', firstSpan);
  requirePositive('secondSpan', secondSpan);
  if (wrap > 2 * Math.PI) throw new RangeError('the wrap must not exceed a full turn');
}
