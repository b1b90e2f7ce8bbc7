import { length3 } from '../../mechanics/vector3.ts';
import { figure, unable, type Computed, type Figure, type Source } from '../figure.ts';
import { letsGo, supportsInUse, type CarrierInUse, type InUse, type SupportsInUse, type UseValues } from './in-use.ts';
import { growthLoads, misalignmentLoads } from './jam-loads.ts';
import { layoutOf, NO_SUPPORTS } from './layout.ts';

/** Shared by all of them. */
const reads = {
  onlyWith: ['supports'],
  needs: { end: 'axis.joint-stiffness-end', gravity: 'conditions.gravity', inclination: 'axis.inclination' },
  optional: { acceleration: 'motion.acceleration' },
  optionalChoices: { along: 'axis.along' },
  tables: { rows: 'axis.support-joints', masses: 'axis.mass-places' },
  names: { owners: 'axis.support-joints', massNames: 'axis.mass-places' },
} as const;

const statics: Source = { title: 'statics of a rigid plate with the inertia of all masses; the extremes of a linear function lie at corners', where: 'guides are taken not to help carry; the process force is left out' };

const of = (values: UseValues, compute: (use: SupportsInUse) => Computed): Computed => {
  const use = supportsInUse(values);
  return typeof use === 'string' ? unable(use) : compute(use);
};

/** Statics leaves a hair where nothing is carried. */
const clean = (value: number, whole: number): number => (Math.abs(value) < 1e-9 * whole ? 0 : value);

/** "on screw 3, with parts at 320, 60 mm; at rest only, since no acceleration is given" */
const noteOf = (place: string, { situation }: InUse, { leftOut }: SupportsInUse): string => [[place, situation()].filter((part) => part !== '').join(', '), leftOut].filter((part) => part !== '').join('; ');

const leastOf = (carriers: readonly CarrierInUse[]): CarrierInUse | undefined => carriers.reduce<CarrierInUse | undefined>((a, b) => (a === undefined || b.least.value < a.least.value - 1e-9 ? b : a), undefined);
const mostOf = (carriers: readonly CarrierInUse[]): CarrierInUse | undefined => carriers.reduce<CarrierInUse | undefined>((a, b) => (a === undefined || b.most.value > a.most.value + 1e-9 ? b : a), undefined);

const BOTH_WAYS = 'every support that carries weight holds both ways, so that none lifts off';
const NOTHING = 'there may be nothing that weighs';

const leastLoad = (use: SupportsInUse, carriers: readonly CarrierInUse[]): Computed => {
  const found = leastOf(carriers);
  return found === undefined ? unable(BOTH_WAYS) : { value: clean(found.least.value, 1), note: noteOf(`on ${found.name}`, found.least, use) };
};

const leastShare = (use: SupportsInUse, carriers: readonly CarrierInUse[]): Computed => {
  let least: { readonly name: string; readonly share: InUse } | undefined;
  for (const carrier of carriers) {
    const share = use.share(use.carriers.indexOf(carrier), -1);
    if (share === 'no load') return unable(NOTHING);
    if (least === undefined || share.value < least.share.value - 1e-12) least = { name: carrier.name, share };
  }
  return least === undefined ? unable(BOTH_WAYS) : { value: clean(least.share.value, 1), note: noteOf(`on ${least.name}`, least.share, use) };
};

/** The carriers that let go where they would have to pull. */
const loose = ({ carriers }: SupportsInUse, rows: UseValues['rows'], design: string | undefined): readonly CarrierInUse[] => carriers.filter(({ index }) => letsGo(rows?.[index] ?? [], design));

const withNut = { optionalChoices: { ...reads.optionalChoices, design: 'nut.design' } } as const;

const figures: readonly Figure[] = [
  figure({
    ...reads,
    id: 'supports.reaction-least-in-use',
    title: 'Least load on one support in use',
    symbol: 'R_1',
    quantity: 'force',
    unit: 'N',
    meaning: 'What the least loaded support carries with all that lies on the part at its worst place, there or absent, while the axis speeds up or brakes; negative where it has to pull.',
    compute: (values) => of(values, (use) => leastLoad(use, use.carriers)),
    formula: 'R₁ = min Σ m_i [(g + a_z)(w_F + w_x x_i + w_y y_i) − h_i (w_x a_x + w_y a_y)]',
    sources: [statics],
    rank: 2,
  }),
  figure({
    ...reads,
    id: 'supports.reaction-most-in-use',
    title: 'Largest load on one support in use',
    symbol: 'R_2',
    quantity: 'force',
    unit: 'N',
    meaning: 'What the most loaded support carries with all that lies on the part at its worst place while the axis speeds up or brakes.',
    compute: (values) =>
      of(values, (use) => {
        const found = mostOf(use.carriers);
        return found === undefined ? unable(NO_SUPPORTS) : { value: found.most.value, note: noteOf(`on ${found.name}`, found.most, use) };
      }),
    formula: 'R₂ = max Σ m_i [(g + a_z)(w_F + w_x x_i + w_y y_i) − h_i (w_x a_x + w_y a_y)]',
    sources: [statics],
    rank: 2,
  }),
  figure({
    ...reads,
    id: 'supports.share-least-in-use',
    title: 'Least share of one support in use',
    symbol: 'q_1',
    quantity: 'ratio',
    unit: '%',
    meaning: 'Part of the load of the moment that the least loaded support carries, with all that lies on the part at its worst place while the axis speeds up or brakes.',
    compute: (values) => of(values, (use) => leastShare(use, use.carriers)),
    formula: 'q₁ = min R_i / Σ R',
    sources: [statics],
    rank: 3,
  }),
  figure({
    ...reads,
    ...withNut,
    id: 'supports.lift-off-load',
    title: 'Least load on a support that lets go',
    symbol: 'R_l',
    quantity: 'force',
    unit: 'N',
    meaning: 'Least load in use on one of the supports that merely push, or of the nuts with play; negative where it lifts off. Rails, bushings and bolts hold both ways and are left out.',
    compute: ({ design, ...values }) => of(values, (use) => leastLoad(use, loose(use, values.rows, design))),
    formula: 'R_l = min R_i of wheels, balls that rest on something, and nuts with play',
    sources: [statics],
    rank: 2,
  }),
  figure({
    ...reads,
    ...withNut,
    id: 'supports.lift-off-share',
    title: 'Least share of a support that lets go',
    symbol: 'q_l',
    quantity: 'ratio',
    unit: '%',
    meaning: 'Least part of the load of the moment on one of the supports that merely push, or of the nuts with play.',
    compute: ({ design, ...values }) => of(values, (use) => leastShare(use, loose(use, values.rows, design))),
    formula: 'q_l = min R_i / Σ R of wheels, balls that rest on something, and nuts with play',
    sources: [statics],
    rank: 3,
  }),
  figure({
    ...reads,
    id: 'supports.distance-to-edge-in-use',
    title: 'Load from the edge of the supports in use',
    symbol: 'l_1',
    quantity: 'position',
    unit: 'mm',
    meaning: 'How far inside the polygon of the supports that carry weight the whole load acts at its worst, with masses at their worst places and accelerated; negative outside.',
    compute: (values) =>
      of(values, (use) => {
        if (use.carriers.length < 3) return unable('with fewer than three supports the guides keep it from tipping');
        const point = use.loadPoint();
        return point === 'no load' ? unable(NOTHING) : { value: point.value, note: noteOf('', point, use) };
      }),
    formula: 'l₁ = min over all places of the distance of (Σ m_i [(g + a_z) x_i − a_x h_i] / Σ m_i (g + a_z)) to an edge',
    sources: [{ title: 'zero-moment point of the loads; geometry' }],
    rank: 3,
  }),
  figure({
    ...reads,
    id: 'supports.load-use',
    title: 'Use of the load limit of a support',
    symbol: 'u_R',
    quantity: 'ratio',
    unit: '%',
    meaning: 'Load in use, growth and misalignment together over the load limit written for a support, at the one that is worst off.',
    optional: { ...reads.optional, strain: 'supports.growth-strain' },
    compute: ({ strain, ...values }) => {
      const layout = layoutOf(values.rows, values.owners);
      if (!layout) return unable(NO_SUPPORTS);
      if (layout.supports.every(({ loadLimit }) => loadLimit === undefined)) return unable('no support has a load limit');
      const use = supportsInUse(values);
      const growth = strain === undefined ? [] : growthLoads(layout, strain, values.end);
      const place = misalignmentLoads(layout, values.end);
      const size = (loads: readonly { readonly joint: number; readonly force: readonly [number, number, number] }[], joint: number): number => {
        const load = loads.find((one) => one.joint === joint);
        return load === undefined ? 0 : length3(load.force);
      };
      let worst = { value: 0, note: '' };
      layout.supports.forEach(({ loadLimit }, index) => {
        if (loadLimit === undefined || loadLimit <= 0) return;
        const carrier = typeof use === 'string' ? undefined : use.carriers.find((one) => one.index === index);
        const extreme = carrier && (Math.abs(carrier.least.value) > Math.abs(carrier.most.value) ? carrier.least : carrier.most);
        const value = (Math.abs(extreme?.value ?? 0) + size(growth, index) + size(place, index)) / loadLimit;
        if (value < worst.value) return;
        const situation = extreme?.situation() ?? '';
        const name = `on ${layout.joints[index]?.owner ?? ''}`;
        worst = { value, note: typeof use === 'string' ? `${name}; without the weight, since places are missing` : [situation === '' ? name : `${name}, ${situation}`, use.leftOut].filter((part) => part !== '').join('; ') };
      });
      return worst;
    },
    formula: 'u_R = (|R| + F_jϑ + F_jm) / F_lim',
    sources: [{ title: 'all at their full size, added', where: 'R the largest in use, either way' }],
    rank: 3,
  }),
];

export default figures;
