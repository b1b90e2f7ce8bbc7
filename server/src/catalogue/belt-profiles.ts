import data from './data/belt-profiles.json' with { type: 'json' };
import type { HandbookRange } from './nut-materials.ts';

export type BeltCord = 'glass' | 'steel' | 'reinforced-steel' | 'aramid';
export type BeltBody = 'rubber' | 'polyurethane';

/** A tooth profile of belts, by the name that a standard or the trade at large gives it. SI; ranges by width are for a metre of width. */
export interface BeltProfile {
  readonly profile: string;
  readonly family: 'trapezoidal' | 'modified-trapezoidal' | 'inch-trapezoidal' | 'curvilinear';
  /** What it looks like, in words. */
  readonly title: string;
  /** The standard, with what is not known about it. */
  readonly standard: string;
  /** m. */
  readonly pitch: number;
  /** How far the cord runs above the tips of the pulley's teeth, m. */
  readonly pitchLineDifferential: { readonly value: number; readonly source: string; readonly weak: boolean };
  /** Of a pulley: the least that is made, and the least that lets the belt last. */
  readonly teeth: { readonly least: number; readonly recommended: number; readonly source: string; readonly weak: boolean };
  /** Usual widths, m, rising. */
  readonly widths: { readonly values: readonly number[]; readonly source: string; readonly weak: boolean };
  readonly usualBody: BeltBody;
  /** Cords that are usual for this profile, the commonest first. */
  readonly cords: readonly BeltCord[];
  /** E A for a metre of width, N/m. Proportional to the width: narrow belts reach some 10 % less, since their edge cords are cut. */
  readonly specificStiffness: (cord: BeltCord) => HandbookRange | undefined;
  /** For a metre of width, N/m. */
  readonly breakingForce: (cord: BeltCord) => HandbookRange | undefined;
  /** For a metre of width, kg/m². */
  readonly mass: HandbookRange;
  /** Between belt and pulley, whole play, m. */
  readonly backlash: HandbookRange;
  /** Load that one tooth bears for a metre of width, N/m, at rest to moderate speed. */
  readonly toothLoad: HandbookRange;
}

interface RawRange {
  readonly low: number;
  readonly nominal: number;
  readonly high: number;
  readonly source: string;
}

const CORDS: readonly BeltCord[] = ['glass', 'steel', 'reinforced-steel', 'aramid'];
const FAMILIES: readonly BeltProfile['family'][] = ['trapezoidal', 'modified-trapezoidal', 'inch-trapezoidal', 'curvilinear'];

const mm = 1e-3;
const sources: Readonly<Record<string, { readonly text: string; readonly weak: boolean }>> = data.sources;

function sourceOf(key: string): { readonly source: string; readonly weak: boolean } {
  const found = sources[key];
  if (!found) throw new Error(`belt-profiles.json names no source "${key}".`);
  return { source: found.text, weak: found.weak };
}

const range = (raw: RawRange, unit: number): HandbookRange => ({ low: raw.low * unit, nominal: raw.nominal * unit, high: raw.high * unit, ...sourceOf(raw.source) });

const byCord = (raw: Readonly<Partial<Record<BeltCord, RawRange>>>, unit: number) => {
  const ranges = new Map(CORDS.flatMap((cord) => (raw[cord] ? [[cord, range(raw[cord], unit)] as const] : [])));
  return (cord: BeltCord): HandbookRange | undefined => ranges.get(cord);
};

function familyOf(name: string): BeltProfile['family'] {
  const family = FAMILIES.find((candidate) => candidate === name);
  if (!family) throw new Error(`belt-profiles.json has an unknown family "${name}".`);
  return family;
}

/** All profiles. */
export const BELT_PROFILES: readonly BeltProfile[] = data.rows.map((row) => ({
  profile: row.profile,
  family: familyOf(row.family),
  title: row.title,
  standard: row.standard,
  pitch: row.pitch * mm,
  pitchLineDifferential: { value: row.pitch_line_differential.value * mm, ...sourceOf(row.pitch_line_differential.source) },
  teeth: { least: row.teeth.least, recommended: row.teeth.recommended, ...sourceOf(row.teeth.source) },
  widths: { values: row.widths.values.map((width) => width * mm), ...sourceOf(row.widths.source) },
  usualBody: row.usual_body === 'polyurethane' ? 'polyurethane' : 'rubber',
  cords: CORDS.filter((cord) => cord in row.specific_stiffness),
  specificStiffness: byCord(row.specific_stiffness, 1 / mm),
  breakingForce: byCord(row.breaking_force, 1 / mm),
  // g/(m·mm) is kg/m².
  mass: range(row.mass, 1),
  backlash: range(row.backlash, mm),
  toothLoad: range(row.tooth_load, 1 / mm),
}));

/** The profile of a name; undefined for an unknown one. */
export const beltProfile = (name: string): BeltProfile | undefined => BELT_PROFILES.find((row) => row.profile === name);

/** The cord that a belt of this profile most often has: steel in polyurethane, glass in rubber. */
export function usualCord(profile: BeltProfile, body: BeltBody): BeltCord {
  const wanted: BeltCord = body === 'polyurethane' ? 'steel' : 'glass';
  return profile.cords.includes(wanted) ? wanted : (profile.cords[0] ?? wanted);
}

/** The next usual width above the given one, m; undefined beyond the widest. */
export const nextWidth = (profile: BeltProfile, width: number): number | undefined => profile.widths.values.find((candidate) => candidate > width * (1 + 1e-6));
