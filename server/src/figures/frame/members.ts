import { barOfRow, pointOfRow, type FrameBar, type FramePoint } from '../../machine/frame-members.ts';
import type { Bounded } from '../../machine/values.ts';
import { RIGID_END, type EndJoint } from '../../mechanics/frame-element.ts';
import { frameModes, type FrameModes } from '../../mechanics/frame-modes.ts';
import { assembleFrame, CLAMPED, deflectFrame, nodeFlexibilities, PLACED, type Assembly, type Frame, type FrameMember, type NodeLoad } from '../../mechanics/frame-solver.ts';
import { dot3, length3, minus3, times3, type Vector3 } from '../../mechanics/vector3.ts';

type Rows = readonly (readonly number[])[];

/** Where the open values of a frame are taken: 0 for the low end of all of a kind, 0.5 nominal, 1 for the high end. */
export interface FrameEnds {
  readonly joint: number;
  readonly section: number;
  readonly mass: number;
}

/** What figures ask of a person's own frame. */
export interface SolvedFrame {
  readonly frame: Frame;
  readonly names: readonly string[];
  readonly points: readonly FramePoint[];
  /** Shifts by point under loads and an even pull; undefined where the frame is loose. */
  readonly shifts: (loads: Readonly<Record<string, NodeLoad>>, pull?: Vector3) => ReadonlyMap<string, Vector3> | undefined;
  /** How far each point gives under 1 N on itself along x, y and z. */
  readonly flexibilities: () => ReturnType<typeof nodeFlexibilities>;
  /** The two lowest ways in which it swings. */
  readonly modes: () => FrameModes;
}

export const NO_MEMBERS = 'not every point and member can be read: a member needs both its points, its section, its material and its joint';

/** The fault of a member that names one point twice; told where it is written. */
export const MEMBER_ON_ITSELF = 'a member begins and ends at one point';

/** Between both ends: in equal ratios where the values are above zero. */
function atEnd({ low, nominal, high }: Bounded, end: number): number {
  const [from, to, share] = end <= 0.5 ? [low, nominal, 2 * end] : [nominal, high, 2 * end - 1];
  return from > 0 && to > 0 ? from * (to / from) ** share : from + (to - from) * share;
}

const LONGER_SIDES: readonly (Vector3 | undefined)[] = [undefined, [1, 0, 0], [0, 1, 0], [0, 0, 1]];

/** A point counts as one that a member runs through within this of its axis, m. */
const ON_AXIS = 1e-3;

/** Indices of the points along a member, its ends first and last: it is joined to all on which it lies, and runs through those between. */
export function pointsAlong({ from, to }: Pick<FrameBar, 'from' | 'to'>, points: readonly FramePoint[]): readonly number[] {
  const [start, end] = [from, to].map((index) => points[index]?.at ?? NOWHERE) as [Vector3, Vector3];
  const way = minus3(end, start);
  const length = length3(way);
  const between = points.flatMap(({ at }, index) => {
    const arm = minus3(at, start);
    const along = dot3(arm, way) / length;
    const off = length3(minus3(arm, times3(along / length, way)));
    return index !== from && index !== to && along > ON_AXIS && along < length - ON_AXIS && off < ON_AXIS ? [{ index, along }] : [];
  });
  return [from, ...between.sort((a, b) => a.along - b.along).map(({ index }) => index), to];
}

const NOWHERE: Vector3 = [0, 0, 0];

/**
 * The pieces of a member. Where ends alone meet, the bracket between two of them is two springs one behind the other, each twice as stiff;
 * on what runs through or is clamped each end has its own bracket.
 */
function piecesOf(bar: FrameBar, along: readonly number[], isSolid: (point: number) => boolean, names: readonly string[], ends: FrameEnds): readonly FrameMember[] {
  const stiffness = atEnd(bar.joint, ends.joint);
  const jointAt = (index: number): EndJoint => ({ bending: isSolid(index) ? stiffness : 2 * stiffness });
  const whole = memberOf(bar, ends);
  return along.slice(1).map((to, i) => ({
    ...whole,
    from: names[along[i] ?? 0] ?? '',
    to: names[to] ?? '',
    joints: [i === 0 ? jointAt(bar.from) : RIGID_END, i === along.length - 2 ? jointAt(bar.to) : RIGID_END],
  }));
}

function memberOf(bar: FrameBar, ends: FrameEnds): Omit<FrameMember, 'from' | 'to' | 'joints'> {
  const upright = LONGER_SIDES[bar.longerSide];
  return {
    section: {
      // Fasteners that give count as a thinner bar against pull; its bending is that of the whole section.
      area: atEnd(bar.area, 0.5) * Math.min(1, atEnd(bar.fastening, ends.joint)),
      secondUpright: atEnd(bar.secondUpright, ends.section),
      secondSideways: atEnd(bar.secondSideways, ends.section),
      torsion: atEnd(bar.torsion, ends.section),
    },
    youngsModulus: atEnd(bar.youngsModulus, ends.section),
    shearModulus: atEnd(bar.shearModulus, ends.section),
    massPerLength: atEnd(bar.massPerLength, ends.mass),
    ...(upright === undefined ? {} : { upright }),
  };
}

/** Why these points and members are no frame; undefined where they are one. */
function faultOf(points: readonly FramePoint[], bars: readonly FrameBar[], names: readonly string[]): string | undefined {
  const at = (index: number): Vector3 => points[index]?.at ?? NOWHERE;
  const short = bars.find(({ from, to }) => length3(minus3(at(to), at(from))) < 1e-6);
  if (short) return short.from === short.to ? MEMBER_ON_ITSELF : `"${names[short.from]}" and "${names[short.to]}" stand at one place, but a member joins them`;
  const met = new Set(bars.flatMap((bar) => pointsAlong(bar, points)));
  const alone = points.findIndex((point, index) => !met.has(index) && point.mass.high > 0);
  if (alone >= 0) return `no member meets "${names[alone]}", which carries a mass`;
  return points.some(({ held }, index) => held !== 'free' && met.has(index)) ? undefined : 'no point says by "held" how the frame stands';
}

interface Kept {
  readonly points: Rows;
  readonly base: FrameBase | string;
  /** What is assembled by the ends that concern stiffness, and what swings by all ends. */
  readonly assemblies: Map<string, Assembly>;
  readonly solved: Map<string, SolvedFrame>;
}

/** What does not depend on how open values are taken. */
interface FrameBase {
  readonly names: readonly string[];
  readonly points: readonly FramePoint[];
  readonly bars: readonly FrameBar[];
  readonly lines: readonly (readonly number[])[];
}

const remembered = new WeakMap<Rows, Kept>();

/**
 * For `compute`: the frame behind both tables at these ends, or the reason why there is none. What is solved once serves all figures of
 * the same tables.
 */
export function solvedFrame(points: Rows | undefined, members: Rows | undefined, names: readonly string[] | undefined, ends: FrameEnds): SolvedFrame | string {
  if (!points || !members || !names) return NO_MEMBERS;
  let kept = remembered.get(members);
  if (kept?.points !== points) {
    kept = { points, base: baseOf(points.map(pointOfRow), members.map(barOfRow), names), assemblies: new Map(), solved: new Map() };
    remembered.set(members, kept);
  }
  const { base, assemblies, solved } = kept;
  if (typeof base === 'string') return base;
  const stiff = `${ends.joint},${ends.section}`;
  const key = `${stiff},${ends.mass}`;
  let found = solved.get(key);
  if (!found) {
    const frame = frameOf(base, ends);
    found = solve(frame, base, () => {
      const assembly = assemblies.get(stiff) ?? assembleFrame(frame);
      assemblies.set(stiff, assembly);
      return assembly;
    });
    solved.set(key, found);
  }
  return found;
}

function baseOf(points: readonly FramePoint[], bars: readonly FrameBar[], names: readonly string[]): FrameBase | string {
  return faultOf(points, bars, names) ?? { names, points, bars, lines: bars.map((bar) => pointsAlong(bar, points)) };
}

function frameOf({ names, points, bars, lines }: FrameBase, ends: FrameEnds): Frame {
  const byName = <T>(of: (point: FramePoint) => T | undefined): Record<string, T> =>
    Object.fromEntries(points.flatMap((point, index) => {
      const value = of(point);
      return value === undefined ? [] : [[names[index] ?? '', value] as const];
    }));
  const through = new Set(lines.flatMap((line) => line.slice(1, -1)));
  const isSolid = (index: number): boolean => through.has(index) || points[index]?.held === 'clamped';
  return {
    nodes: byName(({ at }) => at),
    members: bars.flatMap((bar, i) => piecesOf(bar, lines[i] ?? [], isSolid, names, ends)),
    feet: byName(({ held }) => (held === 'free' ? undefined : held === 'clamped' ? CLAMPED : PLACED)),
    masses: byName(({ mass }) => (mass.high > 0 ? { mass: atEnd(mass, ends.mass) } : undefined)),
  };
}

function solve(frame: Frame, { names, points }: FrameBase, assembled: () => Assembly): SolvedFrame {
  let modes: FrameModes | undefined;
  return {
    frame, names, points,
    shifts: (loads, pull) => {
      const found = deflectFrame(frame, loads, pull, assembled());
      return found.kind === 'mechanism' ? undefined : new Map([...found.motions].map(([name, { shift }]) => [name, shift]));
    },
    flexibilities: () => nodeFlexibilities(assembled()),
    modes: () => (modes ??= frameModes(frame, 2, assembled())),
  };
}
