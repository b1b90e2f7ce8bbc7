import { changeOf, resultText, solvedProposal } from './entry-proposals.ts';
import { writtenValue } from './nice-values.ts';
import { choice, number, remedy, type Proposal, type RemedyContext } from './remedy.ts';

/** Usual extra-low supply voltages, in V; common practice, no published source. */
const VOLTAGES = [12, 24, 36, 48];

const MICROSTEPS = [256, 128, 64, 32, 16, 8, 4, 2, 1];

const RATIOS = [1.5, 2, 2.5, 3, 4, 5];

function setCurrent(context: RemedyContext, amperes: number, meaning: 'peak' | 'rms', words: string): readonly Proposal[] {
  const { before } = context;
  const input = before.input('drive.current-setting');
  const unit = input.state === 'known' && input.value.type === 'number' ? input.value.unit : 'A';
  const written = writtenValue(amperes, 'current', unit ?? 'A', 'down');
  const setting = written === undefined ? undefined : changeOf(context, 'drive.current-setting', written);
  const as = changeOf(context, 'drive.current-setting-as', meaning);
  if (!setting || !as || !context.passes(context.tryWith({ 'drive.current-setting': number(amperes), 'drive.current-setting-as': choice(meaning) }))) return [];
  return [{ changes: [setting, as], title: (after) => `${words} ${written} ${meaning === 'rms' ? 'RMS' : 'peak'}${resultText(context, after)}` }];
}

export default [
  remedy({
    id: 'set-the-rated-current',
    summary: 'Sets the drive to the rated current of the motor, as RMS for full torque or as peak for half the heat.',
    cures: ['motor-current-above-rating', 'motor-current-far-below-rating', 'motor-cannot-lift', 'motor-margin-thin', 'motor-overruns-going-down', 'rest-current-too-low'],
    propose: (context) => {
      const rated = context.before.bounds('motor.current')?.nominal;
      return rated === undefined ? [] : [...setCurrent(context, rated, 'peak', 'Set the current to'), ...setCurrent(context, rated, 'rms', 'Set the current to')];
    },
  }),
  remedy({
    id: 'say-what-the-setting-means',
    summary: 'Writes whether the current setting is a peak or an RMS value.',
    cures: ['current-setting-not-told'],
    propose: (context) =>
      (['peak', 'rms'] as const).flatMap((meaning) => {
        const change = changeOf(context, 'drive.current-setting-as', meaning);
        return change ? [{ changes: [change], title: () => `The setting is the ${meaning === 'rms' ? 'RMS value' : 'peak of the sine'}` }] : [];
      }),
  }),
  remedy({
    id: 'less-current',
    summary: 'Lowers the current setting to what passes.',
    cures: ['supply-cannot-push-current', 'motor-current-above-rating', 'motor-winding-too-hot', 'motor-case-hot', 'supply-current-exceeded', 'screw-overstressed'],
    propose: (context) => {
      const setting = context.before.bounds('drive.current-setting')?.nominal;
      return setting === undefined ? [] : solvedProposal(context, { input: 'drive.current-setting', towards: 0.1 * setting, say: (written) => `Lower the current setting to ${written}` });
    },
  }),
  remedy({
    id: 'higher-supply-voltage',
    summary: 'Feeds the motor from the next usual extra-low voltage that is enough.',
    cures: ['motor-past-its-corner', 'motor-cannot-lift', 'motor-margin-thin', 'supply-cannot-push-current', 'motor-overruns-going-down'],
    propose: (context) => {
      const present = context.before.bounds('supply.voltage')?.nominal;
      if (present === undefined || context.before.choice('supply.kind') === 'mains') return [];
      const found = context.first(VOLTAGES.filter((volts) => volts > present + 0.5), (volts) => ({ 'supply.voltage': number(volts) }));
      const change = found === undefined ? undefined : changeOf(context, 'supply.voltage', `${found} V`);
      return change ? [{ changes: [change], title: (after) => `Feed it with ${found} V, if all that it feeds stands that${resultText(context, after)}` }] : [];
    },
  }),
  remedy({
    id: 'fewer-microsteps',
    summary: 'Sends fewer microsteps for each full step.',
    cures: ['step-rate-too-high'],
    propose: (context) => {
      const present = context.before.bounds('controller.microsteps')?.nominal;
      if (present === undefined) return [];
      const found = context.first(MICROSTEPS.filter((count) => count < present), (count) => ({ 'controller.microsteps': number(count) }));
      const change = found === undefined ? undefined : changeOf(context, 'controller.microsteps', String(found));
      return change ? [{ changes: [change], title: (after) => `Send ${found} microsteps to the full step${resultText(context, after)}` }] : [];
    },
  }),
  remedy({
    id: 'add-a-belt-reduction',
    summary: 'Puts a toothed-belt stage between motor and screw.',
    cures: ['motor-cannot-lift', 'motor-margin-thin', 'inertia-ratio-high', 'resolution-not-real', 'motor-error-over-accuracy'],
    propose: (context) => {
      const place = context.place('drive.reduction');
      if (!place || context.before.bounds('drive.reduction-ratio')?.nominal !== 1) return [];
      const found = context.first(RATIOS, (ratio) => ({ 'drive.reduction-ratio': number(ratio), 'drive.reduction-efficiency': number(0.95) }));
      if (found === undefined) return [];
      return [{ changes: [{ place, value: [{ kind: 'belt', ratio: String(found) }] }], title: (after) => `Gear the motor down by a toothed belt, ${found} to 1${resultText(context, after)}` }];
    },
  }),
];
