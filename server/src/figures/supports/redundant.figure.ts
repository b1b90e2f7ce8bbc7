import { conflictInWords, conflictsOf, gatherConflicts, type Conflict } from '../../mechanics/constraint-conflicts.ts';
import { listInWords, motionInWords } from '../../mechanics/constraint-names.ts';
import { countConstraints } from '../../mechanics/constraint-rank.ts';
import type { DriveState } from '../../mechanics/constraint-wrenches.ts';
import { figure, unable, type Figure } from '../figure.ts';
import { exactConstraint } from './freedoms.figure.ts';
import { layoutOf, NO_SUPPORTS, wrenchesIn } from './layout.ts';

const tables = { rows: 'axis.support-joints' } as const;
const names = { owners: 'axis.support-joints' } as const;

/** "shift along X", "shift along Y" and "tilt about X" as "shift along X and Y, tilt about X". */
export function heldInWords(held: readonly string[]): string {
  const parts = held.map((text) => /^((?:shift along|tilt about|turn about)) ([XYZ])$/.exec(text) ?? [text, text, '']);
  const kinds = [...new Set(parts.map(([, kind = '']) => kind))];
  return kinds.map((kind) => `${kind} ${listInWords(parts.flatMap(([, own, axis]) => (own === kind && axis ? [axis] : [])).sort())}`.trim()).join(', ');
}

/** "rail A and screw 1 both fix tilt about X and Y; …". */
export const conflictsInWords = (conflicts: readonly Conflict[]): string => conflictClauses(conflicts).map(({ text }) => text).join('; ');

/** What the same supports hold is told in one breath, what most of them hold first; each with those of whom it tells. */
export function conflictClauses(conflicts: readonly Conflict[]): readonly { readonly text: string; readonly owners: readonly string[] }[] {
  const { shared, others } = gatherConflicts(conflicts);
  const groups = new Map<string, { readonly owners: readonly string[]; readonly held: string[] }>();
  for (const { owners, held } of shared) {
    const key = [...owners].sort().join('\n');
    const group = groups.get(key);
    if (group) group.held.push(held);
    else groups.set(key, { owners, held: [held] });
  }
  const most = [...groups.values()].sort((a, b) => b.owners.length - a.owners.length || b.held.length - a.held.length);
  return [
    ...most.map(({ owners, held }) => ({ text: `${listInWords(owners)} ${owners.length === 2 ? 'both' : 'all'} fix ${heldInWords(held)}`, owners })),
    ...others.map((conflict) => ({ text: conflictInWords(conflict), owners: [...conflict.earlier, conflict.later] })),
  ];
}

interface Value { readonly nominal: number; readonly note?: string }

/** "2 redundant: tilt", or without the kinds where there are several. */
function inHint({ nominal, note = '' }: Value): string {
  if (nominal === 0) return 'exactly constrained';
  const kinds = ['shift', 'tilt', 'turn'].filter((kind) => new RegExp(`\\b${kind} (?:along|about)`).test(note));
  return kinds.length === 1 ? `${nominal} redundant: ${kinds.join('')}` : `${nominal} redundant`;
}

const redundant = (id: string, title: string, symbol: string, state: DriveState, meaning: string, more: Pick<Figure, 'rank' | 'inWords' | 'hint'>): Figure =>
  figure({
    id, title, symbol, meaning, ...more,
    quantity: 'count',
    onlyWith: ['supports'],
    needs: {}, tables, names,
    compute: ({ rows, owners }) => {
      const layout = layoutOf(rows, owners);
      if (!layout) return unable(NO_SUPPORTS);
      const wrenches = wrenchesIn(layout, state);
      const { redundant: count } = countConstraints(wrenches, layout.scale);
      return count === 0 ? 0 : { value: count, note: conflictsInWords(conflictsOf(wrenches, layout.scale)) };
    },
    formula: 'r = rows of W − rank W',
    sources: [exactConstraint, { title: 'left null space of the wrenches, in a basis with few owners' }],
  });

export default [
  redundant(
    'supports.redundant', 'Redundant constraints in motion', 'r_r', 'drives running',
    'How often supports hold the carried part where others hold it already, while the drives turn: there, joints fight each other over all the travel.', { rank: 1 },
  ),
  redundant(
    'supports.redundant-held', 'Redundant constraints with the drives held', 'r_h', 'drives held',
    'The same with what the held drives add: drives that also fix a tilt that the guides fix must run exactly alike.',
    {
      rank: 1,
      inWords: ({ nominal }) => (nominal === 0 ? 'exactly constrained' : `${nominal} redundant`),
      hint: inHint,
    },
  ),
  figure({
    id: 'supports.redundant-stiff',
    title: 'Redundant constraints among stiff joints',
    symbol: 'r_s',
    quantity: 'count',
    meaning: 'Redundant constraints in motion without those that a part holds only softly, through its play and short length.',
    onlyWith: ['supports'],
    needs: {}, tables, names,
    compute: ({ rows, owners }) => {
      const layout = layoutOf(rows, owners);
      return layout ? countConstraints(wrenchesIn(layout, 'drives running'), layout.scale).redundantStiff : unable(NO_SUPPORTS);
    },
    formula: 'r_s = rows of W_stiff − rank W_stiff',
    sources: [exactConstraint],
    rank: 3,
  }),
  figure({
    id: 'supports.conditioning',
    title: 'How evenly the supports hold',
    symbol: 'σ_n/σ_1',
    quantity: 'ratio',
    meaning: 'What the supports hold least over what they hold most, with the drives held: 1 is even, near 0 one motion is held by next to nothing.',
    onlyWith: ['supports'],
    needs: {}, tables, names,
    compute: ({ rows, owners }) => {
      const layout = layoutOf(rows, owners);
      if (!layout) return unable(NO_SUPPORTS);
      const { conditioning, weakest } = countConstraints(wrenchesIn(layout, 'drives held'), layout.scale);
      return weakest === undefined ? conditioning : { value: conditioning, note: `least held: that it ${motionInWords(weakest, layout.scale, layout.joints)}` };
    },
    formula: 'smallest singular value of W above 0 over the largest, moments over the mean distance of the supports',
    sources: [exactConstraint],
    rank: 3,
  }),
];
