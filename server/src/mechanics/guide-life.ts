/** Rating life and static safety of rolling linear guides: rail carriages and ball bushings. */
import { requireNotNegative, requirePositive, requireWhole } from './require-argument.ts';

/** What rolls in the carriage. */
export type RollingElement = 'ball' | 'roller';

/**
 * Exponent of the rating life.
 *
 * Formula: p = 3 for balls, 10/3 for rollers.
 *
 * @param element - what rolls
 * @returns p
 *
 * Source: ISO 14728-1 (as quoted in the trade; the standard was not opened).
 * Checked against: test/published/guide-life.test.ts.
 */
export function lifeExponent(element: RollingElement): number {
  return element === 'ball' ? 3 : 10 / 3;
}

/** A dynamic rating and the travel that it stands for: it says nothing without it. */
export interface GuideRating {
  readonly element: RollingElement;
  /** C, N, above 0. */
  readonly dynamicRating: number;
  /** Travel that nine of ten reach under C, m, above 0: 100e3 or 50e3. */
  readonly ratedTravel: number;
}

/**
 * The same carriage with its dynamic rating for another rated travel.
 *
 * Formula: C2 = C1 (B1/B2)^(1/p): a rating for 50 km is 1.26 times that for 100 km with balls, 1.23 times with rollers.
 *
 * @param rating - see {@link GuideRating}
 * @param ratedTravel - B2, m, above 0
 * @returns C2, N
 * @throws RangeError outside the stated domains
 *
 * Source: ISO 14728-1 allows both bases (as quoted in the trade).
 * Checked against: test/published/guide-life.test.ts (factor 1.26).
 */
export function ratingForTravel(rating: GuideRating, ratedTravel: number): number {
  requireRating(rating);
  requirePositive('ratedTravel', ratedTravel);
  return rating.dynamicRating * (rating.ratedTravel / ratedTravel) ** (1 / lifeExponent(rating.element));
}

/**
 * Basic rating life of a rolling guide: the travel that nine of ten reach.
 *
 * Formula: L = B (C/(f_w P))^p.
 *
 * @param rating - see {@link GuideRating}; already lowered for hardness and neighbours, see {@link loweredRating}
 * @param load - P, equivalent load, N, 0 or above; valid up to 0.5 C
 * @param loadFactor - f_w, 1 (default) or above: 1 to 1.5 smooth, 1.5 to 2 up to 1 m/s, 2 to 3.5 with shock
 * @returns m; `Infinity` without load
 * @throws RangeError outside the stated domains
 *
 * Source: ISO 14728-1 (as quoted); load factors from one supplier's table.
 * Checked against: test/published/guide-life.test.ts (Wentzell, examples 20.1 and 20.2, which have the same law in revolutions).
 */
export function guideLife(rating: GuideRating, load: number, loadFactor = 1): number {
  requireRating(rating);
  requireNotNegative('load', load);
  requireLoadFactor(loadFactor);
  return rating.ratedTravel * (rating.dynamicRating / (loadFactor * load)) ** lifeExponent(rating.element);
}

/**
 * Dynamic rating that a wanted life asks for.
 *
 * Formula: C = f_w P (L/B)^(1/p).
 *
 * @param element - what rolls
 * @param ratedTravel - B of the rating that is looked for, m, above 0
 * @param load - P, N, 0 or above
 * @param travel - wanted life L, m, above 0
 * @param loadFactor - f_w, 1 (default) or above
 * @returns C, N
 * @throws RangeError outside the stated domains
 *
 * Source: {@link guideLife} solved for the rating.
 * Checked against: test/published/guide-life.test.ts (Wentzell, example 20.2).
 */
export function guideRatingNeeded(element: RollingElement, ratedTravel: number, load: number, travel: number, loadFactor = 1): number {
  requirePositive('ratedTravel', ratedTravel);
  requireNotNegative('load', load);
  requirePositive('travel', travel);
  requireLoadFactor(loadFactor);
  return loadFactor * load * (travel / ratedTravel) ** (1 / lifeExponent(element));
}

/** What lowers a rating. */
export interface RatingReductions {
  /** f_h, for raceways or a shaft softer than 58 HRC, above 0 and at most 1. Default 1. */
  readonly hardness?: number | undefined;
  /** f_t, above 100 °C, above 0 and at most 1. Default 1. */
  readonly temperature?: number | undefined;
  /** Carriages or bushings that touch each other on one rail, 1 (default) or more. */
  readonly touching?: number | undefined;
}

/**
 * A dynamic or static rating lowered for its circumstances.
 *
 * Formula: C f_h f_t f_c, f_c = 1, 0.81, 0.72, 0.66, 0.61 for 1 to 5 carriages that touch.
 *
 * @param rating - C or C0, N, above 0
 * @param reductions - see {@link RatingReductions}
 * @returns N, for one carriage
 * @throws RangeError outside the stated domains
 *
 * Source: f_c up to four from one supplier's table, the fifth from memory; f_h and f_t are the person's.
 * Checked against: test/mechanics/guide-life.test.ts.
 */
export function loweredRating(rating: number, reductions: RatingReductions): number {
  requirePositive('rating', rating);
  const { hardness = 1, temperature = 1, touching = 1 } = reductions;
  requireShare('hardness', hardness);
  requireShare('temperature', temperature);
  requireWhole('touching', touching, 1);
  return rating * hardness * temperature * (TOUCHING[Math.min(touching, TOUCHING.length) - 1] as number);
}

const TOUCHING: readonly number[] = [1, 0.81, 0.72, 0.66, 0.61];

/** Part of the duty of a carriage. */
export interface GuidePhase {
  /** Equivalent load, N; the size counts. */
  readonly load: number;
  /** Travel under it, m, 0 or above. */
  readonly travel: number;
}

/**
 * Equivalent mean load of a carriage over its duty.
 *
 * Formula: P_m = (sum |P_i|^p s_i/sum s_i)^(1/p).
 *
 * @param element - what rolls
 * @param phases - see {@link GuidePhase}
 * @returns N, or `no motion` when no phase travels
 * @throws RangeError for a negative travel
 *
 * Source: ISO 14728-1, linear damage (from memory).
 * Checked against: test/mechanics/guide-life.test.ts (damage added up).
 */
export function meanGuideLoad(element: RollingElement, phases: readonly GuidePhase[]): number | 'no motion' {
  const p = lifeExponent(element);
  let damage = 0;
  let travel = 0;
  for (const phase of phases) {
    requireNotNegative('travel', phase.travel);
    damage += Math.abs(phase.load) ** p * phase.travel;
    travel += phase.travel;
  }
  return travel === 0 ? 'no motion' : (damage / travel) ** (1 / p);
}

/**
 * A life in travel as running time.
 *
 * Formula: t = L/(2 H n).
 *
 * @param travel - L, m, 0 or above; `Infinity` allowed
 * @param stroke - H, m, above 0
 * @param doubleStrokes - n, there and back, 1/s, above 0
 * @returns s
 * @throws RangeError outside the stated domains
 *
 * Source: definition.
 * Checked against: test/mechanics/guide-life.test.ts.
 */
export function lifeInTime(travel: number, stroke: number, doubleStrokes: number): number {
  if (!(travel >= 0)) throw new RangeError(`travel must be zero or greater, got ${travel}`);
  requirePositive('stroke', stroke);
  requirePositive('doubleStrokes', doubleStrokes);
  return travel / (2 * stroke * doubleStrokes);
}

/** What one carriage carries: forces across the rail (N) and moments (N·m); x along the rail, y across, z away from its base. */
export interface CarriageLoad {
  readonly fy: number;
  readonly fz: number;
  /** About the rail: roll. */
  readonly mx: number;
  /** About the axis across: pitch. */
  readonly my: number;
  /** About the axis away from the base: yaw. */
  readonly mz: number;
}

/** What one carriage withstands without lasting dents. */
export interface StaticRatings {
  /** C0, N, above 0. */
  readonly staticRating: number;
  /** M0x, roll, N·m, above 0; left out: the carriage takes no such moment (a bushing turns on its shaft). */
  readonly rollMoment?: number | undefined;
  /** M0y, pitch, N·m, above 0; left out: none. */
  readonly pitchMoment?: number | undefined;
  /** M0z, yaw, N·m, above 0; left out: none. */
  readonly yawMoment?: number | undefined;
}

/**
 * The straight load that presses the rolling elements of a carriage as much as its forces and moments together.
 *
 * Formula: P0 = |Fy| + |Fz| + C0 (|Mx|/M0x + |My|/M0y + |Mz|/M0z), without the term of a moment that is zero.
 *
 * @param load - see {@link CarriageLoad}
 * @param ratings - see {@link StaticRatings}
 * @returns N, or `takes no moment` when there is a moment that the carriage has no rating for
 * @throws RangeError for ratings that are not positive
 *
 * Source: ISO 14728-2 (static) and a maker's form of the same sum; also used as P of the rating life (a maker's practice). Cautious: the worst
 * elements of all parts are taken to be the same ones. For a bushing on a round shaft hypot(Fy, Fz) is exact.
 * Checked against: test/mechanics/guide-life.test.ts.
 */
export function equivalentCarriageLoad(load: CarriageLoad, ratings: StaticRatings): number | 'takes no moment' {
  requirePositive('staticRating', ratings.staticRating);
  let sum = Math.abs(load.fy) + Math.abs(load.fz);
  for (const [moment, rating] of [[load.mx, ratings.rollMoment], [load.my, ratings.pitchMoment], [load.mz, ratings.yawMoment]] as const) {
    if (rating !== undefined) requirePositive('static moment', rating);
    if (moment === 0) continue;
    if (rating === undefined) return 'takes no moment';
    sum += (ratings.staticRating * Math.abs(moment)) / rating;
  }
  return sum;
}

/**
 * Static safety of a carriage against lasting dents.
 *
 * Formula: S0 = C0/P0; C0 leaves a dent of a ten-thousandth of the element's diameter.
 *
 * @param staticRating - C0, N, above 0
 * @param load - P0, greatest equivalent load, N, 0 or above
 * @returns factor, `Infinity` without load; 2 without and 5 with vibration or shock wanted (one maker's table), below 1 it dents
 * @throws RangeError outside the stated domains
 *
 * Source: ISO 14728-2 (as quoted in the trade).
 * Checked against: test/mechanics/guide-life.test.ts.
 */
export function guideStaticSafety(staticRating: number, load: number): number {
  requirePositive('staticRating', staticRating);
  requireNotNegative('load', load);
  return staticRating / load;
}

/** Share of C up to which the rating life is said to hold: ISO 14728-1, from memory. */
export const LIFE_FORMULA_LIMIT = 0.5;

function requireRating({ dynamicRating, ratedTravel }: GuideRating): void {
  requirePositive('dynamicRating', dynamicRating);
  requirePositive('ratedTravel', ratedTravel);
}

function requireLoadFactor(loadFactor: number): void {
  if (!(Number.isFinite(loadFactor) && loadFactor >= 1)) throw new RangeError(`loadFactor must be at least 1, got ${loadFactor}`);
}

function requireShare(name: string, value: number): void {
  requirePositive(name, value);
  if (value > 1) throw new RangeError(`${name} must be at most 1, got ${value}`);
}
