import { bushingPressure } from '../../mechanics/plain-bushing.ts';
import { guideLife, guideStaticSafety, LIFE_FORMULA_LIMIT } from '../../mechanics/guide-life.ts';
import { figure, unable, type Computed } from '../figure.ts';
import { carriageNeeds, carriageOptional, equivalentOf, loadsOf, resultant, type CarriageValues } from './carriages.ts';
import { ALL_KINDS } from './jamming.figure.ts';

const statics = { title: 'rigid slider on like springs, with inertia (d’Alembert)', where: 'masses taken midway between the carriages, in the plane in which they grip the rails' } as const;
const ASSUMED = 'Masses are taken midway between the carriages, and the drive turns the slider by its offset.';
const rolling = { 'guides.bearing': ['profile-rail', 'ball-bushing', 'self-aligning-ball-bushing'] } as const;
const plain = { 'guides.bearing': ['lined-bushing', 'polymer-bushing', 'bronze-bushing'] } as const;

const common = { needs: carriageNeeds, optional: carriageOptional, onlyWhere: { 'guides.kind': ALL_KINDS } } as const;

const of = (values: CarriageValues, pick: (resultants: readonly number[]) => Computed): Computed => {
  const loads = loadsOf(values);
  return typeof loads === 'string' ? unable(loads) : pick(loads.map(resultant));
};

export default [
  figure({
    id: 'guides.carriage-load-most',
    title: 'Largest load on one carriage',
    symbol: 'F_c,max',
    quantity: 'force',
    unit: 'N',
    meaning: `What the most loaded carriage carries across its rail while the axis speeds up or slows down. ${ASSUMED}`,
    ...common,
    compute: (values) => of(values, (all) => Math.max(...all)),
    formula: 'F_c = √((m g cos β/n)² + F_y²), Σ F_y x = F_d d_F, n = n_r n_c',
    sources: [statics],
    rank: 2,
  }),
  figure({
    id: 'guides.carriage-load-least',
    title: 'Least load on one carriage',
    symbol: 'F_c,min',
    quantity: 'force',
    unit: 'N',
    meaning: `What the least loaded carriage carries across its rail. ${ASSUMED}`,
    ...common,
    compute: (values) => of(values, (all) => Math.min(...all)),
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
    meaning: `The straight load that presses the balls of the most loaded carriage as its forces and moments do together. ${ASSUMED}`,
    onlyWhere: rolling,
    choices: { bearing: 'guides.bearing' },
    needs: { ...carriageNeeds, staticRating: 'guides.static-rating' },
    optional: { ...carriageOptional, moment: 'guides.moment-limit' },
    compute: ({ staticRating, moment, bearing, ...values }) => {
      const loads = loadsOf(values);
      const found = typeof loads === 'string' ? loads : equivalentOf(loads, bearing, staticRating, moment);
      return typeof found === 'string' ? unable(found) : found;
    },
    formula: 'P = |F_y| + |F_z| + C_0 (|M_x| + |M_y| + |M_z|)/M_0; bushings √(F_y² + F_z²)',
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
  figure({
    id: 'guides.bushing-pressure',
    title: 'Pressure in the plain bushings',
    symbol: 'p_b',
    quantity: 'pressure',
    unit: 'MPa',
    meaning: `Mean pressure of the most loaded bushing on its shaft; the edges of one bushing under a couple take more. ${ASSUMED}`,
    onlyWhere: plain,
    needs: { load: 'guides.carriage-load-most', diameter: 'guides.shaft-diameter', length: 'guides.carriage-length' },
    compute: ({ load, diameter, length }) => (diameter > 0 && length > 0 ? bushingPressure(load, diameter, length) : unable('diameter and length must be above zero')),
    formula: 'p_b = F_c,max/(d_s l_c)',
    sources: [{ title: "Budynas and Nisbett, Shigley's Mechanical Engineering Design", where: 'section 12-14' }],
    rank: 3,
  }),
];
