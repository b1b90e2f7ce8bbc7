import threads from './data/trapezoidal-threads.json';
import tolerances from './data/trapezoidal-thread-tolerances.json';

/** A trapezoidal thread of the standard or of the trade. Lengths in m. */
export interface StandardThread {
  /** `Tr10x2`, `Tr8x8(P2)`. */
  readonly designation: string;
  readonly majorDiameter: number;
  readonly pitch: number;
  readonly starts: number;
  readonly lead: number;
  readonly pitchDiameter: number;
  readonly rootDiameter: number;
  readonly nutMinorDiameter: number;
  readonly nutMajorDiameter: number;
  /** Is diameter and pitch in the standard's size list? */
  readonly listedInStandard: boolean;
  /** The pitch to take first for this diameter. */
  readonly preferred: boolean;
  readonly source: string;
  /** The row rests on memory or on a relation applied beyond the standard's list. */
  readonly weak: boolean;
}

const metres = (millimetres: number): number => millimetres / 1000;
const near = (a: number, b: number): boolean => Math.abs(a - b) < 1e-9;

/** All rows, by diameter, then pitch group, then starts. */
export const STANDARD_THREADS: readonly StandardThread[] = threads.rows.map((row) => ({
  designation: row.designation,
  majorDiameter: metres(row.major_mm),
  pitch: metres(row.pitch_mm),
  starts: row.starts,
  lead: metres(row.starts * row.pitch_mm),
  pitchDiameter: metres(row.pitch_diameter_mm),
  rootDiameter: metres(row.root_mm),
  nutMinorDiameter: metres(row.nut_minor_mm),
  nutMajorDiameter: metres(row.nut_major_mm),
  listedInStandard: row.listed_in_standard,
  preferred: row.preferred,
  source: row.source,
  weak: row.weak === true,
}));

/** The row of that diameter, pitch and starts, all lengths in m; undefined when there is none. */
export function standardThread(majorDiameter: number, pitch: number, starts: number): StandardThread | undefined {
  return STANDARD_THREADS.find((row) => near(row.majorDiameter, majorDiameter) && near(row.pitch, pitch) && row.starts === starts);
}

/** Pitches in use at a major diameter, in m, smallest first; empty for a diameter that has none. */
export function pitchesAt(majorDiameter: number): number[] {
  const pitches = STANDARD_THREADS.filter((row) => near(row.majorDiameter, majorDiameter)).map((row) => row.pitch);
  return [...new Set(pitches)].sort((a, b) => a - b);
}

/** The row whose major diameter (m) is nearest, preferred pitch, single start; of two equally near the smaller. */
export function nearestThread(majorDiameter: number): StandardThread {
  const preferred = STANDARD_THREADS.filter((row) => row.preferred);
  return preferred.reduce((best, row) =>
    Math.abs(row.majorDiameter - majorDiameter) < Math.abs(best.majorDiameter - majorDiameter) - 1e-12 ? row : best,
  );
}

/**
 * Threads that could replace another, best first: smaller diameters first, sizes of the standard before others, then the finer pitch.
 * `suits` says which would do, for example a root diameter that is large enough or a lead that is small enough.
 */
export function threadsThat(suits: (thread: StandardThread) => boolean): StandardThread[] {
  return STANDARD_THREADS.filter(suits).sort(
    (a, b) => a.majorDiameter - b.majorDiameter || Number(b.listedInStandard) - Number(a.listedInStandard) || a.pitch - b.pitch || a.starts - b.starts,
  );
}

/** The next larger diameter with the same lead (m): the smallest such thread above `majorDiameter` (m), or undefined past the largest. */
export function nextLargerThread(majorDiameter: number, lead: number): StandardThread | undefined {
  return threadsThat((row) => row.majorDiameter > majorDiameter + 1e-9 && near(row.lead, lead))[0];
}

/** The next smaller lead at the same diameter (m), or undefined when none is smaller. Of equal leads the one with fewer starts. */
export function nextSmallerLead(majorDiameter: number, lead: number): StandardThread | undefined {
  const smaller = STANDARD_THREADS.filter((row) => near(row.majorDiameter, majorDiameter) && row.lead < lead - 1e-9);
  return smaller.sort((a, b) => b.lead - a.lead || a.starts - b.starts)[0];
}

/** Class 7e limits of one band of diameters and one pitch. Lengths in m. */
export interface Class7e {
  readonly fundamentalDeviation: number;
  readonly pitchDiameterTolerance: number;
  readonly majorDiameterTolerance: number;
  readonly source: string;
  readonly weak: boolean;
}

/** The class 7e tolerance of a screw, by major diameter and pitch in m; undefined where the table has no row (8 mm with pitch 2 uses the band's row). */
export function class7e(majorDiameter: number, pitch: number): Class7e | undefined {
  const row = tolerances.rows.find(
    (candidate) =>
      majorDiameter > metres(candidate.above_major_mm) + 1e-9 &&
      majorDiameter <= metres(candidate.to_major_mm) + 1e-9 &&
      near(metres(candidate.pitch_mm), pitch),
  );
  if (row === undefined) return undefined;
  return {
    fundamentalDeviation: row.fundamental_deviation_um / 1e6,
    pitchDiameterTolerance: row.pitch_diameter_tolerance_um / 1e6,
    majorDiameterTolerance: row.major_diameter_tolerance_um / 1e6,
    source: row.source,
    weak: row.weak === true,
  };
}
