import { frameJerkRinging } from '../../mechanics/frame-ringing.ts';
import { figure, unable } from '../figure.ts';
import { worseOf } from './worse.ts';

const step = { title: 'undamped answer to a step', where: 'Rao, Mechanical Vibrations, chapter 4, from memory' } as const;

const boxRinging = (along: 'x' | 'y') =>
  figure({
    id: `frame-box.ringing-${along}`,
    title: `Ringing along ${along} after a jerk`,
    symbol: `x_r${along}`,
    quantity: 'length',
    meaning: `How far the top may swing to either side along ${along} right after the acceleration begins or ends at once: up to twice its steady lean.`,
    onlyWith: ['frame-box'],
    needs: { stiffness: `frame-box.racking-stiffness-${along}`, acceleration: 'frame-box.acceleration', moving: 'frame-box.moving-mass' },
    compute: ({ stiffness, acceleration, moving }) => (stiffness > 0 ? frameJerkRinging(moving, acceleration, stiffness) : unable('nothing holds it against leaning over')),
    formula: `x_r = 2 m_m a/k_${along}`,
    sources: [step],
    rank: 3,
  });

const use = (scope: 'frame-box' | 'frame-gantry') =>
  figure({
    id: `${scope}.ringing-use`,
    title: 'Share of the tolerance that ringing takes',
    symbol: 'u_r',
    quantity: 'ratio',
    unit: '%',
    meaning: 'Ringing after a jerk over how far the tool may swing.',
    onlyWith: [scope],
    needs: { ringing: `${scope}.ringing`, tolerance: 'frame.tolerance' },
    compute: ({ ringing, tolerance }) => (tolerance > 0 ? ringing / tolerance : unable('the tolerance must be above zero')),
    formula: 'u_r = x_r/x_tol',
    sources: [{ title: 'follows from both' }],
    rank: 2,
  });

export default [
  boxRinging('x'),
  boxRinging('y'),
  figure({
    id: 'frame-box.ringing',
    title: 'Ringing after a jerk',
    symbol: 'x_r',
    quantity: 'length',
    meaning: 'The larger ringing of both directions.',
    onlyWith: ['frame-box'],
    needs: { x: 'frame-box.ringing-x', y: 'frame-box.ringing-y' },
    choices: { along: 'frame.pushed-along' },
    compute: ({ x, y, along }) => worseOf(x, y, along),
    formula: 'x_r = max(x_rx, x_ry), of the directions in which axes push',
    sources: [step],
    rank: 2,
  }),
  use('frame-box'),
  figure({
    id: 'frame-gantry.ringing',
    title: 'Ringing after a jerk',
    symbol: 'x_r',
    quantity: 'length',
    meaning: 'How far the middle of the beam may swing sideways, with what travels along it, right after the beam’s own acceleration begins or ends at once: up to twice its steady bow.',
    onlyWith: ['frame-gantry'],
    needs: {
      span: 'frame-gantry.span', modulus: 'frame-gantry.youngs-modulus', second: 'frame-gantry.second-moment-sideways', mass: 'frame-gantry.carried-mass', perLength: 'frame-gantry.mass-per-length',
      acceleration: 'frame.acceleration',
    },
    choices: { ends: 'frame-gantry.ends' },
    compute: ({ span, modulus, second, mass, perLength, acceleration, ends }) => {
      if (!(span > 0 && modulus > 0 && second > 0 && mass >= 0 && perLength >= 0)) return unable('span, section and material must be above zero');
      const clamped = ends === 'clamped';
      // The beam's own mass is spread: 5/384 of its load instead of 1/48, 1/384 instead of 1/192.
      return frameJerkRinging(mass + perLength * span * (clamped ? 1 / 2 : 5 / 8), acceleration, ((clamped ? 192 : 48) * modulus * second) / span ** 3);
    },
    formula: 'supported x_r = 2 (M + 5/8 m_l L) a_f L³/(48 E I_s), clamped 192 and 1/2',
    sources: [step, { title: "Roark's Formulas for Stress and Strain", where: 'beam table, from memory', weak: true }],
    rank: 2,
  }),
  use('frame-gantry'),
];
