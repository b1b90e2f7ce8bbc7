import { guidedLengthNeeded, jammingRatio, sliderForce } from '../../mechanics/slider-jamming.ts';
import { figure, unable } from '../figure.ts';

export const ALL_KINDS = ['profile-rail', 'round-shaft', 'supported-shaft', 'wheels', 'plain'] as const;

const book = { title: 'Beer and Johnston, Vector Mechanics for Engineers', where: 'sample problem 8.3' } as const;

/** How far from locking a guide is laid out; common practice, no published source. */
const FACTOR = 2;

export default [
  figure({
    id: 'guides.jamming-ratio',
    title: 'Nearness to jamming',
    symbol: 'κ_g',
    quantity: 'ratio',
    unit: '%',
    meaning: 'At 100 % and above friction locks the slider, however hard the drive pushes: the drive tilts it, and its two ends press on the guide in proportion.',
    onlyWhere: { 'guides.kind': ALL_KINDS },
    needs: { length: 'guides.guided-length', friction: 'guides.friction', offset: 'guides.drive-offset' },
    compute: ({ length, friction, offset }) => (length > 0 && friction >= 0 ? jammingRatio(length, friction, offset) : unable('the guided length must be above zero')),
    formula: 'κ_g = 2 µ_g d_F / s_g',
    sources: [book, { title: 'rigid slider with a little play that touches at both ends of its guided length' }],
    rank: 1,
    hint: ({ high }) => (high >= 1 ? 'jams' : high > 0.01 ? `${Math.round(100 * high)} % to jamming` : undefined),
  }),
  figure({
    id: 'guides.guided-length-needed',
    title: 'Guided length that is wanted',
    symbol: 's_need',
    quantity: 'length',
    unit: 'mm',
    meaning: 'Guided length at which the offset of the drive stays a factor of 2 away from jamming.',
    onlyWhere: { 'guides.kind': ALL_KINDS },
    needs: { friction: 'guides.friction', offset: 'guides.drive-offset' },
    compute: ({ friction, offset }) => (friction >= 0 ? guidedLengthNeeded(offset, friction, FACTOR) : unable('friction must not be negative')),
    formula: 's_need = 2 · 2 µ_g d_F',
    sources: [book, { title: 'factor 2: common practice, no published source' }],
    rank: 3,
  }),
  figure({
    id: 'guides.driving-force',
    title: 'Force to move the slider',
    symbol: 'F_m',
    quantity: 'force',
    unit: 'N',
    meaning: 'Least force with which the drive keeps the axis moving against weight, process force and the friction of its guides, the edges pressed by the offset drive included; without acceleration.',
    onlyWhere: { 'guides.kind': ALL_KINDS },
    needs: {
      length: 'guides.guided-length', friction: 'guides.friction', offset: 'guides.drive-offset', mass: 'axis.moved-mass', gravity: 'conditions.gravity',
      inclination: 'axis.inclination', process: 'axis.process-force', rails: 'guides.rails', carriages: 'guides.carriages', drag: 'guides.seal-drag',
    },
    compute: ({ length, friction, offset, mass, gravity, inclination, process, rails, carriages, drag }) => {
      if (!(length > 0 && friction >= 0 && drag >= 0)) return unable('the guided length must be above zero');
      const result = sliderForce({
        guidedLength: length, friction, driveOffset: offset,
        load: Math.max(0, mass * gravity * Math.sin(inclination) + Math.abs(process)),
        sideForce: mass * gravity * Math.cos(inclination),
        constantDrag: rails * carriages * drag,
      });
      return result.kind === 'moves' ? result.force : unable('friction locks the slider, however hard it is pushed');
    },
    formula: 'F_m = R + S + µ_g max(Q, 2 F_m d_F/s_g), R = m g sin β + F_p, S = n_r n_c F_s, Q = m g cos β',
    sources: [book],
    rank: 3,
  }),
];
