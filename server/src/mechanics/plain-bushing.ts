/** A plain bushing that slides on a shaft: pressure, pressure times speed, and wear. */
import { pressureVelocity, wearDepth } from './nut-pressure.ts';
import { requireNotNegative, requirePositive } from './require-argument.ts';

/**
 * Mean pressure in a plain bushing.
 *
 * Formula: p = F/(d l).
 *
 * @param load - F across the shaft, N, 0 or above
 * @param diameter - d of the shaft, m, above 0
 * @param length - l of the bushing, m, above 0
 * @returns Pa, on the projected area
 * @throws RangeError outside the stated domains
 *
 * Source: definition, for instance Budynas and Nisbett, section 12-14.
 * Checked against: test/published/guide-life.test.ts (bushing in inch units).
 */
export function bushingPressure(load: number, diameter: number, length: number): number {
  requireNotNegative('load', load);
  requirePositive('diameter', diameter);
  requirePositive('length', length);
  return load / (diameter * length);
}

/**
 * Pressure at the edge of a plain bushing under a load that does not go through its middle.
 *
 * Formula: p = F/(d l) (1 + 6 e/l).
 *
 * @param load - F, N, above 0
 * @param eccentricity - e = M/F, m, 0 or above
 * @param diameter - d, m, above 0
 * @param length - l, m, above 0
 * @returns Pa on the projected area; for a bushing without play, whose bore also holds on its far side once e is above l/6. With play the edges take more,
 * so this is the least to reckon with
 * @throws RangeError outside the stated domains
 *
 * Source: pressure linear along the length, balance of force and moment (derived).
 * Checked against: test/mechanics/plain-bushing.test.ts (sums of strips).
 */
export function bushingEdgePressure(load: number, eccentricity: number, diameter: number, length: number): number {
  requirePositive('load', load);
  requireNotNegative('eccentricity', eccentricity);
  return bushingPressure(load, diameter, length) * (1 + (6 * eccentricity) / length);
}

/** Wear of a bushing. */
export interface BushingDuty {
  /** p, Pa, 0 or above. */
  readonly pressure: number;
  /** v, m/s, 0 or above. */
  readonly speed: number;
  /** Share of the time in motion, 0 to 1; default 1. */
  readonly duty?: number | undefined;
}

/**
 * Pressure times speed of a sliding bushing.
 *
 * Formula: PV = p v · duty; the speed is that of the axis.
 *
 * @param use - see {@link BushingDuty}
 * @returns Pa·m/s
 * @throws RangeError outside the stated domains
 *
 * Source: `pressureVelocity` of nuts; the law is the same.
 * Checked against: test/published/guide-life.test.ts (bushing in inch units).
 */
export function bushingPressureVelocity({ pressure, speed, duty = 1 }: BushingDuty): number {
  return pressureVelocity(pressure, speed, duty);
}

/**
 * Travel after which a bushing has worn by a given depth on the loaded side.
 *
 * Formula: s = h/(k p).
 *
 * @param depth - h, m, 0 or above
 * @param specificWear - k, m²/N, 0 or above
 * @param pressure - p, Pa, 0 or above
 * @returns m; `Infinity` where nothing wears
 * @throws RangeError outside the stated domains
 *
 * Source: Archard's law, see `wearDepth`.
 * Checked against: test/mechanics/plain-bushing.test.ts.
 */
export function travelToWear(depth: number, specificWear: number, pressure: number): number {
  requireNotNegative('depth', depth);
  const perMetre = wearDepth(specificWear, pressure, 1);
  return perMetre === 0 ? Infinity : depth / perMetre;
}
