import { mostShaftLoad } from '../../mechanics/belt-spans.ts';
import { radialLimitAt } from '../../mechanics/belt-strength.ts';
import { figure, unable } from '../figure.ts';
import { impossible, travelNeeds, travelOf, travelOptional } from '../belt/path.ts';

const onlyWhere = { 'drive.transmission': ['belt'], 'drive.radial-load-on': ['motor'] } as const;
const lever = { title: 'lever of an overhung shaft: common practice; a trade table for a 42 mm frame follows it within 10 %', where: 'from memory', weak: true } as const;

export default [
  figure({
    id: 'motor.radial-load',
    onlyWhere,
    title: 'Load across the motor shaft',
    symbol: 'F_r',
    quantity: 'force',
    unit: 'N',
    meaning: 'Largest pull across the shaft of the motor that carries pulley or pinion.',
    needs: { ...travelNeeds, tension: 'belt.tension', towards: 'belt.force-towards', away: 'belt.force-away', wrap: 'pulley.wrap' },
    optional: travelOptional,
    compute: ({ tension, towards, away, wrap, ...travel }) => {
      const reason = impossible(travel);
      return reason === undefined ? mostShaftLoad(travelOf(travel), tension, { towards, away }, wrap) : unable(reason);
    },
    formula: 'F_r = √(T₁² + T₂² − 2 T₁ T₂ cos θ)',
    sources: [{ title: 'both spans added as vectors' }],
    rank: 2,
  }),
  figure({
    id: 'motor.radial-limit',
    onlyWhere,
    title: 'Load that the motor shaft bears there',
    symbol: 'F_r,x',
    quantity: 'force',
    unit: 'N',
    meaning: 'Radial limit of the motor, carried over to where the belt or pinion pulls: the farther out, the less.',
    needs: { limit: 'motor.radial-load-limit', distance: 'motor.radial-load-distance', overhang: 'pulley.overhang' },
    compute: ({ limit, distance, overhang }) => (distance > 0 && overhang > 0 && limit > 0 ? radialLimitAt(limit, distance, overhang) : unable('a distance or the limit is 0')),
    formula: 'F_r,x = F_r,max x_r / x_p, at most 2.5 F_r,max',
    sources: [lever],
    rank: 3,
  }),
  figure({
    id: 'motor.radial-load-use',
    onlyWhere,
    title: 'Load across the motor shaft over its limit',
    symbol: 'u_r',
    quantity: 'ratio',
    unit: '%',
    meaning: 'Pull across the motor shaft over what it bears at that place.',
    needs: { load: 'motor.radial-load', limit: 'motor.radial-limit' },
    compute: ({ load, limit }) => load / limit,
    formula: 'u_r = F_r / F_r,x',
    sources: [{ title: 'definition' }],
    rank: 2,
  }),
];
