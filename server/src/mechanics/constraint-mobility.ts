/** Freedoms of a linkage by counting alone. */
import { requireWhole } from './require-argument.ts';

/**
 * Mobility by counting links and joints; it sees no geometry, so the rank of the wrenches decides where the two differ.
 *
 * Formula: M = 6 (n − 1) − Σ (6 − f).
 *
 * @param links - n with the frame, 1 or more
 * @param freedoms - f of each joint, 1 to 5
 * @returns freedoms; negative when the joints hold more than there is to hold
 * @throws RangeError outside the stated domains
 *
 * Source: the criterion of Kutzbach.
 * Checked against: test/published/constraint.test.ts, university notes on spatial mobility.
 */
export function mobility(links: number, freedoms: readonly number[]): number {
  requireWhole('links', links, 1);
  for (const f of freedoms) {
    requireWhole('freedoms of a joint', f, 1);
    if (f > 5) throw new RangeError(`a joint has at most 5 freedoms, got ${f}`);
  }
  return 6 * (links - 1) - freedoms.reduce((sum, f) => sum + 6 - f, 0);
}
