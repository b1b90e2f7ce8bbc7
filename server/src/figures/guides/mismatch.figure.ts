import { carriageOnShaft } from '../../mechanics/guide-shaft-travel.ts';
import { roundSecondMoment, type GuideShaft } from '../../mechanics/guide-shaft.ts';
import { mismatchDrag, mismatchForce, twistForce } from '../../mechanics/guide-mismatch.ts';
import { figure, unable, type Computed } from '../figure.ts';

const springs = { title: 'springs in series, the part between the rails taken as rigid' } as const;
const stiffnesses = { title: 'stiffness of a carriage: order of magnitude from memory', weak: true } as const;
const onFirmRails = { 'guides.kind': ['profile-rail', 'supported-shaft', 'wheels', 'plain'] } as const;
const onShafts = { 'guides.kind': ['round-shaft'] } as const;

const needs = { rails: 'guides.rails', carriages: 'guides.carriages', stiffness: 'guides.carriage-stiffness' } as const;
const shaft = {
  travel: 'axis.travel', length: 'guides.unsupported-length', diameter: 'guides.shaft-diameter', bore: 'guides.shaft-bore', modulus: 'guides.shaft-modulus', fixity: 'guides.end-fixity',
} as const;
const choices = { second: 'guides.second-rail' } as const;

interface ShaftGiveValues {
  readonly travel: number; readonly length: number; readonly diameter: number; readonly bore: number; readonly modulus: number; readonly fixity: number; readonly carriages: number; readonly spacing: number | undefined;
}

/** How far one shaft gives, where the carriage stands at the end of its travel and the shaft is stiffest: under a force over all its bushings, and one bushing against the other, m/N. */
function shaftGive({ travel, length, diameter, bore, modulus, fixity, carriages, spacing }: ShaftGiveValues): { readonly together: number; readonly opposed: number } | string {
  const apart = carriages > 1 ? (spacing ?? 0) : 0;
  const position = length / 2 - travel / 2;
  if (!(length > 0 && diameter > bore && bore >= 0 && modulus > 0)) return 'the shafts need lengths, a diameter and a material above zero';
  if (position - apart / 2 < 0) return 'travel and carriage are longer than the free length of the shafts';
  const bendingStiffness = modulus * roundSecondMoment(diameter, bore);
  const end = fixity >= 1 ? ('fixed' as const) : { tiltStiffness: (fixity / (1 - fixity)) * ((4 * bendingStiffness) / length) };
  const bare: GuideShaft = { left: end, right: end, length, bendingStiffness };
  const together = carriageOnShaft(bare, { force: 1, bearingDistance: apart }, position).sag;
  // A couple of the distance puts one newton down on one bushing and one up on the other.
  const opposed = apart > 0 ? (carriageOnShaft(bare, { force: 0, moment: apart, bearingDistance: apart }, position).tilt * apart) / 2 : 0;
  return { together, opposed };
}

function sideForce(mismatch: number, rails: number, carriages: number, stiffness: number, second: string | undefined, give = 0): Computed {
  if (rails < 2) return unable('there is one rail');
  if (!(stiffness > 0)) return unable('the stiffness must be above zero');
  if (second === 'floating') return { value: 0, note: 'the second rail gives way across' };
  const side = carriages * stiffness;
  return mismatchForce(mismatch, [side, side, ...(give > 0 ? [1 / give, 1 / give] : [])]) / carriages;
}

function heightForce(difference: number, rails: number, carriages: number, stiffness: number, give = 0): Computed {
  if (rails < 2) return unable('there is one rail');
  if (!(stiffness > 0)) return unable('the stiffness must be above zero');
  // With one carriage on each rail the slider tilts with them.
  if (carriages < 2) return { value: 0, note: 'with one carriage on each rail the slider tilts with its rails' };
  return twistForce(difference, 1 / (1 / stiffness + give));
}

const side = {
  id: 'guides.mismatch-side-force',
  title: 'Side force on a carriage from rails out of parallel',
  symbol: 'N_y',
  quantity: 'force',
  unit: 'N',
  meaning: 'How hard the two rails press each carriage sideways where they are as far out of parallel as is written; frame and slider give besides, so it is an upper bound.',
  optionalChoices: choices,
  rank: 3,
} as const;
const height = {
  id: 'guides.mismatch-height-force',
  title: 'Force on a carriage from one rail too high',
  symbol: 'N_z',
  quantity: 'force',
  unit: 'N',
  meaning: 'What a rail that stands as much too high at one place as is written adds to the carriage there, and to the one opposite; the slider is taken as rigid, so it is an upper bound.',
  rank: 3,
} as const;

export default [
  figure({
    ...side,
    onlyWhere: onFirmRails,
    needs: { ...needs, mismatch: 'guides.parallel-within' },
    compute: ({ mismatch, rails, carriages, stiffness, second }) => sideForce(mismatch, rails, carriages, stiffness, second),
    formula: 'N_y = δ_p/(1/(n_c k_c) + 1/(n_c k_c))/n_c',
    sources: [springs, stiffnesses],
  }),
  figure({
    ...side,
    onlyWhere: onShafts,
    needs: { ...needs, ...shaft, mismatch: 'guides.parallel-within' },
    optional: { spacing: 'guides.carriage-spacing' },
    compute: (values) => {
      const give = shaftGive(values);
      return typeof give === 'string' ? unable(give) : sideForce(values.mismatch, values.rails, values.carriages, values.stiffness, values.second, give.together);
    },
    formula: 'N_y = δ_p/(2/(n_c k_c) + 2/k_s)/n_c, k_s of a shaft with the carriage at the end of its travel',
    sources: [springs, stiffnesses],
  }),
  figure({
    ...height,
    onlyWhere: onFirmRails,
    needs: { ...needs, difference: 'guides.level-within' },
    compute: ({ difference, rails, carriages, stiffness }) => heightForce(difference, rails, carriages, stiffness),
    formula: 'N_z = k_c δ_h/4',
    sources: [{ title: 'least energy of four springs under a rigid plane' }, stiffnesses],
  }),
  figure({
    ...height,
    onlyWhere: onShafts,
    needs: { ...needs, ...shaft, difference: 'guides.level-within' },
    optional: { spacing: 'guides.carriage-spacing' },
    compute: (values) => {
      const give = shaftGive(values);
      return typeof give === 'string' ? unable(give) : heightForce(values.difference, values.rails, values.carriages, values.stiffness, give.opposed);
    },
    formula: 'N_z = δ_h/4/(1/k_c + 1/k_s), k_s of a shaft, one bushing against the other',
    sources: [{ title: 'least energy of four springs under a rigid plane' }, stiffnesses],
  }),
  figure({
    id: 'guides.mismatch-drag',
    title: 'Drag from rails out of line',
    symbol: 'F_md',
    quantity: 'force',
    unit: 'N',
    meaning: 'Friction that the forces of rails out of line add to what the drive must push.',
    onlyWhere: { 'guides.kind': [...onFirmRails['guides.kind'], ...onShafts['guides.kind']] },
    needs: { carriages: 'guides.carriages', friction: 'guides.friction' },
    optional: { sideways: 'guides.mismatch-side-force', away: 'guides.mismatch-height-force' },
    compute: ({ carriages, friction, sideways, away }) =>
      sideways === undefined && away === undefined ? unable('it is not written how far the rails may be out of line') : mismatchDrag((sideways ?? 0) + (away ?? 0), carriages, friction),
    formula: 'F_md = 2 µ_g n_c (N_y + N_z)',
    sources: [{ title: 'Coulomb friction' }],
    rank: 3,
  }),
  figure({
    id: 'guides.mismatch-drag-use',
    title: 'Drag from rails out of line over what the drive has to spare',
    symbol: 'u_md',
    quantity: 'ratio',
    unit: '%',
    meaning: 'Above 100 % the drive stalls where the rails are farthest out of line.',
    onlyWhere: { 'guides.kind': [...onFirmRails['guides.kind'], ...onShafts['guides.kind']] },
    needs: { drag: 'guides.mismatch-drag', push: 'drive.push-force', load: 'drive.cruising-load', units: 'drive.units' },
    compute: ({ drag, push, load, units }) => {
      const left = push - load * units;
      return left > 0 ? drag / left : unable('the drive has no force to spare as it is');
    },
    formula: 'u_md = F_md/(F_max − n_u F_1)',
    sources: [{ title: 'force that is left to the drive at low speed' }],
    rank: 3,
  }),
];
