/** Which joint could go, and which could give way to a gentler one. */
import { countConstraints, RANK_TOLERANCE, scaleOf, type ConstraintCount } from './constraint-rank.ts';
import { JOINT_FORMS, wrenchesOf, type DriveState, type Joint, type JointKind } from './constraint-wrenches.ts';
import { cross3, length3, minus3, squareTo, unit3, type Vector3 } from './vector3.ts';

/** What each kind may give way to, gentlest change first; none does another job than its own. */
export const GENTLER_JOINTS: Partial<Record<JointKind, readonly JointKind[]>> = {
  'rail-carriage': ['carriage-on-ball', 'fork'],
  'wheel-carriage': ['vee-wheel', 'flat-wheel'],
  'vee-wheel': ['flat-wheel'],
  'two-bushings': ['self-aligning-bushing', 'fork'],
  'one-bushing': ['self-aligning-bushing', 'fork'],
  'self-aligning-bushing': ['fork'],
  'carriage-on-ball': ['fork'],
  ball: ['ball-on-radial-slide', 'flat'],
  cone: ['vee', 'flat'],
  vee: ['flat'],
  'ball-on-radial-slide': ['flat'],
  'rigid-bolts': ['ball', 'ball-on-radial-slide', 'flat', 'blade-flexure', 'wire-flexure'],
  'nut-rigid': ['nut-sliding-plate', 'nut-decoupled'],
  'nut-sliding-plate': ['nut-decoupled'],
};

export interface Exchange {
  /** Indices of the joints that change. */
  readonly joints: readonly number[];
  readonly from: JointKind;
  readonly to: JointKind;
  /** All joints after the change. */
  readonly after: readonly Joint[];
  readonly count: ConstraintCount;
}

const count = (joints: readonly Joint[], state: DriveState, tolerance: number): ConstraintCount =>
  countConstraints(wrenchesOf(joints, state), scaleOf(joints.map((joint) => joint.at)), tolerance);

/**
 * Joints that can be left out one at a time without a new freedom.
 *
 * @param joints - all of the layout
 * @param state - in which drive state
 * @returns indices into `joints`; only those that hold something in this state
 *
 * Source: rank with and without each; follows from the definition.
 * Checked against: test/mechanics/constraint-exchange.test.ts.
 */
export function spareJoints(joints: readonly Joint[], state: DriveState, tolerance: number = RANK_TOLERANCE): number[] {
  const scale = scaleOf(joints.map((joint) => joint.at));
  const wrenches = wrenchesOf(joints, state);
  const { rank } = countConstraints(wrenches, scale, tolerance);
  return joints.flatMap((_, index) => {
    const others = wrenches.filter((one) => one.joint !== index);
    return others.length < wrenches.length && countConstraints(others, scale, tolerance).rank === rank ? [index] : [];
  });
}

/** More joints of one kind than this are exchanged all at once or not at all. */
const MANY = 12;

/**
 * Every exchange of one joint, or of all joints of one kind at once, that leaves no more freedoms than intended and fewer redundancies.
 *
 * @param joints - all of the layout
 * @param state - in which drive state; held drives unless the guides alone are designed
 * @param freedoms - intended: 0 when the drives hold, 1 for guides alone
 * @returns fewest redundancies first, then nuts before guides, then fewest joints changed, then the gentlest change
 *
 * Source: `countConstraints` on each changed layout; what may replace what is ours.
 * Checked against: test/mechanics/constraint-exchange.test.ts.
 */
export function exchangesOf(joints: readonly Joint[], state: DriveState, freedoms: number, tolerance: number = RANK_TOLERANCE): Exchange[] {
  const now = count(joints, state, tolerance);
  const found: Exchange[] = [];
  for (const kind of [...new Set(joints.map((joint) => joint.kind))]) {
    const same = joints.flatMap((joint, index) => (joint.kind === kind ? [index] : []));
    const groups = [...(same.length <= MANY ? same.map((index) => [index]) : []), ...(same.length > 1 ? [same] : [])];
    for (const to of GENTLER_JOINTS[kind] ?? []) {
      for (const group of groups) {
        for (const turned of [false, true]) {
          const after = joints.map((joint, index) => (group.includes(index) ? exchanged(joint, to, joints, turned) : joint));
          const then = count(after, state, tolerance);
          if (then.redundant < now.redundant && then.free.length <= Math.max(freedoms, now.free.length)) found.push({ joints: group, from: kind, to, after, count: then });
          if (!('across' in JOINT_FORMS[to])) break;
        }
      }
    }
  }
  // A screw is a bad guide: among equals its nut gives way before a guide does. Sorting is stable: else the order of the list above stays.
  const guide = (one: Exchange): number => ('drive' in JOINT_FORMS[one.from] ? 0 : 1);
  return found.sort((a, b) => a.count.redundant - b.count.redundant || guide(a) - guide(b) || a.joints.length - b.joints.length);
}

/** The joint as another kind; a direction that it did not need yet points away from the middle of the layout, or round it. */
function exchanged(joint: Joint, to: JointKind, joints: readonly Joint[], turned: boolean): Joint {
  const centre = scaleOf(joints.map((one) => one.at)).centre;
  const axis = unit3(joint.axis);
  const outward = squareTo(axis, minus3(joint.at, centre));
  const fallback: Vector3 | undefined = length3(outward) > 1e-9 ? outward : undefined;
  const base = joint.across ?? fallback;
  const across = turned && base !== undefined ? cross3(axis, base) : base;
  return { ...joint, kind: to, ...(across === undefined ? {} : { across }) };
}

/**
 * A series of exchanges that leads to an exactly constrained layout, each step the one that takes most away.
 *
 * @param joints - all of the layout
 * @param state - in which drive state
 * @param freedoms - intended
 * @param most - steps, 1 or more
 * @returns steps; the last one's count tells whether nothing redundant is left, it may not be reachable
 *
 * Source: `exchangesOf`, step by step; ours.
 * Checked against: test/mechanics/constraint-exchange.test.ts.
 */
export function exchangesToExact(joints: readonly Joint[], state: DriveState, freedoms: number, most = 6, tolerance: number = RANK_TOLERANCE): Exchange[] {
  const steps: Exchange[] = [];
  let current = joints;
  while (steps.length < most) {
    const next = exchangesOf(current, state, freedoms, tolerance)[0];
    if (next === undefined) break;
    steps.push(next);
    current = next.after;
  }
  return steps;
}
