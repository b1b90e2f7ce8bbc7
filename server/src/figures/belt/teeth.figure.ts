import { meshFactor, toothCapacity } from '../../mechanics/belt-strength.ts';
import { figure, unable } from '../figure.ts';

const page = { title: 'data pages of polyurethane belts, read: load of a tooth times teeth, 6 or 12 at most', where: 'at rest; other profiles from memory', weak: true } as const;
const note = { title: 'application note on tooth engagement, read', where: 'a fifth less for each tooth missing from six' } as const;

export default [
  figure({
    id: 'belt.mesh-factor',
    title: 'Capacity left by the teeth in mesh',
    symbol: 'k_z',
    quantity: 'ratio',
    unit: '%',
    meaning: 'What is left of the capacity of the belt where fewer than six whole teeth lie on the driving pulley.',
    needs: { teeth: 'pulley.teeth-in-mesh' },
    compute: ({ teeth }) => meshFactor(teeth),
    formula: 'k_z = 1 − 0.2 (6 − z_m), from 0 to 1, whole teeth only',
    sources: [note],
    rank: 3,
  }),
  figure({
    id: 'belt.tooth-limit',
    title: 'Force that the teeth can pass on',
    symbol: 'F_z',
    quantity: 'force',
    unit: 'N',
    meaning: 'Force that all teeth in mesh can pass on together, at low to moderate speed.',
    needs: { load: 'belt.tooth-capacity', teeth: 'pulley.teeth-in-mesh', most: 'belt.mesh-limit' },
    compute: ({ load, teeth, most }) => toothCapacity(load, 1, teeth, most),
    formula: 'F_z = f_z min(z_m, z_max); below six teeth 6 f_z k_z',
    sources: [page, note],
    rank: 3,
  }),
  figure({
    id: 'belt.tooth-use',
    title: 'Load on the teeth over what they bear',
    symbol: 'u_z',
    quantity: 'ratio',
    unit: '%',
    meaning: 'Largest driving force over what the teeth in mesh can pass on.',
    needs: { towards: 'belt.force-towards', away: 'belt.force-away', limit: 'belt.tooth-limit' },
    compute: ({ towards, away, limit }) => (limit > 0 ? Math.max(towards, away) / limit : unable('so few teeth in mesh count for nothing')),
    formula: 'u_z = max(F_t, F_a) / F_z',
    sources: [page],
    rank: 2,
  }),
];
