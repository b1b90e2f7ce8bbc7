import { carriageLoads, tableWrench, type TableCarriage } from '../../mechanics/carriage-loads.ts';
import { equivalentCarriageLoad, type CarriageLoad } from '../../mechanics/guide-life.ts';
import { liesOf, type Drives, type Lie, type LieValues, type Triple } from './lie.ts';

/** What the loads on carriages need. */
export const carriageNeeds = {
  mass: 'axis.moved-mass', gravity: 'conditions.gravity', inclination: 'axis.inclination', process: 'axis.process-force', rails: 'guides.rails', carriages: 'guides.carriages',
  length: 'guides.carriage-length',
} as const;
export const carriageOptional = {
  railSpacing: 'guides.rail-spacing', spacing: 'guides.carriage-spacing', offset: 'guides.drive-offset', acceleration: 'motion.acceleration', units: 'drive.units',
} as const;
export const carriageChoices = { along: 'axis.along', form: 'guides.bearing' } as const;
export const carriageTables = { rows: 'axis.mass-places', middle: 'guides.at', joints: 'axis.support-joints' } as const;
export const carriageNames = { titles: 'axis.mass-places' } as const;

export interface CarriageValues extends LieValues {
  readonly gravity: number; readonly process: number; readonly rails: number; readonly carriages: number; readonly length: number;
  readonly railSpacing: number | undefined; readonly spacing: number | undefined; readonly acceleration: number | undefined; readonly form: string | undefined;
}

/** One carriage in one of the cases that are looked at. */
export interface LoadedCarriage {
  readonly load: CarriageLoad;
  readonly carriage: TableCarriage;
  /** What led to it, and undefined where all masses are taken midway. */
  readonly lie: Lie | undefined;
  /** Which corner of its area each mass is at. */
  readonly corners: readonly number[];
}

export interface CarriageCases { readonly loads: readonly LoadedCarriage[]; /** Where masses are taken to lie, when it is not written. */ readonly assumed: string | undefined }

/** Bearings that keep a slider from rolling over on a single rail. */
const HOLD_ROLL = new Set(['profile-rail', 'wheels', 'dry-slide']);

/** `count` places evenly between ±half of the spacing. */
const spread = (count: number, spacing: number): readonly number[] =>
  count <= 1 ? [0] : Array.from({ length: count }, (_, i) => spacing * (i / (count - 1) - 0.5));

/** So many masses go through their areas one by one; what is more moves with the last of them. */
const MOST_APART = 4;

/** Choices of a corner for each mass. */
function choicesOf(masses: Lie['masses']): readonly (readonly number[])[] {
  const moving = masses.flatMap(({ corners }, i) => (corners.length > 1 ? [i] : []));
  let all: readonly (readonly number[])[] = [masses.map(() => 0)];
  moving.forEach((index, rank) => {
    if (rank >= MOST_APART) return;
    const together = rank === MOST_APART - 1 ? moving.slice(rank) : [index];
    const count = masses[index]?.corners.length ?? 1;
    all = all.flatMap((one) => Array.from({ length: count }, (_, corner) => one.map((was, i) => (together.includes(i) ? corner % (masses[i]?.corners.length ?? 1) : was))));
  });
  return all;
}

const PARTS = ['fy', 'fz', 'mx', 'my', 'mz'] as const;
/** A part of the wrench smaller than this share of the whole is rounding. */
const ROUNDING = 1e-9;

type Responses = Readonly<Record<(typeof PARTS)[number], readonly CarriageLoad[] | 'not held'>>;
let remembered: { readonly key: string; readonly responses: Responses } | undefined;

/** What one newton, or newton metre, of each part of the wrench does to every carriage. Kept, since hundreds of cases ask for the same. */
function responsesOf(set: readonly TableCarriage[]): Responses {
  const key = set.map(({ x, y, length, rowSpacing }) => `${x},${y},${length ?? 0},${rowSpacing ?? 0}`).join(';');
  if (remembered?.key !== key) {
    const none = { fy: 0, fz: 0, mx: 0, my: 0, mz: 0 };
    const to = (part: (typeof PARTS)[number]): readonly CarriageLoad[] | 'not held' => carriageLoads(set, { ...none, [part]: 1 });
    remembered = { key, responses: { fy: to('fy'), fz: to('fz'), mx: to('mx'), my: to('my'), mz: to('mz') } };
  }
  return remembered.responses;
}

function loadsUnder(set: readonly TableCarriage[], wrench: CarriageLoad): readonly CarriageLoad[] | 'not held' {
  const responses = responsesOf(set);
  const size = Math.max(...PARTS.map((part) => Math.abs(wrench[part])));
  const sums = set.map(() => ({ fy: 0, fz: 0, mx: 0, my: 0, mz: 0 }));
  for (const part of PARTS) {
    if (Math.abs(wrench[part]) <= ROUNDING * size) continue;
    const response = responses[part];
    if (response === 'not held') return 'not held';
    response.forEach((load, i) => {
      const sum = sums[i];
      if (sum) for (const other of PARTS) sum[other] += load[other] * wrench[part];
    });
  }
  return sums;
}

type Acting = Parameters<typeof tableWrench>[0];

/** The wrench that is left to the carriages when drives that stand apart hold what they can of the couple along the travel. */
function wrenchOf(acting: Omit<Acting, 'drive'>, { y, z, apart }: Drives): CarriageLoad {
  const whole = tableWrench({ ...acting, drive: { y, z } });
  if (apart === undefined) return whole;
  const along = [
    ...acting.masses.map(({ mass, at }) => ({ force: mass * (acting.gravity[0] - acting.acceleration[0]), at })),
    ...(acting.forces ?? []).map(({ force, at }) => ({ force: force[0], at })),
  ];
  const [my, mz] = [along.reduce((sum, { force, at }) => sum + force * (at[2] - z), 0), along.reduce((sum, { force, at }) => sum - force * (at[1] - y), 0)];
  if (apart === 'all') return { ...whole, my: whole.my - my, mz: whole.mz - mz };
  // Forces along x at ±u turn about u × x.
  const [toY, toZ] = [apart[1], -apart[0]];
  const held = my * toY + mz * toZ;
  return { ...whole, my: whole.my - held * toY, mz: whole.mz - held * toZ };
}

let last: { readonly key: string; readonly result: CarriageCases | string } | undefined;

/** Load on each carriage, speeding up and slowing down, with every mass in every corner of its area; a reason where there is none. */
export function loadsOf(values: CarriageValues): CarriageCases | string {
  const key = JSON.stringify(values);
  if (last?.key !== key) last = { key, result: casesOf(values) };
  return last.result;
}

function casesOf(values: CarriageValues): CarriageCases | string {
  const { mass, gravity, inclination, process, rails, carriages, length, railSpacing, spacing, offset = 0, acceleration = 0, form } = values;
  if (!(mass >= 0 && rails >= 1 && carriages >= 1 && length > 0)) return 'mass and carriages must be above zero';
  if (carriages > 1 && !((spacing ?? 0) > 0)) return 'the spacing of the carriages is not given';
  const found = liesOf(values);
  const known = typeof found === 'string' ? undefined : found;
  // How the weight is shared does not depend on the spacing of two rails, as long as it lies midway.
  const set = spread(rails, railSpacing !== undefined && railSpacing > 0 ? railSpacing : 1).flatMap((y) =>
    // Where two stand apart their own short lengths, and the width of their rows, are not counted on.
    spread(carriages, spacing ?? 0).map((x): TableCarriage => ({ x, y, length: carriages > 1 ? 0 : length, rowSpacing: rails === 1 && HOLD_ROLL.has(form ?? '') ? length : 0 })));
  const loads: LoadedCarriage[] = [];
  const midway: readonly Triple[] = [[0, 0, 0]];
  const lies: readonly Pick<Lie, 'masses' | 'drives'>[] = known ?? [{ masses: [{ mass, title: '', corners: midway, places: midway }], drives: [{ y: offset, z: 0, apart: undefined }] }];
  for (const lie of lies) {
    for (const drives of lie.drives) {
      for (const corners of choicesOf(lie.masses)) {
        for (const sign of [1, -1]) {
          const acting: Omit<Acting, 'drive'> = {
            masses: lie.masses.map(({ mass: one, corners: at }, i) => ({ mass: one, at: at[corners[i] ?? 0] ?? [0, 0, 0] })),
            gravity: [-gravity * Math.sin(inclination), 0, -gravity * Math.cos(inclination)],
            acceleration: [sign * acceleration, 0, 0],
            forces: [{ force: [-sign * Math.abs(process), 0, 0], at: [0, 0, 0] }],
          };
          const wrench = wrenchOf(acting, drives);
          if (rails > 1 && !((railSpacing ?? 0) > 0) && Math.abs(wrench.mx) > ROUNDING * Math.abs(wrench.fz)) return 'the spacing of the rails is not given';
          const under = loadsUnder(set, wrench);
          if (under === 'not held') return rails === 1 ? 'the slider would turn round its single shaft' : 'the carriages leave the slider free to turn';
          under.forEach((load, i) => loads.push({ load, carriage: set[i] as TableCarriage, lie: known?.includes(lie as Lie) ? (lie as Lie) : undefined, corners }));
        }
      }
    }
  }
  return { loads, assumed: typeof found === 'string' ? found : undefined };
}

/** Across the rail, whatever the direction. */
export const resultant = ({ fy, fz }: CarriageLoad): number => Math.hypot(fy, fz);

/** What rails that are out of line, and preload, press on a carriage besides, N. */
export interface PressedBesides { readonly sideways: number; readonly away: number; readonly preload: number }

/** Bushings turn on their shaft and feel the resultant; rails feel each direction on its own rows. */
const ROUND = new Set(['ball-bushing', 'self-aligning-ball-bushing']);

/** The greatest equivalent load and where it is; a reason where a carriage would have to take a moment that it has no rating for. */
export function equivalentOf(
  loads: readonly LoadedCarriage[], bearing: string, staticRating: number, moment: number | undefined, besides: PressedBesides,
): { readonly value: number; readonly at: LoadedCarriage | undefined } | string {
  if (!(staticRating > 0) || (moment !== undefined && !(moment > 0))) return 'ratings must be above zero';
  let most: { value: number; at: LoadedCarriage | undefined } = { value: 0, at: undefined };
  for (const one of loads) {
    const pressed = { ...one.load, fy: Math.abs(one.load.fy) + besides.sideways, fz: Math.abs(one.load.fz) + besides.away };
    const seen = ROUND.has(bearing) ? { ...pressed, fy: 0, fz: resultant(pressed) } : pressed;
    const found = equivalentCarriageLoad(seen, { staticRating, rollMoment: moment, pitchMoment: moment, yawMoment: moment });
    if (found === 'takes no moment') {
      return 'a carriage would have to take a moment, for which no rating is given; two apart on each rail take it as forces';
    }
    if (found + besides.preload > most.value * (1 + ROUNDING)) most = { value: found + besides.preload, at: one };
  }
  return most;
}
