import { exactly, type Bounded } from './values.ts';

/**
 * One mass that the axis moves as the figures read it, in SI: how heavy it is and where its centre of gravity may lie.
 * Of x and y, `nominal` is the place that is written, `low` and `high` are the ends of what is open: the area over which it may be, and how uncertain the place is.
 */
export interface MassPlace {
  /** kg; `low` is 0 for what may be absent. */
  readonly mass: Bounded;
  readonly x: Bounded;
  readonly y: Bounded;
  /** Height; undefined where it is not written. */
  readonly z: Bounded | undefined;
}

const triple = ({ nominal, low, high }: Bounded): readonly [number, number, number] => [nominal, low, high];

/**
 * A row of the table `axis.mass-places`, plain numbers in a fixed order:
 * mass, x, y as they are at rest at the written place; then low and high of mass, of x, of y; then 1 where the height is written, else 0; then nominal, low and high of the height.
 */
export function massRowOf({ mass, x, y, z }: MassPlace): readonly number[] {
  return [mass.nominal, x.nominal, y.nominal, mass.low, mass.high, x.low, x.high, y.low, y.high, z ? 1 : 0, ...triple(z ?? exactly(0))];
}

/** The mass that a row stands for; a row of mass, x and y alone is one that stays, of unknown height. */
export function massPlaceOf(row: readonly number[]): MassPlace {
  const number = (index: number, otherwise: number): number => row[index] ?? otherwise;
  const bounded = (nominal: number, low: number): Bounded => ({ nominal, low: number(low, nominal), high: number(low + 1, nominal) });
  return {
    mass: bounded(number(0, 0), 3),
    x: bounded(number(1, 0), 5),
    y: bounded(number(2, 0), 7),
    z: number(9, 0) === 1 ? bounded(number(10, 0), 11) : undefined,
  };
}
