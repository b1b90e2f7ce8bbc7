import { levellingMoves, levellingOrder, standInLine, tiltOfPlate, type LevellingOrder, type PlateTilt } from '../../mechanics/levelling.ts';
import type { PlanPoint } from '../../mechanics/support-reactions.ts';
import { unable, type Computed } from '../figure.ts';

export type Rows = readonly (readonly number[])[];

/** Tables that the figures of levelling read. */
export const liftTables = { lifts: 'levelling.lift-places' } as const;
export const liftNames = { liftNames: 'levelling.lift-places' } as const;

export interface LiftValues {
  readonly lifts: Rows | undefined;
  readonly liftNames: readonly string[] | undefined;
}

/** The lifts as the figures read them. */
export interface Lifts {
  readonly places: readonly PlanPoint[];
  readonly names: readonly string[];
  /** Which of the supports each is. */
  readonly indices: readonly number[];
}

/** All orders of more would be too many to try. */
const MOST_LIFTS = 6;

/** The lifts, or why they cannot level. */
function liftsOf({ lifts, liftNames: names }: LiftValues): Lifts | string {
  if (lifts === undefined || lifts.length < 3) return 'three supports with a place are needed as lifts: name them, or describe three nuts or belts that stand upright';
  if (lifts.length > MOST_LIFTS) return `only up to ${MOST_LIFTS} lifts are reckoned with: name those that level (lifts)`;
  const places = lifts.map(([, x = 0, y = 0]): PlanPoint => ({ x, y }));
  if (standInLine(places)) return 'the lifts stand in one line, so that they cannot tilt the part across it';
  return { places, names: lifts.map((_, i) => names?.[i] ?? `lift ${i + 1}`), indices: lifts.map(([index = 0]) => index) };
}

export function withLifts(values: LiftValues, compute: (lifts: Lifts) => Computed): Computed {
  const lifts = liftsOf(values);
  return typeof lifts === 'string' ? unable(lifts) : compute(lifts);
}

/** How the part was measured to stand, and what each lift has to do. */
export interface Measured {
  readonly tilt: PlateTilt;
  /** m at each lift: what was measured. */
  readonly heights: readonly number[];
  /** m for each lift, up positive; the height in the middle of the lifts stays. */
  readonly moves: readonly number[];
}

/** A movement below this is rounding, m. */
const NOTHING = 1e-9;

export function withMeasured(values: LiftValues & { readonly heights: Rows | undefined }, compute: (lifts: Lifts, measured: Measured) => Computed): Computed {
  return withLifts(values, (lifts) => {
    const heights = values.heights?.map(([height = 0]) => height);
    if (heights === undefined) return unable('no heights were measured at the lifts (heights)');
    if (heights.length !== lifts.places.length) return unable(`there are ${lifts.places.length} lifts and ${heights.length} measured heights`);
    const tilt = tiltOfPlate(lifts.places, heights);
    const middle = (pick: (place: PlanPoint) => number): number => lifts.places.reduce((sum, place) => sum + pick(place), 0) / lifts.places.length;
    const moves = levellingMoves(lifts.places, tilt.slopeX, tilt.slopeY, { x: middle(({ x }) => x), y: middle(({ y }) => y) });
    return compute(lifts, { tilt, heights, moves: moves.map((move) => (Math.abs(move) < NOTHING ? 0 : move)) });
  });
}

/** No part is ever tilted as far, rad: stands for no limit. */
const NO_LIMIT = 1;

/** The order that stays flattest; within the tilt allowed where that can be, in one go else. */
export function orderOf({ places }: Lifts, { tilt, moves }: Measured, steepest: number | undefined): Extract<LevellingOrder, { kind: 'order' }> | undefined {
  // The twist that more than three lifts measure stays: the plane is levelled.
  const start = places.map(({ x, y }) => tilt.height + tilt.slopeX * x + tilt.slopeY * y);
  const end = start.map((height, i) => height + (moves[i] ?? 0));
  const within = levellingOrder(places, start, end, steepest ?? NO_LIMIT);
  if (within.kind === 'order') return within;
  const anyhow = levellingOrder(places, start, end, NO_LIMIT);
  return anyhow.kind === 'order' ? anyhow : undefined;
}

/** "+0.12 mm", "−0.3 mm". */
export function signedMillimetres(metres: number): string {
  const size = Number((Math.abs(metres) * 1000).toPrecision(3));
  return `${size === 0 ? '' : metres > 0 ? '+' : '−'}${size} mm`;
}

/** "0.55 mm", without a sign. */
export const millimetres = (metres: number): string => `${Number((metres * 1000).toPrecision(3))} mm`;

/** "screw 1 +0.12 mm, screw 2 −0.3 mm". */
export const eachInWords = (names: readonly string[], values: readonly number[]): string => names.map((name, i) => `${name} ${signedMillimetres(values[i] ?? 0)}`).join(', ');

/** Index of the largest. */
export const largestOf = (values: readonly number[]): number => values.reduce((most, value, i) => (value > (values[most] as number) * (1 + 1e-12) ? i : most), 0);
