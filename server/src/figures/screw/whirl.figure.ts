import { eulerLoad, endFixityFactor } from '../../mechanics/column-buckling.ts';
import { screwBody } from '../../mechanics/screw-body.ts';
import { supportOf, type ShaftEnd } from '../../mechanics/shaft-ends.ts';
import { axialLoadFactor, bowAmplification, practicalWhirlShare, slenderExcess, whirlSpeed, whirlWithNut, whirlOverTravel } from '../../mechanics/whirl.ts';
import { figure, unable } from '../figure.ts';
import { endsOf, whirlingPair } from '../screw-ends.ts';

const bodyNeeds = {
  length: 'screw.unsupported-length',
  bending: 'screw.bending-diameter',
  mass: 'screw.mass-diameter',
  modulus: 'screw.elastic-modulus',
  density: 'screw.density',
  bore: 'screw.bore-diameter',
} as const;

const bodyOf = ({ bending, mass, modulus, density, bore }: { readonly bending: number; readonly mass: number; readonly modulus: number; readonly density: number; readonly bore: number }) =>
  // The shear modulus plays no part in bending.
  screwBody({ bending, mass: Math.max(mass, bending) }, { youngsModulus: modulus, shearModulus: modulus, density }, bore);

/** Roots already solved for, by arrangement: the corners of a figure's inputs share one. A cache of a pure function, never more than a few entries. */
const solved = new Map<string, number | undefined>();

/** beta² of a shaft of unit length, stiffness and mass with the nut at the worse end of a centred travel. */
function rootWithNut(left: ShaftEnd, right: ShaftEnd, reach: number): number | undefined {
  const key = `${left} ${right} ${reach}`;
  if (!solved.has(key)) {
    if (solved.size > 50) solved.clear();
    const unit = { left, right, length: 1, bendingStiffness: 1, massPerLength: 1 } as const;
    const { result } = whirlOverTravel(unit, 'knife edge', (1 - reach) / 2, (1 + reach) / 2);
    solved.set(key, result.kind === 'frequency' ? result.angularFrequency : undefined);
  }
  return solved.get(key);
}

const NOTHING_HOLDS = 'only the nut keeps the screw from swinging out: give the far end a bearing, or fix the motor end';
const practice = { title: 'common practice', where: 'no published source; bow amplification 2.8 at 0.8 of the critical speed, 2.0 at 0.7' } as const;

export default [
  figure({
    id: 'screw.whirl-speed',
    title: 'Whirl speed',
    symbol: 'n₁',
    quantity: 'rotational-speed',
    unit: 'rpm',
    meaning: "Critical speed of the free length: there the screw's own bow grows without bound. The nut's support is not counted on.",
    needs: bodyNeeds,
    optional: { push: 'screw.compression', fixity: 'screw.end-fixity' },
    choices: { ends: 'screw.end-supports' },
    compute: (values) => {
      const { length, bending, ends, fixity } = values;
      const pair = whirlingPair(ends);
      if (pair === 'mechanism') return unable(NOTHING_HOLDS);
      if (values.bore >= bending) return unable('the bore is as large as the root');
      const body = bodyOf(values);
      const [, far] = endsOf(ends);
      // A free end whips worst with the nut near the motor, and then nothing presses on what lies beyond the nut.
      const push = far === 'free' ? 0 : Math.max(values.push ?? 0, 0);
      let speed: number;
      if (fixity === undefined) {
        const share = axialLoadFactor(push, eulerLoad(endFixityFactor(pair), length, body.bendingStiffness));
        if (share === 'buckled') return unable('the axial load alone buckles the screw');
        speed = whirlSpeed(pair, length, body.bendingStiffness, body.massPerLength) * share;
      } else {
        const left = { lateral: 'held', tiltStiffness: (fixity * body.bendingStiffness) / length } as const;
        const tension = -push;
        const found = whirlWithNut({ ...body, left, right: supportOf(far), length, tensionLeftOfNut: tension, tensionRightOfNut: tension }, 'none', length);
        if (found.kind !== 'frequency') return unable(found.kind === 'buckled' ? 'the axial load alone buckles the screw' : NOTHING_HOLDS);
        speed = found.angularFrequency;
      }
      const notes = values.push === undefined && far !== 'free' ? ['without the axial load, not known here'] : [];
      const slender = length / bending;
      const excess = slenderExcess(pair, slender);
      if (excess === 'too short') return unable('the screw is shorter than four diameters: it does not bend like a beam, and does not whirl');
      if (excess >= 0.005) notes.push(`the slender formula is ${(excess * 100).toFixed(1)} % high at ${slender.toFixed(0)} diameters: shear is counted`);
      const value = speed / (1 + excess);
      return notes.length === 0 ? value : { value, note: notes.join('; ') };
    },
    formula: 'n₁ = β² / (2π L²) · √(E I / m′) · √(1 − F_d/F_cr), the last only between two supports; I = π d_b⁴/64, m′ = ρ π d_m²/4; β = 1.875 fixed-free, π supported, 3.927 fixed-supported, 4.730 fixed-fixed',
    sources: [
      { title: 'Timoshenko, Vibration Problems in Engineering', where: 'transverse vibration of bars', weak: true },
      { title: 'Blevins, Formulas for Natural Frequency and Mode Shape', where: 'table 8-1', weak: true },
    ],
    rank: 2,
  }),
  figure({
    id: 'screw.whirl-share',
    title: 'Share of the whirl speed allowed',
    symbol: 'k_w',
    quantity: 'ratio',
    unit: '%',
    meaning: 'Up to this share of the whirl speed a screw usually runs; less with a free end.',
    needs: {},
    choices: { ends: 'screw.end-supports' },
    compute: ({ ends }) => {
      const pair = whirlingPair(ends);
      return pair === 'mechanism' ? unable(NOTHING_HOLDS) : practicalWhirlShare(pair);
    },
    formula: '0.8; 0.7 with a free end',
    sources: [practice],
    rank: 3,
  }),
  figure({
    id: 'screw.whirl-use',
    title: 'Use of the whirl speed',
    symbol: 'u_w',
    quantity: 'ratio',
    unit: '%',
    meaning: 'Turning speed over whirl speed, before any factor of practice.',
    needs: { turning: 'screw.turning-speed', whirl: 'screw.whirl-speed', length: 'screw.unsupported-length', share: 'screw.whirl-share' },
    compute: ({ turning, whirl }) => turning / whirl,
    formula: 'u_w = n / n₁',
    sources: [{ title: 'definition' }],
    rank: 1,
    hint: ({ high }) => `whirl ${high >= 10 ? '>999' : Math.round(high * 100)} %`,
    chart: {
      title: 'Whirl speed over the free length',
      alt: ({ turning, whirl, length }) =>
        `The whirl speed falls with the square of the free length; at ${(length * 1000).toFixed(0)} mm the screw turns at ${((100 * turning) / whirl).toFixed(0)} % of it.`,
      x: { title: 'Free length', quantity: 'length', unit: 'mm', from: ({ length }) => 0.5 * length, to: ({ length }) => 1.5 * length },
      y: { title: 'Speed', quantity: 'rotational-speed', unit: 'rpm' },
      curves: [
        { title: 'Whirl speed', y: (x, { whirl, length }) => whirl * (length / x) ** 2 },
        { title: 'Allowed', y: (x, { whirl, length, share }) => share * whirl * (length / x) ** 2 },
      ],
      points: [{ title: 'This screw', x: ({ length }) => length, y: ({ turning }) => turning }],
    },
  }),
  figure({
    id: 'screw.fastest-turning',
    title: 'Fastest turning before whirl',
    symbol: 'n_max',
    quantity: 'rotational-speed',
    unit: 'rpm',
    meaning: 'The allowed share of the whirl speed.',
    needs: { whirl: 'screw.whirl-speed', share: 'screw.whirl-share' },
    compute: ({ whirl, share }) => whirl * share,
    formula: 'n_max = k_w n₁',
    sources: [practice],
    rank: 2,
  }),
  figure({
    id: 'screw.whirl-speed-with-nut',
    title: 'Whirl speed with the nut as a support',
    symbol: 'n₁,n',
    quantity: 'rotational-speed',
    unit: 'rpm',
    meaning: 'What the whirl speed would be at the worst end of a centred travel if the nut held the screw sideways without play: the most to hope for.',
    needs: { ...bodyNeeds, travel: 'axis.travel' },
    choices: { ends: 'screw.end-supports' },
    compute: (values) => {
      const { length, travel, ends } = values;
      if (whirlingPair(ends) === 'mechanism') return unable(NOTHING_HOLDS);
      if (travel > length) return unable('the travel is longer than the unsupported length');
      if (values.bore >= values.bending) return unable('the bore is as large as the root');
      const [left, right] = endsOf(ends);
      const body = bodyOf(values);
      const root = rootWithNut(left, right, travel / length);
      return root === undefined ? unable(NOTHING_HOLDS) : (root / length ** 2) * Math.sqrt(body.bendingStiffness / body.massPerLength);
    },
    formula: 'lowest root of the frequency determinant of a beam on three supports, nut at either end of the travel',
    sources: [{ title: 'Timoshenko, Vibration Problems in Engineering', where: 'beams on several supports', weak: true }],
    rank: 3,
  }),
  figure({
    id: 'screw.bow-amplification',
    title: 'Growth of the bow when turning',
    symbol: 'V_b',
    quantity: 'ratio',
    meaning: 'How many times larger than at rest the bow of the screw stands at its top speed.',
    needs: { use: 'screw.whirl-use' },
    compute: ({ use }) => {
      const grown = bowAmplification(use);
      return grown === 'past critical' ? unable('the screw turns at or past its whirl speed') : grown;
    },
    formula: 'V_b = 1 / (1 − (n/n₁)²)',
    sources: [{ title: 'Den Hartog, Mechanical Vibrations', where: 'chapter 6', weak: true }],
    rank: 3,
  }),
  figure({
    id: 'screw.tip-run-out',
    title: 'Swing of the free end',
    symbol: 'e_t',
    quantity: 'length',
    meaning: 'How far the free end of the screw swings out at top speed: half of its run-out, grown by the bow.',
    needs: { runOut: 'screw.run-out', growth: 'screw.bow-amplification' },
    onlyWhere: { 'screw.end-supports': ['fixed-free'] },
    compute: ({ runOut, growth }) => (runOut / 2) * growth,
    formula: 'e_t = t_r/2 · V_b',
    sources: [{ title: 'Den Hartog, Mechanical Vibrations', where: 'chapter 6', weak: true }],
    rank: 3,
  }),
];
