import { distanceToEdge } from '../../mechanics/support-polygon.ts';
import { figure, unable, type Computed, type Figure } from '../figure.ts';
import { largestShares } from './in-use.ts';
import { carriersOf, layoutOf, NO_SUPPORTS, sharingOf, type Layout, type Sharing } from './layout.ts';

const tables = { rows: 'axis.support-joints', masses: 'axis.mass-places' } as const;
const names = { owners: 'axis.support-joints' } as const;
const needs = { end: 'axis.joint-stiffness-end' } as const;
const statics = { title: 'statics of a rigid plate; with four supports and more their stiffness decides too', where: 'guides are taken not to help carry' } as const;

type Rows = readonly (readonly number[])[];

interface Values { readonly rows: Rows | undefined; readonly masses: Rows | undefined; readonly owners: readonly string[] | undefined; readonly end: number }

/** What the supports share, or why they do not. */
function sharing({ rows, masses, owners, end }: Values): { readonly layout: Layout; readonly sharing: Sharing } | string {
  const layout = layoutOf(rows, owners);
  if (!layout) return NO_SUPPORTS;
  if (!masses) return 'every mass that the axis moves needs its place (at)';
  const found = sharingOf(layout, masses, end);
  return typeof found === 'string' ? found : { layout, sharing: found };
}

const of = (values: Values, compute: (sharing: Sharing, layout: Layout) => Computed): Computed => {
  const found = sharing(values);
  return typeof found === 'string' ? unable(found) : compute(found.sharing, found.layout);
};

type Share = Sharing['shares'][number];

const least = ({ shares }: Sharing): Share => shares.reduce((a, b) => (b.share < a.share - 1e-12 ? b : a));
const most = ({ shares }: Sharing): Share => shares.reduce((a, b) => (b.share > a.share + 1e-12 ? b : a));

/** Statics leaves a hair where nothing is carried. */
const clean = (share: number): number => (Math.abs(share) < 1e-9 ? 0 : share);

const share = (id: string, title: string, symbol: string, meaning: string, pick: (sharing: Sharing) => Share, rank: 1 | 2 | 3): Figure =>
  figure({
    id, title, symbol, meaning, rank,
    quantity: 'ratio',
    unit: '%',
    onlyWith: ['supports'],
    needs, tables, names,
    compute: (values) => of(values, (sharing) => ({ value: clean(pick(sharing).share), note: `on ${pick(sharing).name}` })),
    formula: `${symbol} = R_i / Σ R`,
    sources: [statics],
  });

export default [
  figure({
    id: 'supports.carriers',
    title: 'Supports that carry weight',
    symbol: 'n_R',
    quantity: 'count',
    meaning: 'How many of the supports hold along the vertical.',
    onlyWith: ['supports'],
    needs: {},
    tables: { rows: 'axis.support-joints' }, names,
    compute: ({ rows, owners }) => {
      const layout = layoutOf(rows, owners);
      return layout ? carriersOf(layout).length : unable(NO_SUPPORTS);
    },
    formula: 'joints with a force within 25° of the vertical, drives held',
    sources: [{ title: 'definition' }],
    rank: 3,
  }),
  share('supports.share-least', 'Least share of one support', 'q_min', 'Part of the weight that the least loaded support carries; negative where it would have to pull.', least, 3),
  share('supports.share-most', 'Largest share of one support', 'q_max', 'Part of the weight that the most loaded support carries.', most, 2),
  figure({
    id: 'supports.reaction-least',
    title: 'Least load on one support',
    symbol: 'R_min',
    quantity: 'force',
    unit: 'N',
    meaning: 'What the least loaded support carries of the weight at rest; negative where it would have to pull to keep the part level.',
    onlyWith: ['supports'],
    needs: { ...needs, mass: 'axis.moved-mass', gravity: 'conditions.gravity' },
    tables, names,
    compute: ({ mass, gravity, ...values }) => of(values, (sharing) => ({ value: clean(least(sharing).share) * mass * gravity, note: `on ${least(sharing).name}` })),
    formula: 'R_min = q_min m g',
    sources: [statics],
    rank: 3,
  }),
  figure({
    id: 'supports.reaction-most',
    title: 'Largest load on one support',
    symbol: 'R_max',
    quantity: 'force',
    unit: 'N',
    meaning: 'What the most loaded support carries of the weight, on the way up while a rising axis speeds up.',
    onlyWith: ['supports'],
    needs: { ...needs, mass: 'axis.moved-mass', gravity: 'conditions.gravity', inclination: 'axis.inclination' },
    optional: { acceleration: 'motion.acceleration' },
    tables, names,
    compute: ({ mass, gravity, inclination, acceleration, ...values }) =>
      of(values, (sharing) => ({ value: most(sharing).share * mass * (gravity + (acceleration ?? 0) * Math.abs(Math.sin(inclination))), note: `on ${most(sharing).name}` })),
    formula: 'R_max = q_max m (g + a sin β)',
    sources: [statics],
    rank: 3,
  }),
  figure({
    id: 'supports.distance-to-edge',
    title: 'Centre of gravity from the edge of the supports',
    symbol: 'l_e',
    quantity: 'position',
    unit: 'mm',
    meaning: 'How far inside the polygon of the supports that carry weight the centre of gravity lies, seen from above; negative outside.',
    onlyWith: ['supports'],
    needs, tables, names,
    compute: (values) => of(values, ({ places, centre }) => (places.length < 3 ? unable('with fewer than three supports the guides keep it from tipping') : distanceToEdge(centre, places))),
    formula: 'least distance to an edge of the convex hull',
    sources: [{ title: 'geometry' }],
    rank: 3,
  }),
  figure({
    id: 'drive.load-share',
    title: 'Share of the load on one drive',
    symbol: 'q_F',
    quantity: 'ratio',
    unit: '%',
    meaning: 'Part of the load of the axis that the most loaded of its drives carries, by the places of nuts and masses: from what it is at the written places to the most it can be.',
    onlyWhere: { 'drive.sharing': ['supports'] },
    needs, tables, names,
    optional: { open: 'axis.load-place' },
    compute: ({ open, ...values }) =>
      of(values, ({ shares }, layout) => {
        const nuts = shares.filter(({ index }) => (layout.supports[index]?.kind ?? '').startsWith('nut-'));
        const [first] = [...nuts].sort((a, b) => b.share - a.share);
        if (first === undefined) return unable('none of the nuts carries weight');
        const worst = open === undefined ? first.share : Math.max(first.share, ...largestShares(layout, values.masses ?? [], values.end, nuts.map(({ index }) => index)));
        return { value: first.share + (open ?? 0) * (worst - first.share), note: `on ${first.name}` };
      }),
    formula: 'q_F = R_i / Σ R of the most loaded, R with masses at the written places (ξ = 0) to the worst (ξ = 1)',
    sources: [statics],
    rank: 3,
  }),
];
