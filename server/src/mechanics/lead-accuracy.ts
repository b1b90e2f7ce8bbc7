import { requireNotNegative, requirePositive } from './require-argument.ts';

/** Travel deviations of a screw's grade; all lengths in m. */
export type LeadGrade =
  /** Positioning grades: a table over the useful travel, which does not grow in proportion. */
  | {
      readonly kind: 'positioning';
      /** Ascending bands: up to this useful travel, deviation e_p of the mean travel and band v_up of the variation about it. */
      readonly bands: readonly { readonly upTo: number; readonly meanTravel: number; readonly variation?: number | undefined }[];
      /** v_300p: variation within any 300 mm. */
      readonly variationPer300: number;
      /** v_2pi p: variation within one turn. */
      readonly variationPerTurn?: number | undefined;
    }
  /** Transport grades: twice v_300p in proportion to travel. */
  | { readonly kind: 'transport'; readonly variationPer300: number }
  /** Screws without a standard grade: a maker's deviation per 300 mm, taken in proportion. */
  | { readonly kind: 'per length'; readonly deviationPer300: number };

export type TravelDeviation =
  | {
      readonly kind: 'deviation';
      /** Permitted deviation e_p of the mean travel from its nominal value, ± m. */
      readonly meanTravel: number;
      /** Largest deviation of any point of the travel from its nominal value, ± m: e_p and half of the variation about the mean. */
      readonly worst: number;
      /** What a corrected steps-per-mm value cannot remove, m; the rest is a constant lead error. */
      readonly afterCalibration: number;
    }
  | { readonly kind: 'beyond the table'; readonly longest: number };

/**
 * Largest deviation of travel of a screw of a given grade.
 *
 * Formula: positioning grades: e_p of the band of the useful travel, plus half of v_up; transport grades: 2 (l_u/300 mm) v_300p; others in proportion.
 * What calibration leaves: half of v_up; for transport grades v_300p, for others half of the deviation (ours: nothing is published).
 *
 * @param grade - see {@link LeadGrade}
 * @param travel - useful travel l_u, m, above 0
 * @returns deviations in m, or `beyond the table` with the longest travel it covers in m
 * @throws RangeError when the travel is not positive or a table is empty
 *
 * Source: ISO 3408-3:2006 (values as quoted and from memory; the standard was not opened).
 * Checked against: test/published/lead-accuracy.test.ts.
 */
export function travelDeviation(grade: LeadGrade, travel: number): TravelDeviation {
  requirePositive('travel', travel);
  switch (grade.kind) {
    case 'positioning': {
      // Travel of 315.0000001 mm from rounding still belongs to the band up to 315 mm.
      const band = grade.bands.find(({ upTo }) => travel <= upTo * (1 + 1e-9));
      if (band === undefined) {
        const last = grade.bands.at(-1);
        if (last === undefined) throw new RangeError('travelDeviation: a positioning grade needs bands');
        return { kind: 'beyond the table', longest: last.upTo };
      }
      const half = (band.variation ?? grade.variationPer300) / 2;
      return { kind: 'deviation', meanTravel: band.meanTravel, worst: band.meanTravel + half, afterCalibration: half };
    }
    case 'transport': {
      requireNotNegative('variationPer300', grade.variationPer300);
      const deviation = (2 * travel * grade.variationPer300) / 0.3;
      return { kind: 'deviation', meanTravel: deviation, worst: deviation, afterCalibration: Math.min(deviation, grade.variationPer300) };
    }
    case 'per length': {
      requireNotNegative('deviationPer300', grade.deviationPer300);
      const deviation = (travel * grade.deviationPer300) / 0.3;
      return { kind: 'deviation', meanTravel: deviation, worst: deviation, afterCalibration: deviation / 2 };
    }
  }
}
