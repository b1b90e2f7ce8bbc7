import type { Bounded } from './values.ts';

/** How the frame stands on what does not move. */
export const HELD_WAYS = ['free', 'placed', 'clamped'] as const;

/** A point of a person's own frame, in SI. */
export interface FramePoint {
  readonly at: readonly [number, number, number];
  readonly held: (typeof HELD_WAYS)[number];
  readonly mass: Bounded;
}

/** A member of a person's own frame, in SI; every value may be open. */
export interface FrameBar {
  /** Indices of its points. */
  readonly from: number;
  readonly to: number;
  readonly youngsModulus: Bounded;
  readonly shearModulus: Bounded;
  readonly area: Bounded;
  readonly secondUpright: Bounded;
  readonly secondSideways: Bounded;
  readonly torsion: Bounded;
  readonly massPerLength: Bounded;
  /** Of the joint at either end against turning, N·m/rad. */
  readonly joint: Bounded;
  /** Share of its stiffness against pull that its fasteners leave. */
  readonly fastening: Bounded;
  /** The direction in which its longer side lies: 0 for the usual one, 1 to 3 for x, y, z. */
  readonly longerSide: number;
}

const BAR_VALUES = ['youngsModulus', 'shearModulus', 'area', 'secondUpright', 'secondSideways', 'torsion', 'massPerLength', 'joint', 'fastening'] as const;

const triple = ({ low, nominal, high }: Bounded): readonly number[] => [low, nominal, high];
const bounded = (row: readonly number[], from: number): Bounded => ({ low: row[from] ?? 0, nominal: row[from + 1] ?? 0, high: row[from + 2] ?? 0 });

/** A point as a row of the table `frame.point-places`. */
export const rowOfPoint = ({ at, held, mass }: FramePoint): readonly number[] => [...at, HELD_WAYS.indexOf(held), ...triple(mass)];

export function pointOfRow(row: readonly number[]): FramePoint {
  const [x = 0, y = 0, z = 0, held = 0] = row;
  return { at: [x, y, z], held: HELD_WAYS[held] ?? 'free', mass: bounded(row, 4) };
}

/** A member as a row of the table `frame.member-sections`. */
export const rowOfBar = (bar: FrameBar): readonly number[] => [bar.from, bar.to, bar.longerSide, ...BAR_VALUES.flatMap((value) => triple(bar[value]))];

export function barOfRow(row: readonly number[]): FrameBar {
  const [from = 0, to = 0, longerSide = 0] = row;
  const values = Object.fromEntries(BAR_VALUES.map((value, i) => [value, bounded(row, 3 + 3 * i)])) as Pick<FrameBar, (typeof BAR_VALUES)[number]>;
  return { from, to, longerSide, ...values };
}
