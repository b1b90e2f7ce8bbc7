import { preloadedNutLoads } from './ball-screw.ts';
import { requireNotNegative, requirePositive } from './require-argument.ts';

/** One phase of the duty of a ball nut. */
export interface DutyPhase {
  /** Axial force in the phase, N; the size counts. */
  readonly force: number;
  /** Turns of the screw in the phase, dimensionless, zero or above: speed times time. */
  readonly turns: number;
}

/**
 * Equivalent mean load of a ball nut over its duty.
 *
 * Formula: F_m = (sum |F_i|³ r_i / sum r_i)^(1/3), r_i = n_i t_i turns in each phase.
 *
 * @param phases - see {@link DutyPhase}
 * @returns force in N, between the smallest and the largest; `no motion` when no phase turns the screw
 * @throws RangeError for turns that are negative or not finite
 *
 * Source: ISO 3408-5:2006, equivalent axial load (as quoted by others; the standard was not opened).
 * Checked against: test/mechanics/ball-screw-life.test.ts.
 */
export function equivalentMeanLoad(phases: readonly DutyPhase[]): number | 'no motion' {
  let cubes = 0;
  let turns = 0;
  for (const phase of phases) {
    requireNotNegative('turns', phase.turns);
    cubes += Math.abs(phase.force) ** 3 * phase.turns;
    turns += phase.turns;
  }
  return turns === 0 ? 'no motion' : Math.cbrt(cubes / turns);
}

/**
 * Equivalent mean load while the load rises evenly from one value to another.
 *
 * Formula: F_m = ((F_max^4 - F_min^4)/(4 (F_max - F_min)))^(1/3).
 *
 * @param least - F_min, N, zero or above
 * @param most - F_max, N, at least F_min
 * @returns force in N; the usual short form (F_min + 2 F_max)/3 is up to 8.4 % above it (most at F_min = 0.3 F_max)
 * @throws RangeError outside the stated domain
 *
 * Source: mean of the cube over a linear ramp, integrated by hand.
 * Checked against: test/mechanics/ball-screw-life.test.ts.
 */
export function meanLoadOfRamp(least: number, most: number): number {
  requireNotNegative('least', least);
  if (!(most >= least)) throw new RangeError('meanLoadOfRamp: the largest load is below the smallest');
  // (a^4 - b^4)/(a - b) = (a + b)(a² + b²): no division, so equal ends need no case of their own.
  return Math.cbrt(((least + most) * (least ** 2 + most ** 2)) / 4);
}

/**
 * Basic rating life of a rolling contact: what nine of ten reach.
 *
 * Formula: L10 = (C_a/(f_w F_m))³ · 10^6 turns.
 *
 * @param dynamicRating - C_a, N, above 0
 * @param meanLoad - F_m, N, zero or above
 * @param loadFactor - f_w, at least 1 (default): 1 to 1.2 smooth, 1.2 to 1.5 usual, 1.5 to 3 with shock
 * @returns turns; `Infinity` without load. Above 10^8 turns fatigue is not what ends the nut
 * @throws RangeError outside the stated domains
 *
 * Source: ISO 3408-5:2006 (as quoted); Wentzell, Machine Design, examples 20.1 and 20.2; load factors from memory.
 * Checked against: test/published/ball-screws.test.ts.
 */
export function ratingLife(dynamicRating: number, meanLoad: number, loadFactor = 1): number {
  requirePositive('dynamicRating', dynamicRating);
  requireNotNegative('meanLoad', meanLoad);
  if (!(loadFactor >= 1)) throw new RangeError(`loadFactor must be at least 1, got ${loadFactor}`);
  return 1e6 * (dynamicRating / (loadFactor * meanLoad)) ** 3;
}

/**
 * Dynamic rating needed for a wanted life.
 *
 * Formula: C_a = f_w F_m (L/10^6)^(1/3).
 *
 * @param meanLoad - F_m, N, zero or above
 * @param turns - wanted life L, turns, above 0
 * @param loadFactor - f_w, at least 1 (default)
 * @returns rating in N
 * @throws RangeError outside the stated domains
 *
 * Source: {@link ratingLife} solved for the rating.
 * Checked against: test/published/ball-screws.test.ts, Wentzell, example 20.2.
 */
export function ratingForLife(meanLoad: number, turns: number, loadFactor = 1): number {
  requireNotNegative('meanLoad', meanLoad);
  requirePositive('turns', turns);
  if (!(loadFactor >= 1)) throw new RangeError(`loadFactor must be at least 1, got ${loadFactor}`);
  return loadFactor * meanLoad * Math.cbrt(turns / 1e6);
}

/**
 * Life of a preloaded nut: both halves must live.
 *
 * Formula: each half lives L_i = (C_a/(f_w F_m,i))³ 10^6; together L = (L_1^(-10/9) + L_2^(-10/9))^(-9/10).
 *
 * @param dynamicRating - C_a of one half, N, above 0
 * @param phases - duty; a positive force loads one half, a negative the other
 * @param preload - F_p, N, zero or above
 * @param loadFactor - f_w, at least 1 (default)
 * @returns turns, or `no motion`
 * @throws RangeError outside the stated domains
 *
 * Source: ISO 3408-5:2006 (form from memory); share of the halves by {@link preloadedNutLoads}.
 * Checked against: test/mechanics/ball-screw-life.test.ts.
 */
export function preloadedLife(dynamicRating: number, phases: readonly DutyPhase[], preload: number, loadFactor = 1): number | 'no motion' {
  const halves = [1, -1].map((side) =>
    equivalentMeanLoad(
      phases.map(({ force, turns }) => {
        const shares = preloadedNutLoads(Math.abs(force), preload);
        return { force: force * side >= 0 ? shares.tight : shares.slack, turns };
      }),
    ),
  );
  let sum = 0;
  for (const mean of halves) {
    if (mean === 'no motion') return 'no motion';
    const life = ratingLife(dynamicRating, mean, loadFactor);
    sum += life === Infinity ? 0 : life ** (-10 / 9);
  }
  return sum === 0 ? Infinity : sum ** (-9 / 10);
}

/**
 * A life in turns as travel and as running time.
 *
 * Formula: travel = L l; time = L 2 pi/omega_m.
 *
 * @param turns - L, zero or above, `Infinity` allowed
 * @param lead - l, m, above 0
 * @param meanAngularSpeed - omega_m while the screw runs, or over the whole time for calendar hours, rad/s, above 0
 * @returns travel in m and time in s
 * @throws RangeError outside the stated domains
 *
 * Source: definition.
 * Checked against: test/published/ball-screws.test.ts, Wentzell, example 20.1.
 */
export function lifeAsTravelAndTime(turns: number, lead: number, meanAngularSpeed: number): { readonly travel: number; readonly time: number } {
  if (!(turns >= 0)) throw new RangeError(`turns must be zero or greater, got ${turns}`);
  requirePositive('lead', lead);
  requirePositive('meanAngularSpeed', meanAngularSpeed);
  return { travel: turns * lead, time: (turns * 2 * Math.PI) / meanAngularSpeed };
}

/**
 * Static safety of a ball nut against lasting dents.
 *
 * Formula: s0 = C_0a/F_max; C_0a leaves a dent of a ten-thousandth of the ball diameter.
 *
 * @param staticRating - C_0a, N, above 0
 * @param largestForce - F_max, N; the size counts
 * @returns factor; `Infinity` without load
 * @throws RangeError when the rating is not positive
 *
 * Source: ISO 3408-5:2006 (as quoted).
 * Checked against: test/mechanics/ball-screw-life.test.ts.
 */
export function staticSafety(staticRating: number, largestForce: number): number {
  requirePositive('staticRating', staticRating);
  return staticRating / Math.abs(largestForce);
}
