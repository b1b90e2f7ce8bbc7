import { listInWords } from '../../mechanics/constraint-names.ts';
import type { Wrench } from '../../mechanics/constraint-wrenches.ts';
import { heldAgainstLevelling, type LevellingHold } from '../../mechanics/levelling-freedom.ts';
import { figure, unable, type Computed } from '../figure.ts';
import { layoutOf, NO_SUPPORTS, UPRIGHT, wrenchesIn } from '../supports/layout.ts';
import { heldInWords } from '../supports/redundant.figure.ts';
import { liftNames, liftTables, withLifts, type LiftValues, type Rows } from './lifts.ts';

const tables = { ...liftTables, rows: 'axis.support-joints' } as const;
const names = { ...liftNames, owners: 'axis.support-joints' } as const;

interface Values extends LiftValues { readonly rows: Rows | undefined; readonly owners: readonly string[] | undefined }

/** What a lift moves along: the thread, or the upright force. */
const lifts = ({ holds, direction }: Wrench): boolean => holds !== 'couple' && Math.abs(direction[2]) > UPRIGHT;

/** "screw 1 and screw 2 both fix tilt about X and Y; rail A and rail B together fix tilt about Z". */
function holdsInWords(holds: readonly LevellingHold[]): string {
  const groups = new Map<string, { readonly hold: LevellingHold; readonly held: string[] }>();
  for (const hold of holds) {
    const key = [hold.together ? 'together' : 'alone', ...hold.owners].join('\n');
    const group = groups.get(key);
    if (group) group.held.push(hold.held);
    else groups.set(key, { hold, held: [hold.held] });
  }
  return [...groups.values()]
    .map(({ hold: { owners, together }, held }) => `${listInWords(owners)} ${owners.length === 1 ? 'fixes' : together ? 'together fix' : owners.length === 2 ? 'both fix' : 'all fix'} ${heldInWords(held)}`)
    .join('; ');
}

function held(values: Values, counts: (wrench: Wrench) => boolean): Computed {
  return withLifts(values, ({ indices, names: called }) => {
    const layout = layoutOf(values.rows, values.owners);
    if (!layout) return unable(NO_SUPPORTS);
    // A nut that stands still holds the height at its place; the turn that its thread would ask for with it names nothing.
    const wrenches = wrenchesIn({ ...layout, joints: layout.joints.map((joint) => ({ ...joint, lead: 0 })) }, 'drives held');
    const idle = indices.findIndex((index) => !wrenches.some((one) => one.joint === index && lifts(one)));
    if (idle >= 0) return unable(`${called[idle] ?? 'a lift'} holds nothing along the vertical, so that it lifts nothing`);
    const { count, holds } = heldAgainstLevelling(wrenches.filter((one) => !(indices.includes(one.joint) && lifts(one)) && counts(one)), layout.scale);
    return count === 0 ? 0 : { value: count, note: holdsInWords(holds) };
  });
}

const sources = [{ title: 'what the other joints hold of height and both tilts: span W ∩ span{f_z, m_x, m_y}' }, { title: 'exact constraint (Blanding, Exact Constraint)', weak: true }] as const;

export default [
  figure({
    id: 'levelling.held',
    title: 'Motions of levelling that are held',
    symbol: 'n_h',
    quantity: 'count',
    meaning: 'How many of height and both tilts guides and joints hold while the lifts let go along their screws: there should be none, or lifts that move one by one fight them.',
    onlyWith: ['levelling', 'supports'],
    needs: {}, tables, names,
    compute: (values) => held(values, () => true),
    formula: 'n_h = dim(span W ∩ span{f_z, m_x, m_y}), W without the upright forces of the lifts',
    sources,
    rank: 1,
    inWords: ({ nominal }) => (nominal === 0 ? 'free to tilt' : `${nominal} of 3 held`),
    hint: ({ nominal }) => (nominal === 0 ? 'free to tilt' : 'tilt is held'),
  }),
  figure({
    id: 'levelling.held-stiff',
    title: 'Motions of levelling that stiff joints hold',
    symbol: 'n_hs',
    quantity: 'count',
    meaning: 'The same without what a part holds only softly, through its play and short length.',
    onlyWith: ['levelling', 'supports'],
    needs: {}, tables, names,
    compute: (values) => held(values, ({ soft }) => !soft),
    formula: 'n_hs = dim(span W_stiff ∩ span{f_z, m_x, m_y})',
    sources,
    rank: 3,
  }),
];
