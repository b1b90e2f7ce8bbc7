/** A slider on a sliding guide: the force to move it, and whether friction locks it. */
import { requireFinite, requireNotNegative, requirePositive } from './require-argument.ts';

/** A slider that touches its guide at two ends. Offsets count from the guide that takes the yaw (the narrow one of two), positive to one side. */
export interface Slider {
  /** s between the outer ends of what touches the guide, m, above 0. */
  readonly guidedLength: number;
  /** mu, 0 or above; friction at rest decides whether it starts. */
  readonly friction: number;
  /** Distance of the line of the driving force from the guide, m. */
  readonly driveOffset: number;
  /** What resists along the guide (load, weight, cutting force, drag of the other guide), N, 0 or above. */
  readonly load: number;
  /** Distance of the resultant of what resists, m: on the drive's side it undoes part of the drive's couple. Default 0. */
  readonly loadOffset?: number | undefined;
  /** Force across the guide, through the middle of the slider, N. Default 0. */
  readonly sideForce?: number | undefined;
  /** A couple from elsewhere, N·m, positive as the driving force at a positive offset turns. Default 0. */
  readonly couple?: number | undefined;
  /** Drag that does not depend on the forces: seals, preload 2 mu N0, N, 0 or above. Default 0. */
  readonly constantDrag?: number | undefined;
}

export type SliderForce =
  | {
      readonly kind: 'moves';
      /** Least driving force, N. */
      readonly force: number;
      /** It locks again when pushed harder than this, N; `Infinity` where it never does. */
      readonly locksAbove: number;
    }
  /** No force along this line moves it. */
  | { readonly kind: 'locks' };

/**
 * Driving force of a slider on a sliding guide.
 *
 * Formula: N_1,2 = Q/2 ± M/s, M = F d - R w + M0, F ≥ R + S + mu (|N1| + |N2|) = R + S + mu max(|Q|, 2|M|/s).
 * Without Q and M0: F = R (1 + 2 mu |w|/s)/(1 - 2 mu |d|/s) with drive and load offset to opposite sides, and it locks for every force when d/s ≥ 1/(2 mu).
 * A load offset alone never locks: F = R (1 + 2 mu |w|/s).
 *
 * @param slider - see {@link Slider}; a slider that its own weight lets down is driven by that weight, at the offset of its centre of gravity
 * @returns least force and the force above which it locks, or `locks`
 * @throws RangeError outside the stated domains
 *
 * Source: Beer and Johnston, Vector Mechanics for Engineers, sample problem 8.3 (collar), with the general forces added by the same balance; rigid bodies with
 * a little play, contact at both ends, guide thin against the offsets or measured from its axis.
 * Checked against: test/published/guide-jamming.test.ts; test/independent/slider-contact.test.ts (a body with play, in time).
 */
export function sliderForce(slider: Slider): SliderForce {
  const { guidedLength: s, friction: mu, driveOffset: d, load: r, loadOffset: w = 0, sideForce: q = 0, couple: m0 = 0, constantDrag = 0 } = slider;
  requirePositive('guidedLength', s);
  requireNotNegative('friction', mu);
  requireFinite('driveOffset', d);
  requireNotNegative('load', r);
  requireFinite('loadOffset', w);
  requireFinite('sideForce', q);
  requireFinite('couple', m0);
  requireNotNegative('constantDrag', constantDrag);
  // The resisting force points against the drive: at the same offset it undoes part of its couple.
  const other = m0 - r * w;
  const base = r + constantDrag;
  // mu max(|Q|, ±2M/s) ≤ F - base: three straight lines, each leaving an interval of F.
  const intervals = [
    { slope: 1, least: base + mu * Math.abs(q) },
    { slope: 1 - (2 * mu * d) / s, least: base + (2 * mu * other) / s },
    { slope: 1 + (2 * mu * d) / s, least: base - (2 * mu * other) / s },
  ];
  let low = 0;
  let high = Infinity;
  for (const { slope, least } of intervals) {
    if (slope > ROUNDING) low = Math.max(low, least / slope);
    else if (slope < -ROUNDING) high = Math.min(high, least / slope);
    else if (least >= 0) return { kind: 'locks' }; // right at the limit friction still holds
  }
  // Where both limits meet there is no force that makes it start.
  return high > low && high > 0 ? { kind: 'moves', force: low, locksAbove: high } : { kind: 'locks' };
}

/** 1/(2 mu) is rarely a round number: an offset right at the limit counts as locking. */
const ROUNDING = 1e-12;

/**
 * The offset of the driving force at which a slider without other couples locks.
 *
 * Formula: d = s/(2 mu).
 *
 * @param guidedLength - s, m, above 0
 * @param friction - mu, 0 or above
 * @returns m; `Infinity` without friction
 * @throws RangeError outside the stated domains
 *
 * Source: Beer and Johnston, Vector Mechanics for Engineers, sample problem 8.3.
 * Checked against: test/published/guide-jamming.test.ts.
 */
export function lockingOffset(guidedLength: number, friction: number): number {
  requirePositive('guidedLength', guidedLength);
  requireNotNegative('friction', friction);
  return guidedLength / (2 * friction);
}

/**
 * Guided length at which an offset of the driving force stays a factor away from locking.
 *
 * Formula: s = 2 mu |d| f.
 *
 * @param driveOffset - d, m
 * @param friction - mu, 0 or above
 * @param factor - f, 1 (just locks) or above; 2 is common practice, no published source
 * @returns m
 * @throws RangeError outside the stated domains
 *
 * Source: {@link lockingOffset} solved for the length.
 * Checked against: test/mechanics/slider-jamming.test.ts.
 */
export function guidedLengthNeeded(driveOffset: number, friction: number, factor = 1): number {
  requireFinite('driveOffset', driveOffset);
  requireNotNegative('friction', friction);
  if (!(factor >= 1)) throw new RangeError(`factor must be at least 1, got ${factor}`);
  return 2 * friction * Math.abs(driveOffset) * factor;
}

/**
 * How near a drive offset is to locking.
 *
 * Formula: 2 mu |d|/s; 1 and above locks.
 *
 * @param guidedLength - s, m, above 0
 * @param friction - mu, 0 or above
 * @param driveOffset - d, m
 * @returns share, 0 or above
 * @throws RangeError outside the stated domains
 *
 * Source: {@link lockingOffset}.
 * Checked against: test/mechanics/slider-jamming.test.ts.
 */
export function jammingRatio(guidedLength: number, friction: number, driveOffset: number): number {
  requirePositive('guidedLength', guidedLength);
  requireNotNegative('friction', friction);
  requireFinite('driveOffset', driveOffset);
  return (2 * friction * Math.abs(driveOffset)) / guidedLength;
}

/**
 * The one offset that does as much as offsets in two directions.
 *
 * Formula: on a round guide hypot(a, b), since its contact forces add as vectors; between flat faces |a| + |b|, each pair with its own friction.
 *
 * @param guide - `round` or `flat faces`
 * @param one - offset in one direction across the guide, m
 * @param other - offset in the other direction, m
 * @returns m, 0 or above; flat faces of different length: scale each offset by s over its own length first
 * @throws RangeError when an offset is not finite
 *
 * Source: the same balance in two planes.
 * Checked against: test/mechanics/slider-jamming.test.ts.
 */
export function combinedOffset(guide: 'round' | 'flat faces', one: number, other: number): number {
  requireFinite('one', one);
  requireFinite('other', other);
  return guide === 'round' ? Math.hypot(one, other) : Math.abs(one) + Math.abs(other);
}

/** A bridge on two guides, pushed along one of them. */
export interface OneSidedDrive {
  /** Resistance along the driven guide, N, 0 or above. */
  readonly drivenLoad: number;
  /** Resistance along the other guide: its drag and inertia, N, 0 or above. */
  readonly otherLoad: number;
  /** b between the guides, m, above 0. */
  readonly spacing: number;
  /** s on the driven guide, m, above 0. */
  readonly guidedLength: number;
  /** mu of the driven guide, 0 or above. */
  readonly friction: number;
  /** Stiffness of one end of the slider across the guide, N/m, above 0. */
  readonly bearingStiffness: number;
}

/**
 * Force and racking of a bridge on two guides that is pushed along one side only.
 *
 * Formula: F = R1 + R2 (1 + 2 mu b/s); racking = R2 b/(k s²/2).
 *
 * @param bridge - see {@link OneSidedDrive}; the other guide is taken to hold against no couple
 * @returns force in N and angle in rad; it never locks, but drags
 * @throws RangeError outside the stated domains
 *
 * Source: {@link sliderForce} with the other side's drag as an offset load; two springs s apart.
 * Checked against: test/mechanics/slider-jamming.test.ts.
 */
export function oneSidedDrive(bridge: OneSidedDrive): { readonly force: number; readonly racking: number } {
  const { drivenLoad, otherLoad, spacing, guidedLength, friction, bearingStiffness } = bridge;
  requireNotNegative('drivenLoad', drivenLoad);
  requireNotNegative('otherLoad', otherLoad);
  requirePositive('spacing', spacing);
  requirePositive('guidedLength', guidedLength);
  requireNotNegative('friction', friction);
  requirePositive('bearingStiffness', bearingStiffness);
  return {
    force: drivenLoad + otherLoad * (1 + (2 * friction * spacing) / guidedLength),
    racking: (otherLoad * spacing) / ((bearingStiffness * guidedLength ** 2) / 2),
  };
}
