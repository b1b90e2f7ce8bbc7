/** A quantity in SI with how sure it is: `low <= nominal <= high`. */
export interface Bounded {
  readonly nominal: number;
  readonly low: number;
  readonly high: number;
}

export type InputValue =
  | ({ readonly type: 'number'; /** The unit in which it was written, for showing it back. */ readonly unit?: string } & Bounded)
  | { readonly type: 'choice'; readonly text: string }
  | { readonly type: 'table'; readonly rows: readonly (readonly number[])[]; /** What a person calls each row. */ readonly titles?: readonly string[] };

export const exactly = (nominal: number): Bounded => ({ nominal, low: nominal, high: nominal });

export const between = (low: number, nominal: number, high: number): Bounded => ({ low, nominal, high });

/** A quantity multiplied by a number above zero. */
export const scaled = <T extends Bounded | undefined>(value: T, times = 1): T | Bounded =>
  value === undefined || times === 1 ? value : { nominal: value.nominal * times, low: value.low * times, high: value.high * times };

export const isUncertain = (value: Bounded): boolean => value.low < value.high;

export const sumOf = (values: readonly Bounded[]): Bounded => ({
  nominal: values.reduce((sum, value) => sum + value.nominal, 0),
  low: values.reduce((sum, value) => sum + value.low, 0),
  high: values.reduce((sum, value) => sum + value.high, 0),
});

/** Product of positive quantities, each at the same end. */
export const productOf = (values: readonly Bounded[]): Bounded => ({
  nominal: values.reduce((product, value) => product * value.nominal, 1),
  low: values.reduce((product, value) => product * value.low, 1),
  high: values.reduce((product, value) => product * value.high, 1),
});
