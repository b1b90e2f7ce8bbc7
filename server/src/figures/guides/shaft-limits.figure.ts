import { figure, unable } from '../figure.ts';
import { onRoundShafts, overTravel, shaftNeeds, shaftOptional } from './bending-shaft.ts';

const BUSHINGS = ['ball-bushing', 'self-aligning-ball-bushing', 'lined-bushing', 'polymer-bushing', 'bronze-bushing'] as const;

export default [
  figure({
    id: 'guides.bushing-angle',
    title: 'Angle between shaft and bushing',
    symbol: 'θ_b',
    quantity: 'angle',
    unit: 'mrad',
    meaning: 'Angle at which the bent shaft goes through the bushing where the two stand most askew; a carriage with one bushing on each shaft follows the shafts and feels none.',
    onlyWhere: { ...onRoundShafts, 'guides.bearing': BUSHINGS },
    needs: shaftNeeds,
    optional: shaftOptional,
    compute: (values) => {
      const over = overTravel(values);
      return typeof over === 'string' ? unable(over) : over.mostAskew.bearingAngle;
    },
    formula: "θ_b = |y' − (y₂ − y₁)/b_c|",
    sources: [{ title: 'Euler-Bernoulli beam', where: "for instance Roark's Formulas for Stress and Strain, chapter 8", weak: true }],
    rank: 3,
  }),
  figure({
    id: 'guides.bushing-angle-use',
    title: 'Use of the angle that a bushing bears',
    symbol: 'θ_b/θ_0',
    quantity: 'ratio',
    unit: '%',
    meaning: 'Angle between bent shaft and bushing over what the bushing bears.',
    onlyWhere: { ...onRoundShafts, 'guides.bearing': BUSHINGS },
    needs: { angle: 'guides.bushing-angle', limit: 'guides.tilt-limit' },
    compute: ({ angle, limit }) => (limit > 0 ? angle / limit : unable('the limit must be above zero')),
    formula: 'θ_b / θ₀',
    sources: [{ title: 'limits: 0.1° rigid, 0.5° self-aligning; from memory', weak: true }],
    rank: 2,
  }),
  figure({
    id: 'guides.shaft-stress-use',
    title: 'Bending stress over the yield strength of the shafts',
    symbol: 'σ_s/σ_y',
    quantity: 'ratio',
    unit: '%',
    meaning: 'From 100 % on the core of a shaft stays bent.',
    onlyWhere: onRoundShafts,
    needs: { stress: 'guides.shaft-stress', limit: 'guides.shaft-yield' },
    compute: ({ stress, limit }) => (limit > 0 ? stress / limit : unable('the yield strength must be above zero')),
    formula: 'σ_s / σ_y',
    sources: [{ title: 'definition' }],
    rank: 3,
  }),
];
