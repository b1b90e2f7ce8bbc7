import { figure } from '../figure.ts';

const equalShare = { title: 'statics; the units share the load equally', where: 'sharing by the supports\' positions is not counted yet' } as const;

/** Axial loads on one screw, positive where they press the nut down against the direction "up" (or forward on a level axis). */
export default [
  figure({
    id: 'drive.gravity-load',
    title: 'Load at rest',
    symbol: 'F_0',
    quantity: 'force',
    unit: 'N',
    meaning: 'Axial load on one screw at rest: its share of the weight along the axis, less the counterbalance.',
    needs: { mass: 'axis.moved-mass', gravity: 'conditions.gravity', inclination: 'axis.inclination', units: 'drive.units' },
    optional: { counterbalance: 'counterbalance.force' },
    compute: ({ mass, gravity, inclination, units, counterbalance }) => {
      // A level axis has no share of the weight; sin of an exact 0 is 0.
      return (mass * gravity * Math.sin(inclination) - (counterbalance ?? 0)) / units;
    },
    formula: 'F₀ = (m g sin β − F_c) / n_u',
    sources: [equalShare],
    rank: 2,
  }),
  figure({
    id: 'drive.cruising-load',
    title: 'Load at steady speed',
    symbol: 'F_1',
    quantity: 'force',
    unit: 'N',
    meaning: 'Axial load on one screw while it moves up (or forward) at steady speed, with guide friction and process force against it.',
    needs: { rest: 'drive.gravity-load', friction: 'guides.friction-force', process: 'axis.process-force', units: 'drive.units' },
    compute: ({ rest, friction, process, units }) => rest + (friction + process) / units,
    formula: 'F₁ = F₀ + (F_g + F_p) / n_u',
    sources: [equalShare],
    rank: 3,
  }),
  figure({
    id: 'drive.lifting-load',
    title: 'Load while speeding up',
    symbol: 'F_2',
    quantity: 'force',
    unit: 'N',
    meaning: 'Largest axial load on one screw in a normal move: while it speeds up in the direction up (or forward).',
    needs: { cruising: 'drive.cruising-load', mass: 'axis.moved-mass', acceleration: 'motion.acceleration', units: 'drive.units' },
    optional: { counterweight: 'counterbalance.mass' },
    compute: ({ cruising, mass, acceleration, units, counterweight }) => cruising + ((mass + (counterweight ?? 0)) * acceleration) / units,
    formula: 'F₂ = F₁ + (m + m_c) a / n_u',
    sources: [equalShare],
    rank: 2,
  }),
  figure({
    id: 'drive.lowering-load',
    title: 'Load on the way down',
    symbol: 'F_3',
    quantity: 'force',
    unit: 'N',
    meaning: 'Axial load on one screw while it moves down (or back) at steady speed: guide friction helps to carry. Negative: the drive must push it down.',
    needs: { rest: 'drive.gravity-load', friction: 'guides.friction-force', units: 'drive.units' },
    compute: ({ rest, friction, units }) => rest - friction / units,
    formula: 'F₃ = F₀ − F_g / n_u',
    sources: [equalShare],
    rank: 3,
  }),
];
