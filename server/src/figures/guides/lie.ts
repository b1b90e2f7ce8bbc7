/** How masses and drives lie to the carriages: x along the rails, y across, z away from their base, counted from the middle of the carriages. */
import { massPlaceOf } from '../../machine/mass-place.ts';
import { formOf, supportOf } from '../../machine/support-joint.ts';
import type { Bounded } from '../../machine/values.ts';

export type Triple = readonly [number, number, number];
type Rows = readonly (readonly number[])[];

/** One mass: its centre of gravity, or every corner of where it may be. */
export interface LyingMass { readonly mass: number; readonly title: string; /** The first one counts where there is only one. */ readonly corners: readonly Triple[]; /** The same places in the machine, m. */ readonly places: readonly Triple[] }

/** Directions of the machine in which the rails' own x, y and z point. */
export interface RailFrame { readonly along: Triple; readonly across: Triple; readonly away: Triple }

/** What pushes: where, and which tilts several drives hold by themselves. */
export interface Drives {
  readonly y: number; readonly z: number;
  /** Direction (y, z) in which two or more drives stand apart, of length 1; `all` where they stand apart in both. */
  readonly apart: readonly [number, number] | 'all' | undefined;
}

export interface Lie {
  readonly frame: RailFrame;
  readonly masses: readonly LyingMass[];
  /** Places that the drive may have: its offset does not tell to which side, unless nuts or belts have places. */
  readonly drives: readonly Drives[];
  /** A height that counts is not written. */
  readonly withoutHeight: boolean;
}

export interface LieValues {
  readonly mass: number; readonly inclination: number; readonly units: number | undefined; readonly offset: number | undefined; readonly along: string | undefined;
  readonly rows: Rows | undefined; readonly middle: Rows | undefined; readonly joints: Rows | undefined; readonly titles: readonly string[] | undefined;
}

/** Nearer than this two drives stand at one place, and so do two joints; m. */
const SAME = 1e-3;
const isUpright = (inclination: number): boolean => Math.abs(Math.cos(inclination)) < 1e-6;

const dot = (a: Triple, b: Triple): number => a[0] * b[0] + a[1] * b[1] + a[2] * b[2];
const cross = (a: Triple, b: Triple): Triple => [a[1] * b[2] - a[2] * b[1], a[2] * b[0] - a[0] * b[2], a[0] * b[1] - a[1] * b[0]];

/** Frames that the rails may have; several where it is not known which way upright rails stand beside each other. None where the direction of travel is not known. */
function framesOf({ inclination, along, joints }: LieValues): readonly RailFrame[] {
  if (isUpright(inclination)) {
    const up: Triple = [0, 0, 1];
    const framed = (across: Triple): RailFrame => ({ along: up, across, away: cross(up, across) });
    const guides = (joints ?? []).map(supportOf).filter(({ kind }) => formOf(kind).drive !== true);
    const span = (index: 0 | 1): number => Math.max(0, ...guides.flatMap((one) => guides.map((other) => Math.abs(one.at[index] - other.at[index]))));
    if (Math.abs(span(0) - span(1)) > SAME) return [framed(span(0) > span(1) ? [1, 0, 0] : [0, 1, 0])];
    return [framed([1, 0, 0]), framed([0, 1, 0])];
  }
  if (along !== 'x' && along !== 'y') return [];
  const [cos, sin] = [Math.cos(inclination), Math.sin(inclination)];
  const forward: Triple = along === 'x' ? [cos, 0, sin] : [0, cos, sin];
  const away: Triple = along === 'x' ? [-sin, 0, cos] : [0, -sin, cos];
  return [{ along: forward, across: cross(away, forward), away }];
}

const endsOf = ({ low, high }: Bounded): readonly number[] => (high - low > 1e-9 ? [low, high] : [low]);

/** All masses at one and the same share of their ranges, the one at which they add up to the moved mass. */
function massesAt(total: number, masses: readonly Bounded[]): readonly number[] {
  const sum = (pick: (mass: Bounded) => number): number => masses.reduce((whole, mass) => whole + pick(mass), 0);
  const nominal = sum((mass) => mass.nominal);
  const end = sum((mass) => (total < nominal ? mass.low : mass.high));
  const share = Math.abs(end - nominal) > 1e-12 ? Math.min(1, Math.max(0, (total - nominal) / (end - nominal))) : 0;
  const found = masses.map(({ nominal: at, low, high }) => at + share * ((total < nominal ? low : high) - at));
  // Whatever is left, as when a remedy tries another mass, all have in proportion.
  const reached = found.reduce((whole, mass) => whole + mass, 0);
  return reached > 0 ? found.map((mass) => (mass * total) / reached) : found;
}

function drivesOf(values: LieValues, frame: RailFrame, toRails: (place: Triple) => Triple): readonly Drives[] {
  const { inclination, units = 1, offset, joints } = values;
  const places = (joints ?? []).map(supportOf).filter(({ kind }) => formOf(kind).drive === true).map(({ at }) => toRails(at));
  const apart = places.length > 0 ? apartOf(places) : units < 2 ? undefined : units > 2 && isUpright(inclination) ? ('all' as const) : ([1, 0] as const);
  const mean = (index: 1 | 2): number => places.reduce((sum, place) => sum + place[index], 0) / places.length;
  if (offset !== undefined && offset !== 0) {
    const sides: readonly (readonly [number, number])[] = isUpright(inclination) ? [[offset, 0], [-offset, 0], [0, offset], [0, -offset]] : [[offset, 0], [-offset, 0]];
    return onSide(sides, places.length === 0 ? [0, 0] : [mean(1), isUpright(inclination) ? mean(2) : 0]).map(([y, z]) => ({ y, z, apart }));
  }
  if (offset === 0 || places.length === 0) return [{ y: 0, z: 0, apart }];
  // A height that is not written says nothing of a lever.
  return [{ y: mean(1), z: isUpright(inclination) ? mean(2) : 0, apart }];
}

/** Of the sides on which a drive may be, those on which nuts or belts are written; all where that does not tell. */
function onSide(sides: readonly (readonly [number, number])[], [toY, toZ]: readonly [number, number]): readonly (readonly [number, number])[] {
  if (Math.hypot(toY, toZ) < SAME) return sides;
  const reach = sides.map(([y, z]) => y * toY + z * toZ);
  return sides.filter((_, i) => (reach[i] as number) > Math.max(...reach) - 1e-9);
}

/** The direction in which places stand apart; `all` for three or more that are not in line. */
function apartOf(places: readonly Triple[]): Drives['apart'] {
  const [first] = places;
  if (!first) return undefined;
  const away = places.map((place) => [place[1] - first[1], place[2] - first[2]] as const);
  const far = away.reduce((most, one) => (Math.hypot(...one) > Math.hypot(...most) ? one : most));
  const distance = Math.hypot(...far);
  if (distance < SAME) return undefined;
  const direction = [far[0] / distance, far[1] / distance] as const;
  return away.some((one) => Math.abs(one[0] * direction[1] - one[1] * direction[0]) > SAME) ? 'all' : direction;
}

/** How masses lie, for each way in which the rails may stand; a reason where it is not known. */
export function liesOf(values: LieValues): readonly Lie[] | string {
  const { mass, inclination, rows, middle, titles } = values;
  if (!rows || rows.length === 0) return 'masses taken midway';
  const centre = middle?.[0];
  if (!centre) return 'masses taken midway, since it is not written where the carriages are';
  const frames = framesOf(values);
  if (frames.length === 0) return 'masses taken midway, since it is not written along which direction the axis moves';
  const places = rows.map(massPlaceOf);
  const masses = massesAt(mass, places.map((place) => place.mass));
  const withHeight = centre[3] === 1;
  const origin: Triple = [centre[0] ?? 0, centre[1] ?? 0, withHeight ? (centre[2] ?? 0) : 0];
  const withoutHeight = !isUpright(inclination) && !(withHeight && places.every(({ z }) => z !== undefined));
  return frames.map((frame) => {
    const toRails = (place: Triple): Triple => {
      const from: Triple = [place[0] - origin[0], place[1] - origin[1], place[2] - origin[2]];
      return [dot(from, frame.along), dot(from, frame.across), dot(from, frame.away)];
    };
    return {
      frame,
      withoutHeight,
      masses: places.map(({ x, y, z }, i): LyingMass => {
        const heights = withHeight && z ? endsOf(z) : [origin[2]];
        const at = endsOf(x).flatMap((one) => endsOf(y).flatMap((other) => heights.map((height): Triple => [one, other, height])));
        return { mass: masses[i] ?? 0, title: titles?.[i] ?? '', corners: at.map(toRails), places: at };
      }),
      drives: drivesOf(values, frame, toRails),
    };
  });
}
