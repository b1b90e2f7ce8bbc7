import { formatQuantity } from '../language/format-quantity.ts';
import type { QuantityKind } from '../language/quantity-kinds.ts';
import { readQuantity } from '../language/read-quantity.ts';

/** Steps of a decade that people like to write. */
const STEPS = [1, 1.2, 1.5, 1.8, 2, 2.2, 2.5, 3, 3.5, 4, 4.5, 5, 6, 7, 8, 9, 10];

/** The nearest number with few digits at or beyond `value` in the given direction. Positive values only; 0 stays 0. */
export function niceNumber(value: number, direction: 'up' | 'down'): number {
  if (value <= 0) return 0;
  const decade = 10 ** Math.floor(Math.log10(value));
  const lead = value / decade;
  const slack = 1e-9;
  const step = direction === 'up' ? STEPS.find((candidate) => candidate >= lead - slack) : STEPS.findLast((candidate) => candidate <= lead + slack);
  return (step ?? lead) * decade;
}

/**
 * A solved value as it would be written in the person's own unit, rounded towards the side that passes:
 * two significant digits where that stays near, a nice number when `coarse`.
 */
export function writtenValue(si: number, quantity: QuantityKind, unit: string | undefined, direction: 'up' | 'down', coarse = false): string | undefined {
  const one = readQuantity(unit === undefined || unit === '' ? '1' : `1 ${unit}`, quantity);
  if (!one.ok || one.quantity.nominal <= 0) return formatQuantity(si, quantity);
  const inUnit = si / one.quantity.nominal;
  const rounded = coarse ? niceNumber(inUnit, direction) : twoDigits(inUnit, direction);
  const number = Number(rounded.toPrecision(6));
  return unit === undefined || unit === '' ? String(number) : `${number}${unit === '°' ? '' : ' '}${unit}`;
}

/** `a 4 N·m` or `an 8.8 N·m`: a size with the article that is heard before its number. */
export const withArticle = (size: string): string => `${/^(8|1[18](?!\d))/.test(size) ? 'an' : 'a'} ${size}`;

function twoDigits(value: number, direction: 'up' | 'down'): number {
  if (value <= 0) return 0;
  const scale = 10 ** (1 - Math.floor(Math.log10(value)));
  const scaled = value * scale;
  return (direction === 'up' ? Math.ceil(scaled - 1e-9) : Math.floor(scaled + 1e-9)) / scale;
}
