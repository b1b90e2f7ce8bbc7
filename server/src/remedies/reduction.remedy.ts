import { costOfChange, turned, type Dial } from './entry-proposals.ts';
import { writtenValue } from './nice-values.ts';
import { GEAR_HEADS, NEW_STAGES, newStageInputs, otherRatios, scaledStages, stagesOf } from './reduction-choice.ts';
import { number, remedy, type Proposal, type RemedyContext } from './remedy.ts';
import { moreOrLess, transmissionOf } from './what-moves.ts';

const WANT_MORE = [
  'motor-cannot-lift', 'motor-margin-thin', 'inertia-ratio-high', 'resolution-not-real', 'motor-error-over-accuracy', 'rest-current-too-low', 'drive-gives-too-much', 'motor-overruns-going-down',
  'motor-rms-torque-high', 'motor-peak-torque-exceeded', 'amplifier-current-short', 'counts-too-coarse', 'crossed-belts-diagonal-stalls', 'resonance-low', 'motor-winding-too-hot', 'motor-case-hot',
] as const;

function addStage(context: RemedyContext): readonly Proposal[] {
  const place = context.place('drive.reduction');
  if (!place || context.before.bounds('drive.reduction-ratio')?.nominal !== 1 || stagesOf(context).length > 0) return [];
  const found = context.first(NEW_STAGES, ({ driving, driven }) => newStageInputs(context, 'belt', driven / driving));
  if (found === undefined) return [];
  const { driving, driven } = found;
  return [{
    changes: [{ place, value: [{ kind: 'belt', 'driving-teeth': String(driving), 'driven-teeth': String(driven) }] }],
    what: `Gear the motor down ${driven / driving} to 1 by a toothed belt`, cost: 4 + (transmissionOf(context) === 'screw' ? 0 : costOfChange(1.5, driven / driving) / 2),
  }];
}

/** Where no belt stage does: belts gear down by five and no more. */
function addGearHead(context: RemedyContext): readonly Proposal[] {
  const place = context.place('drive.reduction');
  if (!place || context.before.bounds('drive.reduction-ratio')?.nominal !== 1 || stagesOf(context).length > 0 || addStage(context).length > 0) return [];
  const found = context.first(GEAR_HEADS, (ratio) => newStageInputs(context, 'planetary', ratio));
  return found === undefined ? [] : [{ changes: [{ place, value: [{ kind: 'planetary', ratio: String(found) }] }], what: `Gear the motor down ${found} to 1 by a planetary gear head`, price: 'some play', cost: 4.5 + costOfChange(3, found) / 2 }];
}

function otherRatio(context: RemedyContext, fits: (ratio: number, present: number) => boolean, what: string, price?: (times: number) => string): readonly Proposal[] {
  const present = context.before.bounds('drive.reduction-ratio')?.nominal;
  const found = present === undefined ? undefined : context.first(otherRatios(context, fits), ({ inputs }) => inputs);
  return found === undefined || present === undefined ? [] : [{ changes: found.changes, what: `${what} ${found.words}`, ...(price ? { price: price(found.total / present) } : {}), cost: 3 + costOfChange(present, found.total) }];
}

/** Truer, or tighter, wheels in every stage. */
function stageDial(context: RemedyContext, entry: string, whole: string, say: string): Dial | undefined {
  const present = context.before.bounds(whole);
  if (!present || present.high <= 0 || stagesOf(context).length === 0) return undefined;
  // A tenth is about the span from plain to precise wheels of a kind; common practice, no published source.
  const times = (share: number): number => 0.1 ** share;
  const at = (share: number) => ({ [whole]: { type: 'number', low: 0, nominal: present.high * times(share), high: present.high * times(share) } as const });
  return {
    inputs: at,
    write: (share) => {
      const changes = scaledStages(context, entry, whole, 'angle', '°', times(share));
      const [first] = changes ?? [];
      const text = typeof first?.value === 'string' ? first.value : '';
      return changes && { inputs: at(share), changes, what: changes.length === 1 ? `${say} ${text}` : `${say} ${text} in the first stage, the others in like measure`, cost: 3 };
    },
  };
}

export default [
  remedy({ id: 'add-a-belt-reduction', summary: 'Puts a toothed-belt stage between motor and shaft.', cost: 4, cures: [...WANT_MORE], propose: addStage }),
  remedy({ id: 'add-a-gear-head', summary: 'Puts a planetary gear head behind the motor, where a belt stage does not gear down enough.', cost: 4.5, cures: [...WANT_MORE], propose: addGearHead }),
  remedy({
    id: 'raise-the-reduction',
    summary: 'Raises the ratio of a stage of the reduction, by a larger driven wheel or the next usual ratio of its kind.',
    cost: 3,
    cures: [...WANT_MORE],
    propose: (context) => otherRatio(context, (ratio, present) => ratio > present * 1.001, 'Gear down'),
  }),
  remedy({
    id: 'lower-the-reduction',
    summary: 'Lowers the ratio of a stage of the reduction, so that the motor turns more slowly.',
    cost: 3,
    cures: ['motor-too-fast-for-its-maker', 'motor-past-its-corner', 'motor-too-fast-to-estimate', 'motor-beyond-its-points', 'step-rate-too-high', 'motor-cannot-lift', 'motor-margin-thin', 'motor-overruns-going-down', 'crossed-belts-diagonal-too-fast'],
    propose: (context) => otherRatio(context, (ratio, present) => ratio < present * 0.999, 'Gear down only', (times) => `${moreOrLess(1 / times)} torque`),
  }),
  remedy({
    id: 'reduction-with-less-play',
    summary: 'Takes a reduction with less play.',
    cost: 3,
    cures: ['rack-play-over-accuracy', 'belt-error-over-accuracy'],
    propose: (context) => turned(context, [stageDial(context, 'backlash', 'drive.reduction-backlash', 'Take a reduction with a play of')]),
  }),
  remedy({
    id: 'truer-reduction',
    summary: 'Takes wheels of the reduction that run truer.',
    cost: 3,
    cures: ['reduction-error-over-accuracy', 'rack-error-over-accuracy', 'belt-error-over-accuracy'],
    propose: (context) => turned(context, [stageDial(context, 'position-error', 'drive.reduction-error', 'Take a reduction true to')]),
  }),
  remedy({
    id: 'stronger-reduction',
    summary: 'Takes a stage of the reduction that is rated for the torque.',
    cost: 3,
    cures: ['reduction-overloaded'],
    propose: (context) => {
      const stages = stagesOf(context);
      const present = context.before.bounds('drive.reduction-torque-limit')?.nominal;
      const [stage] = stages;
      // Of several stages the text does not tell which one it is that gives way.
      if (stages.length !== 1 || !stage || present === undefined) return [];
      const share = context.solveAlong((part) => ({ 'drive.reduction-torque-limit': number(present * 20 ** part) }));
      const text = share === undefined ? undefined : writtenValue(present * 20 ** share, 'torque', /[^\d.,\s-].*$/.exec(stage.text('torque-rating') ?? '')?.[0] ?? 'N·m', 'up', true);
      return text === undefined ? [] : [{ changes: [stage.change('torque-rating', text)], what: `Take a reduction rated for ${text}`, cost: 3 + costOfChange(present, present * 20 ** (share ?? 0)) }];
    },
  }),
  remedy({
    id: 'stiffer-reduction',
    summary: 'Takes a reduction that twists less.',
    cost: 3,
    cures: ['drive-gives-too-much', 'resonance-low', 'gantry-skews'],
    propose: (context) => {
      const stages = stagesOf(context);
      const present = context.before.bounds('drive.reduction-stiffness')?.nominal;
      const [stage] = stages;
      if (stages.length !== 1 || !stage || present === undefined || present <= 0) return [];
      const share = context.solveAlong((part) => ({ 'drive.reduction-stiffness': number(present * 10 ** part) }));
      const text = share === undefined ? undefined : writtenValue(present * 10 ** share, 'torsional-stiffness', 'N·m/rad', 'up', true);
      return text === undefined ? [] : [{ changes: [stage.change('torsional-stiffness', text)], what: `Take a reduction of ${text}`, cost: 3 + costOfChange(present, present * 10 ** (share ?? 0)) }];
    },
  }),
];
