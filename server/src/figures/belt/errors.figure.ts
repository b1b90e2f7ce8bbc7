import { gravityPreloadLimit, lostMotion } from '../../mechanics/backlash.ts';
import { figure, unable } from '../figure.ts';

const onlyWhere = { 'drive.transmission': ['belt'] } as const;
const worstCase = [{ title: 'worst case: errors added, not averaged' }] as const;

export default [
  figure({
    id: 'belt.lost-motion',
    title: 'Lost motion on reversal',
    symbol: 'Δ_r',
    quantity: 'length',
    meaning: 'Travel that gets lost when the axis turns round: play of the teeth and of the reduction, unless the weight keeps them pressed to one side, and the give of the drive under the guide friction that changes sign.',
    needs: { play: 'belt.backlash', friction: 'guides.friction-force', share: 'drive.load-share', travel: 'drive.travel-per-shaft-turn' },
    optional: {
      stiffness: 'drive.axial-stiffness', wheels: 'drive.reduction-backlash', mass: 'axis.moved-mass', gravity: 'conditions.gravity', inclination: 'axis.inclination', process: 'axis.process-force',
      acceleration: 'motion.acceleration', counterbalance: 'counterbalance.carried-force',
    },
    compute: ({ play, friction, share, travel, stiffness, wheels = 0, mass, gravity = 0, inclination = 0, process = 0, acceleration = 0, counterbalance = 0 }) => {
      const along = gravity * Math.sin(inclination);
      const closedUpTo = mass !== undefined && along > 0 ? gravityPreloadLimit(along, mass, friction, process + counterbalance) : 0;
      const closed = closedUpTo > 0 && acceleration <= closedUpTo;
      const slack = closed ? 0 : play + (wheels / (2 * Math.PI)) * travel;
      const value = lostMotion(slack, friction * share, stiffness !== undefined && stiffness > 0 ? stiffness : undefined);
      return closed ? { value, note: 'the weight keeps the teeth pressed to one side, so their play is not counted' } : value;
    },
    formula: 'Δ_r = Δ_b + b_i p_w/(2π) + 2 q_F F_g / k',
    sources: [{ title: 'spring with a gap; common practice, no published source' }],
    rank: 2,
  }),
  figure({
    id: 'belt.periodic-error',
    title: 'Errors that come back',
    symbol: 'e_per',
    quantity: 'length',
    meaning: 'Pulley and idlers out of true, and unequal teeth, from peak to peak together: they come back with every turn and every tooth, and no calibration takes them out.',
    needs: { pulley: 'pulley.eccentricity-error', teeth: 'belt.tooth-error' },
    optional: { idlers: 'idlers.eccentricity-error' },
    compute: ({ pulley, teeth, idlers = 0 }) => pulley + teeth + idlers,
    formula: 'e_per = e_Σp + e_z + e_Σi',
    sources: worstCase,
    rank: 3,
  }),
  figure({
    id: 'belt.length-error',
    title: 'Error of the pitch over the travel',
    symbol: 'e_L',
    quantity: 'length',
    meaning: 'How far a whole travel may be off because the pitch of the belt is not exactly what it is called: measure it and correct the steps per millimetre.',
    needs: { tolerance: 'belt.length-tolerance', travel: 'axis.travel' },
    compute: ({ tolerance, travel }) => tolerance * travel,
    formula: 'e_L = τ_b s',
    sources: [{ title: 'definition' }],
    rank: 3,
  }),
  figure({
    id: 'belt.position-error',
    title: 'Position error after calibration',
    symbol: 'e_k',
    quantity: 'length',
    meaning: 'What is left of the position error once the steps per millimetre are set by a measurement over the whole travel: errors that come back, those of the reduction, and lost motion on reversal.',
    needs: { periodic: 'belt.periodic-error', travel: 'drive.travel-per-shaft-turn' },
    optional: { lost: 'belt.lost-motion', wheels: 'drive.reduction-error' },
    compute: ({ periodic, travel, lost = 0, wheels = 0 }) => periodic + (2 * wheels * travel) / (2 * Math.PI) + lost,
    formula: 'e_k = e_per + 2 ε_i p_w/(2π) + Δ_r',
    sources: worstCase,
    rank: 2,
  }),
  figure({
    id: 'drive.position-error',
    onlyWhere,
    title: 'Position error over the travel',
    symbol: 'e_Σ',
    quantity: 'length',
    meaning: 'Error of the pitch of the belt, errors that come back with turns and teeth, and lost motion on reversal together, each at its full size.',
    needs: { length: 'belt.length-error', others: 'belt.position-error' },
    compute: ({ length, others }) => length + others,
    formula: 'e_Σ = e_L + e_k',
    sources: worstCase,
    rank: 2,
  }),
  figure({
    id: 'belt.position-error-use',
    title: 'Position error of the belt over the accuracy wanted',
    symbol: 'e_k/ε',
    quantity: 'ratio',
    unit: '%',
    meaning: 'What calibration leaves of the errors of belt, pulley and idlers, with lost motion, over the accuracy wanted.',
    needs: { error: 'belt.position-error', accuracy: 'axis.accuracy' },
    compute: ({ error, accuracy }) => (accuracy > 0 ? error / accuracy : unable('the accuracy wanted is 0')),
    formula: 'e_k / ε',
    sources: [{ title: 'definition' }],
    rank: 3,
  }),
];
