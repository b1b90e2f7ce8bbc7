/** Directions and places in space; the third axis points up. */
export type Vector3 = readonly [number, number, number];

export const plus3 = (a: Vector3, b: Vector3): Vector3 => [a[0] + b[0], a[1] + b[1], a[2] + b[2]];
export const minus3 = (a: Vector3, b: Vector3): Vector3 => [a[0] - b[0], a[1] - b[1], a[2] - b[2]];
export const times3 = (factor: number, a: Vector3): Vector3 => [factor * a[0], factor * a[1], factor * a[2]];
export const dot3 = (a: Vector3, b: Vector3): number => a[0] * b[0] + a[1] * b[1] + a[2] * b[2];
export const cross3 = (a: Vector3, b: Vector3): Vector3 => [a[1] * b[2] - a[2] * b[1], a[2] * b[0] - a[0] * b[2], a[0] * b[1] - a[1] * b[0]];
export const length3 = (a: Vector3): number => Math.hypot(a[0], a[1], a[2]);

/**
 * The direction of a vector.
 *
 * @throws RangeError when the vector has no direction
 */
export function unit3(a: Vector3): Vector3 {
  const length = length3(a);
  if (!(Number.isFinite(length) && length > 0)) throw new RangeError(`a direction must have a length above zero, got ${a.join(', ')}`);
  return times3(1 / length, a);
}

/** The part of `a` square to the unit vector `axis`. */
export const squareTo = (axis: Vector3, a: Vector3): Vector3 => minus3(a, times3(dot3(axis, a), axis));

/**
 * Three unit vectors square to each other, right-handed: across, side, axis.
 * Without a usable `across`, a coordinate axis that is far from `axis` stands in for it.
 */
export function frameAbout(axis: Vector3, across?: Vector3): { readonly across: Vector3; readonly side: Vector3; readonly axis: Vector3 } {
  const third = unit3(axis);
  const wanted = across === undefined ? undefined : squareTo(third, across);
  const stand: Vector3 = Math.abs(third[0]) < 0.8 ? [1, 0, 0] : [0, 1, 0];
  const first = unit3(wanted !== undefined && length3(wanted) > 1e-9 * length3(across as Vector3) ? wanted : squareTo(third, stand));
  return { across: first, side: cross3(third, first), axis: third };
}
