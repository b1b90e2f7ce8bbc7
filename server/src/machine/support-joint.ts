import { JOINT_FORMS, type JointForm, type JointKind } from '../mechanics/constraint-wrenches.ts';

type Triple = readonly [number, number, number];

/** One support as the figures read it, in SI. */
export interface SupportJoint {
  readonly kind: JointKind;
  readonly at: Triple;
  readonly axis: Triple;
  /** Undefined where the joint has none. */
  readonly across: Triple | undefined;
  /** Travel per turn of a nut, m; 0 for all else. */
  readonly lead: number;
  /** For each direction held, N/m. */
  readonly stiffness: { readonly low: number; readonly high: number };
  /** For each tilt held, N·m/rad. */
  readonly tiltStiffness: { readonly low: number; readonly high: number };
  /** How far it may stand beside its place, m, and at an angle, rad. */
  readonly offset: number;
  readonly tilt: number;
  /** N; undefined where none is written. */
  readonly loadLimit: number | undefined;
  /** How far it slides each way where it floats, m; undefined where that is not written. */
  readonly float: number | undefined;
}

/** All joints in the order of the schema. */
export const JOINT_KINDS = Object.keys(JOINT_FORMS) as readonly JointKind[];

/** What a joint is, whatever its kind. */
export const formOf = (kind: JointKind): JointForm => JOINT_FORMS[kind];

const NONE = -1;

/** A row of the table `axis.support-joints`: plain numbers in a fixed order. */
export function rowOf(joint: SupportJoint): readonly number[] {
  return [
    JOINT_KINDS.indexOf(joint.kind), ...joint.at, ...joint.axis, ...(joint.across ?? [0, 0, 0]), joint.lead,
    joint.stiffness.low, joint.stiffness.high, joint.tiltStiffness.low, joint.tiltStiffness.high, joint.offset, joint.tilt, joint.loadLimit ?? NONE, joint.float ?? NONE,
  ];
}

/** The support that a row stands for; throws for a row that `rowOf` did not make. */
export function supportOf(row: readonly number[]): SupportJoint {
  const number = (index: number): number => row[index] ?? 0;
  const triple = (index: number): Triple => [number(index), number(index + 1), number(index + 2)];
  const kind = JOINT_KINDS[number(0)];
  if (kind === undefined) throw new RangeError('no joint of this number');
  const across = triple(7);
  return {
    kind, at: triple(1), axis: triple(4), across: Math.hypot(...across) > 0 ? across : undefined, lead: number(10),
    stiffness: { low: number(11), high: number(12) }, tiltStiffness: { low: number(13), high: number(14) },
    offset: number(15), tilt: number(16), loadLimit: number(17) === NONE ? undefined : number(17),
    float: number(18) === NONE ? undefined : number(18),
  };
}
