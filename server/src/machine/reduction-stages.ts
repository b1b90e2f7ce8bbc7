import { usualReduction } from '../catalogue/reductions.ts';
import type { Fallback, Member } from './input.ts';
import type { Origin } from './origin.ts';
import { between, exactly, type Bounded } from './values.ts';

/** What the inputs of a reduction share: its stages, from the motor on, read one by one and put together. */

/** A value of one stage, and where it comes from. */
export interface StageValue {
  readonly value: Bounded;
  readonly origin: Origin;
}

export const written = (member: Member, entry: string): Origin => ({ from: 'here', place: { uri: member.place.uri, path: [...member.place.path, entry] } });

export function ratioOf(stage: Member): StageValue | undefined {
  const ratio = stage.number('ratio');
  if (ratio) return ratio.low > 0 ? { value: ratio, origin: written(stage, 'ratio') } : undefined;
  const driving = stage.number('driving-teeth');
  const driven = stage.number('driven-teeth');
  if (!driving || !driven || driving.nominal <= 0 || driven.nominal <= 0) return undefined;
  return { value: exactly(driven.nominal / driving.nominal), origin: written(stage, 'driven-teeth') };
}

export function usualOf(stage: Member, which: 'efficiency' | 'reverseEfficiency' | 'backlash', entry: string): StageValue | undefined {
  const usual = usualReduction(stage.choice('kind') ?? '')?.[which];
  if (!usual) return undefined;
  const { low, nominal, high, source, weak } = usual;
  return { value: { low, nominal, high }, origin: { from: 'handbook', source, weak, place: { uri: stage.place.uri, path: [...stage.place.path, entry] } } };
}

export const given = (stage: Member, entry: string): StageValue | undefined => {
  const value = stage.number(entry);
  return value && { value, origin: written(stage, entry) };
};

const direct: Origin = { from: 'handbook', source: 'no reduction is described: the motor drives the shaft directly', weak: false, place: undefined };

/** Puts an input together from all stages; `none` without any; unknown while one of them cannot be read. */
export function fromStages(
  none: number,
  read: (stage: Member) => StageValue | undefined,
  combine: (values: readonly Bounded[], ratios: readonly Bounded[]) => Bounded,
  unit?: string,
): NonNullable<Fallback['compose']> {
  return (_read, lists) => {
    const stages = lists.members('drive.reduction');
    if (!stages || stages.length === 0) return { value: { type: 'number', ...exactly(none) }, origin: direct };
    const ratios = stages.map(ratioOf);
    const values = stages.map(read);
    if (ratios.some((ratio) => !ratio) || values.some((value) => !value)) return undefined;
    const known = values as readonly StageValue[];
    const combined = combine(known.map(({ value }) => value), (ratios as readonly StageValue[]).map(({ value }) => value));
    const parts = known.map(({ origin }, index) => ({ title: `stage ${stages[index]?.title ?? index + 1}`, origin }));
    return { value: { type: 'number', ...combined, ...(unit === undefined ? {} : { unit }) }, origin: { from: 'several', parts } };
  };
}

export const atEnds = (of: (end: 'low' | 'nominal' | 'high') => number): Bounded => {
  const [low, nominal, high] = [of('low'), of('nominal'), of('high')];
  return between(Math.min(low, nominal), nominal, Math.max(high, nominal));
};
