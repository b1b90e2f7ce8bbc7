import { growthMisfits, jamForces, jointLoads, type JointLoad } from '../../mechanics/constraint-jam.ts';
import type { Wrench } from '../../mechanics/constraint-wrenches.ts';
import { dot3, unit3 } from '../../mechanics/vector3.ts';
import type { SupportJoint } from '../../machine/support-joint.ts';
import { stiffnessOf, wrenchesIn, type Layout } from './layout.ts';

export const springs = { title: 'least elastic energy: a rigid part on joints that are springs', weak: true } as const;

/** A part that is drawn tight by less than this is not jammed: rounding. N. */
export const NOTHING = 1e-6;

/** What growth by a strain does to each joint, with the drives held. */
export function growthLoads(layout: Layout, strain: number, end: number): JointLoad[] {
  const wrenches = wrenchesIn(layout, 'drives held');
  return jointLoads(wrenches, jamForces(wrenches, growthMisfits(wrenches, strain), stiffnessOf(layout, wrenches, end), layout.scale));
}

/** How far a wrench's joint may be out along it: m, rad for couples. */
export const misfitOf = (wrench: Wrench, { offset, tilt, axis }: SupportJoint): number =>
  // A couple about the joint's own axis is its twist; an offset along the axis is only that of what stops it there.
  wrench.holds === 'couple' ? tilt : wrench.holds === 'thread' ? 0 : Math.abs(dot3(wrench.direction, unit3(axis))) > 0.99 ? 0 : offset;

/** The most that joints out of place can do to each joint: every misfit by itself with its worse sign, all added. */
export function misalignmentLoads(layout: Layout, end: number): JointLoad[] {
  const wrenches = wrenchesIn(layout, 'drives held');
  const stiffness = stiffnessOf(layout, wrenches, end);
  const sums = wrenches.map(() => 0);
  wrenches.forEach((wrench, i) => {
    const misfit = misfitOf(wrench, layout.supports[wrench.joint] as SupportJoint);
    if (misfit === 0) return;
    jamForces(wrenches, wrenches.map((_, j) => (j === i ? misfit : 0)), stiffness, layout.scale).forEach((force, j) => { sums[j] = (sums[j] as number) + Math.abs(force); });
  });
  return jointLoads(wrenches, sums);
}
