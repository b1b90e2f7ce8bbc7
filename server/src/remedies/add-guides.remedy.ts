import type { NewValue } from '../language/edit-entry.ts';
import { length3, minus3, type Vector3 } from '../mechanics/vector3.ts';
import { choice, number, remedy, type Change, type Inputs, type Proposal, type RemedyContext } from './remedy.ts';
import { floatedLayouts, guidedLayouts, type Rebuilt, type SupportEdit } from './add-guides.ts';
import { countLeft, inputsOf, supportTable } from './support-table.ts';
import { LONGEST_TITLE } from './title.ts';

const MOST = 2;
const MOST_TRIED = 24;

const millimetres = (value: number): string => `${Number((value * 1000).toFixed(2)) + 0} mm`;

/** A place as it is written: two coordinates unless the height matters. */
const written = ([x, y, z]: Vector3): readonly string[] => [x, y, ...(Math.abs(z) < 1e-9 ? [] : [z])].map(millimetres);

function changesOf(context: RemedyContext, edits: readonly SupportEdit[]): readonly Change[] | undefined {
  const place = context.place('supports');
  if (!place) return undefined;
  const vertical = Math.abs((context.before.bounds('axis.inclination')?.nominal ?? 0) - Math.PI / 2) < 1e-6;
  const change = (title: string, value: NewValue | null, ...keys: readonly string[]): Change => ({ place: { uri: place.uri, path: [...place.path, title, ...keys] }, value });
  return edits.flatMap((edit): Change[] => {
    switch (edit.what) {
      case 'exchange':
        return [change(edit.title, edit.to, 'joint'), ...(edit.across === undefined ? [] : [change(edit.title, edit.across, 'across')])];
      case 'move':
        return written(edit.at).map((text, index) => change(edit.title, text, 'at', String(index)));
      case 'remove':
        return [change(edit.title, null)];
      case 'add':
        return [change(edit.title, {
          joint: edit.joint, at: written(edit.at), ...(vertical && edit.along === 'z' ? {} : { along: edit.along }), ...(edit.across === undefined ? {} : { across: edit.across }),
        })];
    }
  });
}

/** What goes with the nuts: their number as that of the drives, and how they are mounted where that is written. */
function besides(context: RemedyContext, { lifts: [now, then], edits }: Rebuilt): { readonly inputs: Inputs; readonly changes: readonly Change[] } | undefined {
  const { before } = context;
  const [units, mounting] = [context.place('drive.units'), context.place('nut.mounting')];
  const fewer = now !== then && before.bounds('drive.units')?.nominal === then;
  const mounted = before.input('nut.mounting');
  const contradicts = edits.some(({ what }) => what === 'exchange') && mounted.state === 'known' && mounted.origin.from === 'here' && before.choice('nut.mounting') === 'rigid';
  if ((fewer && !units) || (contradicts && !mounting)) return undefined;
  return {
    inputs: { ...(fewer ? { 'drive.units': number(now) } : {}), ...(contradicts ? { 'nut.mounting': choice('decoupled') } : {}) },
    changes: [...(fewer && units ? [{ place: units, value: String(now) }] : []), ...(contradicts && mounting ? [{ place: mounting, value: 'decoupled' }] : [])],
  };
}

/** "Lift by 3 floating nuts, not 4, guide by 2 shafts". */
function rebuildOrder({ lifts: [lifts, had], guides: [guides, were], edits }: Rebuilt): string {
  const floats = edits.some((edit) => edit.what === 'exchange' && edit.to === 'nut-decoupled');
  const nuts = `${lifts} ${floats || had !== lifts ? 'floating ' : ''}${lifts === 1 ? 'nut' : 'nuts'}`;
  const lift = had !== lifts ? `Lift by ${nuts}, not ${had}` : `Lift by ${nuts}`;
  const added = edits.filter((edit) => edit.what === 'add');
  const rail = added.some((edit) => edit.what === 'add' && edit.joint === 'rail-carriage');
  if (were === 0) return `${lift}, guide by ${guides === 1 ? (rail ? 'a rail' : 'a shaft') : `${guides} shafts`}`;
  if (guides !== were) return guides < were ? `${lift}, guide by ${guides} of ${were} guides` : `${lift}, guide by ${guides} guides`;
  return edits.some((edit) => edit.what === 'exchange' && edit.to !== 'nut-decoupled') ? `${lift}, refit the guides` : lift;
}

const ADDED: Readonly<Record<string, string>> = {
  fork: 'a fork on a further shaft', 'self-aligning-bushing': 'a shaft with a self-aligning bushing', 'two-bushings': 'a shaft with a pair of bushings', 'rail-carriage': 'a rail with a carriage',
};

/** "Add a shaft with a self-aligning bushing and a fork on a further shaft". */
const addOrder = ({ edits }: Rebuilt): string => `Add ${edits.flatMap((edit) => (edit.what === 'add' ? [ADDED[edit.joint] ?? 'a guide'] : [])).join(' and ')}`;

function proposalOf(context: RemedyContext, layout: Rebuilt, what: string, cost: number): readonly Proposal[] {
  const changes = changesOf(context, layout.edits);
  const other = besides(context, layout);
  if (!changes || !other) return [];
  const was = context.before.bounds('supports.redundant-held')?.nominal ?? 0;
  const short = countLeft(context.before);
  return [{
    changes: [...changes, ...other.changes],
    what,
    cost,
    result: (after) => {
      const full = after.bounds('supports.redundant-held')?.nominal === 0 && was > 0 ? `exactly constrained instead of ${was} redundant` : short(after);
      return full !== undefined && `${what}: ${full}`.length > LONGEST_TITLE ? short(after) : full;
    },
  }];
}

/** The layouts that pass, the first few. */
function passing(context: RemedyContext, layouts: readonly Rebuilt[]): readonly Rebuilt[] {
  const found: Rebuilt[] = [];
  for (const layout of layouts.slice(0, MOST_TRIED)) {
    const same = found.some((other) => other.edits.length === layout.edits.length && other.edits.every((edit, i) => edit.what === layout.edits[i]?.what && (edit.what !== 'add' || edit.joint === (layout.edits[i] as typeof edit).joint)));
    if (same) continue;
    if (context.passes(context.tryWith({ ...inputsOf(layout.supports, layout.titles), ...besides(context, layout)?.inputs }))) found.push(layout);
    if (found.length === MOST) break;
  }
  return found;
}

/** How evenly the lifts share, at the worst: of layouts that are as exact, the one on which the load stands best. */
function evenness(context: RemedyContext, layout: Rebuilt): number {
  const evaluation = context.tryWith({ ...inputsOf(layout.supports, layout.titles), ...besides(context, layout)?.inputs });
  return (evaluation.bounds('supports.share-least-in-use') ?? evaluation.bounds('supports.share-least'))?.low ?? 0;
}

/** Room beyond this round a guide is room enough, m. */
const ENOUGH_ROOM = 0.1;

/** Room round the guides that are added, and how far apart they stand: m, the more the better. */
function placing({ supports, titles, edits }: Rebuilt): { readonly room: number; readonly apart: number } {
  const places = edits.flatMap((edit) => (edit.what === 'add' ? [edit] : []));
  const distances = places.flatMap(({ title, at }) => supports.flatMap((other, index) => (titles[index] === title ? [] : [length3(minus3(other.at, at))])));
  const [one, two] = places;
  return { room: Math.min(ENOUGH_ROOM, ...distances), apart: one && two ? length3(minus3(one.at, two.at)) : 0 };
}

function float(context: RemedyContext): readonly Proposal[] {
  const table = supportTable(context);
  if (!table) return [];
  const rated = floatedLayouts(table).map((layout) => ({ layout, even: evenness(context, layout), ...placing(layout) }));
  // The later of two alike stands farther down in the text: what is written first stays where it is.
  const sorted = rated.reverse().sort((a, b) =>
    a.layout.redundant - b.layout.redundant || Math.round(100 * (b.even - a.even)) || a.layout.edits.length - b.layout.edits.length || Math.round(1000 * (b.room - a.room)) || Math.round(1000 * (b.apart - a.apart)));
  return passing(context, sorted.map(({ layout }) => layout)).slice(0, 1).flatMap((layout) => proposalOf(context, layout, rebuildOrder(layout), 4.5));
}

function add(context: RemedyContext): readonly Proposal[] {
  const table = supportTable(context);
  if (!table) return [];
  return passing(context, guidedLayouts(table)).flatMap((layout) => proposalOf(context, layout, addOrder(layout), 4 + 0.2 * layout.edits.length + 0.15 * layout.redundant));
}

export default [
  remedy({
    id: 'float-the-nuts-on-guides',
    summary: 'Lets every nut float, keeps three lifts at the most, and lets a guide shaft and a fork on a second one hold place and turn: added where they are missing.',
    cost: 4.5,
    cures: ['supports-redundant', 'growth-jams', 'misalignment-jams', 'jam-outpulls-drive', 'joint-overloaded', 'levelling-fights-guides'],
    propose: float,
  }),
  remedy({
    id: 'add-a-guide',
    summary: 'Adds a guide outside the other supports that holds what is still free.',
    cost: 4.2,
    cures: ['under-constrained'],
    propose: add,
  }),
];
