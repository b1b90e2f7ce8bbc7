import { scaleOf, type ConstraintScale } from '../../mechanics/constraint-rank.ts';
import { wrenchesOf, type DriveState, type Joint, type Wrench } from '../../mechanics/constraint-wrenches.ts';
import type { JointStiffness } from '../../mechanics/constraint-jam.ts';
import { supportReactions, type PlateLoad, type PlateSupport } from '../../mechanics/support-reactions.ts';
import { supportOf, type SupportJoint } from '../../machine/support-joint.ts';

type Rows = readonly (readonly number[])[];

/** The supports as the constraint analysis wants them. */
export interface Layout {
  readonly supports: readonly SupportJoint[];
  readonly joints: readonly Joint[];
  readonly scale: ConstraintScale;
}

/** For `compute`: the layout behind the table of supports and their names. Undefined without supports. */
export function layoutOf(rows: Rows | undefined, names: readonly string[] | undefined): Layout | undefined {
  if (rows === undefined || rows.length === 0) return undefined;
  const supports = rows.map(supportOf);
  const joints = supports.map(({ kind, at, axis, across, lead }, i): Joint => ({ owner: names?.[i] ?? `support ${i + 1}`, kind, at, axis, lead, ...(across === undefined ? {} : { across }) }));
  return { supports, joints, scale: scaleOf(joints.map((joint) => joint.at)) };
}

export const NO_SUPPORTS = 'no support can be read: each needs its joint, its place, and a direction where the joint has one';

/** Wrenches of the layout in a drive state. */
export const wrenchesIn = ({ joints }: Layout, state: DriveState): Wrench[] => wrenchesOf(joints, state);

/** Between the soft and the stiff end, in equal ratios. */
const inRatio = ({ low, high }: { readonly low: number; readonly high: number }, end: number): number => low * (high / low) ** end;

/** Stiffness of the joint of each wrench. */
export const stiffnessOf = ({ supports }: Layout, wrenches: readonly Wrench[], end: number): JointStiffness[] =>
  wrenches.map(({ joint }) => {
    const support = supports[joint] as SupportJoint;
    return { force: inRatio(support.stiffness, end), couple: inRatio(support.tiltStiffness, end) };
  });

/** A direction counts as upright within this of it: cos 25°. */
export const UPRIGHT = 0.9;

/** Indices of the supports that carry weight: a force or a held thread along the vertical. */
export function carriersOf(layout: Layout): readonly number[] {
  const upright = wrenchesIn(layout, 'drives held').filter((one) => one.holds !== 'couple' && Math.abs(one.direction[2]) > UPRIGHT);
  return [...new Set(upright.map((one) => one.joint))].sort((a, b) => a - b);
}

/** What each support that carries weight has of it. */
export interface Sharing {
  /** Index of the support, and its part of the whole weight; negative where it would have to pull. */
  readonly shares: readonly { readonly index: number; readonly name: string; readonly share: number }[];
  readonly places: readonly PlateSupport[];
  readonly centre: { readonly x: number; readonly y: number };
}

/** Supports as the plate above them feels them. */
export const platesOf = (layout: Layout, carriers: readonly number[], end: number): readonly PlateSupport[] =>
  carriers.map((index): PlateSupport => {
    const { at, stiffness } = layout.supports[index] as SupportJoint;
    // Of three, statics alone decides.
    return { x: at[0], y: at[1], ...(carriers.length > 3 ? { stiffness: inRatio(stiffness, end) } : {}) };
  });

/** Shares by position, with every mass at rest at the place and of the size that is written; a reason where there are none. */
export function sharingOf(layout: Layout, masses: Rows, end: number): Sharing | string {
  const carriers = carriersOf(layout);
  if (carriers.length === 0) return 'none of the supports carries weight';
  const loads = masses.map(([mass = 0, x = 0, y = 0]): PlateLoad => ({ x, y, force: mass }));
  const whole = loads.reduce((sum, load) => sum + load.force, 0);
  if (!(whole > 0)) return 'nothing weighs on the supports';
  const places = platesOf(layout, carriers, end);
  const { reactions } = supportReactions(places, loads);
  return {
    shares: carriers.map((index, i) => ({ index, name: layout.joints[index]?.owner ?? '', share: (reactions[i] as number) / whole })),
    places,
    centre: { x: loads.reduce((sum, load) => sum + load.force * load.x, 0) / whole, y: loads.reduce((sum, load) => sum + load.force * load.y, 0) / whole },
  };
}
