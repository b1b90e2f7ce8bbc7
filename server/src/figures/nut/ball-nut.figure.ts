import { ballPass, ballsPerTurn, liftOffForce, speedFactor } from '../../mechanics/ball-screw.ts';
import { equivalentMeanLoad, lifeAsTravelAndTime, preloadedLife, ratingLife, staticSafety, type DutyPhase } from '../../mechanics/ball-screw-life.ts';
import { figure, unable } from '../figure.ts';

const life = { title: 'ISO 3408-5:2006', where: 'as quoted by others; the standard was not opened', weak: true } as const;
const ball = { 'screw.thread': ['ball'] } as const;
const duty = {
  cruising: 'drive.cruising-load', lifting: 'drive.lifting-load', lowering: 'drive.lowering-load',
  speed: 'motion.speed', acceleration: 'motion.acceleration', travel: 'axis.travel', lead: 'screw.lead',
} as const;

interface Duty {
  readonly cruising: number;
  readonly lifting: number;
  readonly lowering: number;
  readonly speed: number;
  readonly acceleration: number;
  readonly travel: number;
  readonly lead: number;
}

/** One full travel there and back: speeding up, cruising and slowing down each way, weighted by the turns in each. */
function phasesOf({ cruising, lifting, lowering, speed, acceleration, travel, lead }: Duty): readonly DutyPhase[] {
  const ramp = acceleration > 0 ? Math.min(speed ** 2 / (2 * acceleration), travel / 2) : 0;
  const inertia = lifting - cruising;
  const turns = (distance: number): number => distance / lead;
  return [
    { force: cruising + inertia, turns: turns(ramp) },
    { force: cruising, turns: turns(travel - 2 * ramp) },
    { force: cruising - inertia, turns: turns(ramp) },
    { force: lowering - inertia, turns: turns(ramp) },
    { force: lowering, turns: turns(travel - 2 * ramp) },
    { force: lowering + inertia, turns: turns(ramp) },
  ];
}

export default [
  figure({
    id: 'nut.mean-load',
    title: 'Mean load of the ball nut',
    symbol: 'F_m',
    quantity: 'force',
    unit: 'N',
    meaning: 'The steady load that tires the balls as much as one full travel there and back does.',
    needs: duty,
    onlyWhere: ball,
    compute: (values) => {
      const mean = equivalentMeanLoad(phasesOf(values));
      return mean === 'no motion' ? unable('the axis does not move') : mean;
    },
    formula: 'F_m = ∛(Σ |F_i|³ r_i / Σ r_i), r_i turns in each phase of a full travel there and back',
    sources: [life],
    rank: 2,
  }),
  figure({
    id: 'nut.life-turns',
    title: 'Rating life in turns',
    symbol: 'L₁₀',
    quantity: 'revolutions',
    meaning: 'Turns that nine of ten ball nuts reach before the balls tire.',
    needs: { ...duty, rating: 'nut.dynamic-rating', factor: 'nut.load-factor' },
    optional: { preload: 'nut.preload' },
    choices: { design: 'nut.design' },
    onlyWhere: ball,
    compute: (values) => {
      const { rating, factor, preload, design } = values;
      const phases = phasesOf(values);
      const mean = equivalentMeanLoad(phases);
      if (mean === 'no motion') return unable('the axis does not move');
      const turns = design === 'preloaded-ball' && preload !== undefined ? preloadedLife(rating, phases, preload, factor) : ratingLife(rating, mean, factor);
      if (turns === 'no motion' || turns === Infinity) return unable('without load nothing tires the balls');
      return turns > 1e8 ? { value: turns, note: 'above 100 million turns fatigue is not what ends the nut: lubrication and dirt are' } : turns;
    },
    formula: 'L₁₀ = (C_a / (f_w F_m))³ · 10⁶; preloaded: both halves, (L₁^(−10/9) + L₂^(−10/9))^(−9/10)',
    sources: [life],
    rank: 3,
  }),
  figure({
    id: 'nut.life-travel',
    title: 'Rating life as travel',
    symbol: 'L_s',
    quantity: 'distance',
    unit: 'km',
    meaning: 'Distance that nine of ten ball nuts run before the balls tire.',
    needs: { turns: 'nut.life-turns', lead: 'screw.lead' },
    compute: ({ turns, lead }) => turns * lead,
    formula: 'L_s = L₁₀ l',
    sources: [life],
    rank: 3,
  }),
  figure({
    id: 'nut.life-hours',
    title: 'Rating life in hours of motion',
    symbol: 'L_h',
    quantity: 'life-time',
    unit: 'h',
    meaning: 'Hours in motion that nine of ten ball nuts reach, at the mean speed of a full travel.',
    needs: { turns: 'nut.life-turns', lead: 'screw.lead', speed: 'motion.speed', acceleration: 'motion.acceleration', travel: 'axis.travel' },
    compute: ({ turns, lead, speed, acceleration, travel }) => {
      if (speed <= 0 || travel <= 0) return unable('the axis does not move');
      const ramp = acceleration > 0 ? speed ** 2 / (2 * acceleration) : 0;
      // A travel too short to reach the speed peaks at sqrt(a s).
      const duration = 2 * ramp <= travel ? travel / speed + (acceleration > 0 ? speed / acceleration : 0) : 2 * Math.sqrt(travel / acceleration);
      return lifeAsTravelAndTime(turns, lead, (2 * Math.PI * travel) / (lead * duration)).time;
    },
    formula: 'L_h = L₁₀ / n_m, n_m = s / (l t), t time of a full travel',
    sources: [life],
    rank: 2,
  }),
  figure({
    id: 'nut.static-safety',
    title: 'Static safety of the ball nut',
    symbol: 's₀',
    quantity: 'ratio',
    meaning: 'Static rating over the largest load: below 1 the balls leave lasting dents.',
    needs: { rating: 'nut.static-rating', load: 'drive.largest-load' },
    onlyWhere: ball,
    compute: ({ rating, load }) => (load > 0 ? staticSafety(rating, load) : unable('there is no load')),
    formula: 's₀ = C_0a / F_max',
    sources: [life],
    rank: 2,
  }),
  figure({
    id: 'nut.static-safety-wanted',
    title: 'Static safety wanted',
    symbol: 's_0,w',
    quantity: 'ratio',
    meaning: '1.5 for smooth running, 2 where a process force shakes the nut.',
    needs: { process: 'axis.process-force' },
    onlyWhere: ball,
    compute: ({ process }) => (process > 0 ? 2 : 1.5),
    formula: '1.5; 2 with a process force',
    sources: [{ title: 'common practice', where: 'no published source', weak: true }],
    rank: 3,
  }),
  figure({
    id: 'nut.speed-factor',
    title: 'Diameter times speed',
    symbol: 'd n',
    quantity: 'diameter-speed',
    unit: 'mm·rpm',
    meaning: 'How hard the balls are flung through the return: nominal diameter times turning speed.',
    needs: { diameter: 'screw.major-diameter', turning: 'screw.turning-speed' },
    onlyWhere: ball,
    compute: ({ diameter, turning }) => speedFactor(diameter, turning),
    formula: 'd · n',
    sources: [{ title: 'common practice', where: 'no published source' }],
    rank: 2,
  }),
  figure({
    id: 'nut.balls-per-turn',
    title: 'Balls in one turn',
    symbol: 'Z',
    quantity: 'ratio',
    meaning: 'Balls that lie in one turn of the thread, touching each other.',
    needs: { circle: 'screw.pitch-diameter', lead: 'screw.lead', diameter: 'nut.ball-diameter' },
    onlyWhere: ball,
    compute: ({ circle, lead, diameter }) => (diameter < circle ? ballsPerTurn(circle, lead, diameter) : unable('the balls are larger than the screw')),
    formula: 'Z = √((π d₂)² + l²) / D_w',
    sources: [{ title: 'length of a helix turn' }],
    rank: 3,
  }),
  figure({
    id: 'nut.ball-pass-period',
    title: 'Travel from ball to ball',
    symbol: 'p_b',
    quantity: 'length',
    unit: 'mm',
    meaning: 'Travel between one ball entering the load and the next: a ripple with this period comes from the nut.',
    needs: { circle: 'screw.pitch-diameter', lead: 'screw.lead', diameter: 'nut.ball-diameter' },
    onlyWhere: ball,
    compute: ({ circle, lead, diameter }) => (diameter < circle ? ballPass(circle, lead, diameter).period : unable('the balls are larger than the screw')),
    formula: 'p_b = l / (Z/2 · (1 − D_w cos 45° / d₂))',
    sources: [{ title: 'rolling without slip, as in an angular-contact bearing; Harris, Rolling Bearing Analysis', weak: true }],
    rank: 3,
  }),
  figure({
    id: 'nut.lift-off-load',
    title: 'Load that frees the slack half',
    symbol: 'F_l',
    quantity: 'force',
    unit: 'N',
    meaning: 'Axial load at which one half of a preloaded ball nut goes slack; beyond it play is back.',
    needs: { preload: 'nut.preload' },
    onlyWhere: { 'nut.design': ['preloaded-ball'] },
    compute: ({ preload }) => liftOffForce(preload),
    formula: 'F_l = 2^1.5 F_pre',
    sources: [{ title: 'Hertz contact, deflection as load^(2/3)' }],
    rank: 3,
  }),
  figure({
    id: 'nut.preload-use',
    title: 'Preload over dynamic rating',
    symbol: 'F_pre/C_a',
    quantity: 'ratio',
    unit: '%',
    meaning: 'How much of the rating the preload takes up before any load.',
    needs: { preload: 'nut.preload', rating: 'nut.dynamic-rating' },
    onlyWhere: { 'nut.design': ['preloaded-ball'] },
    compute: ({ preload, rating }) => preload / rating,
    formula: 'F_pre / C_a',
    sources: [{ title: 'definition' }],
    rank: 3,
  }),
];
