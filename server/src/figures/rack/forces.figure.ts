import { contactRatio, toothForces } from '../../mechanics/rack-pinion.ts';
import { figure, unable } from '../figure.ts';
import { canMesh, cannotMesh, gearBook, meshNeeds, meshOf } from './mesh.ts';

const forces = { ...gearBook, where: 'sections 13-14 and 13-16' } as const;

export default [
  figure({
    id: 'rack.contact-ratio',
    title: 'Contact ratio',
    symbol: 'ε_z',
    quantity: 'ratio',
    meaning: 'How many teeth carry on average. Below 1 the motion knocks from tooth to tooth; 1.2 and more is usual.',
    needs: { ...meshNeeds, rack: 'rack.face-width', pinion: 'pinion.face-width' },
    compute: ({ rack, pinion, ...values }) => (!canMesh(values) ? cannotMesh : Math.min(rack, pinion) > 0 ? contactRatio(meshOf(values), Math.min(rack, pinion)) : unable('the teeth have no width')),
    formula: 'ε_z = (√(r_a² − r_b²) − r sin α_t + m_n/sin α_t) / (π m_t cos α_t) + b sin β_z / (π m_n)',
    sources: [{ ...gearBook, where: 'section 13-6; ISO 21771 for helical teeth' }],
    rank: 3,
  }),
  figure({
    id: 'rack.tooth-force',
    title: 'Force on the teeth',
    symbol: 'F_t',
    quantity: 'force',
    unit: 'N',
    meaning: 'Largest force along the rack that one pinion puts on it in a normal move: speeding up on the way up, or slowing down on the way down.',
    needs: { lifting: 'drive.lifting-load', lowering: 'drive.lowering-load', mass: 'axis.moved-mass', acceleration: 'motion.acceleration', share: 'drive.load-share' },
    optional: { counterweight: 'counterbalance.mass' },
    compute: ({ lifting, lowering, mass, counterweight, acceleration, share }) => Math.max(Math.abs(lifting), Math.abs(lowering) + (mass + (counterweight ?? 0)) * acceleration * share),
    formula: 'F_t = max(|F₂|, |F₃| + q_F (m + m_c) a)',
    sources: [{ title: 'Newton’s law' }],
    rank: 2,
  }),
  figure({
    id: 'rack.separating-force',
    title: 'Force that parts pinion and rack',
    symbol: 'F_s',
    quantity: 'force',
    unit: 'N',
    meaning: 'Force across the rack with which the flanks push the pinion out of it.',
    needs: { ...meshNeeds, force: 'rack.tooth-force' },
    compute: ({ force, ...values }) => (canMesh(values) ? toothForces(meshOf(values), force).separating : cannotMesh),
    formula: 'F_s = F_t tan α_z / cos β_z',
    sources: [forces],
    rank: 3,
  }),
  figure({
    id: 'rack.preload-reserve',
    title: 'Spring over the force that parts the teeth',
    symbol: 'F_v/F_s',
    quantity: 'ratio',
    meaning: 'Below 1 the flanks push the sprung pinion out of the rack at the hardest moment of a move.',
    needs: { preload: 'rack.preload', force: 'rack.separating-force' },
    compute: ({ preload, force }) => (preload <= 0 ? unable('no spring presses the pinion into the rack') : force > 0 ? preload / force : unable('nothing parts the teeth')),
    formula: 'F_v / F_s',
    sources: [{ title: 'statics of the sprung pinion' }],
    rank: 2,
  }),
];
