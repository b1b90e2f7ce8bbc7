import { beltProfile, usualCord, type BeltCord } from '../../catalogue/belt-profiles.ts';
import { beltStageStiffness, errorAtOutput, stiffnessAtOutput } from '../../mechanics/reduction-elasticity.ts';
import { fallbacks, type Fallback, type Member } from '../input.ts';
import type { Origin } from '../origin.ts';
import { atEnds, given, ratioOf, type StageValue } from '../reduction-stages.ts';
import { between, type Bounded } from '../values.ts';

const nothing: Origin = { from: 'handbook', source: 'whether stages of a reduction are described', weak: false, place: undefined };

/** Profile of the belt of a stage, and the radii of its pulleys. */
function beltOf(stage: Member) {
  const profile = beltProfile(stage.choice('profile') ?? '');
  const driving = stage.number('driving-teeth')?.nominal ?? 0;
  const driven = stage.number('driven-teeth')?.nominal ?? 0;
  if (stage.choice('kind') !== 'belt' || !profile || driving <= 0 || driven <= 0) return undefined;
  return { profile, driving: (driving * profile.pitch) / (2 * Math.PI), driven: (driven * profile.pitch) / (2 * Math.PI) };
}

const isCord = (text: string | undefined): text is BeltCord => ['glass', 'steel', 'reinforced-steel', 'aramid'].includes(text ?? '');

/** From profile, width, cord and centre distance, where nothing is measured. Without a tension one span may be slack. */
function stiffnessOfBelt(stage: Member): StageValue | undefined {
  const belt = beltOf(stage);
  const width = stage.number('width')?.nominal;
  const distance = stage.number('center-distance')?.nominal;
  if (!belt || width === undefined || distance === undefined || width <= 0 || distance <= Math.abs(belt.driven - belt.driving)) return undefined;
  const cord = stage.choice('cord');
  const specific = belt.profile.specificStiffness(isCord(cord) ? cord : usualCord(belt.profile, belt.profile.usualBody));
  if (!specific) return undefined;
  const isTensioned = (stage.number('tension')?.low ?? 0) > 0;
  const of = (stiffness: number, bothTaut: boolean): number =>
    beltStageStiffness({ specificStiffness: stiffness * width, centerDistance: distance, drivingRadius: belt.driving, drivenRadius: belt.driven, bothTaut });
  return {
    value: between(of(specific.low, isTensioned), of(specific.nominal, true), of(specific.high, true)),
    origin: {
      from: 'handbook', source: `belt ${belt.profile.profile}, both runs taut${isTensioned ? '' : ' or one slack, since no tension is written'}: ${specific.source}`, weak: specific.weak,
      place: { uri: stage.place.uri, path: [...stage.place.path, 'torsional-stiffness'] },
    },
  };
}

/** Pulleys that sit off their axis: bore clearance and set screws make 10 to 40 µm each, from memory. */
function errorOfBelt(stage: Member): StageValue | undefined {
  const belt = beltOf(stage);
  if (!belt) return undefined;
  const of = (eccentricity: number): number => (2 * eccentricity) / belt.driven;
  return {
    value: between(of(10e-6), of(25e-6), of(40e-6)),
    origin: {
      from: 'handbook', source: 'both pulleys 10 to 40 µm off their axis by bore clearance and set screws; usual range, from memory', weak: true,
      place: { uri: stage.place.uri, path: [...stage.place.path, 'position-error'] },
    },
  };
}

/** Puts an input together from all stages; unknown without any, and while one of them is. */
const ofStages = (read: (stage: Member) => StageValue | undefined, unit: string, combine: (stages: readonly { readonly ratio: number; readonly value: number }[]) => number): NonNullable<Fallback['compose']> =>
  (_read, lists) => {
    const stages = lists.members('drive.reduction') ?? [];
    const known = stages.flatMap((stage) => {
      const [ratio, value] = [ratioOf(stage), read(stage)];
      return ratio && value ? [{ ratio: ratio.value.nominal, title: stage.title, ...value }] : [];
    });
    if (known.length === 0 || known.length < stages.length) return undefined;
    const value: Bounded = atEnds((end) => combine(known.map((stage) => ({ ratio: stage.ratio, value: stage.value[end] }))));
    return { value: { type: 'number', ...value, unit }, origin: { from: 'several', parts: known.map(({ title, origin }) => ({ title: `stage ${title}`, origin })) } };
  };

export default fallbacks(
  {
    input: 'drive.has-reduction',
    title: 'Reduction',
    symbol: '',
    compose: (_read, lists) => ({ value: { type: 'choice', text: (lists.members('drive.reduction') ?? []).length > 0 ? 'yes' : 'no' }, origin: nothing }),
  },
  {
    input: 'drive.reduction-stiffness',
    title: 'Torsional stiffness of the reduction at the shaft',
    symbol: 'k_i',
    quantity: 'torsional-stiffness',
    compose: ofStages(
      (stage) => {
        const own = given(stage, 'torsional-stiffness');
        return own && own.value.low > 0 ? own : stiffnessOfBelt(stage);
      },
      'N·m/rad',
      (stages) => stiffnessAtOutput(stages.map(({ ratio, value }) => ({ ratio, values: { stiffness: value } }))),
    ),
  },
  {
    input: 'drive.reduction-error',
    title: 'Position error of the reduction at the shaft',
    symbol: 'ε_i',
    quantity: 'angle',
    compose: ofStages(
      (stage) => {
        const own = given(stage, 'position-error');
        return own && own.value.low >= 0 ? own : errorOfBelt(stage);
      },
      '°',
      (stages) => errorAtOutput(stages.map(({ ratio, value }) => ({ ratio, values: { error: value } }))),
    ),
  },
);
