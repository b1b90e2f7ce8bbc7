/** Layouts of supports with guides added, and lifts reduced to what guides leave them to hold. */
import type { JointKind } from '../mechanics/constraint-wrenches.ts';
import { dot3, unit3, type Vector3 } from '../mechanics/vector3.ts';
import type { SupportJoint } from '../machine/support-joint.ts';
import { heldBy, type Held } from './joint-choice.ts';
import type { SupportTable } from './support-table.ts';

type Word = 'x' | 'y' | 'z';

/** What is done to one support of the text; `across` where a direction has to be written. */
export type SupportEdit =
  | { readonly what: 'exchange'; readonly title: string; readonly to: JointKind; readonly across?: Word }
  | { readonly what: 'move'; readonly title: string; readonly at: Vector3 }
  | { readonly what: 'remove'; readonly title: string }
  | { readonly what: 'add'; readonly title: string; readonly joint: JointKind; readonly at: Vector3; readonly along: Word; readonly across?: Word };

/** A layout in the making: the supports that stay, as they will be, and what leads there. */
export interface Rebuilt extends SupportTable, Held {
  readonly edits: readonly SupportEdit[];
  /** Lifts left, and how many there were. */
  readonly lifts: readonly [number, number];
  /** Guides that stay, and how many there were. */
  readonly guides: readonly [number, number];
}

const AXES: Readonly<Record<Word, Vector3>> = { x: [1, 0, 0], y: [0, 1, 0], z: [0, 0, 1] };
const INDEX = { x: 0, y: 1, z: 2 } as const;

/** Joints that run along a rail or shaft, and what is left of each where it holds two directions alone. */
const GUIDES: Partial<Record<JointKind, JointKind>> = {
  'rail-carriage': 'carriage-on-ball', 'carriage-on-ball': 'carriage-on-ball', 'one-bushing': 'self-aligning-bushing', 'two-bushings': 'self-aligning-bushing', 'self-aligning-bushing': 'self-aligning-bushing',
  fork: 'self-aligning-bushing',
};

export const isNut = (kind: JointKind): boolean => kind.startsWith('nut-');
const isGuide = (kind: JointKind): boolean => GUIDES[kind] !== undefined;

/** The direction of travel that all guides and nuts share, as a word. */
function travelOf(supports: readonly SupportJoint[]): Word | undefined {
  return (['x', 'y', 'z'] as const).find((word) => supports.every(({ axis }) => Math.abs(dot3(unit3(axis), AXES[word])) > 0.999));
}

/** The two directions square to the travel. */
const plane = (travel: Word): readonly [Word, Word] => (travel === 'z' ? ['x', 'y'] : travel === 'y' ? ['x', 'z'] : ['y', 'z']);

/** A name that is not taken: "guide shaft", "guide shaft 2". */
function free(wanted: string, titles: readonly string[]): string {
  let name = wanted;
  for (let n = 2; titles.includes(name); n++) name = `${wanted} ${n}`;
  return name;
}

/** Whole half centimetres, outwards: nobody drills a guide's hole more exactly for the sake of a drawing. */
const STEP = 0.005;
/** How far outside the supports a guide stands: part of their span, and at least, m. */
const OUTSIDE = { share: 0.15, least: 0.03 };

/** Places of guides: outside the supports, midway of a side. */
function sides(supports: readonly SupportJoint[], travel: Word): readonly { readonly at: Vector3; readonly outward: Word }[] {
  const [p, q] = plane(travel);
  const reach = (word: Word): readonly [number, number] => {
    const values = supports.map(({ at }) => at[INDEX[word]]);
    return [Math.min(...values), Math.max(...values)];
  };
  const mean = supports.reduce((sum, { at }) => sum + at[INDEX[travel]], 0) / Math.max(1, supports.length);
  const round = (value: number): number => Math.round(value / STEP) * STEP;
  return ([[p, q], [q, p]] as const).flatMap(([outward, other]) => {
    const [low, high] = reach(outward);
    const [from, to] = reach(other);
    const by = Math.max(OUTSIDE.least, OUTSIDE.share * (high - low));
    return [low - by, high + by].map((value) => {
      const at: [number, number, number] = [0, 0, 0];
      at[INDEX[outward]] = value < low ? Math.floor(value / STEP + 1e-6) * STEP : Math.ceil(value / STEP - 1e-6) * STEP;
      at[INDEX[other]] = round((from + to) / 2);
      at[INDEX[travel]] = round(mean);
      return { at: at, outward };
    });
  });
}

const otherOf = (word: Word, travel: Word): Word => plane(travel).find((one) => one !== word) ?? 'x';

function withGuide(from: SupportTable, like: SupportJoint, edit: Extract<SupportEdit, { what: 'add' }>): SupportTable {
  const support: SupportJoint = {
    ...like, kind: edit.joint, at: edit.at, axis: AXES[edit.along], across: edit.across === undefined ? undefined : AXES[edit.across], lead: 0, offset: 0, tilt: 0, loadLimit: undefined, float: undefined,
  };
  return { supports: [...from.supports, support], titles: [...from.titles, edit.title] };
}

/** What may be added where something is loose: one guide, or two on opposite sides. */
const SETS: readonly (readonly JointKind[])[] = [['fork'], ['self-aligning-bushing'], ['self-aligning-bushing', 'fork'], ['two-bushings'], ['two-bushings', 'fork'], ['rail-carriage']];
const NAMES = (kind: JointKind, second: boolean): string => (kind === 'rail-carriage' ? 'guide rail' : second ? 'second shaft' : 'guide shaft');

/** Every way to add the guides of one set. */
function added(from: SupportTable, kinds: readonly JointKind[], travel: Word): readonly { readonly table: SupportTable; readonly edits: readonly SupportEdit[] }[] {
  const like = from.supports[0];
  if (!like) return [];
  const places = sides(from.supports, travel);
  const hasGuide = from.supports.some(({ kind }) => isGuide(kind));
  return places.map((first, index) => {
    const opposite = places[index % 2 === 0 ? index + 1 : index - 1] ?? first;
    let table = from;
    const edits = kinds.map((joint, i): SupportEdit => {
      const place = i === 0 ? first : opposite;
      const edit = {
        what: 'add', title: free(NAMES(joint, i > 0 || hasGuide), table.titles), joint, at: place.at, along: travel,
        // A fork lets go of what points towards the other guide, where the part grows.
        ...(joint === 'fork' ? { across: otherOf(place.outward, travel) } : {}),
      } as const;
      table = withGuide(table, like, edit);
      return edit;
    });
    return { table, edits };
  });
}

const rebuilt = (before: SupportTable, { supports, titles }: SupportTable, edits: readonly SupportEdit[]): Rebuilt => {
  const count = (list: readonly SupportJoint[], is: (kind: JointKind) => boolean): number => list.filter(({ kind }) => is(kind)).length;
  return {
    supports, titles, edits, ...heldBy(supports),
    lifts: [count(supports, isNut), count(before.supports, isNut)],
    guides: [count(supports, isGuide), count(before.supports, isGuide)],
  };
};

/** Layouts in which guides hold what was loose, the fewest redundancies first. */
export function guidedLayouts(table: SupportTable): readonly Rebuilt[] {
  const travel = travelOf(table.supports);
  if (travel === undefined) return [];
  return SETS.flatMap((kinds) => added(table, kinds, travel).map(({ table: after, edits }) => rebuilt(table, after, edits)))
    .filter((one) => one.free === 0)
    .sort((a, b) => a.redundant - b.redundant || a.edits.length - b.edits.length || b.conditioning - a.conditioning);
}

/** More lifts than this are no table on screws. */
const MOST_LIFTS = 6;

/** A plate stands on three lifts: every three of those that are there, and of four every two of one side moved together. */
function threeLifts(table: SupportTable): readonly { readonly table: SupportTable; readonly edits: readonly SupportEdit[] }[] {
  const nuts = table.supports.flatMap(({ kind }, index) => (isNut(kind) ? [index] : []));
  if (nuts.length <= 3) return [{ table, edits: [] }];
  if (nuts.length > MOST_LIFTS) return [];
  const without = (indices: readonly number[]): SupportTable => ({ supports: table.supports.filter((_, i) => !indices.includes(i)), titles: table.titles.filter((_, i) => !indices.includes(i)) });
  const removed = (indices: readonly number[]): SupportEdit[] => indices.map((index) => ({ what: 'remove', title: table.titles[index] ?? '' }));
  const moved = nuts.length !== 4 ? [] : nuts.flatMap((one, i) => nuts.slice(i + 1).map((other) => {
    const at = [0, 1, 2].map((axis) => (((table.supports[one]?.at[axis] ?? 0) + (table.supports[other]?.at[axis] ?? 0)) / 2)) as unknown as Vector3;
    const after = without([other]);
    // What is left out stands behind what is moved, so that the index still holds.
    return { table: { ...after, supports: after.supports.map((support, index) => (index === one ? { ...support, at } : support)) }, edits: [{ what: 'move', title: table.titles[one] ?? '', at } as const, ...removed([other])] };
  }));
  const threes = nuts.flatMap((a, i) => nuts.slice(i + 1).flatMap((b, j) => nuts.slice(i + j + 2).map((c) => nuts.filter((index) => ![a, b, c].includes(index)))));
  return [...threes.map((left) => ({ table: without(left), edits: removed(left) })), ...moved];
}

/**
 * Layouts of a part on upright nuts in which every nut floats and holds its height alone, three of them at the most, and two guides hold place and turn.
 * Guides that are there already are kept as far as they go: the first one as what holds two directions, the one farthest from it as a fork.
 */
export function floatedLayouts(table: SupportTable): readonly Rebuilt[] {
  const before = heldBy(table.supports);
  const nuts = table.supports.filter(({ kind }) => isNut(kind));
  if (nuts.length === 0 || travelOf(table.supports) !== 'z' || table.supports.some(({ kind }) => !isNut(kind) && !isGuide(kind))) return [];
  return threeLifts(table)
    .flatMap((lifts) => guided(floated(lifts)).map(({ table: after, edits }) => rebuilt(table, after, edits)))
    .filter(({ free: loose, redundant }) => loose === 0 && redundant < before.redundant);
}

type Step = ReturnType<typeof threeLifts>[number];

function floated({ table, edits }: Step): Step {
  return {
    table: { ...table, supports: table.supports.map((support) => (isNut(support.kind) ? { ...support, kind: 'nut-decoupled' as const } : support)) },
    edits: [...edits, ...table.supports.flatMap(({ kind }, index): SupportEdit[] => (isNut(kind) && kind !== 'nut-decoupled' ? [{ what: 'exchange', title: table.titles[index] ?? '', to: 'nut-decoupled' }] : []))],
  };
}

/** Guides for floating nuts: place and turn where three hold both tilts, else all but the lift. */
function guided({ table, edits }: Step): readonly Step[] {
  const nuts = table.supports.filter(({ kind }) => isNut(kind)).length;
  const guides = table.supports.flatMap(({ kind }, index) => (isGuide(kind) ? [index] : []));
  // What holds two directions already stays what it is.
  const first = guides.find((index) => table.supports[index]?.kind !== 'fork') ?? guides[0];
  const others = guides.filter((index) => index !== first);
  const add = (from: SupportTable, kinds: readonly JointKind[]): readonly Step[] => added(from, kinds, 'z').map((one) => ({ table: one.table, edits: [...edits, ...one.edits] }));
  if (first === undefined) return add(table, nuts < 3 ? ['rail-carriage'] : ['self-aligning-bushing', 'fork']);
  if (nuts < 3) return [];
  const holder = table.supports[first] as SupportJoint;
  const to = GUIDES[holder.kind] ?? holder.kind;
  const distance = (index: number): number => Math.hypot((table.supports[index]?.at[0] ?? 0) - holder.at[0], (table.supports[index]?.at[1] ?? 0) - holder.at[1]);
  const second = others.reduce<number | undefined>((far, index) => (far === undefined || distance(index) > distance(far) ? index : far), undefined);
  const left = others.filter((index) => index !== second);
  const exchanges: readonly SupportEdit[] = holder.kind === to ? [] : [{ what: 'exchange', title: table.titles[first] ?? '', to }];
  const one = (supports: readonly SupportJoint[]): SupportJoint[] => supports.map((support, index) => (index === first ? { ...support, kind: to, across: undefined } : support));
  if (second === undefined) {
    const kept: SupportTable = { ...table, supports: one(table.supports) };
    return added(kept, ['fork'], 'z').map((step) => ({ table: step.table, edits: [...edits, ...exchanges, ...step.edits] }));
  }
  const [dx, dy] = [(table.supports[second]?.at[0] ?? 0) - holder.at[0], (table.supports[second]?.at[1] ?? 0) - holder.at[1]];
  const across: Word = Math.abs(dx) >= Math.abs(dy) ? 'y' : 'x';
  const isFork = table.supports[second]?.kind === 'fork';
  const forked = one(table.supports).map((support, index) => (index === second && !isFork ? { ...support, kind: 'fork' as const, across: AXES[across] } : support));
  const fork: readonly SupportEdit[] = isFork ? [] : [{ what: 'exchange', title: table.titles[second] ?? '', to: 'fork', across }];
  return [{
    table: { supports: forked.filter((_, index) => !left.includes(index)), titles: table.titles.filter((_, index) => !left.includes(index)) },
    edits: [...edits, ...exchanges, ...fork, ...left.map((index): SupportEdit => ({ what: 'remove', title: table.titles[index] ?? '' }))],
  }];
}
