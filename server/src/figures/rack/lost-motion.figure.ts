import { lostMotion } from '../../mechanics/backlash.ts';
import { playFromGap, travelOfTwist } from '../../mechanics/rack-pinion.ts';
import { figure, unable } from '../figure.ts';
import { canMesh, cannotMesh, meshNeeds, meshOf } from './mesh.ts';

export default [
  figure({
    id: 'rack.play',
    title: 'Play along the rack',
    symbol: 'j',
    quantity: 'length',
    meaning: 'Play between pinion and rack where it is widest, and that of the reduction through the pinion. A sprung pinion follows its own run-out; one that is set fast opens and closes its gap once a turn.',
    needs: { ...meshNeeds, backlash: 'rack.backlash', eccentricity: 'pinion.eccentricity' },
    optional: { wheels: 'drive.reduction-backlash', preload: 'rack.preload' },
    compute: ({ backlash, eccentricity, wheels, preload, ...values }) => {
      if (!canMesh(values)) return cannotMesh;
      const mesh = meshOf(values);
      const opening = (preload ?? 0) > 0 ? 0 : playFromGap(mesh, Math.max(0, 2 * eccentricity));
      return Math.max(0, backlash) + opening + travelOfTwist(mesh, Math.max(0, wheels ?? 0));
    },
    formula: 'j = j_z + 4 e_p tan α_t + b_i d_p/2; sprung: without the second',
    sources: [{ title: 'geometry of the straight flank; the pinion is taken as set where it is tightest' }],
    rank: 2,
  }),
  figure({
    id: 'rack.lost-motion',
    title: 'Lost motion on reversal',
    symbol: 'Δ_r',
    quantity: 'length',
    meaning: 'Travel that gets lost when the axis turns round: the play, unless the weight keeps the same flanks pressed, and the give of the drive under the guide friction that changes sign.',
    needs: { play: 'rack.play', friction: 'guides.friction-force', share: 'drive.load-share' },
    optional: { stiffness: 'drive.axial-stiffness', lowering: 'drive.lowering-load', mass: 'axis.moved-mass', acceleration: 'motion.acceleration', process: 'axis.process-force', counterweight: 'counterbalance.mass' },
    compute: ({ play, friction, share, stiffness, lowering, mass, acceleration, process, counterweight }) => {
      // On the way down the weight must exceed friction, the force of the work and what its own speeding up takes, or the flanks part.
      const against = ((mass ?? 0) + (counterweight ?? 0)) * (acceleration ?? 0) + Math.abs(process ?? 0);
      const isClosed = lowering !== undefined && mass !== undefined && lowering - against * share > 0;
      const value = lostMotion(isClosed ? 0 : play, Math.max(0, friction) * share, stiffness !== undefined && stiffness > 0 ? stiffness : undefined);
      return isClosed ? { value, note: 'the weight keeps one flank pressed, so the play is not counted' } : value;
    },
    formula: 'Δ_r = j + 2 q_F F_g / k',
    sources: [{ title: 'spring with a gap; common practice, no published source' }],
    rank: 2,
  }),
  figure({
    id: 'rack.lost-motion-use',
    title: 'Lost motion over the accuracy wanted',
    symbol: 'Δ_r/ε',
    quantity: 'ratio',
    unit: '%',
    meaning: 'Lost motion on reversal over the accuracy wanted.',
    needs: { lost: 'rack.lost-motion', accuracy: 'axis.accuracy' },
    compute: ({ lost, accuracy }) => (accuracy > 0 ? lost / accuracy : unable('the accuracy wanted is 0')),
    formula: 'Δ_r / ε',
    sources: [{ title: 'definition' }],
    rank: 3,
  }),
];
