import { requireFinite } from './require-argument.ts';

/** Throws RangeError unless `low` ≤ `value` < `high`; any unit, the same for all three. */
export function requireWithin(name: string, value: number, low: number, high: number): void {
  requireFinite(name, value);
  if (value < low || value >= high) throw new RangeError(`${name} must be at least ${low} and below ${high}, got ${value}`);
}
