/** Heating of a motor of one time constant on a load that comes and goes. */
import { riseAfter } from './motor-heat.ts';
import { requireFinite, requireNotNegative, requirePositive } from './require-argument.ts';

/** A load that repeats. */
export interface HeatingCycle {
  /** Rise at which it would settle while loaded, and while idle, K. */
  readonly loadedRise: number;
  readonly idleRise: number;
  /** Durations, s, > 0. */
  readonly loadedTime: number;
  readonly idleTime: number;
  /** Time constant while loaded, and while idle (longer for a motor that cools itself by turning), s, > 0. */
  readonly heatingConstant: number;
  readonly coolingConstant: number;
}

/** Where the temperature swings once the cycle has gone on for long, K over the surroundings. */
export interface TemperatureSwing {
  readonly highest: number;
  readonly lowest: number;
}

/**
 * Highest and lowest temperature rise of a cycle that has gone on for long.
 *
 * Formula: θ_max = (θ_L (1 − e_h) + θ_I (1 − e_c) e_h) / (1 − e_h e_c), e_h = e^(−t_L/τ_h), e_c = e^(−t_I/τ_c).
 * @param cycle see `HeatingCycle`.
 * @returns both ends of the swing.
 * Outside the domain: RangeError.
 * Source: Dubey, Fundamentals of Electrical Drives, section 4.2.
 * Checked against: Dubey, examples 4.1 and 4.4 (test/published/motor-duty); integration (test/independent/motor-heating).
 */
export function temperatureSwing(cycle: HeatingCycle): TemperatureSwing {
  const { loadedRise, idleRise, heated, cooled } = factors(cycle);
  const highest = (loadedRise * (1 - heated) + idleRise * (1 - cooled) * heated) / (1 - heated * cooled);
  return { highest, lowest: riseAfter(highest, idleRise, cycle.coolingConstant, cycle.idleTime) };
}

/**
 * Rise at which a load may settle if the highest temperature of its cycle is given.
 *
 * Formula: θ_L = (θ_max (1 − e_h e_c) − θ_I (1 − e_c) e_h) / (1 − e_h).
 * @param highest θ_max, K.
 * @param cycle see `HeatingCycle`; its loaded rise is what is looked for and left out.
 * @returns θ_L, K. Over the rise at the rating it is the factor by which the loss may be larger; its root that of the current.
 * Outside the domain: RangeError.
 * Source: Dubey, Fundamentals of Electrical Drives, section 4.4.
 * Checked against: Dubey, examples 4.1 and 4.4 (test/published/motor-duty).
 */
export function loadedRiseFor(highest: number, cycle: Omit<HeatingCycle, 'loadedRise'>): number {
  requireFinite('highest rise', highest);
  const { idleRise, heated, cooled } = factors({ ...cycle, loadedRise: 0 });
  return (highest * (1 - heated * cooled) - idleRise * (1 - cooled) * heated) / (1 - heated);
}

/** How long a load may stay. */
export type OverloadTime =
  | { readonly kind: 'for'; /** s. */ readonly time: number }
  | { readonly kind: 'for-good' }
  | { readonly kind: 'too-hot-already' };

/**
 * Time until a load brings the rise to what is permitted.
 *
 * Formula: t = τ ln((θ_end − θ_0) / (θ_end − θ_max)).
 * @param startRise θ_0, K.
 * @param endRise θ_end at which the load would settle, K.
 * @param permittedRise θ_max, K.
 * @param timeConstant τ, s, > 0.
 * @returns the time; or that it may stay for good, or that it is too hot before it begins.
 * Outside the domain: RangeError.
 * Source: `riseAfter` solved for the time; Dubey, Fundamentals of Electrical Drives, section 4.4.
 * Checked against: Dubey, example 4.4 (test/published/motor-duty).
 */
export function overloadTime(startRise: number, endRise: number, permittedRise: number, timeConstant: number): OverloadTime {
  requireFinite('start rise', startRise);
  requireFinite('end rise', endRise);
  requireFinite('permitted rise', permittedRise);
  requirePositive('time constant', timeConstant);
  if (startRise > permittedRise) return { kind: 'too-hot-already' };
  if (endRise <= permittedRise) return { kind: 'for-good' };
  return { kind: 'for', time: timeConstant * Math.log((endRise - startRise) / (endRise - permittedRise)) };
}

function factors(cycle: HeatingCycle): { readonly loadedRise: number; readonly idleRise: number; readonly heated: number; readonly cooled: number } {
  requireFinite('rise while loaded', cycle.loadedRise);
  requireNotNegative('rise while idle', cycle.idleRise);
  requirePositive('loaded time', cycle.loadedTime);
  requirePositive('idle time', cycle.idleTime);
  requirePositive('heating constant', cycle.heatingConstant);
  requirePositive('cooling constant', cycle.coolingConstant);
  return {
    loadedRise: cycle.loadedRise, idleRise: cycle.idleRise,
    heated: Math.exp(-cycle.loadedTime / cycle.heatingConstant), cooled: Math.exp(-cycle.idleTime / cycle.coolingConstant),
  };
}
