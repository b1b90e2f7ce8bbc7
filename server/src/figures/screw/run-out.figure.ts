import { lateralStiffness, runOutOfDecoupledNut, runOutOfRigidNut, type RunOutAtLoad } from '../../mechanics/run-out.ts';
import type { EndPair } from '../../mechanics/shaft-ends.ts';
import { figure, unable, type Unable } from '../figure.ts';
import { whirlingPair } from '../screw-ends.ts';

const needs = {
  runOut: 'screw.run-out', length: 'screw.unsupported-length', travel: 'axis.travel', bending: 'screw.bending-diameter', bore: 'screw.bore-diameter', modulus: 'screw.elastic-modulus',
  guide: 'guides.lateral-stiffness', friction: 'nut.decoupling-friction', load: 'drive.largest-load',
} as const;
const choices = { ends: 'screw.end-supports', mounting: 'nut.mounting' } as const;
const sources = [{ title: 'springs in series; beam tables such as Young and Budynas, Roark’s Formulas for Stress and Strain', where: 'table 8.1', weak: true }] as const;

interface Values {
  readonly runOut: number;
  readonly length: number;
  readonly travel: number;
  readonly bending: number;
  readonly bore: number;
  readonly modulus: number;
  readonly guide: number;
  readonly friction: number;
  readonly load: number;
  readonly ends: string;
  readonly mounting: string;
}

/** How far the bowed axis of the screw is off its bearings' line at a share of its length, of its largest value. */
const bowAt = (pair: EndPair, share: number): number => (pair === 'fixed-free' ? share ** 2 : Math.sin(Math.PI * share));

/** The largest force and the largest movement over a travel centred between the ends. */
function worstOverTravel(values: Values): RunOutAtLoad | Unable {
  const { runOut, length, travel, bending, bore, modulus, guide, friction, load, ends, mounting } = values;
  const pair = whirlingPair(ends);
  if (pair === 'mechanism') return unable('only the nut holds the screw');
  if (bore >= bending) return unable('the bore is as large as the root');
  if (!(guide > 0)) return unable('the guides have no sideways stiffness');
  const stiffness = (modulus * Math.PI * (bending ** 4 - bore ** 4)) / 64;
  const reach = Math.min(travel, length) / length;
  let force = 0;
  let displacement = 0;
  for (let step = 0; step <= 20; step++) {
    const share = 0.5 + reach * (step / 20 - 0.5);
    const screw = lateralStiffness(pair, length, share * length, stiffness);
    const eccentricity = (runOut / 2) * bowAt(pair, share);
    const found =
      mounting === 'decoupled'
        ? runOutOfDecoupledNut(eccentricity, screw, guide, { stiffness: Infinity, slidingForce: friction * load })
        : runOutOfRigidNut(eccentricity, screw, guide);
    force = Math.max(force, found.force);
    displacement = Math.max(displacement, found.displacement);
  }
  return { force, displacement };
}

export default [
  figure({
    id: 'screw.run-out-at-load',
    title: 'Sideways wobble of the load',
    symbol: 'w',
    quantity: 'length',
    meaning: 'How far the bow of the screw pushes the load sideways, once each turn, either way: it prints through with the period of the lead.',
    needs,
    choices,
    compute: (values) => {
      const found = worstOverTravel(values);
      return 'unable' in found ? found : found.displacement;
    },
    formula: 'rigid nut: w = t_r/2 · k_l / (k_l + k_g); decoupled: at most µ_d F_max / k_g; the worst place of the travel',
    sources,
    rank: 3,
  }),
  figure({
    id: 'screw.run-out-force',
    title: 'Side force of the run-out',
    symbol: 'F_w',
    quantity: 'force',
    unit: 'N',
    meaning: 'Side force between screw and load, once each turn, at the worst place of the travel.',
    needs,
    choices,
    compute: (values) => {
      const found = worstOverTravel(values);
      return 'unable' in found ? found : found.force;
    },
    formula: 'rigid nut: F_w = t_r/2 · k_l k_g / (k_l + k_g); decoupled: at most µ_d F_max',
    sources,
    rank: 3,
  }),
  figure({
    id: 'screw.run-out-use',
    title: 'Sideways wobble over the accuracy wanted',
    symbol: 'w/ε',
    quantity: 'ratio',
    unit: '%',
    meaning: 'Sideways wobble of the load over the accuracy wanted.',
    needs: { wobble: 'screw.run-out-at-load', accuracy: 'axis.accuracy' },
    compute: ({ wobble, accuracy }) => (accuracy > 0 ? wobble / accuracy : unable('the accuracy wanted is 0')),
    formula: 'w / ε',
    sources: [{ title: 'definition' }],
    rank: 3,
  }),
];
