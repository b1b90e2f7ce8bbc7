import data from './data/lead-accuracy-grades.json';

/** A grade of lead accuracy. Lengths in m; a range where no single value is honest. */
export interface LeadAccuracyGrade {
  /** `P5`, `T7`, `C7`, `rolled`. */
  readonly grade: string;
  readonly screw: 'ball' | 'trapezoidal';
  readonly source: string;
  readonly weak: boolean;
  readonly values:
    | {
        readonly kind: 'positioning';
        readonly bands: readonly { readonly upTo: number; readonly meanTravel: number; readonly variation?: number | undefined }[];
        readonly variationPer300: number;
        readonly variationPerTurn?: number | undefined;
      }
    | { readonly kind: 'transport'; readonly variationPer300: number }
    | { readonly kind: 'per length'; readonly deviationPer300: { readonly low: number; readonly high: number } };
}

interface RawGrade {
  grade: string;
  screw: string;
  kind: string;
  source: string;
  weak: boolean;
  bands?: { up_to_mm: number; mean_travel_um: number; variation_um?: number }[];
  variation_per_300_um?: number;
  variation_per_turn_um?: number;
  deviation_per_300_um?: number[];
}

const MICRO = 1e-6;
const micro = (value: number | undefined): number | undefined => (value === undefined ? undefined : value * MICRO);

function valuesOf(row: RawGrade): LeadAccuracyGrade['values'] {
  const per300 = micro(row.variation_per_300_um);
  if (row.kind === 'positioning' && row.bands !== undefined && per300 !== undefined) {
    return {
      kind: 'positioning',
      bands: row.bands.map((band) => ({ upTo: band.up_to_mm / 1000, meanTravel: band.mean_travel_um * MICRO, variation: micro(band.variation_um) })),
      variationPer300: per300,
      variationPerTurn: micro(row.variation_per_turn_um),
    };
  }
  if (row.kind === 'transport' && per300 !== undefined) return { kind: 'transport', variationPer300: per300 };
  const [low, high] = row.deviation_per_300_um ?? [];
  if (row.kind === 'per length' && low !== undefined && high !== undefined) {
    return { kind: 'per length', deviationPer300: { low: low * MICRO, high: high * MICRO } };
  }
  throw new RangeError(`lead-accuracy-grades.json: the row of grade ${row.grade} is incomplete`);
}

/** All grades, ball screws first, fine before coarse. */
export const LEAD_ACCURACY_GRADES: readonly LeadAccuracyGrade[] = (data.grades as RawGrade[]).map((row) => ({
  grade: row.grade,
  screw: row.screw === 'trapezoidal' ? 'trapezoidal' : 'ball',
  source: row.source,
  weak: row.weak,
  values: valuesOf(row),
}));

/** The grade of that name, capitals or not; undefined for a name the catalogue does not have, such as `P10`. */
export function leadAccuracyGrade(name: string): LeadAccuracyGrade | undefined {
  const wanted = name.trim().toLowerCase();
  return LEAD_ACCURACY_GRADES.find((one) => one.grade.toLowerCase() === wanted);
}
