import { radialLimitAt } from '../../mechanics/belt-strength.ts';
import { figure, unable } from '../figure.ts';
import { gearBook } from '../rack/mesh.ts';

const onlyWhere = { 'drive.transmission': ['rack'], 'drive.radial-load-on': ['motor'] } as const;
const lever = { title: 'lever of an overhung shaft: common practice; a trade table for a 42 mm frame follows it within 10 %', where: 'from memory', weak: true } as const;

export default [
  figure({
    id: 'motor.radial-load',
    onlyWhere,
    title: 'Load across the motor shaft',
    symbol: 'F_r',
    quantity: 'force',
    unit: 'N',
    meaning: 'Largest force of the teeth across the shaft of the motor that carries the pinion: along the rack, and out of it or under its spring.',
    needs: { force: 'rack.tooth-force', separating: 'rack.separating-force' },
    optional: { preload: 'rack.preload' },
    compute: ({ force, separating, preload }) => Math.hypot(force, Math.max(separating, preload ?? 0)),
    formula: 'F_r = √(F_t² + max(F_s, F_v)²)',
    sources: [{ ...gearBook, where: 'section 13-14' }],
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
    needs: { limit: 'motor.radial-load-limit', distance: 'motor.radial-load-distance', overhang: 'pinion.overhang' },
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
