/** Heat in the windings of a motor and the temperature it settles at. */
import { requireNotNegative, requirePositive } from './require-argument.ts';

/** Rise of the winding that insulation class B (130 °C) allows over 40 °C, K. Source: IEC 60034-1, limits by resistance, class B. */
export const CLASS_B_RISE = 80;
/** Change of copper resistance per kelvin, referred to 20 °C, 1/K. Source: IEC 60034-1, method of resistance: 1 / (235 + 20), from memory. */
export const COPPER_TEMPERATURE_COEFFICIENT = 1 / 255;

/**
 * Copper loss of a two-phase motor under sinusoidal currents, both phases together.
 *
 * Formula: P = I_p² · R = 2 · I_rms² · R.
 * @param peakCurrent I_p, A, ≥ 0.
 * @param resistance R of one phase, Ω, > 0.
 * @returns P, W, at the temperature for which R holds. It depends on the setting and not on the load.
 * Outside the domain: RangeError.
 * Source: sin² + cos² = 1.
 * Checked against: integration over one period (test/mechanics/motor-heat).
 */
export function copperLossOfSetting(peakCurrent: number, resistance: number): number {
  requireNotNegative('peak current', peakCurrent);
  requirePositive('resistance', resistance);
  return peakCurrent ** 2 * resistance;
}

/**
 * Copper loss for which the sheet's rating stands: both phases on, direct current.
 *
 * Formula: P_r = 2 · I_r² · R.
 * @param ratedCurrent I_r, A, > 0.
 * @param resistance R of one phase, Ω, > 0.
 * @returns P_r, W.
 * Outside the domain: RangeError.
 * Source: definition of the usual rating.
 * Checked against: hand calculation (test/mechanics/motor-heat).
 */
export function ratedCopperLoss(ratedCurrent: number, resistance: number): number {
  requirePositive('rated current', ratedCurrent);
  requirePositive('resistance', resistance);
  return 2 * ratedCurrent ** 2 * resistance;
}

/**
 * Upper bound of the thermal resistance from winding to surroundings, from the sheet alone.
 *
 * Formula: R_th ≤ ΔT / (2 · I_r² · R · (1 + α ΔT)).
 * @param ratedCurrent I_r, a continuous rating, both phases on, A, > 0.
 * @param resistance R of one phase, cold, Ω, > 0.
 * @param permittedRise ΔT of the winding at that rating, K, > 0; class B by default.
 * @param coefficient α, growth of resistance, 1/K, ≥ 0; 0 by default, which gives the larger bound: use the same α in `windingRise`.
 * @returns the bound, K/W.
 * Outside the domain: RangeError.
 * Source: derived: the rated current does not heat the winding beyond its class. IEC 60034-1 for the class.
 * Checked against: hand calculation for three sheets (test/mechanics/motor-heat).
 */
export function thermalResistanceBound(ratedCurrent: number, resistance: number, permittedRise: number = CLASS_B_RISE, coefficient = 0): number {
  requirePositive('permitted rise', permittedRise);
  requireNotNegative('coefficient', coefficient);
  return permittedRise / (ratedCopperLoss(ratedCurrent, resistance) * (1 + coefficient * permittedRise));
}

/** Where the winding temperature ends. */
export type WindingRise =
  | { readonly kind: 'settles'; /** K over the surroundings. */ readonly rise: number }
  | { readonly kind: 'runs-away' };

/**
 * Temperature rise at which the winding settles.
 *
 * Formula: θ = P R_th / (1 − α P R_th).
 * @param coldLoss P with the resistance at the reference temperature, W, ≥ 0.
 * @param thermalResistance R_th, K/W, > 0.
 * @param coefficient α, growth of resistance, 1/K, ≥ 0; 0 by default: the loss is then taken as it is.
 * @returns the rise; or `runs-away` when α P R_th ≥ 1: a constant current heats the copper faster than it can cool.
 * Outside the domain: RangeError.
 * Source: steady heat balance; IEC 60034-1 for α.
 * Checked against: a machine of known surface and heat transfer (test/published/steppers).
 */
export function windingRise(coldLoss: number, thermalResistance: number, coefficient = 0): WindingRise {
  requireNotNegative('loss', coldLoss);
  requirePositive('thermal resistance', thermalResistance);
  requireNotNegative('coefficient', coefficient);
  const linear = coldLoss * thermalResistance;
  const remaining = 1 - coefficient * linear;
  return remaining > 0 ? { kind: 'settles', rise: linear / remaining } : { kind: 'runs-away' };
}

/**
 * Temperature rise after a time, from one rise towards another.
 *
 * Formula: θ(t) = θ_end + (θ_0 − θ_end) · e^(−t/τ).
 * @param startRise θ_0, K.
 * @param endRise θ_end, K.
 * @param timeConstant τ, s, > 0.
 * @param time t, s, ≥ 0.
 * @returns θ(t), K; for a body of one temperature.
 * Outside the domain: RangeError.
 * Source: Dubey, Fundamentals of Electrical Drives, section 4.2.
 * Checked against: Dubey, examples 4.1 and 4.4 (test/published/steppers).
 */
export function riseAfter(startRise: number, endRise: number, timeConstant: number, time: number): number {
  requirePositive('time constant', timeConstant);
  requireNotNegative('time', time);
  return endRise + (startRise - endRise) * Math.exp(-time / timeConstant);
}

/** What two readings of a warming motor say. */
export type WarmingFromReadings =
  | { readonly kind: 'warming'; /** K. */ readonly endRise: number; /** s. */ readonly timeConstant: number }
  | { readonly kind: 'not-a-warming-curve' };

/**
 * End temperature and time constant from two readings, the second after twice the time of the first.
 *
 * Formula: θ_end = θ_1² / (2 θ_1 − θ_2);  τ = −t / ln(θ_2/θ_1 − 1).
 * @param firstRise θ_1 after t, K, > 0.
 * @param secondRise θ_2 after 2t, K, > 0.
 * @param time t, s, > 0.
 * @returns both; or `not-a-warming-curve` unless θ_1 < θ_2 < 2 θ_1.
 * Outside the domain: RangeError.
 * Source: derived from the exponential of `riseAfter`.
 * Checked against: `riseAfter` backwards (test/mechanics/motor-heat).
 */
export function warmingFromTwoReadings(firstRise: number, secondRise: number, time: number): WarmingFromReadings {
  requirePositive('first rise', firstRise);
  requirePositive('second rise', secondRise);
  requirePositive('time', time);
  if (!(firstRise < secondRise && secondRise < 2 * firstRise)) return { kind: 'not-a-warming-curve' };
  return {
    kind: 'warming',
    endRise: firstRise ** 2 / (2 * firstRise - secondRise),
    timeConstant: -time / Math.log(secondRise / firstRise - 1),
  };
}

/**
 * Root mean square of a torque over a duty cycle.
 *
 * Formula: √( Σ w_i t_i / Σ t_i ), w = T² for a constant torque, (T_a² + T_a T_b + T_b²)/3 for one that changes evenly.
 * @param phases each with its torque at start and end, N·m, and its duration, s, ≥ 0.
 * @returns T_rms, N·m. For DC and brushless motors; a stepping motor's heat follows its setting instead.
 * Outside the domain: RangeError for no time at all.
 * Source: Dubey, Fundamentals of Electrical Drives, section 4.3.
 * Checked against: Dubey, example 4.2 (test/published/motion).
 */
export function rmsTorque(phases: readonly { readonly start: number; readonly end: number; readonly duration: number }[]): number {
  let heat = 0;
  let time = 0;
  for (const { start, end, duration } of phases) {
    requireNotNegative('duration', duration);
    heat += ((start ** 2 + start * end + end ** 2) / 3) * duration;
    time += duration;
  }
  requirePositive('duration of the cycle', time);
  return Math.sqrt(heat / time);
}
