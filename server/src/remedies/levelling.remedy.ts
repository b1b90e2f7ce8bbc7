import { isDriveJoint } from '../machine/levelling-problems.ts';
import { listInWords } from '../mechanics/constraint-names.ts';
import { remedy, type Change, type Proposal, type RemedyContext } from './remedy.ts';
import { supportTable } from './support-table.ts';

/** No machine levels by more lifts than the schema takes. */
const MOST_LIFTS = 6;

/** Nuts and belts that stand still while others level: they become lifts too. */
function liftByAll(context: RemedyContext): readonly Proposal[] {
  const [table, lifts] = [supportTable(context), context.before.input('levelling.lift-places')];
  const place = context.place('levelling.lifts');
  if (!table || !place || lifts.state !== 'known' || lifts.value.type !== 'table') return [];
  const now = lifts.value.rows.map(([index = 0]) => index);
  const others = table.supports.flatMap(({ kind, axis }, index) => (isDriveJoint(kind) && Math.abs(axis[2]) > 0.9 && !now.includes(index) ? [index] : []));
  const all = [...now, ...others];
  if (others.length === 0 || all.length > MOST_LIFTS) return [];
  const names = all.map((index) => table.titles[index] ?? '');
  const rows = all.map((index) => [index, table.supports[index]?.at[0] ?? 0, table.supports[index]?.at[1] ?? 0]);
  if (!context.passes(context.tryWith({ 'levelling.lift-places': { type: 'table', rows, titles: names } }))) return [];
  const added = listInWords(others.map((index) => table.titles[index] ?? ''));
  // Behind the names that are there: without any, all drives are lifts anyway.
  const changes = others.map((index, i): Change => ({ place: { uri: place.uri, path: [...place.path, String(now.length + i)] }, value: table.titles[index] ?? '' }));
  return [{ changes, what: `Level by ${added.length > 40 ? `all ${all.length} drives` : `${added} too`}`, price: others.length === 1 ? 'one lift more to set' : `${others.length} lifts more to set` }];
}

export default remedy({
  id: 'level-by-all-drives',
  summary: 'Lets every nut or belt of the part be one of its lifts, so that none stands still and holds the height while the others level.',
  cost: 1.5,
  cures: ['levelling-fights-guides'],
  propose: liftByAll,
});
