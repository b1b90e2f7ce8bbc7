import { swayFrequency } from '../../mechanics/frame-racking.ts';
import { tippingForce, walkingFactor } from '../../mechanics/frame-stability.ts';
import { figure, unable } from '../figure.ts';
import { COLUMNS, rackingNeeds, rackingStiffness } from './racking.ts';

const onlyWith = ['frame-box'] as const;
const balance = { title: 'balance of moments about an edge of the feet' } as const;

const racking = (along: 'x' | 'y') =>
  figure({
    id: `frame-box.racking-stiffness-${along}`,
    title: `Stiffness against leaning along ${along}`,
    symbol: `k_${along}`,
    quantity: 'stiffness',
    unit: 'N/mm',
    meaning: `Level force at the top along ${along} for each millimetre that the box leans over; the top taken as stiff, the bottom as held.`,
    onlyWith,
    needs: rackingNeeds(along),
    choices: { braced: `frame-box.braced-${along}` },
    compute: rackingStiffness,
    formula: 'k = 4 (12 E I/h³)/(1 + 6 E I/(k_θ h)) + n_d η_d E A_d w²/(w² + h²)^(3/2) + η_p G_p t w/h, the last two where braced',
    sources: [
      { title: 'slope-deflection of columns with springs at both ends; pull of a diagonal; even shear of a plate' },
      { title: 'joints and fasteners: orders of magnitude, no published source', weak: true },
    ],
    rank: 2,
  });

const sway = (along: 'x' | 'y') =>
  figure({
    id: `frame-box.sway-frequency-${along}`,
    title: `Sway frequency along ${along}`,
    symbol: `f_${along}`,
    quantity: 'frequency',
    unit: 'Hz',
    meaning: `Frequency at which the top swings along ${along}. Every move excites it; what is low swings far and long.`,
    onlyWith,
    needs: { stiffness: `frame-box.racking-stiffness-${along}`, top: 'frame-box.top-mass', perLength: 'frame-box.mass-per-length', height: 'frame-box.height' },
    compute: ({ stiffness, top, perLength, height }) => {
      if (!(top >= 0 && perLength >= 0 && top + perLength * height > 0)) return unable('the masses must be above zero');
      return stiffness > 0 ? swayFrequency(stiffness, top, COLUMNS * perLength * height) / (2 * Math.PI) : 0;
    },
    formula: `f = √(k_${along}/(M_t + 13/35 · 4 m_l h))/(2π)`,
    sources: [{ title: 'Rayleigh’s quotient with the shape of a column clamped at the bottom and guided at the top' }],
    rank: 2,
  });

/** The lower of both directions, of those that are braced or those that are not. */
const lower = (id: string, title: string, meaning: string, counts: (braced: string) => boolean, none: string) =>
  figure({
    id,
    title,
    symbol: id.endsWith('unbraced') ? 'f_u' : 'f_b',
    quantity: 'frequency',
    unit: 'Hz',
    meaning,
    onlyWith,
    needs: { x: 'frame-box.sway-frequency-x', y: 'frame-box.sway-frequency-y' },
    choices: { bracedX: 'frame-box.braced-x', bracedY: 'frame-box.braced-y' },
    compute: ({ x, y, bracedX, bracedY }) => {
      const found = [...(counts(bracedX) ? [x] : []), ...(counts(bracedY) ? [y] : [])];
      return found.length > 0 ? Math.min(...found) : unable(none);
    },
    formula: 'min(f_x, f_y) of these directions',
    sources: [{ title: 'the lower of both counts' }],
    rank: 3,
  });

const standing = ({ width, depth, mass, gravity }: { readonly width: number; readonly depth: number; readonly mass: number; readonly gravity: number }) =>
  ({ feet: [[-width / 2, -depth / 2], [width / 2, -depth / 2], [width / 2, depth / 2], [-width / 2, depth / 2]], mass, centre: [0, 0], gravity }) as const;

export default [
  racking('x'),
  racking('y'),
  sway('x'),
  sway('y'),
  lower('frame-box.sway-frequency-unbraced', 'Lowest sway frequency without a brace', 'The lower sway frequency of the directions that have neither brace nor panel.', (braced) => braced === 'none', 'both directions are braced'),
  lower('frame-box.sway-frequency-braced', 'Lowest sway frequency with a brace', 'The lower sway frequency of the directions that have a brace or panel.', (braced) => braced !== 'none', 'no direction is braced'),
  figure({
    id: 'frame-box.tipping-acceleration',
    title: 'Acceleration at which it tips',
    symbol: 'a_tip',
    quantity: 'acceleration',
    meaning: 'Level acceleration of the moving mass at which a foot lifts. Feet are taken under the columns, the centre of gravity in their middle.',
    onlyWith,
    needs: { width: 'frame-box.width', depth: 'frame-box.depth', mass: 'frame-box.mass', moving: 'frame-box.moving-mass', height: 'frame-box.moving-height', gravity: 'conditions.gravity' },
    compute: ({ moving, height, ...values }) => {
      if (!(values.width > 0 && values.depth > 0 && values.mass > 0 && values.gravity > 0 && moving > 0 && height > 0)) return unable('sizes and masses must be above zero');
      const forces = ([[1, 0], [0, 1]] as const).map((direction) => tippingForce(standing(values), direction, height));
      return Math.min(...forces) / moving;
    },
    formula: 'a_tip = M g min(w, d)/(2 h_m m_m)',
    sources: [balance],
    rank: 2,
  }),
  figure({
    id: 'frame-box.walking-acceleration',
    title: 'Acceleration at which it walks',
    symbol: 'a_walk',
    quantity: 'acceleration',
    meaning: 'Level acceleration of the moving mass at which the feet slide.',
    onlyWith,
    needs: { mass: 'frame-box.mass', moving: 'frame-box.moving-mass', friction: 'frame-box.foot-friction', gravity: 'conditions.gravity' },
    compute: ({ mass, moving, friction, gravity }) => {
      if (!(mass > 0 && gravity > 0 && friction >= 0 && moving > 0)) return unable('the masses must be above zero');
      // The force of 1 m/s² is held so many times over.
      return walkingFactor({ mass, gravity }, friction, moving);
    },
    formula: 'a_walk = µ_f M g/m_m',
    sources: [{ title: 'dry friction' }],
    rank: 2,
  }),
  ...(['tipping', 'walking'] as const).map((how) =>
    figure({
      id: `frame-box.${how}-use`,
      title: how === 'tipping' ? 'Nearness to tipping' : 'Nearness to walking',
      symbol: how === 'tipping' ? 'u_tip' : 'u_walk',
      quantity: 'ratio',
      unit: '%',
      meaning: how === 'tipping' ? 'Acceleration over that at which a foot lifts.' : 'Acceleration over that at which the feet slide.',
      onlyWith,
      needs: { acceleration: 'frame-box.acceleration', limit: `frame-box.${how}-acceleration` },
      compute: ({ acceleration, limit }) => (limit > 0 ? acceleration / limit : unable('nothing holds it')),
      formula: how === 'tipping' ? 'u = a/a_tip' : 'u = a/a_walk',
      sources: [how === 'tipping' ? balance : { title: 'dry friction' }],
      rank: 2,
    }),
  ),
];
