import type { Evaluation } from '../figures/evaluation.ts';
import { pointsAlong, solvedFrame } from '../figures/frame/members.ts';
import { childOf } from '../language/syntax-tree.ts';
import { barOfRow, pointOfRow, rowOfBar, type FrameBar, type FramePoint } from '../machine/frame-members.ts';
import type { InputValue } from '../machine/values.ts';
import { cross3, dot3, length3, minus3, plus3, times3, type Vector3 } from '../mechanics/vector3.ts';
import type { Change, Inputs, RemedyContext } from './remedy.ts';

/** A frame as a remedy adds to it. */
export interface FrameDesign {
  readonly points: readonly FramePoint[];
  readonly names: readonly string[];
  readonly bars: readonly FrameBar[];
  readonly titles: readonly string[];
  /** The very table, by which what is solved is remembered. */
  readonly pointRows: readonly (readonly number[])[];
}

/** A bar that is to be added, in the manner of one that is there. */
export interface Diagonal {
  readonly from: number;
  readonly to: number;
  /** Index of the member whose section, material and joint it takes. */
  readonly like: number;
}

const tableOf = (evaluation: Evaluation, id: string): (InputValue & { type: 'table' }) | undefined => {
  const input = evaluation.input(id);
  return input.state === 'known' && input.value.type === 'table' ? input.value : undefined;
};

export function designOf(evaluation: Evaluation): FrameDesign | undefined {
  const [points, members] = [tableOf(evaluation, 'frame.point-places'), tableOf(evaluation, 'frame.member-sections')];
  if (!points || !members) return undefined;
  return { points: points.rows.map(pointOfRow), pointRows: points.rows, names: points.titles ?? [], bars: members.rows.map(barOfRow), titles: members.titles ?? [] };
}

/** A corner counts as open where its sides are farther from one line than this: the sine of their angle. */
const NOT_IN_LINE = 0.2;

/**
 * Bars that would close a corner or a bay to triangles: between two points that no line joins, but a third point does. Not to the tool or
 * the work, which must stay within reach, not through the room between both, and not from foot to foot.
 */
export function openDiagonals({ points, names, bars }: FrameDesign, context: RemedyContext): readonly Diagonal[] {
  const busy = new Set([context.before.choice('frame.tool'), context.before.choice('frame.work')]);
  const lines = bars.map((bar) => pointsAlong(bar, points));
  const joinedBy = (a: number, b: number): number => lines.findIndex((line) => line.includes(a) && line.includes(b));
  const neighbours = (a: number): readonly number[] => points.flatMap((_, b) => (b !== a && joinedBy(a, b) >= 0 ? [b] : []));
  const [tool, work] = ['frame.tool', 'frame.work'].map((id) => points[names.indexOf(context.before.choice(id) ?? '')]?.at);
  const room = tool && work && ([tool, work] as const);
  const isCorner = (a: number, over: number, b: number): boolean => {
    const [one, other] = [a, b].map((index) => minus3(points[index]?.at ?? ORIGIN, points[over]?.at ?? ORIGIN)) as [Vector3, Vector3];
    return length3(cross3(one, other)) > NOT_IN_LINE * length3(one) * length3(other);
  };
  return points.flatMap((from, a) =>
    points.flatMap((to, b) => {
      if (b <= a || joinedBy(a, b) >= 0 || (room !== undefined && isInRoom(from.at, to.at, room)) || [a, b].some((index) => busy.has(names[index])) || (from.held !== 'free' && to.held !== 'free')) return [];
      const over = neighbours(a).find((index) => joinedBy(index, b) >= 0 && isCorner(a, index, b));
      return over === undefined ? [] : [{ from: a, to: b, like: joinedBy(a, over) }];
    }),
  );
}

const ORIGIN: Vector3 = [0, 0, 0];

/** How far a bar must stay from the line between tool and work, as a part of its length. */
const ROOM = 0.2;

/** Places along a bar at which its way past the tool is looked at. */
const LOOKS = 20;

function isInRoom(from: Vector3, to: Vector3, [tool, work]: readonly [Vector3, Vector3]): boolean {
  const way = minus3(work, tool);
  const length = length3(way);
  if (length === 0) return false;
  return Array.from({ length: LOOKS + 1 }, (_, i) => plus3(from, times3(i / LOOKS, minus3(to, from)))).some((place) => {
    const arm = minus3(place, tool);
    const along = Math.min(1, Math.max(0, dot3(arm, way) / length ** 2));
    return length3(minus3(arm, times3(along, way))) < ROOM * length;
  });
}

const withDiagonals = ({ bars, titles }: FrameDesign, added: readonly Diagonal[]): InputValue & { type: 'table' } => ({
  type: 'table',
  rows: [...bars, ...added.map(({ from, to, like }): FrameBar => ({ ...(bars[like] as FrameBar), from, to, longerSide: 0 }))].map(rowOfBar),
  titles: [...titles, ...added.map((_, index) => `added ${index + 1}`)],
});

export const inputsWith = (design: FrameDesign, added: readonly Diagonal[]): Inputs => ({ 'frame.member-sections': withDiagonals(design, added) });

/** Lowest frequency with some diagonals added, rad/s; 0 where the frame stays loose. */
function lowest(design: FrameDesign, added: readonly Diagonal[]): number {
  const frame = solvedFrame(design.pointRows, withDiagonals(design, added).rows, design.names, { joint: 0.5, section: 0.5, mass: 0.5 });
  const modes = typeof frame === 'string' ? undefined : frame.modes();
  return modes?.kind === 'modes' ? (modes.modes[0]?.angularFrequency ?? 0) : 0;
}

/** So many are put in at most: what wants more wants another design. */
const MOST_DIAGONALS = 4;

/** One more is no better where it raises the lowest frequency by less than this. */
const WORTH = 1.02;

/** Rows of diagonals, each with one more than the row before: the one that raises the lowest frequency most. */
export function bestDiagonals(design: FrameDesign, open: readonly Diagonal[]): readonly (readonly Diagonal[])[] {
  const rows: (readonly Diagonal[])[] = [];
  let [present, frequency] = [[] as readonly Diagonal[], lowest(design, [])];
  while (rows.length < MOST_DIAGONALS) {
    const better = open
      .filter((one) => !present.includes(one))
      .map((one) => ({ one, frequency: lowest(design, [...present, one]) }))
      .reduce<{ one: Diagonal; frequency: number } | undefined>((best, other) => (best === undefined || other.frequency > best.frequency * 1.000001 ? other : best), undefined);
    // A second one may be needed before the first is worth anything: of two alike halves, both must be held.
    if (better === undefined || (better.frequency < frequency * WORTH && present.length > 1)) return rows;
    present = [...present, better.one];
    frequency = better.frequency;
    rows.push(present);
  }
  return rows;
}

/** Keys that belong to the member itself and not to its make. */
const OWN_KEYS = new Set(['from', 'to', 'longer-side', 'notes']);

/** The entries that put diagonals into the text; undefined where the members have no place. */
export function changesFor(design: FrameDesign, added: readonly Diagonal[], context: RemedyContext): readonly Change[] | undefined {
  const place = context.place('frame.members');
  if (!place) return undefined;
  const { machine } = context.before.subject;
  const taken = new Set(design.titles);
  return added.map(({ from, to, like }) => {
    let count = 1;
    while (taken.has(`diagonal ${count}`)) count++;
    taken.add(`diagonal ${count}`);
    const kin = machine.look(place.uri, [...place.path, design.titles[like] ?? '']);
    const make = kin?.type === 'map' ? kin.entries.flatMap(({ key }) => {
      const value = childOf(kin, key.text);
      return value?.type === 'scalar' && !OWN_KEYS.has(key.text) ? [[key.text, value.text] as const] : [];
    }) : [];
    return { place: { uri: place.uri, path: [...place.path, `diagonal ${count}`] }, value: { from: design.names[from] ?? '', to: design.names[to] ?? '', ...Object.fromEntries(make) } };
  });
}
