import { mostShaftLoad } from '../../mechanics/belt-spans.ts';
import { figure, unable } from '../figure.ts';
import { impossible, travelNeeds, travelOf, travelOptional } from '../belt/path.ts';
import { radialLimit } from './radial-limit.ts';

const onlyWhere = { 'drive.transmission': ['belt'], 'drive.radial-load-on': ['motor'] } as const;

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
  radialLimit('belt', 'pulley.overhang'),
];
