import { bucklingLoadWithNut, bucklingTemperature, criticalColumnLoad, endFixityFactor } from '../../mechanics/column-buckling.ts';
import { screwBody } from '../../mechanics/screw-body.ts';
import { endPair, supportOf } from '../../mechanics/shaft-ends.ts';
import { figure, unable } from '../figure.ts';
import { bucklingEnds, endsOf } from '../screw-ends.ts';

const johnson = { title: "Budynas and Nisbett, Shigley's Mechanical Engineering Design", where: 'section 4-13, equation 8-9' } as const;
const euler = { title: 'Timoshenko and Gere, Theory of Elastic Stability', where: 'section 2.1', weak: true } as const;

export default [
  figure({
    id: 'screw.column-length',
    title: 'Length that can buckle',
    symbol: 'L_k',
    quantity: 'length',
    unit: 'mm',
    meaning: 'From the end that takes the thrust to the nut where it is farthest, at most the unsupported length; two thirds of it where both ends take thrust.',
    needs: { length: 'screw.unsupported-length' },
    optionalChoices: { thrust: 'screw.thrust-end' },
    compute: ({ length, thrust }) => (thrust === 'both' ? (2 / 3) * length : length),
    formula: 'L_k = L',
    sources: [{ title: 'statics' }],
    rank: 3,
  }),
  figure({
    id: 'screw.buckling-load',
    title: 'Buckling load',
    symbol: 'F_cr',
    quantity: 'force',
    unit: 'N',
    meaning: 'Push at which the stretch from thrust bearing to nut gives way sideways, for the smallest root diameter.',
    needs: { length: 'screw.column-length', root: 'screw.root-diameter', modulus: 'screw.elastic-modulus', yield: 'screw.yield-strength', bore: 'screw.bore-diameter' },
    optional: { fixity: 'screw.end-fixity' },
    choices: { ends: 'screw.end-supports' },
    optionalChoices: { thrust: 'screw.thrust-end', mounting: 'nut.mounting' },
    compute: ({ length, root, modulus, yield: yieldStrength, bore, fixity, ends, thrust, mounting }) => {
      if (bore >= root) return unable('the bore is as large as the root');
      const [thrustSide, nutSide] = bucklingEnds(ends, thrust, mounting);
      if (thrustSide === 'free') return unable('the end that is to take the thrust is free');
      const pair = endPair(thrustSide, nutSide);
      if (pair === 'mechanism') return unable('nothing keeps the far end from moving sideways');
      const secondMoment = (Math.PI * (root ** 4 - bore ** 4)) / 64;
      let endFixity = endFixityFactor(pair);
      if (fixity !== undefined) {
        // One of the two ends is the motor's, which its bearings hold only as firmly as their spacing allows.
        const other = thrust === 'far' ? thrustSide : nutSide;
        const load = bucklingLoadWithNut({ lateral: 'held', tiltStiffness: fixity }, supportOf(other), 1, 1, 1, 'not guided');
        endFixity = load / Math.PI ** 2;
      }
      const found = criticalColumnLoad({ endFixity, length, area: (Math.PI * (root ** 2 - bore ** 2)) / 4, secondMoment, youngsModulus: modulus, yieldStrength });
      return found.regime === 'johnson' ? { value: found.load, note: `short column (slenderness ${found.slenderness.toFixed(0)} of ${found.transition.toFixed(0)}): Johnson's parabola, not Euler` } : found.load;
    },
    formula: 'F_cr = N π² E I / L_k², I = π d₃⁴/64; short: A R_e (1 − R_e s²/(4 π² N E)), s = 4 L_k/d₃; N = 0.25 fixed-free, 1 supported, 2.05 fixed-supported, 4 fixed-fixed',
    sources: [johnson, euler],
    rank: 2,
  }),
  figure({
    id: 'screw.buckling-factor',
    title: 'Safety against buckling',
    symbol: 'S_k',
    quantity: 'ratio',
    meaning: 'Buckling load over the largest push; only where the screw is pushed at all.',
    needs: { load: 'screw.buckling-load', push: 'screw.compression' },
    compute: ({ load, push }) => (push > 0 ? load / push : unable('the screw hangs from its thrust bearing, so it is in tension')),
    formula: 'S_k = F_cr / F_d',
    sources: [johnson],
    rank: 1,
    hint: ({ low }) => (low >= 100 ? 'buckling >99×' : `buckling ${low >= 10 ? low.toFixed(0) : low.toFixed(1)}×`),
  }),
  figure({
    id: 'screw.buckling-use',
    title: 'Use of the buckling load',
    symbol: 'F_d/F_cr',
    quantity: 'ratio',
    unit: '%',
    meaning: 'Largest push over buckling load; 0 where the load always pulls.',
    needs: { load: 'screw.buckling-load', push: 'screw.compression' },
    compute: ({ load, push }) => push / load,
    formula: 'F_d / F_cr',
    sources: [johnson],
    rank: 3,
  }),
  figure({
    id: 'screw.buckling-temperature',
    title: 'Warming that buckles the screw',
    symbol: 'ΔT_cr',
    quantity: 'temperature-difference',
    unit: 'K',
    meaning: 'How much warmer than its frame a screw held axially at both ends may become before the blocked growth buckles it.',
    needs: { length: 'screw.unsupported-length', root: 'screw.root-diameter', modulus: 'screw.elastic-modulus', expansion: 'screw.expansion', bore: 'screw.bore-diameter' },
    optional: { bearing: 'thrust-bearing.stiffness' },
    choices: { ends: 'screw.end-supports' },
    onlyWhere: { 'screw.thrust-end': ['both'] },
    compute: ({ length, root, modulus, expansion, bore, bearing, ends }) => {
      const pair = endPair(...endsOf(ends));
      if (pair === 'mechanism' || pair === 'fixed-free') return unable('a free end cannot take thrust');
      if (bore >= root) return unable('the bore is as large as the root');
      if (expansion <= 0) return unable('the material does not grow when warmed');
      const body = screwBody({ bending: root, mass: root }, { youngsModulus: modulus, shearModulus: modulus, density: 1 }, bore);
      return bucklingTemperature(endFixityFactor(pair), length, body.bendingStiffness, body.tensionStiffness, expansion, bearing === undefined ? Infinity : bearing / 2);
    },
    formula: 'ΔT_cr = F_cr / α · (1/(E A) + 2/(k_b L)), F_cr = N π² E I / L²',
    sources: [euler],
    rank: 2,
  }),
  figure({
    id: 'screw.blocked-growth-force',
    title: 'Thrust per kelvin of blocked growth',
    symbol: 'F_K',
    quantity: 'force',
    unit: 'N',
    meaning: 'Thrust that one kelvin between screw and frame sets up in a screw held axially at both ends.',
    needs: { length: 'screw.unsupported-length', root: 'screw.root-diameter', modulus: 'screw.elastic-modulus', expansion: 'screw.expansion', bore: 'screw.bore-diameter' },
    optional: { bearing: 'thrust-bearing.stiffness' },
    onlyWhere: { 'screw.thrust-end': ['both'] },
    compute: ({ length, root, modulus, expansion, bore, bearing }) => {
      const give = length / ((modulus * Math.PI * (root ** 2 - bore ** 2)) / 4) + (bearing === undefined ? 0 : 2 / bearing);
      return bore < root ? (expansion * length) / give : unable('the bore is as large as the root');
    },
    formula: 'F_K = α L · 1 K / (L/(E A) + 2/k_b)',
    sources: [{ title: 'springs in series; Sarkar, Strength of Materials', where: 'problem 3.16' }],
    rank: 3,
  }),
];
