import { guideLife, guideStaticSafety, LIFE_FORMULA_LIMIT } from '../../mechanics/guide-life.ts';
import { figure, unable, type Computed } from '../figure.ts';
import { remarkOn } from './carriage-words.ts';
import { carriageChoices, carriageNames, carriageNeeds, carriageOptional, carriageTables, equivalentOf, loadsOf, resultant, type CarriageCases, type CarriageValues, type LoadedCarriage } from './carriages.ts';
import { ALL_KINDS } from './jamming.figure.ts';

const statics = { title: 'rigid slider on like springs, with inertia (d’Alembert)' } as const;
const rolling = { 'guides.bearing': ['profile-rail', 'ball-bushing', 'self-aligning-ball-bushing'] } as const;

const reads = { optional: carriageOptional, optionalChoices: carriageChoices, tables: carriageTables, names: carriageNames } as const;
const common = { ...reads, needs: carriageNeeds, onlyWhere: { 'guides.kind': ALL_KINDS } } as const;

const remarked = (value: number, note: string | undefined): Computed => (note === undefined ? value : { value, note });

/** The carriage on which something is largest. */
const most = ({ loads }: CarriageCases, of: (one: LoadedCarriage) => number): LoadedCarriage | undefined =>
  loads.reduce<LoadedCarriage | undefined>((best, one) => (best === undefined || of(one) > of(best) + 1e-9 * Math.abs(of(best)) ? one : best), undefined);

function across(values: CarriageValues, sign: 1 | -1): Computed {
  const cases = loadsOf(values);
  if (typeof cases === 'string') return unable(cases);
  const found = most(cases, ({ load }) => sign * resultant(load));
  return found ? remarked(resultant(found.load), remarkOn(cases, found)) : unable('there is no carriage');
}

export default [
  figure({
    id: 'guides.carriage-load-most',
    title: 'Largest load on one carriage',
    symbol: 'F_c,max',
    quantity: 'force',
    unit: 'N',
    meaning: 'What the most loaded carriage carries across its rail while the axis speeds up or slows down, with every mass in the worst corner of its area.',
    ...common,
    compute: (values) => across(values, 1),
    formula: 'F_c = √(F_y² + F_z²); four alike: F_z = m g/4 ± M_y/(2 b_c) ± M_x/(2 b_r), F_y = ± M_z/(2 b_c), M = Σ r_i × m_i (g − a), drive at d_F',
    sources: [statics],
    rank: 2,
  }),
  figure({
    id: 'guides.carriage-load-least',
    title: 'Least load on one carriage',
    symbol: 'F_c,min',
    quantity: 'force',
    unit: 'N',
    meaning: 'What the least loaded carriage carries across its rail.',
    ...common,
    compute: (values) => across(values, -1),
    formula: 'as F_c,max, the least of all',
    sources: [statics],
    rank: 3,
  }),
  figure({
    id: 'guides.equivalent-load',
    title: 'Equivalent load on a carriage',
    symbol: 'P',
    quantity: 'force',
    unit: 'N',
    meaning: 'The straight load that presses the balls of the most loaded carriage as its forces and moments do together, what rails out of line and preload press on it included.',
    onlyWhere: rolling,
    ...reads,
    choices: { bearing: 'guides.bearing' },
    needs: { ...carriageNeeds, staticRating: 'guides.static-rating' },
    optional: { ...carriageOptional, moment: 'guides.moment-limit', sideways: 'guides.mismatch-side-force', away: 'guides.mismatch-height-force', preload: 'guides.preload-force' },
    compute: ({ staticRating, moment, bearing, sideways = 0, away = 0, preload = 0, ...values }) => {
      const cases = loadsOf(values);
      if (typeof cases === 'string') return unable(cases);
      const found = equivalentOf(cases.loads, bearing, staticRating, moment, { sideways, away, preload });
      return typeof found === 'string' ? unable(found) : remarked(found.value, remarkOn(cases, found.at));
    },
    formula: 'P = |F_y| + N_y + |F_z| + N_z + C_0 (|M_x| + |M_y| + |M_z|)/M_0 + F_pre; bushings √((|F_y| + N_y)² + (|F_z| + N_z)²)',
    sources: [{ title: 'ISO 14728-2, as quoted in the trade, with the least of the three moment ratings; cautious', weak: true }],
    rank: 3,
  }),
  figure({
    id: 'guides.static-safety',
    title: 'Static safety of the carriages',
    symbol: 'S_0',
    quantity: 'ratio',
    meaning: 'Static load rating over the equivalent load; below 1 the balls dent their races, 2 and more are usual, 5 with shock.',
    onlyWhere: rolling,
    needs: { load: 'guides.equivalent-load', rating: 'guides.static-rating' },
    compute: ({ load, rating }) => (load > 0 && rating > 0 ? guideStaticSafety(rating, load) : unable('nothing presses on the carriages')),
    formula: 'S_0 = C_0 / P',
    sources: [{ title: 'ISO 14728-2, as quoted in the trade', weak: true }],
    rank: 2,
  }),
  figure({
    id: 'guides.life-travel',
    title: 'Rating life of the guides',
    symbol: 'L_10',
    quantity: 'distance',
    unit: 'km',
    meaning: 'Travel that nine of ten carriages reach under their equivalent load before they pit, when lubricated and clean.',
    onlyWhere: rolling,
    needs: { load: 'guides.equivalent-load', rating: 'guides.dynamic-rating', ratedTravel: 'guides.rated-travel', loadFactor: 'guides.load-factor' },
    compute: ({ load, rating, ratedTravel, loadFactor }) => {
      if (!(load > 0 && rating > 0 && ratedTravel > 0)) return unable('nothing presses on the carriages');
      const value = guideLife({ element: 'ball', dynamicRating: rating, ratedTravel }, load, Math.max(1, loadFactor));
      return load > LIFE_FORMULA_LIMIT * rating ? { value, note: 'the load is above half of the dynamic rating, where the formula promises too much' } : value;
    },
    formula: 'L_10 = B (C/(f_w P))³',
    sources: [{ title: 'ISO 14728-1, as quoted in the trade', weak: true }],
    rank: 2,
  }),
];
