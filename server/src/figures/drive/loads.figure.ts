import { figure } from '../figure.ts';

const statics = { title: 'statics' } as const;

/** Loads along the axis on one of its drives, positive against the direction "up" (or forward on a level axis). */
export default [
  figure({
    id: 'drive.load-share',
    title: 'Share of the load on one drive',
    symbol: 'q_F',
    quantity: 'ratio',
    unit: '%',
    meaning: 'Part of the load of the axis that one of its drives carries, where all carry alike.',
    needs: { units: 'drive.units' },
    onlyWhere: { 'drive.sharing': ['equal'] },
    compute: ({ units }) => 1 / units,
    formula: 'q_F = 1 / n_u',
    sources: [{ title: 'statics; the units share the load equally', where: "sharing by the positions of the supports is not counted yet" }],
    rank: 3,
  }),
  figure({
    id: 'drive.gravity-load',
    title: 'Load at rest',
    symbol: 'F_0',
    quantity: 'force',
    unit: 'N',
    meaning: 'Load along the axis on one drive at rest: its share of the weight along the axis, less the counterbalance.',
    needs: { mass: 'axis.moved-mass', gravity: 'conditions.gravity', inclination: 'axis.inclination', share: 'drive.load-share' },
    optional: { counterbalance: 'counterbalance.carried-force' },
    compute: ({ mass, gravity, inclination, share, counterbalance }) => {
      // A level axis has no share of the weight; sin of an exact 0 is 0.
      const weight = mass * gravity * Math.sin(inclination);
      const left = weight - (counterbalance ?? 0);
      // A full balance leaves nothing, not what rounding leaves.
      return Math.abs(left) < 1e-9 * Math.abs(weight) ? 0 : left * share;
    },
    formula: 'F₀ = q_F (m g sin β − F_c)',
    sources: [statics],
    rank: 2,
  }),
  figure({
    id: 'drive.cruising-load',
    title: 'Load at steady speed',
    symbol: 'F_1',
    quantity: 'force',
    unit: 'N',
    meaning: 'Load along the axis on one drive while it moves up (or forward) at steady speed, with guide friction and process force against it.',
    needs: { rest: 'drive.gravity-load', friction: 'guides.friction-force', process: 'axis.process-force', share: 'drive.load-share' },
    // On a gantry the work is done where the carriage stands, and not where the mass is.
    optional: { processShare: 'drive.process-share' },
    compute: ({ rest, friction, process, share, processShare }) => rest + friction * share + process * (processShare ?? share),
    formula: 'F₁ = F₀ + q_F (F_g + F_p); on a gantry q_F F_g + q_p F_p',
    sources: [statics],
    rank: 3,
  }),
  figure({
    id: 'drive.lifting-load',
    title: 'Load while speeding up',
    symbol: 'F_2',
    quantity: 'force',
    unit: 'N',
    meaning: 'Largest load along the axis on one drive in a normal move: while it speeds up in the direction up (or forward).',
    needs: { cruising: 'drive.cruising-load', mass: 'axis.moved-mass', acceleration: 'motion.acceleration', share: 'drive.load-share' },
    optional: { counterweight: 'counterbalance.mass' },
    compute: ({ cruising, mass, acceleration, share, counterweight }) => cruising + (mass + (counterweight ?? 0)) * acceleration * share,
    formula: 'F₂ = F₁ + q_F (m + m_c) a',
    sources: [statics],
    rank: 2,
  }),
  figure({
    id: 'drive.lowering-load',
    title: 'Load on the way down',
    symbol: 'F_3',
    quantity: 'force',
    unit: 'N',
    meaning: 'Load along the axis on one drive while it moves down (or back) at steady speed: guide friction helps to carry. Negative: the drive must push it down.',
    needs: { rest: 'drive.gravity-load', friction: 'guides.friction-force', share: 'drive.load-share' },
    compute: ({ rest, friction, share }) => rest - friction * share,
    formula: 'F₃ = F₀ − q_F F_g',
    sources: [statics],
    rank: 3,
  }),
];
