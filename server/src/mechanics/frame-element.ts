/** One straight member of a frame as a 12 by 12 stiffness, with joints that give. */
import { Matrix, solve } from 'ml-matrix';
import { requireFinite, requirePositive } from './require-argument.ts';
import type { Section } from './frame-sections.ts';
import { frameAbout, length3, minus3, type Vector3 } from './vector3.ts';

/** How far the end of a member is held against turning: N·m/rad; `Infinity` is rigid, 0 a pin. */
export interface EndJoint {
  readonly bending: number;
  /** Round the member's own axis; default rigid. */
  readonly twisting?: number;
}

export const RIGID_END: EndJoint = { bending: Infinity };
export const PINNED_END: EndJoint = { bending: 0 };

export interface MemberShape {
  readonly from: Vector3;
  readonly to: Vector3;
  readonly section: Section;
  /** E, Pa. */
  readonly youngsModulus: number;
  /** G, Pa. */
  readonly shearModulus: number;
  /** Direction in which the section stands upright; default the third axis, or the first for an upright member. */
  readonly upright?: Vector3;
  readonly joints?: readonly [EndJoint, EndJoint];
}

/**
 * Stiffness of a member between its two nodes in the axes of the frame: three shifts and three turns each.
 *
 * Formula: slender beam, 12 E I/L³ and so on, E A/L, G J/L; joints are springs in series with its ends, condensed out.
 *
 * @param member - places, section, material, joints
 * @returns 12 by 12, N/m, N, N·m/rad
 * @throws RangeError when both ends coincide, when nothing holds it against twisting, or for a section or modulus that is not above zero
 *
 * Source: Przemieniecki, Theory of Matrix Structural Analysis, chapter 5 (from memory); static condensation.
 * Checked against: test/mechanics/frame-solver.test.ts; the solver ccx (test/independent/frame.test.ts).
 */
export function memberStiffness(member: MemberShape): Matrix {
  const along = minus3(member.to, member.from);
  along.forEach((value) => { requireFinite('place of a node', value); });
  for (const [name, value] of Object.entries({ ...member.section, youngsModulus: member.youngsModulus, shearModulus: member.shearModulus })) requirePositive(name, value);
  for (const value of (member.joints ?? []).flatMap((joint) => [joint.bending, joint.twisting ?? Infinity])) {
    if (!(value >= 0)) throw new RangeError(`a joint's stiffness must be zero or greater, got ${value}`);
  }
  const length = length3(along);
  const axes = memberAxes(member);
  const joints = member.joints ?? [RIGID_END, RIGID_END];
  // A bar pinned at both ends passes on nothing but its pull.
  const pinned = joints.every((joint) => joint.bending === 0);
  if (!pinned && joints.every((joint) => joint.twisting === 0)) throw new RangeError('a member that is not pinned at both ends must be held against twisting at one of them');
  const local = withJoints(localStiffness(pinned ? { ...member, section: { ...member.section, torsion: 0 } } : member, length), pinned ? [PINNED_END, PINNED_END] : joints);
  const turn = Matrix.zeros(12, 12);
  for (let block = 0; block < 4; block++) axes.forEach((axis, i) => axis.forEach((value, j) => turn.set(3 * block + i, 3 * block + j, value)));
  return turn.transpose().mmul(local).mmul(turn);
}

/** Along the member, its upright direction, and square to both. */
export function memberAxes(member: Pick<MemberShape, 'from' | 'to' | 'upright'>): readonly [Vector3, Vector3, Vector3] {
  const along = minus3(member.to, member.from);
  const standing = Math.abs(along[2]) > 0.999 * length3(along);
  const frame = frameAbout(along, member.upright ?? (standing ? [1, 0, 0] : [0, 0, 1]));
  return [frame.axis, frame.across, frame.side];
}

function localStiffness({ section, youngsModulus: e, shearModulus: g }: MemberShape, l: number): Matrix {
  const k = Matrix.zeros(12, 12);
  const set = (i: number, j: number, value: number): void => {
    k.set(i, j, value);
    k.set(j, i, value);
  };
  const spring = (i: number, j: number, value: number): void => {
    set(i, i, value);
    set(j, j, value);
    set(i, j, -value);
  };
  spring(0, 6, (e * section.area) / l);
  spring(3, 9, (g * section.torsion) / l);
  // Bending along the upright direction (shift 1, turn 5) and along the side (shift 2, turn 4, of the other sense).
  for (const [shift, turn, second, sense] of [[1, 5, section.secondUpright, 1], [2, 4, section.secondSideways, -1]] as const) {
    const b = (e * second) / l ** 3;
    spring(shift, shift + 6, 12 * b);
    set(turn, turn, 4 * b * l * l);
    set(turn + 6, turn + 6, 4 * b * l * l);
    set(turn, turn + 6, 2 * b * l * l);
    for (const end of [turn, turn + 6]) {
      set(shift, end, sense * 6 * b * l);
      set(shift + 6, end, -sense * 6 * b * l);
    }
  }
  return k;
}

/** The turn of each end that gives becomes a hidden one behind a spring, and is condensed out: K − K_r (K_rr + S)⁻¹ K_r for what moves with it. */
function withJoints(k: Matrix, [from, to]: readonly [EndJoint, EndJoint]): Matrix {
  const springs = [from, to].flatMap((joint, end) => [
    { index: 6 * end + 3, stiffness: joint.twisting ?? Infinity },
    { index: 6 * end + 4, stiffness: joint.bending },
    { index: 6 * end + 5, stiffness: joint.bending },
  ]).filter(({ stiffness }) => stiffness !== Infinity);
  if (springs.length === 0) return k;
  const hidden = springs.map(({ index }) => index);
  // Outer coordinates o and hidden turns h: the member sees h where a joint gives; the spring ties h to the outer turn.
  const outer = k.clone();
  const tie = Matrix.zeros(12, hidden.length);
  const inner = k.selection(hidden, hidden);
  springs.forEach(({ index, stiffness }, n) => {
    for (let i = 0; i < 12; i++) {
      tie.set(i, n, hidden.includes(i) ? 0 : k.get(i, index));
      outer.set(i, index, 0);
      outer.set(index, i, 0);
    }
    tie.set(index, n, -stiffness);
    inner.set(n, n, inner.get(n, n) + stiffness);
  });
  springs.forEach(({ index, stiffness }) => { outer.set(index, index, stiffness); });
  return outer.sub(tie.mmul(solve(inner, tie.transpose())));
}
