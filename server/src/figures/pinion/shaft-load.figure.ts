import { figure } from '../figure.ts';
import { radialLimit } from '../motor/radial-limit.ts';
import { gearBook } from '../rack/mesh.ts';

const onlyWhere = { 'drive.transmission': ['rack'], 'drive.radial-load-on': ['motor'] } as const;

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
  radialLimit('rack', 'pinion.overhang'),
];
