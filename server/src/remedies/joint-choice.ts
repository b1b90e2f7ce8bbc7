/** Layouts of supports with other joints, and how each is written. */
import { countConstraints, scaleOf } from '../mechanics/constraint-rank.ts';
import { JOINT_FORMS, wrenchesOf, type Joint, type JointForm, type JointKind } from '../mechanics/constraint-wrenches.ts';
import { cross3, length3, type Vector3 } from '../mechanics/vector3.ts';
import type { SupportJoint } from '../machine/support-joint.ts';
import { GENTLER_JOINTS } from './gentler-joints.ts';

/** One joint exchanged, or only turned where it stays of its kind; `across` where the new one needs a direction that was not written. */
export interface JointChange {
  readonly index: number;
  readonly to: JointKind;
  readonly across?: string;
}

/** What a layout holds with the drives held. */
export interface Held {
  readonly redundant: number;
  readonly free: number;
  /** How evenly it holds, 0 to 1. */
  readonly conditioning: number;
}

export interface OtherLayout extends Held {
  readonly supports: readonly SupportJoint[];
  readonly changes: readonly JointChange[];
}

const WORDS: Readonly<Record<string, Vector3>> = { x: [1, 0, 0], y: [0, 1, 0], z: [0, 0, 1] };
/** Joints that hold another way when their second direction is another. */
const NEEDS_ACROSS: ReadonlySet<JointKind> = new Set(['fork', 'flat-wheel', 'vee-wheel', 'vee', 'ball-on-radial-slide']);

export function heldBy(supports: readonly SupportJoint[]): Held {
  const joints = supports.map(({ kind, at, axis, across, lead }): Joint => ({ owner: '', kind, at, axis, lead, ...(across === undefined ? {} : { across }) }));
  const { redundant, free, conditioning } = countConstraints(wrenchesOf(joints, 'drives held'), scaleOf(joints.map((joint) => joint.at)));
  return { redundant, free: free.length, conditioning };
}

/** Directions that a person can write for a joint, square to its axis. */
function directions(support: SupportJoint, supports: readonly SupportJoint[]): readonly { readonly word: string; readonly across: Vector3 }[] {
  const { centre } = scaleOf(supports.map(({ at }) => at));
  const radial: Vector3 = [support.at[0] - centre[0], support.at[1] - centre[1], 0];
  return [...Object.entries(WORDS), ['radial', radial] as const]
    .map(([word, across]) => ({ word, across }))
    .filter(({ across }) => length3(cross3(support.axis, across)) > 1e-6 * Math.max(1, length3(across)) && length3(across) > 1e-6);
}

/** The layout with some joints of another kind, once for each way to write it. */
function exchanged(from: OtherLayout, indices: readonly number[], to: JointKind): OtherLayout[] {
  const words = NEEDS_ACROSS.has(to) ? [...new Set(indices.flatMap((index) => directions(from.supports[index] as SupportJoint, from.supports).map(({ word }) => word)))] : [undefined];
  return words.flatMap((word) => {
    const changes: JointChange[] = [];
    const supports = from.supports.map((support, index) => {
      if (!indices.includes(index)) return support;
      const across = word === undefined ? support.across : directions(support, from.supports).find((one) => one.word === word)?.across;
      changes.push({ index, to, ...(word === undefined ? {} : { across: word }) });
      return { ...support, kind: to, across };
    });
    if (word !== undefined && supports.some(({ across }, index) => indices.includes(index) && across === undefined)) return [];
    const others = from.changes.filter(({ index }) => !indices.includes(index));
    return [{ supports, changes: [...others, ...changes], ...heldBy(supports) }];
  });
}

/** More supports than this are not tried one by one: the search would take too long while one types. */
const MOST_SUPPORTS = 10;
const BEAM = 6;
const STEPS = 4;

const keyOf = ({ supports }: OtherLayout): string => supports.map(({ kind, across }) => `${kind} ${across === undefined ? '' : across.join()}`).join(';');

/** The kind itself where the joint may be meant well and only point the wrong way. */
const turnedOnly = (kind: JointKind): readonly JointKind[] => (NEEDS_ACROSS.has(kind) ? [kind] : []);

const isDrive = (kind: JointKind): boolean => (JOINT_FORMS[kind] as JointForm).drive === true;

/** Fewer redundancies first, then the ones that leave nothing free; among equals nuts give way before guides, since a screw is a bad guide; then fewer changes, then the one that holds more evenly. */
const better = (now: readonly SupportJoint[]) => (a: OtherLayout, b: OtherLayout): number => {
  const guides = (one: OtherLayout): number => one.changes.filter(({ index }) => !isDrive((now[index] as SupportJoint).kind)).length;
  return a.redundant - b.redundant || a.free - b.free || guides(a) - guides(b) || a.changes.length - b.changes.length || b.conditioning - a.conditioning;
};

/**
 * Layouts in which joints gave way to gentler ones: fewer redundancies, nothing newly free. All of a kind at once, or one by one, in up to four steps.
 * The best first; each once.
 */
export function gentlerLayouts(supports: readonly SupportJoint[]): readonly OtherLayout[] {
  if (supports.length > MOST_SUPPORTS) return [];
  const start: OtherLayout = { supports, changes: [], ...heldBy(supports) };
  const found = new Map<string, OtherLayout>();
  let beam: readonly OtherLayout[] = [start];
  for (let step = 0; step < STEPS && beam.length > 0; step++) {
    const next = new Map<string, OtherLayout>();
    for (const from of beam) {
      for (const kind of new Set(from.supports.map((support) => support.kind))) {
        const same = from.supports.flatMap((support, index) => (support.kind === kind ? [index] : []));
        for (const indices of [...same.map((index) => [index]), ...(same.length > 1 ? [same] : [])]) {
          for (const to of [...turnedOnly(kind), ...(GENTLER_JOINTS[kind] ?? [])]) {
            for (const one of exchanged(from, indices, to)) {
              const key = keyOf(one);
              if (one.redundant < from.redundant && one.free <= start.free && !found.has(key)) next.set(key, one);
            }
          }
        }
      }
    }
    const sorted = [...next.values()].sort(better(supports));
    for (const one of sorted) found.set(keyOf(one), one);
    beam = sorted.filter(({ redundant }) => redundant > 0).slice(0, BEAM);
  }
  return [...found.values()].sort(better(supports));
}

/** Layouts in which one joint holds more, so that nothing stays free: the fewest redundancies first. */
export function firmerLayouts(supports: readonly SupportJoint[]): readonly OtherLayout[] {
  if (supports.length > MOST_SUPPORTS) return [];
  const start: OtherLayout = { supports, changes: [], ...heldBy(supports) };
  const firmer = (kind: JointKind): JointKind[] => (Object.entries(GENTLER_JOINTS) as [JointKind, readonly JointKind[]][]).filter(([, gentler]) => gentler.includes(kind)).map(([other]) => other);
  return supports
    .flatMap((support, index) => [...turnedOnly(support.kind), ...firmer(support.kind)].flatMap((to) => exchanged(start, [index], to)))
    .filter(({ free }) => free === 0)
    .sort((a, b) => a.redundant - b.redundant || b.conditioning - a.conditioning);
}
