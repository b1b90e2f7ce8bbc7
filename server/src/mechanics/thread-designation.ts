import { requirePositive } from './require-argument.ts';

export type ThreadHand = 'right' | 'left';

/** A trapezoidal designation taken apart, in m, before its meaning is settled. */
export interface WrittenDesignation {
  /** d in m. */
  readonly majorDiameter: number;
  /** The length after the ×, in m: the pitch of a single start, the lead of several. Undefined in `Tr8`. */
  readonly travelPerTurn: number | undefined;
  /** P in m, only when written as `(P2)`. */
  readonly pitch: number | undefined;
  readonly hand: ThreadHand;
  /** Tolerance class such as `7e`, when written. */
  readonly toleranceClass: string | undefined;
}

const SHAPE =
  /^(?:tr|t)\s*(\d+(?:[.,]\d+)?)(?:\s*(?:x|×|\*|\s+lead\s+)\s*(\d+(?:[.,]\d+)?))?\s*(?:\(\s*p\s*(\d+(?:[.,]\d+)?)\s*\))?\s*(lh|rh)?\s*(?:[-–]\s*(\d[eczh](?:\s*\/\s*\d[eczh])?))?\s*(lh)?$/i;

const millimetres = (text: string): number => Number(text.replace(',', '.')) / 1000;

/**
 * Takes a trapezoidal thread designation apart without judging it.
 *
 * Formula: `Tr d × P`, `Tr d × l (P p)`, with `LH` for left hand and a tolerance class such as `-7e`; also the shop's `T8` and `T8 lead 8`. `x`, `×` and `*` are alike, as are decimal point and comma.
 * @param text the designation, unit mm implied; any text.
 * @returns its parts in m, or undefined when the text is no such designation or names a length of 0.
 * @throws nothing.
 * Source: ISO 2902 and ISO 2904, designation.
 * Checked against: test/published/trapezoidal-threads.test.ts (the standard's own forms).
 */
export function readDesignation(text: string): WrittenDesignation | undefined {
  // No designation is longer; a bound keeps hostile text from costing time.
  if (text.length > 60) return undefined;
  const match = SHAPE.exec(text.trim());
  if (!match?.[1]) return undefined;
  const majorDiameter = millimetres(match[1]);
  const travelPerTurn = match[2] === undefined ? undefined : millimetres(match[2]);
  const pitch = match[3] === undefined ? undefined : millimetres(match[3]);
  if (majorDiameter <= 0 || (travelPerTurn !== undefined && travelPerTurn <= 0) || (pitch !== undefined && pitch <= 0)) return undefined;
  const left = match[4]?.toLowerCase() === 'lh' || match[6] !== undefined;
  return { majorDiameter, travelPerTurn, pitch, hand: left ? 'left' : 'right', toleranceClass: match[5]?.replace(/\s/g, '').toLowerCase() };
}

/** What a designation means. Lengths in m. */
export type DesignationMeaning =
  | {
      readonly kind: 'clear';
      readonly majorDiameter: number;
      readonly pitch: number;
      readonly starts: number;
      readonly lead: number;
      readonly hand: ThreadHand;
      /** Is this pitch among the listed ones of this diameter? */
      readonly listed: boolean;
    }
  | {
      /** It can be read in several ways, or names no lead: the person must say. */
      readonly kind: 'ambiguous';
      readonly majorDiameter: number;
      /** Undefined in `Tr8`. */
      readonly lead: number | undefined;
      readonly hand: ThreadHand;
      /** Readings that are sold, smallest pitch last. */
      readonly readings: readonly { readonly pitch: number; readonly starts: number }[];
    }
  | { readonly kind: 'lead-not-whole-pitches'; readonly majorDiameter: number; readonly lead: number; readonly pitch: number; readonly ratio: number };

/** The most starts that trapezoidal screws are sold with. Common practice, no published source. */
export const MOST_STARTS = 8;

/** Largest pitch over diameter of a listed single-start size is 0.36 (22 × 8); beyond this a single number is taken for a lead. Ours. */
const LARGEST_PITCH_SHARE = 0.37;

/** How many whole times `part` goes into `whole`, or undefined; a millionth is rounding, not a contradiction. */
function wholeTimes(whole: number, part: number): number | undefined {
  const ratio = whole / part;
  const rounded = Math.round(ratio);
  return rounded >= 1 && Math.abs(ratio - rounded) < 1e-6 ? rounded : undefined;
}

/**
 * Settles what a designation means, given the pitches listed for its diameter.
 *
 * Formula: n = l / P must be whole, from 1 to 8. A single length is the pitch of a single start (ISO 2904) when it is listed for the diameter, or when no listed pitch divides it and it is at most 0.37 d; otherwise it is a lead whose pitch is not said.
 * @param written the parts, lengths in m.
 * @param listedPitches pitches of that diameter in m, each above 0; may be empty.
 * @returns clear, ambiguous with the readings that would make sense, or the lead that is not a whole number of pitches.
 * @throws RangeError when a listed pitch is not positive.
 * Source: ISO 2902 and ISO 2904; the bound of 0.37 d is ours (largest listed single start: 22 × 8).
 * Checked against: test/mechanics/thread-designation.test.ts.
 */
export function settleDesignation(written: WrittenDesignation, listedPitches: readonly number[]): DesignationMeaning {
  for (const listed of listedPitches) requirePositive('listed pitch', listed);
  const { majorDiameter, travelPerTurn, hand } = written;
  const isListed = (pitch: number): boolean => listedPitches.some((listed) => Math.abs(listed - pitch) < 1e-9);
  const clear = (pitch: number, starts: number): DesignationMeaning => ({
    kind: 'clear',
    majorDiameter,
    pitch,
    starts,
    lead: starts * pitch,
    hand,
    listed: isListed(pitch),
  });
  if (travelPerTurn === undefined) {
    if (written.pitch !== undefined) return clear(written.pitch, 1);
    return { kind: 'ambiguous', majorDiameter, lead: undefined, hand, readings: listedPitches.map((pitch) => ({ pitch, starts: 1 })) };
  }
  if (written.pitch !== undefined) {
    const starts = wholeTimes(travelPerTurn, written.pitch);
    if (starts === undefined || starts > MOST_STARTS) {
      return { kind: 'lead-not-whole-pitches', majorDiameter, lead: travelPerTurn, pitch: written.pitch, ratio: travelPerTurn / written.pitch };
    }
    return clear(written.pitch, starts);
  }
  if (isListed(travelPerTurn)) return clear(travelPerTurn, 1);
  const readings = [...listedPitches]
    .sort((a, b) => b - a)
    .flatMap((pitch) => {
      const starts = wholeTimes(travelPerTurn, pitch);
      return starts !== undefined && starts <= MOST_STARTS ? [{ pitch, starts }] : [];
    });
  if (readings.length === 0 && travelPerTurn <= LARGEST_PITCH_SHARE * majorDiameter) return clear(travelPerTurn, 1);
  return { kind: 'ambiguous', majorDiameter, lead: travelPerTurn, hand, readings };
}

/** Dimensions that a person gives beside the designation, in m. */
export interface GivenDimensions {
  readonly majorDiameter?: number | undefined;
  readonly pitch?: number | undefined;
  readonly starts?: number | undefined;
  readonly lead?: number | undefined;
  readonly hand?: ThreadHand | undefined;
  readonly pitchDiameter?: number | undefined;
  readonly rootDiameter?: number | undefined;
}

export interface Contradiction {
  readonly dimension: keyof GivenDimensions;
  readonly designated: number | ThreadHand;
  readonly given: number | ThreadHand;
}

/**
 * How far a measured diameter may lie below and above the basic one before the two contradict each other, as a share of the pitch.
 * Below: class 7e leaves up to 0.19 P at the root of Tr8x1.5 and ISO 2904 lets rolled screws lose 0.15 P more. Above: measuring error. Ours.
 */
const DIAMETER_SLACK = {
  majorDiameter: { below: 0.2, above: 0.05 },
  pitchDiameter: { below: 0.25, above: 0.05 },
  rootDiameter: { below: 0.35, above: 0.05 },
} as const;

/**
 * Which given dimensions do not fit the designated thread.
 *
 * Formula: lead and pitch may differ by 0.5 %, starts and hand not at all; diameters by −0.2 P (d), −0.25 P (d2), −0.35 P (d3) and +0.05 P, which covers class 7e and rolled bar.
 * @param designated the designated thread, lengths in m.
 * @param given what stands beside it, lengths in m; entries left out are not compared.
 * @returns the contradictions, empty when there is none.
 * @throws RangeError when the designated pitch is not positive.
 * Source: ISO 2903 (class 7e), ISO 2904 (rolled screws); the bounds are ours.
 * Checked against: test/mechanics/thread-designation.test.ts.
 */
export function contradictions(designated: Required<GivenDimensions> & { readonly pitch: number }, given: GivenDimensions): Contradiction[] {
  requirePositive('pitch', designated.pitch);
  const found: Contradiction[] = [];
  const add = (dimension: keyof GivenDimensions, a: number | ThreadHand | undefined, b: number | ThreadHand): void => {
    if (a !== undefined) found.push({ dimension, designated: a, given: b });
  };
  for (const dimension of ['lead', 'pitch'] as const) {
    const [expected, value] = [designated[dimension], given[dimension]];
    if (value !== undefined && expected !== undefined && Math.abs(value - expected) > 0.005 * expected) add(dimension, expected, value);
  }
  if (given.starts !== undefined && given.starts !== designated.starts) add('starts', designated.starts, given.starts);
  if (given.hand !== undefined && given.hand !== designated.hand) add('hand', designated.hand, given.hand);
  for (const dimension of ['majorDiameter', 'pitchDiameter', 'rootDiameter'] as const) {
    const [expected, value] = [designated[dimension], given[dimension]];
    if (value === undefined || expected === undefined) continue;
    const slack = DIAMETER_SLACK[dimension];
    if (value < expected - slack.below * designated.pitch || value > expected + slack.above * designated.pitch) add(dimension, expected, value);
  }
  return found;
}
