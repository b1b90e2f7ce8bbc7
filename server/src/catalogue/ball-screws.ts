import type { HandbookRange } from './nut-materials.ts';
import data from './data/ball-screws.json';

/** A ball screw size as sold; every value is a range, because the designation does not fix it. Lengths in m, ratings in N. */
export interface BallScrewSize {
  readonly nominalDiameter: number;
  readonly lead: number;
  readonly ballDiameter: HandbookRange;
  readonly rootDiameter: HandbookRange;
  /** C_a; the low end is the safe default. */
  readonly dynamicRating: HandbookRange;
  /** C_0a; the low end is the safe default. */
  readonly staticRating: HandbookRange;
  readonly source: string;
  readonly weak: boolean;
}

interface RawSize {
  nominal_diameter_mm: number;
  lead_mm: number;
  ball_diameter_mm: number[];
  root_diameter_mm: number[];
  dynamic_rating_kN: number[];
  static_rating_kN: number[];
  source: string;
  weak: boolean;
}

const near = (a: number, b: number): boolean => Math.abs(a - b) < 1e-9;

function load(row: RawSize): BallScrewSize {
  const range = (ends: readonly number[], unit: number): HandbookRange => {
    const [low, high] = ends as [number, number];
    return { low: low * unit, nominal: ((low + high) / 2) * unit, high: high * unit, source: row.source, weak: row.weak };
  };
  return {
    nominalDiameter: row.nominal_diameter_mm / 1000,
    lead: row.lead_mm / 1000,
    ballDiameter: range(row.ball_diameter_mm, 1e-3),
    rootDiameter: range(row.root_diameter_mm, 1e-3),
    dynamicRating: range(row.dynamic_rating_kN, 1e3),
    staticRating: range(row.static_rating_kN, 1e3),
    source: row.source,
    weak: row.weak,
  };
}

/** All sizes with ratings, by diameter, then lead. */
export const BALL_SCREW_SIZES: readonly BallScrewSize[] = data.sizes.map(load);

/** The size of that nominal diameter and lead (m); undefined when the catalogue has none. */
export function ballScrewSize(nominalDiameter: number, lead: number): BallScrewSize | undefined {
  return BALL_SCREW_SIZES.find((size) => near(size.nominalDiameter, nominalDiameter) && near(size.lead, lead));
}

/**
 * A size of that nominal diameter (m) whose lead (m) is nearest: its root and ball diameters serve for leads without a row of
 * their own, its ratings do not. Undefined when no row has that diameter.
 */
export function ballScrewOfDiameter(nominalDiameter: number, lead: number): BallScrewSize | undefined {
  const same = BALL_SCREW_SIZES.filter((size) => near(size.nominalDiameter, nominalDiameter));
  return same.sort((a, b) => Math.abs(a.lead - lead) - Math.abs(b.lead - lead))[0];
}

/**
 * The next thicker size, of the same lead when there is one, else of the nearest lead; undefined above the largest.
 * Lengths in m.
 */
export function nextThickerBallScrew(nominalDiameter: number, lead: number): BallScrewSize | undefined {
  const thicker = BALL_SCREW_SIZES.filter((size) => size.nominalDiameter > nominalDiameter + 1e-9);
  const sameLead = thicker.find((size) => near(size.lead, lead));
  if (sameLead !== undefined) return sameLead;
  const least = thicker[0];
  return least === undefined ? undefined : ballScrewOfDiameter(least.nominalDiameter, lead);
}

/** The next larger preferred nominal diameter (m) of the standard; undefined above the largest. */
export function nextPreferredDiameter(nominalDiameter: number): number | undefined {
  const found = data.preferred_nominal_diameters_mm.find((one) => one / 1000 > nominalDiameter + 1e-9);
  return found === undefined ? undefined : found / 1000;
}

/** The next larger preferred lead (m) of the standard; undefined above the largest. */
export function nextPreferredLead(lead: number): number | undefined {
  const found = data.preferred_leads_mm.find((one) => one / 1000 > lead + 1e-9);
  return found === undefined ? undefined : found / 1000;
}

/** Whether diameter and lead (m) are each among the preferred values of the standard. */
export function isPreferredBallScrew(nominalDiameter: number, lead: number): boolean {
  return (
    data.preferred_nominal_diameters_mm.some((one) => near(one / 1000, nominalDiameter)) &&
    data.preferred_leads_mm.some((one) => near(one / 1000, lead))
  );
}

/** Whether that combination (m) is one usually sold. */
export function isCommonBallScrew(nominalDiameter: number, lead: number): boolean {
  return data.common.some((one) => near(one.nominal_diameter_mm / 1000, nominalDiameter) && near(one.lead_mm / 1000, lead));
}

/** Where the preferred values come from. */
export const PREFERRED_SOURCE: string = data.preferred_source;
