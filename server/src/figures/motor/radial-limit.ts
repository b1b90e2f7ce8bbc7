import { radialLimitAt } from '../../mechanics/belt-strength.ts';
import { figure, unable, type Figure } from '../figure.ts';

const lever = { title: 'lever of an overhung shaft: common practice; a trade table for a 42 mm frame follows it within 10 %', where: 'from memory', weak: true } as const;

/** The variant of `motor.radial-limit` for one kind of drive; `overhang` is the entry that says how far out it pulls. */
export const radialLimit = (transmission: string, overhang: string): Figure =>
  figure({
    id: 'motor.radial-limit',
    onlyWhere: { 'drive.transmission': [transmission], 'drive.radial-load-on': ['motor'] },
    title: 'Load that the motor shaft bears there',
    symbol: 'F_r,x',
    quantity: 'force',
    unit: 'N',
    meaning: 'Radial limit of the motor, carried over to where the belt or pinion pulls: the farther out, the less.',
    needs: { limit: 'motor.radial-load-limit', distance: 'motor.radial-load-distance', overhang },
    compute: ({ limit, distance, overhang: out }) => (distance > 0 && out > 0 && limit > 0 ? radialLimitAt(limit, distance, out) : unable('a distance or the limit is 0')),
    formula: 'F_r,x = F_r,max x_r / x_p, at most 2.5 F_r,max',
    sources: [lever],
    rank: 3,
  });
