import { softestPosition } from '../../mechanics/belt-spans.ts';
import { figure, unable } from '../figure.ts';
import { impossible, travelNeeds, travelOf, travelOptional } from './path.ts';

const geometry = { title: 'plane geometry' } as const;

export default [
  figure({
    id: 'belt.free-length',
    title: 'Free length of the belt',
    symbol: 'L',
    quantity: 'length',
    unit: 'mm',
    meaning: 'Belt between the two places that hold it: a loop less what lies on the driving pulley, or from anchor to anchor. Both spans together.',
    needs: { path: 'belt.path-length', pitch: 'belt.pitch', teeth: 'pulley.teeth', wrap: 'pulley.wrap' },
    choices: { arrangement: 'belt.arrangement' },
    compute: ({ path, pitch, teeth, wrap, arrangement }) => {
      const held = arrangement === 'loop' ? (pitch * teeth * wrap) / (2 * Math.PI) : 0;
      return path > held ? path - held : unable('the belt is shorter than what lies on its pulley');
    },
    formula: 'L = L_b − z p_b θ/2π; between two anchors their distance',
    sources: [geometry, { title: 'the teeth on the driving pulley are taken to hold the belt; the little belt round the pulley between two anchors is left out' }],
    rank: 3,
  }),
  figure({
    id: 'belt.room-left',
    title: 'Room beyond the far end of the travel',
    symbol: 'x_r',
    quantity: 'position',
    unit: 'mm',
    meaning: 'From the clamp at the far end of the travel to the axis of the far idler, or to the far anchor. Negative: the travel does not fit.',
    needs: { distance: 'belt.center-distance', nearest: 'belt.nearest-distance', travel: 'axis.travel' },
    optionalChoices: { role: 'layout.role' },
    compute: ({ distance, nearest, travel, role }) => (role === undefined ? distance - nearest - travel : unable('crossed belts run round more than two pulleys')),
    formula: 'x_r = C − x₀ − s',
    sources: [geometry],
    rank: 3,
  }),
  figure({
    id: 'belt.softest-place',
    title: 'Where the carriage stands softest',
    symbol: 'x_s',
    quantity: 'length',
    unit: 'mm',
    meaning: 'Distance from the driving pulley (or near anchor) at which both spans come nearest to being equally long: in a loop always the end far from the motor, between two anchors the middle.',
    needs: travelNeeds,
    optional: travelOptional,
    compute: (values) => {
      const reason = impossible(values);
      return reason === undefined ? softestPosition(travelOf(values)) : unable(reason);
    },
    formula: 'x_s = L/2, held to the travel',
    sources: [{ title: 'derived; checked by a search over a loop of springs' }],
    rank: 3,
  }),
  figure({
    id: 'belt.mass',
    title: 'Mass of the belt',
    symbol: 'm_b',
    quantity: 'mass',
    meaning: 'Mass of the whole belt.',
    needs: { density: 'belt.mass-per-length', path: 'belt.path-length' },
    compute: ({ density, path }) => density * path,
    formula: "m_b = m' L_b",
    sources: [{ title: 'definition' }],
    rank: 3,
  }),
];
