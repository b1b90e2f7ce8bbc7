import data from './data/ball-bushings.json' with { type: 'json' };
import { type HandbookRange } from './nut-materials.ts';

/** Outer dimensions of a ball bushing. SI. */
export interface BallBushingSize {
  /** `compact` and `standard`: ISO 10285 series 1 and 3; `trade`: outside the standard. */
  readonly series: string;
  /** Of the shaft, m. */
  readonly shaft: number;
  /** m. */
  readonly outside: number;
  /** m. */
  readonly length: number;
  readonly source: string;
  readonly weak: boolean;
}

/** What a bushing for a shaft usually carries. SI. */
export interface BallBushingRating {
  /** Of the shaft, m. */
  readonly shaft: number;
  /** C, N. */
  readonly dynamicRating: HandbookRange;
  /** C0, N. */
  readonly staticRating: HandbookRange;
  /** Travel that C stands for, m. */
  readonly ratedTravel: number;
}

/** All sizes. */
export const BALL_BUSHING_SIZES: readonly BallBushingSize[] = data.sizes.map((row) => ({
  series: row.series, shaft: row.shaft_mm * 1e-3, outside: row.outside_mm * 1e-3, length: row.length_mm * 1e-3, source: row.source, weak: row.weak,
}));

/** All ratings, by shaft. */
export const BALL_BUSHING_RATINGS: readonly BallBushingRating[] = data.ratings.map((row) => {
  // Over ranges of a factor of two the middle of the logarithm is the fair guess.
  const range = ({ low, high }: { low: number; high: number }): HandbookRange => ({ low, nominal: Math.sqrt(low * high), high, source: row.source, weak: row.weak });
  return { shaft: row.shaft_mm * 1e-3, dynamicRating: range(row.dynamic_N), staticRating: range(row.static_N), ratedTravel: row.rated_travel_km * 1e3 };
});

const same = (a: number, b: number): boolean => Math.abs(a - b) < 1e-6;

/** Bushings for a shaft diameter in m; none for a size that is not sold. */
export const bushingsFor = (shaft: number): readonly BallBushingSize[] => BALL_BUSHING_SIZES.filter((row) => same(row.shaft, shaft));

/** Usual ratings for a shaft diameter in m; undefined for an unknown one. */
export const bushingRating = (shaft: number): BallBushingRating | undefined => BALL_BUSHING_RATINGS.find((row) => same(row.shaft, shaft));
