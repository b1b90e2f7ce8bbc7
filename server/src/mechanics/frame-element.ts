/** One straight member of a frame as a 12 by 12 stiffness, with joints that give. */
import { Matrix } from 'ml-matrix';
import { requireFinite, requirePositive } from './require-argument.ts';
import type { Section } from './frame-sections.ts';
import { dot3, frameAbout, length3, minus3, type Vector3 } from './vector3.ts';

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
  const axes = memberAxes(member);
  const k = localMember(member, new Float64Array(12));
  const turned = Matrix.zeros(12, 12);
  const half = new Float64Array(9);
  // Each block of three by three on its own, since a frame of some dozens of members is assembled for every corner of what is uncertain.
  for (let row = 0; row < 12; row += 3) {
    for (let column = 0; column < 12; column += 3) {
      for (let i = 0; i < 3; i++) for (let j = 0; j < 3; j++) half[3 * i + j] = sum3((m) => at(k, row + i, column + m) * part(axes, m, j));
      for (let i = 0; i < 3; i++) for (let j = 0; j < 3; j++) turned.set(row + i, column + j, sum3((m) => part(axes, m, i) * (half[3 * m + j] as number)));
    }
  }
  return turned;
}

const sum3 = (term: (index: 0 | 1 | 2) => number): number => term(0) + term(1) + term(2);
const at = (k: Float64Array, i: number, j: number): number => k[12 * i + j] as number;
const part = (axes: readonly Vector3[], axis: number, i: number): number => axes[axis]?.[i as 0] ?? 0;

/**
 * What an even load along a member passes on to its two nodes: three forces and three moments each, in the axes of the frame.
 *
 * Formula: w L/2 and ± w L²/12 at ends that do not give; what a joint's turn takes of that moment is condensed out with it.
 *
 * @param member - as for `memberStiffness`
 * @param load - w, N/m, in the axes of the frame
 * @returns 12 values, N and N·m
 * @throws RangeError as `memberStiffness`
 *
 * Source: fixed-end moments of beam tables; static condensation.
 * Checked against: beam tables (test/mechanics/frame-solver.test.ts).
 */
export function memberEndLoads(member: MemberShape, load: Vector3): readonly number[] {
  const axes = memberAxes(member);
  const length = length3(minus3(member.to, member.from));
  const [along, up, side] = axes.map((axis) => dot3(axis, load)) as [number, number, number];
  const [half, twelfth] = [length / 2, length ** 2 / 12];
  const local = [along * half, up * half, side * half, 0, -side * twelfth, up * twelfth];
  const loads = Float64Array.from([...local, ...local.map((value, i) => (i > 3 ? -value : value))]);
  localMember(member, loads);
  return Array.from(loads, (_, i) => sum3((m) => part(axes, m, i % 3) * (loads[3 * Math.floor(i / 3) + m] as number)));
}

/** Stiffness of a member in its own axes by rows, its joints condensed out, and out of the loads too. */
function localMember(member: MemberShape, loads: Float64Array): Float64Array {
  const joints = member.joints ?? [RIGID_END, RIGID_END];
  // A bar pinned at both ends passes on nothing but its pull.
  const pinned = joints.every((joint) => joint.bending === 0);
  if (!pinned && joints.every((joint) => joint.twisting === 0)) throw new RangeError('a member that is not pinned at both ends must be held against twisting at one of them');
  const k = localStiffness(pinned ? { ...member, section: { ...member.section, torsion: 0 } } : member, length3(minus3(member.to, member.from)));
  (pinned ? [PINNED_END, PINNED_END] : joints).forEach(({ bending, twisting = Infinity }, end) => {
    condense(k, loads, 6 * end + 3, twisting);
    condense(k, loads, 6 * end + 4, bending);
    condense(k, loads, 6 * end + 5, bending);
  });
  return k;
}

/**
 * The turn r of an end becomes a hidden one behind a spring s, and is condensed out: K_ij − K_ir K_rj/(K_rr + s), and s K_ir/(K_rr + s) for the turn
 * outside the spring; loads likewise. One turn after the other comes to the same as all at once.
 */
function condense(k: Float64Array, loads: Float64Array, r: number, s: number): void {
  const whole = at(k, r, r) + s;
  if (s === Infinity || whole === 0) return;
  const row = k.slice(12 * r, 12 * r + 12);
  const load = (loads[r] as number) / whole;
  for (let i = 0; i < 12; i++) {
    const share = (row[i] as number) / whole;
    if (i !== r) loads[i] = (loads[i] as number) - (row[i] as number) * load;
    for (let j = 0; j < 12; j++) {
      if (i === r || j === r) k[12 * i + j] = (s * (row[i === r ? j : i] as number)) / whole;
      else k[12 * i + j] = at(k, i, j) - share * (row[j] as number);
    }
  }
  loads[r] = s * load;
}

/** Along the member, its upright direction, and square to both. */
export function memberAxes(member: Pick<MemberShape, 'from' | 'to' | 'upright'>): readonly [Vector3, Vector3, Vector3] {
  const along = minus3(member.to, member.from);
  const standing = Math.abs(along[2]) > 0.999 * length3(along);
  const frame = frameAbout(along, member.upright ?? (standing ? [1, 0, 0] : [0, 0, 1]));
  return [frame.axis, frame.across, frame.side];
}

function localStiffness({ section, youngsModulus: e, shearModulus: g }: MemberShape, l: number): Float64Array {
  const k = new Float64Array(144);
  const set = (i: number, j: number, value: number): void => {
    k[12 * i + j] = value;
    k[12 * j + i] = value;
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
