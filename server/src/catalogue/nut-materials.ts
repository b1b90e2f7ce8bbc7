import data from './data/nut-materials.json';

export const NUT_MATERIALS = ['bronze', 'brass', 'cast-iron', 'steel', 'pom', 'filled-polymer'] as const;
export type NutMaterialName = (typeof NUT_MATERIALS)[number];

export const LUBRICATIONS = ['dry', 'oil', 'grease'] as const;
export type Lubrication = (typeof LUBRICATIONS)[number];

/** A value of a handbook, as a range. Unit as said where it is used. */
export interface HandbookRange {
  readonly low: number;
  readonly nominal: number;
  readonly high: number;
  readonly source: string;
  /** Rests on memory or on a rule without a published source. */
  readonly weak: boolean;
}

/** A nut material against a steel screw. */
export interface NutMaterial {
  readonly name: NutMaterialName;
  readonly title: string;
  /** Moving friction of the flanks, without unit. */
  readonly friction: Readonly<Record<Lubrication, HandbookRange>>;
  /** Friction at rest over moving friction. */
  readonly staticOverKinetic: HandbookRange;
  /** Pressure that a standing nut bears, in Pa. */
  readonly staticPressureLimit: HandbookRange;
  /** Pressure × sliding speed, in Pa·m/s. */
  readonly pressureVelocityLimit: Readonly<Record<Lubrication, HandbookRange>>;
  /** k in m²/N. */
  readonly specificWear: Readonly<Record<Lubrication, HandbookRange>>;
  /** Share of the flank area that carries. */
  readonly areaFactor: HandbookRange;
}

interface RawRange {
  low: number;
  nominal: number;
  high: number;
  source: string;
  weak?: boolean;
}

function range(raw: RawRange, unit = 1): HandbookRange {
  return { low: raw.low * unit, nominal: raw.nominal * unit, high: raw.high * unit, source: raw.source, weak: raw.weak === true };
}

function byLubrication(rows: readonly (RawRange & { lubrication: string })[], unit = 1): Record<Lubrication, HandbookRange> {
  const of = (lubrication: Lubrication): HandbookRange => {
    const row = rows.find((candidate) => candidate.lubrication === lubrication);
    if (row === undefined) throw new RangeError(`nut-materials.json has no row for ${lubrication}`);
    return range(row, unit);
  };
  return { dry: of('dry'), oil: of('oil'), grease: of('grease') };
}

const MEGA = 1e6;

function materialOf(name: NutMaterialName): (typeof data.materials)[number] {
  const found = data.materials.find((candidate) => candidate.material === name);
  if (found === undefined) throw new RangeError(`nut-materials.json has no material ${name}`);
  return found;
}

function load(name: NutMaterialName): NutMaterial {
  const raw = materialOf(name);
  return {
    name,
    title: raw.title,
    friction: byLubrication(raw.friction),
    staticOverKinetic: range(raw.static_over_kinetic),
    staticPressureLimit: range(raw.static_pressure_limit_mpa, MEGA),
    pressureVelocityLimit: byLubrication(raw.pressure_velocity_limit_mpa_m_per_s, MEGA),
    specificWear: byLubrication(raw.specific_wear_m2_per_n),
    areaFactor: range(raw.area_factor),
  };
}

interface Band extends RawRange {
  from_m_per_min: number;
  to_m_per_min?: number;
}

const bandsOf = (name: NutMaterialName): readonly Band[] => materialOf(name).pressure_limit_by_speed_mpa;

const LOADED = new Map(NUT_MATERIALS.map((name) => [name, load(name)] as const));

export function isNutMaterial(name: string): name is NutMaterialName {
  return (NUT_MATERIALS as readonly string[]).includes(name);
}

/** The material of that name. Throws RangeError for a name outside `NUT_MATERIALS`, which the type rules out. */
export function nutMaterial(name: NutMaterialName): NutMaterial {
  const found = LOADED.get(name);
  if (found === undefined) throw new RangeError(`no nut material ${String(name)}`);
  return found;
}

/**
 * The bands behind `movingPressureLimit`, slowest first: rows of highest sliding speed of the band (m/s; Infinity for the last) and the low, nominal
 * and high pressure (Pa).
 */
export function pressureBands(name: NutMaterialName): { readonly rows: readonly (readonly number[])[]; readonly source: string; readonly weak: boolean } {
  const bands = bandsOf(name);
  return {
    rows: bands.map((band) => [(band.to_m_per_min ?? Infinity) / 60, band.low * MEGA, band.nominal * MEGA, band.high * MEGA]),
    source: bands[0]?.source ?? '',
    weak: bands.some((band) => band.weak === true),
  };
}

/**
 * Pressure that a moving nut bears at a sliding speed (m/s, 0 or above), in Pa. Between the printed bands of the source the stricter neighbour
 * counts; at an edge the slower band. Throws RangeError for a negative speed.
 */
export function movingPressureLimit(name: NutMaterialName, slidingSpeed: number): HandbookRange {
  if (!(slidingSpeed >= 0)) throw new RangeError(`slidingSpeed must not be negative, but is ${slidingSpeed}`);
  const perMinute = slidingSpeed * 60;
  const band = bandsOf(name).find((candidate) => candidate.to_m_per_min === undefined || perMinute <= candidate.to_m_per_min + 1e-9);
  if (band === undefined) throw new RangeError(`nut-materials.json has no open last band for ${name}`);
  return range(band, MEGA);
}
