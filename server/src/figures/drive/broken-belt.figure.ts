import { COUNTED_FRICTION, judgeBrokenBelt, pullOfBeltsLeft, releasedAcceleration, type AfterBreak } from '../../mechanics/free-running-drive.ts';
import { dropEnergy, fallFromRest } from '../../mechanics/unpowered-holding.ts';
import { figure, unable } from '../figure.ts';
import { carriedForce, nothingFalls } from './at-rest.ts';

// On a level axis nothing falls, and there is nothing to tell.
const onlyWhere = { 'drive.transmission': ['belt'], 'axis.pull': ['pulled'] } as const;
const statics = { title: 'statics; a broken belt cuts off motor, detent, reduction and any brake that does not grip the rail' } as const;

const RANK: Readonly<Record<AfterBreak['verdict'], number>> = { falls: 0, held: 1, rests: 2 };

const HOLDERS: Readonly<Record<AfterBreak['holder'], string>> = {
  nothing: 'motor, detent, reduction and a brake before the belt hold nothing then',
  'rail-brake': 'the brake on the rail holds, if something closes it when the belt breaks',
  'other-belts': 'the other belts hold, if their drives do',
  guides: 'only the friction of the guides holds',
  balance: 'nothing pulls on the axis at rest',
};

const needs = { load: 'drive.gravity-load', share: 'drive.load-share', friction: 'guides.friction-force', units: 'drive.units' } as const;
const optional = { brake: 'drive.brake-force', pull: 'belt.pull-after-break', breaking: 'belt.breaking-force' } as const;
const optionalChoices = { at: 'brake.at', role: 'layout.role' } as const;

type Values = { readonly [alias in keyof typeof needs]: number } & { readonly [alias in keyof typeof optional]: number | undefined } & { readonly [alias in keyof typeof optionalChoices]: string | undefined };

function afterBreak({ load, share, friction, units, brake, pull, breaking, at, role }: Values): AfterBreak {
  // Two crossed belts hold an axis only together; and belts that cannot bear the load that comes on them break too.
  const others = role === undefined && !(pull !== undefined && breaking !== undefined && pull >= breaking);
  return judgeBrokenBelt({
    pull: load / share,
    guideFriction: Math.max(0, friction),
    belts: others ? units : 1,
    railBrakeForce: at === 'rail' ? (brake ?? 0) * units : 0,
  });
}

export default [
  figure({
    id: 'drive.broken-belt-verdict',
    onlyWhere,
    title: 'When a belt breaks',
    symbol: 'H_b',
    quantity: 'ratio',
    meaning: 'What the axis does when one of its belts breaks, with power on or off. Motor, detent, reduction and a brake at motor or shaft are cut off from the load then.',
    needs,
    optional: { ...optional, ...carriedForce },
    optionalChoices,
    compute: (values) => {
      if (values.load === 0 && values.balance === undefined) return nothingFalls(undefined);
      const after = afterBreak(values);
      return { value: RANK[after.verdict], note: HOLDERS[after.holder] };
    },
    formula: 'held: another belt, or rail brake ≥ 1.5 |F₀|/q_F, or F_g/2 ≥ 2 |F₀|/q_F; else falls',
    sources: [statics, { title: 'the factors 1.5 and 2 are common practice, no published source' }],
    rank: 1,
    inWords: ({ low }) => (low < 0.5 ? 'falls' : low < 1.5 ? 'is held' : 'rests'),
    hint: ({ low }) => (low < 0.5 ? 'break: falls' : 'break: held'),
  }),
  figure({
    id: 'belt.pull-after-break',
    onlyWhere,
    title: 'Pull of a belt when another breaks',
    symbol: 'F_bb',
    quantity: 'force',
    unit: 'N',
    meaning: 'Pull at the first swing in each of the belts that are left when one breaks under the resting load, its tension at rest included.',
    needs: { load: 'drive.gravity-load', share: 'drive.load-share', units: 'drive.units' },
    optional: { tension: 'belt.tension', ...carriedForce },
    compute: ({ load, share, units, tension, balance }) => {
      if (units < 2) return unable('there is only one belt');
      return load === 0 && balance === undefined ? nothingFalls(balance) : (tension ?? 0) + pullOfBeltsLeft(Math.abs(load) / share, Math.round(units)).peak;
    },
    formula: 'F_bb = F_v + F/(n_u − 1) + (F/(n_u − 1) − F/n_u), F = F₀/q_F',
    sources: [{ title: 'statics; a load put on at once swings as far beyond its new rest as it came from below' }],
    rank: 3,
  }),
  figure({
    id: 'drive.broken-belt-energy',
    onlyWhere,
    title: 'Energy of a fall after a break',
    symbol: 'E_b',
    quantity: 'energy',
    meaning: 'Energy that the moved mass brings to the bottom over the whole travel when nothing holds it any more, less what a counterbalance on the carriage carries.',
    needs: { load: 'drive.gravity-load', share: 'drive.load-share', travel: 'axis.travel', gravity: 'conditions.gravity' },
    optional: carriedForce,
    compute: ({ load, share, travel, gravity, balance }) => (load === 0 ? nothingFalls(balance) : dropEnergy(Math.abs(load) / share / gravity, travel, gravity)),
    formula: 'E_b = |F₀| h / q_F',
    sources: [{ title: 'mechanics of a falling body' }],
    rank: 2,
  }),
  figure({
    id: 'drive.broken-belt-speed',
    onlyWhere,
    title: 'Speed of a fall after a break',
    symbol: 'v_b',
    quantity: 'speed',
    meaning: 'Speed at the bottom when the carriage falls over the whole travel with half the guide friction only. No rotor slows it.',
    needs: { load: 'drive.gravity-load', share: 'drive.load-share', mass: 'axis.moved-mass', friction: 'guides.friction-force', travel: 'axis.travel' },
    optional: { counterweight: 'counterbalance.mass', ...carriedForce },
    compute: ({ load, share, mass, friction, travel, counterweight, balance }) => {
      if (load === 0) return nothingFalls(balance);
      const moved = mass + (counterweight ?? 0);
      return moved > 0 ? (fallFromRest(releasedAcceleration(Math.abs(load) / share, COUNTED_FRICTION * Math.max(0, friction), moved), travel)?.speed ?? 0) : unable('nothing that has a mass moves');
    },
    formula: 'v_b = √(2 h (|F₀|/q_F − F_g/2) / (m + m_c))',
    sources: [{ title: 'motion under constant acceleration' }],
    rank: 3,
  }),
];
