import { formatQuantity } from '../language/format-quantity.ts';
import { carriersOf, layoutOf } from '../figures/supports/layout.ts';
import type { InputValue } from '../machine/values.ts';
import type { Origin } from '../machine/origin.ts';
import { remedy, type Change, type Proposal, type RemedyContext } from './remedy.ts';

/** Whole millimetres: nobody sets a mass more exactly. */
const STEP = 1e-3;

function placesOf(origin: Origin): readonly { readonly uri: string; readonly path: readonly string[] }[] {
  return origin.from === 'several' ? origin.parts.flatMap((part) => placesOf(part.origin)) : 'place' in origin && origin.place ? [origin.place] : [];
}

/** All that moves, shifted towards the middle of the supports as far as is needed. */
function shift(context: RemedyContext): readonly Proposal[] {
  const { before } = context;
  const [masses, joints] = [before.input('axis.mass-places'), before.input('axis.support-joints')];
  if (masses.state !== 'known' || masses.value.type !== 'table' || joints.state !== 'known' || joints.value.type !== 'table') return [];
  const rows = masses.value.rows;
  const whole = rows.reduce((sum, [mass = 0]) => sum + mass, 0);
  const layout = layoutOf(joints.value.rows, joints.value.titles);
  const carriers = layout ? carriersOf(layout).flatMap((index) => layout.supports[index] ?? []) : [];
  if (carriers.length === 0 || !(whole > 0)) return [];
  const towards = [0, 1].map((i) => carriers.reduce((sum, { at }) => sum + (at[i] ?? 0), 0) / carriers.length);
  const centre = [1, 2].map((i) => rows.reduce((sum, row) => sum + (row[0] ?? 0) * (row[i] ?? 0), 0) / whole);
  const way = [0, 1].map((i) => (towards[i] ?? 0) - (centre[i] ?? 0));
  // Rounded away from zero, so that what passed still does.
  const rounded = (value: number): number => Math.sign(value) * Math.ceil(Math.abs(value) / STEP - 1e-6) * STEP;
  const shifted = (by: readonly number[]): InputValue => ({ type: 'table', rows: rows.map(([mass = 0, x = 0, y = 0]) => [mass, x + (by[0] ?? 0), y + (by[1] ?? 0)]) });
  const share = context.solveAlong((part) => ({ 'axis.mass-places': shifted(way.map((value) => value * part)) }));
  if (share === undefined) return [];
  const by = way.map((value) => rounded(value * share));
  const changes = placesOf(masses.origin).flatMap(({ uri, path }, index): Change[] =>
    by.flatMap((value, axis) => (Math.abs(value) < STEP / 2 ? [] : [{ place: { uri, path: [...path, 'at', String(axis)] }, value: `${Number((((rows[index]?.[axis + 1] ?? 0) + value) * 1000).toFixed(3))} mm` }])),
  );
  return changes.length === 0 ? [] : [{ changes, what: `Shift what it carries by ${formatQuantity(Math.hypot(...by), 'length', { unit: 'mm', digits: 2 })} towards the middle of its supports` }];
}

export default remedy({
  id: 'shift-the-load-inwards',
  summary: 'Shifts all masses that the axis moves towards the middle of its supports, as far as is needed.',
  cost: 2,
  cures: ['support-lifts-off', 'support-share-small'],
  propose: shift,
});
