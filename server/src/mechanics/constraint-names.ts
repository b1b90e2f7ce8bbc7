/** Motions, forces and couples in plain words. */
import type { Joint } from './constraint-wrenches.ts';
import type { ConstraintScale, Twist } from './constraint-rank.ts';
import { cross3, dot3, length3, minus3, plus3, times3, unit3, type Vector3 } from './vector3.ts';

const AXES = ['X', 'Y', 'Z'] as const;
/** Below this share a component is not named. */
const SMALL = 0.02;
/** A turn about an axis farther off than twenty times the distance of the supports, or one that slides as much farther, is a slide to whoever watches it. */
const FAR = 0.05;

/** A direction: an axis, or its angle from one axis towards another, or its three parts. The sense does not count. */
export function directionInWords(direction: Vector3): string {
  const parts = unit3(direction);
  const named = parts.map((part, i) => ({ part, axis: AXES[i] as string })).filter(({ part }) => Math.abs(part) > SMALL);
  const [first, second] = named;
  if (named.length === 1 && first !== undefined) return first.axis;
  if (named.length === 2 && first !== undefined && second !== undefined) {
    const towards = first.part * second.part > 0 ? '' : '−';
    const angle = (Math.atan2(Math.abs(second.part), Math.abs(first.part)) * 180) / Math.PI;
    return `a line ${Math.round(angle)}° from ${first.axis} towards ${towards}${second.axis}`;
  }
  const sign = parts.find((part) => Math.abs(part) > SMALL) as number;
  return `the direction (${parts.map((part) => (Math.sign(sign) * part + 0).toFixed(2).replace('-', '−')).join(', ')})`;
}

/** "tilts" for a level axis, "turns" for any other. */
const turning = (axis: Vector3): string => (Math.abs(unit3(axis)[2]) <= SMALL ? 'tilt' : 'turn');

/** Whether a line through `point` along the unit vector `axis` passes a place. */
const passes = (axis: Vector3, point: Vector3, place: Vector3, length: number): boolean => length3(cross3(axis, minus3(place, point))) < 1e-3 * length;

/**
 * A motion in words: "slides along X", "tilts about Y through screw 1", "turns about Z and slides along it, 8 mm a turn".
 *
 * @param twist - not zero
 * @param scale - of the count that it comes from
 * @param joints - whose names may say where an axis lies
 */
export function motionInWords(twist: Twist, scale: ConstraintScale, joints: readonly Joint[] = []): string {
  const size = length3(twist.turn);
  if (size * scale.length < FAR * length3(twist.slide)) return `slides along ${directionInWords(twist.slide)}`;
  const axis = unit3(twist.turn);
  const offset = times3(1 / size ** 2, cross3(twist.turn, twist.slide));
  const point = plus3(scale.centre, offset);
  const verb = `${turning(axis)}s`;
  const pitch = Math.abs(dot3(twist.turn, twist.slide)) / size ** 2;
  const screwing = 2 * Math.PI * pitch > 1e-6 * scale.length ? ` and slides along it, ${Number((2 * Math.PI * pitch * 1000).toPrecision(3))} mm a turn` : '';
  const on = [...new Set(joints.filter((joint) => passes(axis, point, joint.at, scale.length)).map((joint) => joint.owner))];
  const oblique = directionInWords(axis).length > 1;
  if (oblique && on.length >= 2) return `${verb} about the line through ${listInWords(on)}${screwing}`;
  const through = length3(offset) < 1e-3 * scale.length ? '' : on.length > 0 ? ` through ${listInWords(on.slice(0, 2))}` : ` through (${point.map((value) => String(Math.round(value * 1000)).replace('-', '−')).join(', ')}) mm`;
  return `${verb} about ${directionInWords(axis)}${through}${screwing}`;
}

/**
 * What a force and a couple hold, in words: "shift along X", "tilt about Y".
 *
 * @param wrench - force, and moment about the centre of the scale (m); not both zero
 */
export function holdInWords(wrench: { readonly force: Vector3; readonly moment: Vector3 }, scale: ConstraintScale): string {
  if (isCouple(wrench, scale)) return `${turning(wrench.moment)} about ${directionInWords(wrench.moment)}`;
  return `shift along ${directionInWords(wrench.force)}`;
}

/** Whether it is a couple alone. */
export const isCouple = ({ force, moment }: { readonly force: Vector3; readonly moment: Vector3 }, scale: ConstraintScale): boolean => length3(force) * scale.length < 1e-5 * length3(moment);

/** "A", "A and B", "A, B and C". */
export function listInWords(names: readonly string[]): string {
  return names.length < 2 ? (names[0] ?? '') : `${names.slice(0, -1).join(', ')} and ${names.at(-1) as string}`;
}
