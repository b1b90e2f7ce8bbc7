import type { Remarked } from '../figure.ts';

/** The larger of two swings, of the directions in which level axes push: `x`, `y`, or both where nobody says which. */
export function worseOf(x: number, y: number, along: string): Remarked {
  const isX = along === 'x' || (along !== 'y' && x >= y);
  return isX ? { value: x, note: 'along x' } : { value: y, note: 'along y' };
}
