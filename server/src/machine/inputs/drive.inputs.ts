import { reverseEfficiency } from '../../mechanics/reduction.ts';
import { fallbacks, type Member } from '../input.ts';
import type { Origin } from '../origin.ts';
import { atEnds, fromStages, given, ratioOf, usualOf, type StageValue } from '../reduction-stages.ts';
import { between, exactly, productOf, type Bounded } from '../values.ts';

const efficiencyOf = (stage: Member): StageValue | undefined => {
  const own = given(stage, 'efficiency');
  return own && own.value.low > 0 && own.value.high <= 1 ? own : usualOf(stage, 'efficiency', 'efficiency');
};

/** A belt loses the same either way; in gears the same loss torque weighs more when the load drives. */
function reverseOf(stage: Member): StageValue | undefined {
  const own = given(stage, 'efficiency');
  if (!own || own.value.low <= 0 || own.value.high > 1) return usualOf(stage, 'reverseEfficiency', 'efficiency');
  if (stage.choice('kind') === 'belt') return own;
  const { low, nominal, high } = own.value;
  return { value: between(reverseEfficiency(low), reverseEfficiency(nominal), reverseEfficiency(high)), origin: own.origin };
}

const backlashOf = (stage: Member): StageValue | undefined => given(stage, 'backlash') ?? usualOf(stage, 'backlash', 'backlash');

/** One locking stage locks the whole train. */
const throughAll = (values: readonly number[]): number => (values.some((value) => value <= 0) ? Math.min(...values) : values.reduce((product, value) => product * value, 1));

export default fallbacks(
  {
    input: 'drive.reduction-ratio',
    title: 'Reduction ratio',
    symbol: 'i',
    quantity: 'ratio',
    compose: fromStages(1, ratioOf, (values) => productOf(values)),
  },
  {
    input: 'drive.reduction-efficiency',
    title: 'Efficiency of the reduction',
    symbol: 'η_i',
    quantity: 'ratio',
    compose: fromStages(1, efficiencyOf, (values) => productOf(values)),
  },
  {
    input: 'drive.reduction-reverse-efficiency',
    title: 'Efficiency of the reduction when the load drives',
    symbol: 'η_i,r',
    quantity: 'ratio',
    compose: fromStages(1, reverseOf, (values) => atEnds((end) => throughAll(values.map((value) => value[end])))),
  },
  {
    input: 'drive.reduction-backlash',
    title: 'Play of the reduction at the shaft',
    symbol: 'b_i',
    quantity: 'angle',
    // A play is divided by the ratios of the stages after it, not by that of its own.
    compose: fromStages(0, backlashOf, (values, ratios) => atEnds((end) => values.reduce((play, value, index) => play / (ratios[index]?.nominal ?? 1) + value[end], 0)), '°'),
  },
  {
    input: 'drive.reduction-inertia',
    title: 'Inertia of the reduction at the motor',
    symbol: 'J_i',
    quantity: 'rotational-inertia',
    compose: fromStages(
      0,
      (stage) => given(stage, 'rotational-inertia') ?? {
        value: exactly(0),
        origin: { from: 'handbook', source: 'wheels of the reduction left out, since no inertia is given', weak: true, place: { uri: stage.place.uri, path: [...stage.place.path, 'rotational-inertia'] } },
      },
      (values, ratios) => atEnds((end) => values.reduceRight((behind, value, index) => value[end] + behind / (ratios[index]?.nominal ?? 1) ** 2, 0)),
      'g·cm²',
    ),
  },
  {
    input: 'drive.reduction-torque-limit',
    title: 'Torque limit of the reduction at the shaft',
    symbol: 'T_i,max',
    quantity: 'torque',
    compose: (_read, lists) => {
      const stages = lists.members('drive.reduction') ?? [];
      let onwards = 1;
      const limits: { readonly value: Bounded; readonly title: string; readonly origin: Origin }[] = [];
      for (const stage of [...stages].reverse()) {
        const rating = given(stage, 'torque-rating');
        const ratio = ratioOf(stage);
        if (!ratio) return undefined;
        const { low, nominal, high } = rating?.value ?? exactly(Infinity);
        if (rating) limits.push({ value: between(low * onwards, nominal * onwards, high * onwards), title: `stage ${stage.title}`, origin: rating.origin });
        onwards *= ratio.value.nominal;
      }
      const weakest = limits.reduce<(typeof limits)[number] | undefined>((least, limit) => (!least || limit.value.nominal < least.value.nominal ? limit : least), undefined);
      return weakest && { value: { type: 'number', ...weakest.value }, origin: { from: 'several', parts: [weakest] } };
    },
  },
  {
    input: 'drive.current-setting',
    symbol: 'I_s',
    handbook: (read) => {
      const rated = read.number('motor.current');
      // Many settings are lower, for the sake of heat and noise; torque is then short, heat is not.
      return rated && {
        value: { type: 'number', ...between(0.7 * rated.low, rated.nominal, rated.high), unit: 'A' },
        source: '70 to 100 % of the rated current of the motor, since no setting is given; common practice, no published source',
        weak: true,
      };
    },
  },
  {
    input: 'drive.current-peak-factor',
    title: 'Peak of the current over its setting',
    symbol: 'c_p',
    quantity: 'ratio',
    compose: (read) => {
      const as = read.choice('drive.current-setting-as');
      const origin = read.origin('drive.current-setting-as');
      return as !== undefined && origin ? { value: { type: 'number', ...exactly(as === 'rms' ? Math.SQRT2 : 1) }, origin } : undefined;
    },
    handbook: () => ({
      value: { type: 'number', ...between(1, 1, Math.SQRT2) },
      source: 'not said whether the setting is a peak or a root mean square: both are reckoned with, and the peak is taken as the nominal case',
      weak: true,
    }),
  },
  {
    input: 'drive.rest-current',
    symbol: 'ρ',
    handbook: () => ({
      value: { type: 'number', ...between(0.5, 0.5, 1), unit: '%' },
      source: 'drives keep half to all of the current at rest; common practice, no published source',
      weak: true,
    }),
  },
);
