/**
 * Guards of the mechanics functions. They throw only for what a caller can never mean (not a number, a negative mass);
 * what nature refuses (a lever that pulls out, a supply too weak) is told in the type of the result instead.
 */

/** Throws RangeError unless `value` is a finite number. */
export function requireFinite(name: string, value: number): void {
  if (!Number.isFinite(value)) throw new RangeError(`${name} must be a finite number, got ${value}`);
}

/** Throws RangeError unless `value` is finite and greater than zero. */
export function requirePositive(name: string, value: number): void {
  if (!(Number.isFinite(value) && value > 0)) throw new RangeError(`${name} must be greater than zero, got ${value}`);
}

/** Throws RangeError unless `value` is finite and zero or greater. */
export function requireNotNegative(name: string, value: number): void {
  if (!(Number.isFinite(value) && value >= 0)) throw new RangeError(`${name} must be zero or greater, got ${value}`);
}

/** Throws RangeError unless `value` is a whole number of at least `least`. */
export function requireWhole(name: string, value: number, least: number): void {
  if (!(Number.isInteger(value) && value >= least)) throw new RangeError(`${name} must be a whole number of at least ${least}, got ${value}`);
}
