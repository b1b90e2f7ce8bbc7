import type { SupportJoint } from '../machine/support-joint.ts';
import type { JointKind } from '../mechanics/constraint-wrenches.ts';
import { listInWords } from '../mechanics/constraint-names.ts';
import { firmerLayouts, gentlerLayouts, type JointChange, type OtherLayout } from './joint-choice.ts';
import { remedy, type Change, type Proposal, type RemedyContext } from './remedy.ts';
import { countLeft, inputsOf, supportTable } from './support-table.ts';

/** What is fitted, one and several: "Fit a fork at right rail and 3 floating nuts". */
const FITTED: Readonly<Record<JointKind, readonly [string, string]>> = {
  'rail-carriage': ['a bolted carriage', 'bolted carriages'], 'carriage-on-ball': ['a carriage under a ball', 'carriages under balls'], 'wheel-carriage': ['a set of wheels', 'sets of wheels'],
  'vee-wheel': ['a grooved wheel', 'grooved wheels'], 'flat-wheel': ['a flat wheel', 'flat wheels'], 'one-bushing': ['a bushing', 'bushings'], 'two-bushings': ['a pair of bushings', 'pairs of bushings'],
  'self-aligning-bushing': ['a self-aligning bushing', 'self-aligning bushings'], fork: ['a fork', 'forks'], ball: ['a ball joint', 'ball joints'], 'ball-on-radial-slide': ['a ball on a slide', 'balls on slides'],
  cone: ['a cone', 'cones'], vee: ['a groove', 'grooves'], flat: ['a flat', 'flats'], 'blade-flexure': ['a blade', 'blades'], 'wire-flexure': ['a wire', 'wires'], 'rigid-bolts': ['bolts', 'sets of bolts'],
  'nut-rigid': ['a bolted nut', 'bolted nuts'], 'nut-sliding-plate': ['a sliding nut', 'sliding nuts'], 'nut-decoupled': ['a floating nut', 'floating nuts'], belt: ['a belt clamp', 'belt clamps'],
};

/** No more ways than a person weighs. */
const MOST = 3;
/** Layouts that are tried in full, since each costs an evaluation. */
const MOST_TRIED = 24;

/** What is said of a change behind the colon has to fit too. */
const ROOM = 78;

/** "Fit a fork at right rail, a ball at left rail and 3 floating nuts". */
function order(changes: readonly JointChange[], titles: readonly string[], present: readonly SupportJoint[]): string {
  const [only] = changes;
  if (only !== undefined && changes.every(({ index, to }) => present[index]?.kind === to)) {
    const [one, several] = FITTED[only.to];
    const turned = `Turn ${changes.length > 1 ? `${changes.length} ${several}` : `${one.replace(/^an? /, 'the ')} at ${titles[only.index] ?? ''}`}`;
    const way = only.across === undefined || changes.some(({ across }) => across !== only.across) ? '' : ` (across: ${only.across})`;
    return turned.length + way.length <= ROOM ? `${turned}${way}` : turned;
  }
  const kinds = [...new Set(changes.map(({ to }) => to))];
  const said = (named: boolean): string =>
    `Fit ${listInWords(kinds.map((kind) => {
      const own = changes.filter(({ to }) => to === kind);
      const [one, several] = FITTED[kind];
      if (own.length > 1) return `${own.length} ${several}`;
      return named ? `${one} at ${titles[own[0]?.index ?? 0] ?? ''}` : one;
    }))}`;
  return [said(true), said(false)].find((text) => text.length <= ROOM) ?? `Exchange ${changes.length} joints for others`;
}

function changesOf(context: RemedyContext, { changes }: OtherLayout, titles: readonly string[]): readonly Change[] | undefined {
  const place = context.place('supports');
  if (!place) return undefined;
  return changes.flatMap(({ index, to, across }): Change[] => {
    const at = (key: string): Change['place'] => ({ uri: place.uri, path: [...place.path, titles[index] ?? '', key] });
    return [{ place: at('joint'), value: to }, ...(across === undefined ? [] : [{ place: at('across'), value: across }])];
  });
}

function propose(context: RemedyContext, layouts: (supports: readonly SupportJoint[]) => readonly OtherLayout[], cost: number): readonly Proposal[] {
  const table = supportTable(context);
  if (!table) return [];
  const passing: OtherLayout[] = [];
  // Of layouts that differ only in how a fork points, the first that holds is told.
  const kindsOf = ({ changes }: OtherLayout): string => changes.map(({ index, to }) => `${index} ${to}`).sort().join();
  for (const layout of layouts(table.supports).slice(0, MOST_TRIED)) {
    if (passing.some((other) => kindsOf(other) === kindsOf(layout))) continue;
    if (context.passes(context.tryWith(inputsOf(layout.supports, table.titles)))) passing.push(layout);
    if (passing.length === MOST) break;
  }
  return passing.flatMap((layout): Proposal[] => {
    const changes = changesOf(context, layout, table.titles);
    return changes ? [{ changes, what: order(layout.changes, table.titles, table.supports), result: countLeft(context.before), cost: cost + 0.2 * layout.changes.length }] : [];
  });
}

export default [
  remedy({
    id: 'let-joints-float',
    summary: 'Exchanges joints that hold what others hold already for ones that float there: a nut that floats, a fork on the second shaft, a carriage under a ball. A fork or groove that points the wrong way is turned.',
    cost: 3,
    cures: ['supports-redundant', 'growth-jams', 'misalignment-jams', 'jam-outpulls-drive', 'joint-overloaded', 'levelling-fights-guides'],
    propose: (context) => propose(context, gentlerLayouts, 3),
  }),
  remedy({
    id: 'hold-what-is-loose',
    summary: 'Exchanges one joint for one that also holds what is still free, or turns a fork or groove so that it does.',
    cost: 3,
    cures: ['under-constrained'],
    propose: (context) => propose(context, firmerLayouts, 3),
  }),
];
