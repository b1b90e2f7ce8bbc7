/** What each joint between a carried part and the frame holds, as forces and couples that it can pass on. */
import { requireFinite } from './require-argument.ts';
import { cross3, frameAbout, plus3, times3, type Vector3 } from './vector3.ts';

/** Local directions of a joint: `across`, `side` (square to both others), `axis`. */
type Direction = 'across' | 'side' | 'axis';

interface JointRow {
  readonly holds: 'force' | 'couple' | 'thread';
  readonly direction: Direction;
  /** Held only through play and the short length of the part. */
  readonly soft?: true;
  /** Only while the motor holds. */
  readonly whenHeld?: true;
}

export interface JointForm {
  readonly title: string;
  /** What the axis of the joint is, in words. */
  readonly axis: string;
  /** What its second direction is; left out where it does not matter. */
  readonly across?: string;
  readonly rows: readonly JointRow[];
  /** A drive: its rows are left out where the guides are looked at alone. */
  readonly drive?: true;
  /** It only pushes: weight or a spring has to keep it closed. */
  readonly oneSided?: true;
}

const force = (...directions: Direction[]): JointRow[] => directions.map((direction) => ({ holds: 'force', direction }));
const couple = (...directions: Direction[]): JointRow[] => directions.map((direction) => ({ holds: 'couple', direction }));
const soft = (rows: JointRow[]): JointRow[] => rows.map((row) => ({ ...row, soft: true }));
const thread: JointRow = { holds: 'thread', direction: 'axis', whenHeld: true };
const pull: JointRow = { holds: 'force', direction: 'axis', whenHeld: true };

/**
 * Every joint by name.
 * Source: Blanding, Exact Constraint, and Hale, Principles and Techniques for Designing Precision Machines (from memory); the rows follow from the shape of each joint.
 */
export const JOINT_FORMS = {
  'rail-carriage': { title: 'profile-rail carriage', axis: 'along the rail', rows: [...force('across', 'side'), ...couple('across', 'side', 'axis')] },
  'carriage-on-ball': { title: 'profile-rail carriage under a ball', axis: 'along the rail', rows: force('across', 'side') },
  'wheel-carriage': { title: 'set of three or four grooved wheels on a rail', axis: 'along the rail', rows: [...force('across', 'side'), ...couple('across', 'side', 'axis')] },
  'vee-wheel': { title: 'one grooved wheel on a rail', axis: 'along the rail', across: 'from the rail to the wheel', rows: force('across', 'side'), oneSided: true },
  'flat-wheel': { title: 'one flat wheel on a rail', axis: 'along the rail', across: 'from the rail to the wheel', rows: force('across'), oneSided: true },
  'one-bushing': { title: 'one bushing on a shaft', axis: 'along the shaft', rows: [...force('across', 'side'), ...soft(couple('across', 'side'))] },
  'two-bushings': { title: 'two bushings or one long one on a shaft', axis: 'along the shaft', rows: [...force('across', 'side'), ...couple('across', 'side')] },
  'self-aligning-bushing': { title: 'self-aligning bushing on a shaft', axis: 'along the shaft', rows: force('across', 'side') },
  fork: { title: 'fork or slot on a shaft', axis: 'along the shaft', across: 'the direction that the fork holds', rows: force('across') },
  ball: { title: 'ball joint', axis: 'any', rows: force('across', 'side', 'axis') },
  'ball-on-radial-slide': { title: 'ball joint on a slide', axis: 'the direction of the load', across: 'along the slide', rows: force('side', 'axis') },
  cone: { title: 'ball in a cone', axis: 'the direction of the load', rows: force('across', 'side', 'axis'), oneSided: true },
  vee: { title: 'ball in a groove', axis: 'the direction of the load', across: 'along the groove', rows: force('side', 'axis'), oneSided: true },
  flat: { title: 'ball on a flat', axis: 'the direction of the load', rows: force('axis'), oneSided: true },
  'blade-flexure': { title: 'blade flexure', axis: 'square to the blade', rows: [...force('across', 'side'), ...couple('axis')] },
  'wire-flexure': { title: 'wire or thin rod', axis: 'along the wire', rows: force('axis') },
  'rigid-bolts': { title: 'bolted down', axis: 'any', rows: [...force('across', 'side', 'axis'), ...couple('across', 'side', 'axis')] },
  'nut-rigid': { title: 'nut bolted on', axis: 'along the screw', rows: [...force('across', 'side'), ...couple('across', 'side'), thread], drive: true },
  'nut-sliding-plate': { title: 'nut that floats in the plane without tilting', axis: 'along the screw', rows: [...couple('across', 'side'), thread], drive: true },
  'nut-decoupled': { title: 'nut that floats in the plane and tilts, kept from turning', axis: 'along the screw', rows: [thread], drive: true },
  belt: { title: 'belt clamp or rack', axis: 'along the belt', rows: [pull], drive: true },
} as const satisfies Record<string, JointForm>;

export type JointKind = keyof typeof JOINT_FORMS;

/** One joint between the carried part and the frame. */
export interface Joint {
  /** The name a person gave it. */
  readonly owner: string;
  readonly kind: JointKind;
  /** m. */
  readonly at: Vector3;
  /** What it means: `JOINT_FORMS[kind].axis`; any length. */
  readonly axis: Vector3;
  /** What it means: `JOINT_FORMS[kind].across`; any length, its part along the axis is left out. */
  readonly across?: Vector3;
  /** Nuts only: travel per turn, m; negative for a left-hand thread; default 0. */
  readonly lead?: number;
}

/** A unit force through a place, a unit couple, or the pair of both that a thread passes on. */
export interface Wrench {
  readonly owner: string;
  /** Index of the joint in the list that was given. */
  readonly joint: number;
  readonly holds: 'force' | 'couple' | 'thread';
  /** Unit vector of the force or of the couple. */
  readonly direction: Vector3;
  readonly at: Vector3;
  /** Without unit; zero for a couple. */
  readonly force: Vector3;
  /** About the origin, m; a unit couple is without unit. */
  readonly moment: Vector3;
  readonly soft: boolean;
}

/** What is looked at: the guides without any drive; with drives that turn freely; with motors that hold. */
export type DriveState = 'guides alone' | 'drives running' | 'drives held';

/**
 * The wrenches that joints pass on.
 *
 * Formula: force f through p gives (f; p × f), couple c gives (0; c), thread (f; p × f − l/(2π) f).
 *
 * @param joints - in the order in which they count: the first owns what a later one repeats
 * @param state - whether the drives count, and whether they hold
 * @returns rows, joint by joint
 * @throws RangeError for a direction without length, or a lead or place that is no number
 *
 * Source: Ball, A Treatise on the Theory of Screws; a thread does no work on the turn that follows its lead: f v + m ω = 0 with v = l ω/(2π).
 * Checked against: hand counts (test/mechanics/constraint-counts.test.ts); distances between points (test/independent/constraint-rank.test.ts).
 */
export function wrenchesOf(joints: readonly Joint[], state: DriveState): Wrench[] {
  return joints.flatMap((joint, index) => {
    const form: JointForm = JOINT_FORMS[joint.kind];
    if (form.drive === true && state === 'guides alone') return [];
    const directions = frameAbout(joint.axis, joint.across);
    const pitch = (joint.lead ?? 0) / (2 * Math.PI);
    requireFinite('lead', pitch);
    joint.at.forEach((value) => { requireFinite('place of a joint', value); });
    return form.rows.filter((row) => row.whenHeld !== true || state === 'drives held').map((row): Wrench => {
      const direction = directions[row.direction];
      const common = { owner: joint.owner, joint: index, holds: row.holds, direction, at: joint.at, soft: row.soft === true };
      if (row.holds === 'couple') return { ...common, force: [0, 0, 0], moment: direction };
      const moment = cross3(joint.at, direction);
      return { ...common, force: direction, moment: row.holds === 'thread' ? plus3(moment, times3(-pitch, direction)) : moment };
    });
  });
}
