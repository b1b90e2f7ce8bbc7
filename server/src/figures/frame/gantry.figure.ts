import { loadedBeamFrequency } from '../../mechanics/beam-modes.ts';
import { ownWeightSag, sagOverTravel, type BeamEnds, type SagOverTravel } from '../../mechanics/gantry-sag.ts';
import { figure, unable, type Computed, type Unable } from '../figure.ts';

const onlyWith = ['frame-gantry'] as const;
const roark = { title: "Roark's Formulas for Stress and Strain", where: 'beam table, from memory', weak: true } as const;
const bending = { span: 'frame-gantry.span', modulus: 'frame-gantry.youngs-modulus', second: 'frame-gantry.second-moment-upright' } as const;
const travelling = {
  ...bending, shear: 'frame-gantry.shear-modulus', torsion: 'frame-gantry.torsion-constant', mass: 'frame-gantry.carried-mass', travel: 'frame-gantry.travel', overhang: 'frame-gantry.overhang',
  gravity: 'conditions.gravity',
} as const;
const choices = { ends: 'frame-gantry.ends' } as const;
const NOTHING = unable('span, section and material must be above zero');

const endsOf = (text: string): BeamEnds => (text === 'clamped' ? 'clamped' : 'supported');

interface Travelling {
  readonly span: number; readonly modulus: number; readonly second: number; readonly shear: number; readonly torsion: number; readonly mass: number; readonly travel: number; readonly overhang: number;
  readonly gravity: number; readonly ends: string;
}

function overTravel({ span, modulus, second, shear, torsion, mass, travel, overhang, gravity, ends }: Travelling): SagOverTravel | Unable {
  if (!(span > 0 && modulus > 0 && second > 0 && shear > 0 && torsion > 0 && mass >= 0)) return NOTHING;
  if (travel > span) return unable('the travel is longer than the beam');
  const tool = { load: mass * gravity, overhang, reach: overhang, from: (span - travel) / 2, to: (span + travel) / 2 };
  return sagOverTravel(endsOf(ends), tool, span, modulus * second, shear * torsion);
}

const pick = (values: Travelling, of: (sag: SagOverTravel) => number): Computed => {
  const sag = overTravel(values);
  return 'unable' in sag ? sag : of(sag);
};

export default [
  figure({
    id: 'frame-gantry.own-weight-sag',
    title: 'Sag under its own weight',
    symbol: 'y_0',
    quantity: 'length',
    meaning: 'How far the beam hangs in the middle by its own weight. It stays the same as the tool travels, so it can be adjusted or measured away.',
    onlyWith,
    needs: { ...bending, perLength: 'frame-gantry.mass-per-length', gravity: 'conditions.gravity' },
    choices,
    compute: ({ span, modulus, second, perLength, gravity, ends }) =>
      span > 0 && modulus > 0 && second > 0 && perLength >= 0 ? ownWeightSag(endsOf(ends), perLength * gravity, span, modulus * second) : NOTHING,
    formula: 'supported y_0 = 5 m_l g L⁴/(384 E I), clamped a fifth of it',
    sources: [roark],
    rank: 3,
  }),
  figure({
    id: 'frame-gantry.sag-variation',
    title: 'Sag varies over the travel by',
    symbol: 'Δy',
    quantity: 'length',
    meaning: 'How far the tool sinks from the end of its travel to the middle, by bending and by twist of the beam.',
    onlyWith,
    needs: travelling,
    choices,
    compute: (values) => pick(values, (sag) => sag.variation),
    formula: 'Δy = y(L/2) − y((L − s)/2), y(x) = M g x²(L − x)²/(3 E I L) + M g e² x (L − x)/(G J L); clamped M g x³(L − x)³/(3 E I L³) for the first',
    sources: [roark],
    rank: 1,
  }),
  figure({
    id: 'frame-gantry.tool-tilt',
    title: 'Tilt of the tool',
    symbol: 'φ',
    quantity: 'angle',
    meaning: 'How far the beam twists nose down under the overhanging tool where it twists most.',
    onlyWith,
    needs: travelling,
    choices,
    compute: (values) => pick(values, (sag) => sag.twist),
    formula: 'φ = M g e L/(4 G J) in the middle',
    sources: [{ title: 'two shafts in parallel on either side' }],
    rank: 2,
  }),
  figure({
    id: 'frame-gantry.tool-shift',
    title: 'Shift of the tool’s tip by tilt',
    symbol: 'x_φ',
    quantity: 'length',
    meaning: 'How far the tip of the tool goes back under the beam as the beam twists.',
    onlyWith,
    needs: { tilt: 'frame-gantry.tool-tilt', reach: 'frame-gantry.tool-reach' },
    compute: ({ tilt, reach }) => tilt * reach,
    formula: 'x_φ = φ r',
    sources: [{ title: 'small turn' }],
    rank: 3,
  }),
  figure({
    id: 'frame-gantry.first-frequency',
    title: 'First frequency of the beam',
    symbol: 'f_1',
    quantity: 'frequency',
    unit: 'Hz',
    meaning: 'Frequency at which the beam bounces with the carried mass in its middle.',
    onlyWith,
    needs: { ...bending, perLength: 'frame-gantry.mass-per-length', mass: 'frame-gantry.carried-mass' },
    choices,
    compute: ({ span, modulus, second, perLength, mass, ends }) => {
      if (!(span > 0 && modulus > 0 && second > 0 && mass >= 0 && mass + perLength > 0)) return NOTHING;
      const beam = endsOf(ends) === 'clamped' ? 'both ends clamped, mass in the middle' : 'both ends supported, mass in the middle';
      return loadedBeamFrequency(beam, modulus * second, span, mass, perLength * span) / (2 * Math.PI);
    },
    formula: 'supported f_1 = √(48 E I/L³/(M + 17/35 m_l L))/(2π), clamped 192 and 13/35',
    sources: [{ title: 'Rayleigh’s quotient with the static shape', where: 'Rao, Mechanical Vibrations, chapter 2, from memory' }],
    rank: 2,
  }),
  figure({
    id: 'frame-gantry.sag-use',
    title: 'Share of the sag tolerance',
    symbol: 'u_y',
    quantity: 'ratio',
    unit: '%',
    meaning: 'How much of the tolerance the sag uses up over the travel.',
    onlyWith,
    needs: { variation: 'frame-gantry.sag-variation', tolerance: 'frame-gantry.sag-tolerance' },
    compute: ({ variation, tolerance }) => (tolerance > 0 ? variation / tolerance : unable('the tolerance must be above zero')),
    formula: 'u_y = Δy/y_tol',
    sources: [{ title: 'follows from both' }],
    rank: 2,
  }),
];
