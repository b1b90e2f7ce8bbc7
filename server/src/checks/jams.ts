import type { Facts, Limit } from './check.ts';

/** Limits of what jams, shared by the checks that tell of it. */
export const jamLimits = {
  growth: [
    { at: 5, severity: 'error', basis: 'our threshold', source: { title: 'a force of several times the weight seizes or bends something' } },
    { at: 0.5, severity: 'warning', basis: 'our threshold', source: { title: 'half the weight is felt as stiff running' } },
  ],
  misalignment: [{ at: 0.5, severity: 'warning', basis: 'our threshold', source: { title: 'half the weight is felt as stiff running' } }],
  drag: [
    { at: 1, severity: 'error', basis: 'follows from the mechanics', source: { title: 'more drag than force to spare stops the drive' } },
    { at: 0.3, severity: 'warning', basis: 'our threshold', source: { title: 'a third of the reserve, which is kept for all that nobody counted' } },
  ],
} as const satisfies Record<string, readonly (Limit & { readonly at: number })[]>;

/** An error for certain. */
const GRAVEST = 3;

/** How gravely a figure breaks its limits: 0 not at all, 1 perhaps a little, 3 for certain and badly. */
function gravity(facts: Facts, figure: string, limits: readonly { readonly at: number; readonly severity: string }[]): number {
  const bounds = facts.bounds(figure);
  if (!bounds) return 0;
  return Math.max(0, ...limits.map(({ at, severity }) => {
    const full = severity === 'error' ? GRAVEST : 2;
    return bounds.nominal > at ? full : bounds.high > at ? full - 1 : 0;
  }));
}

/** Without the stiffness of part and frame all forces are upper bounds: a stalled drive is then only feared. */
export const countsAsRigid = (facts: Facts): boolean => facts.bounds('carried-part.stiffness') === undefined;

/**
 * Whether the drag of a jam is a graver matter than its forces. Both come of one cause: the graver speaks, and of equals the forces, since they tell where it jams.
 */
export function dragOutweighsForces(facts: Facts): boolean {
  const forces = Math.max(gravity(facts, 'supports.growth-jam-use', jamLimits.growth), gravity(facts, 'supports.misalignment-jam-use', jamLimits.misalignment));
  const milder = countsAsRigid(facts) ? 1 : 0;
  // What cannot be outweighed need not be compared: friction costs a good deal to compute.
  return forces < GRAVEST - milder && gravity(facts, 'supports.jam-drag-use', jamLimits.drag) - milder > forces;
}
