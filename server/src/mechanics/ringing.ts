/** How far a mass on its drive swings after the acceleration has ended, and for how long. */
import { requireFinite, requireNotNegative, requirePositive } from './require-argument.ts';
import type { DefaultRange } from './stepper-standing.ts';

/**
 * Damping of a driven axis on its drive, as a share of the critical damping, when nobody measured it.
 * Source: weak. From memory: 0.02 on rolling guides and steel, up to 0.1 with sliding guides, grease and rubber belts.
 */
export const DAMPING_RATIO: DefaultRange = { nominal: 0.05, low: 0.02, high: 0.1 };

/** The acceleration of one ramp: it rises to a, stays, and falls to 0, in straight lines. */
export interface AccelerationPulse {
  /** Highest acceleration that is reached, m/s², above 0. */
  readonly acceleration: number;
  /** From the begin of the rise to the begin of the fall, s, above 0. */
  readonly length: number;
  /** Time of the rise, and of the fall, s, 0 (no limit of jerk) to `length`. */
  readonly rise: number;
}

/**
 * The acceleration pulse that leads from rest to a speed.
 *
 * Formula: without a limit of jerk a over v/a. With it: rise a/j, length v/a; if v < a²/j the acceleration only reaches √(v j), with rise and length √(v/j).
 *
 * @param speed - v, m/s, above 0
 * @param acceleration - a, m/s², above 0
 * @param jerk - j, m/s³, above 0; left out: no limit
 * @returns pulse whose area is v
 * @throws RangeError outside the stated domains
 *
 * Source: integral of a trapezoid of acceleration.
 * Checked against: test/mechanics/ringing.test.ts.
 */
export function accelerationPulse(speed: number, acceleration: number, jerk?: number): AccelerationPulse {
  requirePositive('speed', speed);
  requirePositive('acceleration', acceleration);
  if (jerk === undefined) return { acceleration, length: speed / acceleration, rise: 0 };
  requirePositive('jerk', jerk);
  if (speed >= acceleration ** 2 / jerk) return { acceleration, length: speed / acceleration, rise: acceleration / jerk };
  const time = Math.sqrt(speed / jerk);
  return { acceleration: Math.sqrt(speed * jerk), length: time, rise: time };
}

/**
 * Swing that remains when the acceleration has ended.
 *
 * Formula: A = a/(ω² √(1−ζ²)) · |1 − e^(−s T)| · |1 − e^(−s t_r)|/(|s| t_r), s = ω (ζ + i √(1−ζ²)).
 * Undamped: A = 2 a/ω² · |sin(ω T/2)| · |sin(ω t_r/2)/(ω t_r/2)|. It vanishes when T or the rise is a whole number of periods.
 *
 * @param pulse - acceleration of the ramp
 * @param angularFrequency - ω undamped, rad/s, above 0
 * @param damping - ζ, share of critical damping, 0 to below 1
 * @returns amplitude at the end of the ramp, m, of a swing that then dies out
 * @throws RangeError outside the stated domains
 *
 * Source: convolution of the pulse with the free swing of a mass on a spring; Chopra, Dynamics of Structures, chapter 4, pulse and ramp excitation (from memory).
 * Checked against: integration in time (test/independent/ringing.test.ts); Chopra (test/published/vibration.test.ts).
 */
export function ringingAmplitude(pulse: AccelerationPulse, angularFrequency: number, damping = 0): number {
  checkPulse(pulse);
  checkOscillator(angularFrequency, damping);
  const { acceleration, length, rise } = pulse;
  const damped = angularFrequency * Math.sqrt(1 - damping ** 2);
  return (acceleration / (angularFrequency * damped)) * gap(angularFrequency, damping, length) * smoothing(angularFrequency, damping, rise);
}

/** |1 − e^(−s t)|. */
function gap(angularFrequency: number, damping: number, time: number): number {
  const left = Math.exp(-damping * angularFrequency * time);
  const angle = angularFrequency * Math.sqrt(1 - damping ** 2) * time;
  // Written so that nothing cancels when the angle is small.
  return Math.sqrt((1 - left) ** 2 + 4 * left * Math.sin(angle / 2) ** 2);
}

/** What the straight rise leaves of the swing: |1 − e^(−s t)|/(|s| t), 1 for a sudden rise. */
const smoothing = (angularFrequency: number, damping: number, rise: number): number => (rise === 0 ? 1 : gap(angularFrequency, damping, rise) / (angularFrequency * rise));

/**
 * Most swing that can remain, whatever the length of the ramp and however its rise falls upon the period.
 *
 * Formula: undamped 2 a/ω² without a limit of jerk; with it 2 a/ω² · min(1, 2/(ω t_r)).
 *
 * @param pulse - acceleration of the ramp
 * @param angularFrequency - ω, rad/s, above 0
 * @returns bound of the amplitude, m; never below `ringingAmplitude` for a damping up to 0.5
 * @throws RangeError outside the stated domains
 *
 * Source: the sines of `ringingAmplitude` taken as 1.
 * Checked against: test/mechanics/ringing.test.ts.
 */
export function mostRinging(pulse: AccelerationPulse, angularFrequency: number): number {
  checkPulse(pulse);
  checkOscillator(angularFrequency, 0);
  const { acceleration, rise } = pulse;
  return ((2 * acceleration) / angularFrequency ** 2) * (rise === 0 ? 1 : Math.min(1, 2 / (angularFrequency * rise)));
}

/**
 * Lag of the mass behind its drive under a steady acceleration.
 *
 * Formula: δ = a/ω².
 *
 * @param acceleration - a, m/s², 0 or above
 * @param angularFrequency - ω, rad/s, above 0
 * @returns m
 * @throws RangeError outside the stated domains
 *
 * Source: F = m a on the spring k = m ω².
 * Checked against: test/mechanics/ringing.test.ts.
 */
export function lagUnderAcceleration(acceleration: number, angularFrequency: number): number {
  requireNotNegative('acceleration', acceleration);
  checkOscillator(angularFrequency, 0);
  return acceleration / angularFrequency ** 2;
}

/**
 * Time until a swing has died down.
 *
 * Formula: t = ln(A/ε)/(ζ ω); 0 when it is small enough at once.
 *
 * @param amplitude - A, m, 0 or above
 * @param tolerance - ε, m, above 0
 * @param angularFrequency - ω, rad/s, above 0
 * @param damping - ζ, above 0, below 1
 * @returns s
 * @throws RangeError outside the stated domains
 *
 * Source: envelope of a free damped swing, Rao, Mechanical Vibrations, chapter 2 (from memory).
 * Checked against: test/mechanics/ringing.test.ts.
 */
export function settlingTime(amplitude: number, tolerance: number, angularFrequency: number, damping: number): number {
  requireNotNegative('amplitude', amplitude);
  requirePositive('tolerance', tolerance);
  checkOscillator(angularFrequency, damping);
  requirePositive('damping', damping);
  return amplitude <= tolerance ? 0 : Math.log(amplitude / tolerance) / (damping * angularFrequency);
}

/**
 * Jerk at which the rise of the acceleration lasts one period, so that this mode is not excited.
 *
 * Formula: j = a ω/(2π).
 *
 * @param acceleration - a, m/s², above 0
 * @param angularFrequency - ω, rad/s, above 0
 * @returns m/s³
 * @throws RangeError outside the stated domains
 *
 * Source: first zero of `ringingAmplitude`.
 * Checked against: test/mechanics/ringing.test.ts.
 */
export function jerkOfOnePeriod(acceleration: number, angularFrequency: number): number {
  requirePositive('acceleration', acceleration);
  checkOscillator(angularFrequency, 0);
  return (acceleration * angularFrequency) / (2 * Math.PI);
}

function checkPulse({ acceleration, length, rise }: AccelerationPulse): void {
  requirePositive('acceleration', acceleration);
  requirePositive('length of the pulse', length);
  requireNotNegative('rise', rise);
  // Rounding of v/a against √(v/j) must not refuse a pulse without a plateau.
  if (rise > length * (1 + 1e-9)) throw new RangeError(`the rise ${rise} must not be longer than the pulse ${length}`);
}

function checkOscillator(angularFrequency: number, damping: number): void {
  requirePositive('angular frequency', angularFrequency);
  requireFinite('damping', damping);
  if (damping < 0 || damping >= 1) throw new RangeError(`damping must be 0 to below 1, got ${damping}`);
}
