import { widthOf } from './plot-text.ts';

export interface LabelledPoint {
  readonly x: number;
  readonly y: number;
  readonly text: string;
  readonly index: number;
}

export interface PlacedLabel extends LabelledPoint {
  readonly labelX: number;
  /** Base line of the text. */
  readonly labelY: number;
  readonly anchor: 'start' | 'end' | 'middle';
}

interface Rectangle {
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly bottom: number;
}

/** Marks nearer to one another than this, in px, cannot be told apart by labels beside them. */
const CROWDED = 30;

/** Whether a point's label beside it could be read as that of another. */
export const isCrowded = (point: LabelledPoint, points: readonly LabelledPoint[]): boolean => points.some((other) => other !== point && Math.hypot(other.x - point.x, other.y - point.y) < CROWDED);

/**
 * Puts each point's label beside, above or below it: where it stays inside `box`, and covers neither another label nor one of the `marks` nor,
 * as far as can be, a curve (given by its sampled points, `hidden`).
 */
export function placeLabels(points: readonly LabelledPoint[], marks: readonly LabelledPoint[], box: Rectangle, hidden: readonly { readonly x: number; readonly y: number }[], size: number): readonly PlacedLabel[] {
  const taken: Rectangle[] = marks.map(({ x, y }) => ({ left: x - 5, right: x + 5, top: y - 5, bottom: y + 5 }));
  return points.map((point) => {
    const candidates = candidatesFor(point, size).map((candidate) => ({ ...candidate, cost: costOf(candidate.rectangle, box, taken, hidden) }));
    const best = candidates.reduce((least, candidate) => (candidate.cost < least.cost ? candidate : least));
    taken.push(best.rectangle);
    return { ...point, labelX: best.labelX, labelY: best.labelY, anchor: best.anchor };
  });
}

type Candidate = Pick<PlacedLabel, 'labelX' | 'labelY' | 'anchor'> & { readonly rectangle: Rectangle };

function candidatesFor({ x, y, text }: LabelledPoint, size: number): readonly Candidate[] {
  const width = widthOf(text, size);
  const places = [
    { dx: 8, dy: -7, anchor: 'start' }, { dx: -8, dy: -7, anchor: 'end' }, { dx: 8, dy: 15, anchor: 'start' }, { dx: -8, dy: 15, anchor: 'end' },
    { dx: 10, dy: 4, anchor: 'start' }, { dx: -10, dy: 4, anchor: 'end' }, { dx: 0, dy: -10, anchor: 'middle' }, { dx: 0, dy: 19, anchor: 'middle' },
  ] as const;
  return places.map(({ dx, dy, anchor }) => {
    const [labelX, labelY] = [x + dx, y + dy];
    const left = anchor === 'start' ? labelX : anchor === 'end' ? labelX - width : labelX - width / 2;
    return { labelX, labelY, anchor, rectangle: { left, right: left + width, top: labelY - size, bottom: labelY + 3 } };
  });
}

function costOf(label: Rectangle, box: Rectangle, taken: readonly Rectangle[], hidden: readonly { readonly x: number; readonly y: number }[]): number {
  const outside = Math.max(0, box.left - label.left) + Math.max(0, label.right - box.right) + Math.max(0, box.top - label.top) + Math.max(0, label.bottom - box.bottom);
  const clashes = taken.filter((other) => label.left < other.right && other.left < label.right && label.top < other.bottom && other.top < label.bottom).length;
  const covered = hidden.filter(({ x, y }) => x > label.left && x < label.right && y > label.top - 2 && y < label.bottom + 2).length;
  return outside * 100 + clashes * 60 + covered;
}
