import { usualReduction } from '../catalogue/reductions.ts';
import { readQuantity } from '../language/read-quantity.ts';
import { childOf } from '../language/syntax-tree.ts';
import type { QuantityKind } from '../language/quantity-kinds.ts';
import { writtenValue } from './nice-values.ts';
import { number, type Change, type Inputs, type RemedyContext } from './remedy.ts';
import { isWritten } from './what-moves.ts';

/** One stage of the reduction, from the motor on, as it stands in the text. */
export interface Stage {
  readonly kind: string;
  readonly ratio: number;
  /** Of a stage that is given by its wheels. */
  readonly teeth: { readonly driving: number; readonly driven: number } | undefined;
  readonly text: (entry: string) => string | undefined;
  readonly change: (entry: string, value: string) => Change;
}

/** Stages of the reduction; none where there is none, or one of them cannot be read. */
export function stagesOf(context: RemedyContext): readonly Stage[] {
  const place = context.place('drive.reduction');
  const node = place && context.before.subject.machine.look(place.uri, place.path);
  if (!place || node?.type !== 'list') return [];
  const stages = node.items.map((item, index): Stage | undefined => {
    const text = (entry: string): string | undefined => {
      const child = childOf(item, entry);
      return child?.type === 'scalar' ? child.text : undefined;
    };
    const size = (entry: string): number | undefined => sizeOf(text(entry), 'ratio');
    const [written, driving, driven] = [size('ratio'), size('driving-teeth'), size('driven-teeth')];
    const byTeeth = driving !== undefined && driven !== undefined && driving > 0;
    const ratio = written ?? (byTeeth ? driven / driving : undefined);
    return ratio === undefined || ratio <= 0
      ? undefined
      : {
          kind: text('kind') ?? '', ratio, teeth: written === undefined && byTeeth ? { driving, driven } : undefined, text,
          change: (entry, value) => ({ place: { uri: place.uri, path: [...place.path, String(index), entry] }, value }),
        };
  });
  const known = stages.filter((stage) => stage !== undefined);
  return known.length === stages.length ? known : [];
}

const sizeOf = (text: string | undefined, quantity: QuantityKind): number | undefined => {
  const read = text === undefined ? undefined : readQuantity(text, quantity);
  return read?.ok ? read.quantity.nominal : undefined;
};

/** Wheels of toothed belts, and ratios in which stages of each kind are usual; common practice, no published source. */
const WHEELS = [15, 16, 18, 20, 24, 30, 32, 36, 40, 48, 50, 60, 72, 80, 90, 96, 100, 120];
const RATIOS: Readonly<Record<string, readonly number[]>> = {
  belt: [1.5, 2, 2.5, 3, 4, 5, 6],
  spur: [1.5, 2, 2.5, 3, 4, 5, 6],
  planetary: [3, 4, 5, 7, 10],
  worm: [5, 7.5, 10, 15, 20, 30, 40, 50],
};
/** A wheel of a single stage is no more than so many times as large as the other. */
const MOST_OF_BELT = 6;

/** Another ratio of one stage, and of the whole reduction with it. */
export interface Geared {
  readonly total: number;
  readonly inputs: Inputs;
  readonly changes: readonly Change[];
  /** `4 to 1 (15:60 teeth)`. */
  readonly words: string;
}

const rounded = (ratio: number): string => String(Number(ratio.toPrecision(3)));

/** Other ratios that stages of the present kinds may have, in one stage at a time, the nearest first. */
export function otherRatios(context: RemedyContext, fits: (ratio: number, present: number) => boolean): readonly Geared[] {
  const stages = stagesOf(context);
  const whole = stages.reduce((product, { ratio }) => product * ratio, 1);
  return stages.flatMap((stage): readonly Geared[] => {
    const geared = (ratio: number, change: Change, of: string): Geared => {
      const total = (whole / stage.ratio) * ratio;
      return { total, inputs: { 'drive.reduction-ratio': number(total) }, changes: [change], words: `${rounded(total)} to 1${of}` };
    };
    const { teeth } = stage;
    if (teeth) {
      return WHEELS.filter((driven) => fits(driven / teeth.driving, stage.ratio) && driven / teeth.driving <= MOST_OF_BELT && driven >= teeth.driving)
        .map((driven) => geared(driven / teeth.driving, stage.change('driven-teeth', String(driven)), ` (${teeth.driving}:${driven} teeth)`));
    }
    return (RATIOS[stage.kind] ?? []).filter((ratio) => fits(ratio, stage.ratio)).map((ratio) => geared(ratio, stage.change('ratio', String(ratio)), stages.length > 1 ? ` (${stage.kind} stage ${ratio})` : ''));
  }).sort((a, b) => Math.abs(Math.log(a.total / whole)) - Math.abs(Math.log(b.total / whole)));
}

/** Toothed-belt stages that can be put between motor and shaft, by whole numbers of teeth. */
export const NEW_STAGES: readonly { readonly driving: number; readonly driven: number }[] = [30, 40, 50, 60, 80, 100].map((driven) => ({ driving: 20, driven }));

/** Usual ratios of planetary gear heads with one stage or two; common practice, no published source. */
export const GEAR_HEADS = [3, 4, 5, 7, 10, 15, 20, 25];

/** What a new stage changes, as far as it is known before it is described more closely. */
export function newStageInputs(context: RemedyContext, kind: 'belt' | 'planetary', ratio: number): Inputs {
  const usual = usualReduction(kind);
  const supported = context.before.choice('drive.transmission') !== 'screw' && !isWritten(context, 'drive.shaft-support');
  return {
    'drive.reduction-ratio': number(ratio),
    'drive.reduction-efficiency': usual ? { type: 'number', low: usual.efficiency.low, nominal: usual.efficiency.nominal, high: usual.efficiency.high } : number(0.95),
    ...(usual ? { 'drive.reduction-backlash': { type: 'number', low: usual.backlash.low, nominal: usual.backlash.nominal, high: usual.backlash.high } } : {}),
    ...(supported ? { 'drive.radial-load-on': { type: 'choice', text: 'bearings' } } : {}),
  };
}

/**
 * The same entry of every stage so many times as large, written in its own unit. A stage in which it is not written gets what stands in for
 * it, where there is only one stage. Undefined where that is not known.
 */
export function scaledStages(context: RemedyContext, entry: string, whole: string, quantity: QuantityKind, unit: string, times: number): readonly Change[] | undefined {
  const stages = stagesOf(context);
  const changes = stages.flatMap((stage) => {
    const own = stage.text(entry);
    const present = sizeOf(own, quantity) ?? (stages.length === 1 ? context.before.bounds(whole)?.high : undefined);
    const ownUnit = own === undefined ? unit : (/[^\d.,\s-].*$/.exec(own)?.[0] ?? unit);
    const text = present === undefined ? undefined : writtenValue(present * times, quantity, ownUnit, times < 1 ? 'down' : 'up');
    return text === undefined ? [] : [stage.change(entry, text)];
  });
  return changes.length === 0 || changes.length < stages.length ? undefined : changes;
}
