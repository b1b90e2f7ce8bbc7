import { gravityPreloadLimit, lostMotion, reversalForce } from '../../mechanics/backlash.ts';
import { figure, unable } from '../figure.ts';

const statics = { title: 'statics and Newton’s law' } as const;

export default [
  figure({
    id: 'nut.gravity-preload-limit',
    title: 'Weight closes the play up to',
    symbol: 'a_g',
    quantity: 'acceleration',
    meaning: 'Downward acceleration up to which the weight keeps the same flank pressed, so that play in the nut does no harm. Negative: it does not close it at all.',
    needs: { mass: 'axis.moved-mass', gravity: 'conditions.gravity', inclination: 'axis.inclination', friction: 'guides.friction-force', process: 'axis.process-force' },
    optional: { counterbalance: 'counterbalance.force' },
    compute: ({ mass, gravity, inclination, friction, process, counterbalance }) => {
      const along = gravity * Math.sin(inclination);
      return along <= 0 ? unable('the axis is level, so the weight closes no play') : gravityPreloadLimit(along, mass, friction, process + (counterbalance ?? 0));
    },
    formula: 'a_g = g sin β − (F_g + F_p + F_c) / m',
    sources: [statics],
    rank: 3,
  }),
  figure({
    id: 'nut.lost-motion',
    title: 'Lost motion on reversal',
    symbol: 'Δ_r',
    quantity: 'length',
    meaning: 'Travel that gets lost when the axis turns round: the play of the nut, unless the weight keeps it closed, that of the reduction through the lead, and the give of the drive under the guide friction that changes sign.',
    needs: { play: 'nut.backlash', friction: 'guides.friction-force', units: 'drive.units' },
    optional: { stiffness: 'drive.axial-stiffness', closedUpTo: 'nut.gravity-preload-limit', acceleration: 'motion.acceleration', wheels: 'drive.reduction-backlash', lead: 'screw.lead' },
    compute: ({ play, friction, units, stiffness, closedUpTo, acceleration, wheels = 0, lead = 0 }) => {
      const closed = closedUpTo !== undefined && closedUpTo > 0 && (acceleration ?? 0) <= closedUpTo;
      // The wheels turn their play through whichever way the thread is pressed: a thread that locks does not hold them to one side.
      const slack = (closed ? 0 : play) + (wheels / (2 * Math.PI)) * lead;
      const value = lostMotion(slack, friction / units, stiffness !== undefined && stiffness > 0 ? stiffness : undefined);
      return closed ? { value, note: 'the weight keeps one flank pressed, so the play of the nut is not counted' } : value;
    },
    formula: 'Δ_r = Δ + b_i l/(2π) + 2 F_g / (n_u k)',
    sources: [{ title: 'spring with a gap; common practice, no published source' }],
    rank: 2,
  }),
  figure({
    id: 'nut.reversal-force',
    title: 'Force that opens a sprung nut',
    symbol: 'F_r',
    quantity: 'force',
    unit: 'N',
    meaning: 'Largest force on one nut that pulls it off its fixed half on reversal. A weight along the axis is taken to press on the fixed half.',
    needs: { mass: 'axis.moved-mass', acceleration: 'motion.acceleration', friction: 'guides.friction-force', process: 'axis.process-force', units: 'drive.units', load: 'drive.gravity-load' },
    compute: ({ mass, acceleration, friction, process, units, load }) => Math.max(0, reversalForce(mass, acceleration, friction, process) / units - Math.abs(load)),
    formula: 'F_r = (m a + F_g + F_p) / n_u − F₀, at least 0',
    sources: [statics],
    rank: 3,
  }),
  figure({
    id: 'nut.spring-reserve',
    title: 'Preload over the force that opens the nut',
    symbol: 'F_pre/F_r',
    quantity: 'ratio',
    meaning: 'Below 1 the sprung nut opens on reversal and its play is back.',
    needs: { preload: 'nut.preload', force: 'nut.reversal-force' },
    onlyWhere: { 'nut.design': ['spring-loaded'] },
    compute: ({ preload, force }) => (force === 0 ? unable('the weight keeps the nut closed by itself') : preload / force),
    formula: 'F_pre / F_r',
    sources: [statics],
    rank: 2,
  }),
];
