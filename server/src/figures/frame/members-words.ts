import type { FrameMode } from '../../mechanics/frame-modes.ts';
import { assembleFrame, nodeFlexibilities, type Frame } from '../../mechanics/frame-solver.ts';
import { cross3, dot3, length3, minus3, times3, plus3, type Vector3 } from '../../mechanics/vector3.ts';
import type { SolvedFrame } from './members.ts';

const AXES = ['x', 'y', 'z'] as const;

/** A direction counts as that of an axis within this of it: cos 25°. */
const NEARLY = 0.9;

/** `along y`, or `between x and y` for what is neither. */
export function levelDirectionInWords([x, y]: readonly [number, number]): string {
  const size = Math.hypot(x, y);
  if (Math.abs(x) > NEARLY * size) return 'along x';
  return Math.abs(y) > NEARLY * size ? 'along y' : 'between x and y';
}

/** Part of the level motion that is a turn about the upright through the middle, above which it counts as one. */
const MOSTLY = 0.5;

/** How a frame swings: `leans along y, most at "top left"`. */
export function modeInWords({ shape }: FrameMode, { frame }: SolvedFrame): string {
  const [most, shift] = [...shape].reduce((a, b) => (length3(b[1]) > length3(a[1]) ? b : a));
  const place = `most at "${most}"`;
  const largest = Math.max(...shift.map(Math.abs));
  if (Math.abs(shift[2]) === largest) return `bounces, ${place}`;
  if (isTurn(shape, frame)) return `twists about the vertical, ${place}`;
  return `leans ${levelDirectionInWords([shift[0], shift[1]])}, ${place}`;
}

/** Whether a turn about the vertical tells more of the level shifts than a common shift does. */
function isTurn(shape: FrameMode['shape'], frame: Frame): boolean {
  const level = [...shape].map(([name, [x, y]]) => ({ at: frame.nodes[name] ?? [0, 0, 0], shift: [x, y, 0] as Vector3 }));
  const middle = times3(1 / level.length, level.reduce<Vector3>((sum, { at }) => plus3(sum, [at[0], at[1], 0]), [0, 0, 0]));
  const arms = level.map(({ at }): Vector3 => minus3([at[0], at[1], 0], middle));
  const inertia = arms.reduce((sum, arm) => sum + dot3(arm, arm), 0);
  if (inertia === 0) return false;
  const turn = arms.reduce((sum, arm, i) => sum + cross3(arm, level[i]?.shift ?? [0, 0, 0])[2], 0) / inertia;
  const all = level.reduce((sum, { shift }) => sum + dot3(shift, shift), 0);
  return turn ** 2 * inertia > MOSTLY * all;
}

/** Springs that hold what nothing else holds, N/m and N·m/rad: a thousandth of what the softest frame has. */
const THREADS = [10, 10, 10, 0.1, 0.1, 0.1] as const;

/** Where a frame that is loose gives way: `"top left" moves freely along x`. Undefined where nothing gives. */
export function loosenessInWords({ frame }: SolvedFrame): string | undefined {
  const met = new Set(frame.members.flatMap(({ from, to }) => [from, to]));
  const tied: Frame = { ...frame, springs: Object.fromEntries([...met].map((name) => [name, THREADS])) };
  const found = nodeFlexibilities(assembleFrame(tied));
  if (found === 'mechanism') return undefined;
  let worst: { readonly name: string; readonly axis: number; readonly way: number } | undefined;
  for (const [name, under] of found) {
    for (const axis of [0, 1, 2] as const) {
      const way = under[axis][axis];
      if (worst === undefined || way > 1.001 * worst.way) worst = { name, axis, way };
    }
  }
  // A force of 1 N that shifts a point by more than this is taken up by nothing but the threads.
  return worst !== undefined && worst.way > 0.003 ? `"${worst.name}" moves freely along ${AXES[worst.axis]}` : undefined;
}
