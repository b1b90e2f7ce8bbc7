import { growthMisfits, slideAt } from '../../mechanics/constraint-jam.ts';
import type { JointKind } from '../../mechanics/constraint-wrenches.ts';
import { dot3, frameAbout, type Vector3 } from '../../mechanics/vector3.ts';
import type { SupportJoint } from '../../machine/support-joint.ts';
import { misfitOf } from './jam-loads.ts';
import { stiffnessOf, wrenchesIn, type Layout } from './layout.ts';

/** Where a joint lets go by sliding, or by bending where it is a flexure; the way along a rail or shaft is travel and no float. */
const FLOATS: Partial<Record<JointKind, readonly ('across' | 'side' | 'axis')[]>> = {
  'nut-decoupled': ['across', 'side'],
  'nut-sliding-plate': ['across', 'side'],
  belt: ['across', 'side'],
  flat: ['across', 'side'],
  'wire-flexure': ['across', 'side'],
  fork: ['side'],
  'flat-wheel': ['side'],
  'ball-on-radial-slide': ['across'],
  vee: ['across'],
  'blade-flexure': ['axis'],
};

interface FloatNeed {
  readonly index: number;
  /** How far it slides from its middle, m. */
  readonly need: number;
  /** How far it can, m. */
  readonly float: number;
}

const floatsOf = ({ kind, axis, across }: SupportJoint): readonly Vector3[] => (FLOATS[kind] ?? []).map((direction) => frameAbout(axis, across)[direction]);

/**
 * How far each support that says how far it can slide has to, with the drives held: growth, then every joint out of its place by itself, all with their worse sign.
 * The part turns and shifts until its joints fit, so that the point from which it grows follows from the layout.
 */
export function floatNeeds(layout: Layout, strain: number, end: number): readonly FloatNeed[] {
  const floating = layout.supports.flatMap((support, index) => {
    const float = support.float ?? 0;
    return float > 0 ? floatsOf(support).map((along) => ({ index, float, at: support.at, along, offset: support.offset })) : [];
  });
  if (floating.length === 0) return [];
  const wrenches = wrenchesIn(layout, 'drives held');
  const stiffness = stiffnessOf(layout, wrenches, end);
  const grown = slideAt(wrenches, growthMisfits(wrenches, strain), stiffness, floating.map(({ at, along }) => ({ at, along, misfit: strain * dot3(at, along) })), layout.scale);
  const sums = grown.map(Math.abs);
  wrenches.forEach((wrench, i) => {
    const misfit = misfitOf(wrench, layout.supports[wrench.joint] as SupportJoint);
    if (misfit === 0) return;
    const moved = slideAt(wrenches, wrenches.map((_, j) => (j === i ? misfit : 0)), stiffness, floating.map(({ at, along }) => ({ at, along, misfit: 0 })), layout.scale);
    moved.forEach((value, j) => { sums[j] = (sums[j] as number) + Math.abs(value); });
  });
  return [...new Set(floating.map(({ index }) => index))].map((index) => {
    const own = floating.flatMap((one, j) => (one.index === index ? [sums[j] as number] : []));
    const { float, offset } = floating.find((one) => one.index === index) as (typeof floating)[number];
    // What it may itself stand beside its place lies in the floating direction just as well.
    return { index, need: Math.hypot(...own) + offset, float };
  });
}
