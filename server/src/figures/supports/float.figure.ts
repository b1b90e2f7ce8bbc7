import { countConstraints } from '../../mechanics/constraint-rank.ts';
import { figure, unable, type Computed } from '../figure.ts';
import { floatNeeds } from './float-needs.ts';
import { layoutOf, NO_SUPPORTS, wrenchesIn } from './layout.ts';

const tables = { rows: 'axis.support-joints' } as const;
const names = { owners: 'axis.support-joints' } as const;
const needs = { end: 'axis.joint-stiffness-end' } as const;
const optional = { strain: 'supports.growth-strain' } as const;
const sources = [{ title: 'rigid motion of the part until every joint fits; even growth' }];

interface Values { readonly rows: readonly (readonly number[])[] | undefined; readonly owners: readonly string[] | undefined; readonly end: number; readonly strain: number | undefined }

/** The support that uses most of its float. */
function tightest({ rows, owners, end, strain }: Values, value: (need: number, float: number) => number): Computed {
  const layout = layoutOf(rows, owners);
  if (!layout) return unable(NO_SUPPORTS);
  if (layout.supports.every(({ float }) => float === undefined)) return unable('no support says how far it can slide (float)');
  if (strain === undefined && layout.supports.every(({ offset, tilt }) => offset === 0 && tilt === 0)) return unable('neither how warm the carried part gets nor how far a support may stand beside its place is known');
  if (countConstraints(wrenchesIn(layout, 'drives held'), layout.scale).free.length > 0) return unable('the carried part is not held, so that it could slide anywhere');
  const [first, ...others] = floatNeeds(layout, strain ?? 0, end);
  if (first === undefined) return unable('none of the supports with a float lets go of anything by sliding');
  const worst = others.reduce((most, one) => (one.need / one.float > most.need / most.float * (1 + 1e-9) ? one : most), first);
  return { value: value(worst.need, worst.float), note: `on ${layout.joints[worst.index]?.owner ?? ''}` };
}

export default [
  figure({
    id: 'supports.float-need',
    title: 'Way that a support slides',
    symbol: 's_f',
    quantity: 'length',
    unit: 'mm',
    meaning: 'How far growth and misalignment move the part at the support with the least float to spare, in the directions in which that floats.',
    onlyWith: ['supports'],
    needs, optional, tables, names,
    compute: (values) => tightest(values, (need) => need),
    formula: 's_f = |ε p · t − (t; p × t) · u| + Σ |t · u_i| + offset',
    sources,
    rank: 3,
  }),
  figure({
    id: 'supports.float-use',
    title: 'Use of the float',
    symbol: 's_f/s_lim',
    quantity: 'ratio',
    unit: '%',
    meaning: 'How much growth and misalignment use of what the tightest support can slide; above 100 % it holds after all, and jams.',
    onlyWith: ['supports'],
    needs, optional, tables, names,
    compute: (values) => tightest(values, (need, float) => need / float),
    formula: 's_f / float',
    sources,
    rank: 2,
  }),
];
