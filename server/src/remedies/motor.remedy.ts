import { changeOf, inOwnUnit, solvedProposal } from './entry-proposals.ts';
import { choice, number, remedy, type Proposal, type RemedyContext } from './remedy.ts';
import { transmissionOf, UNITS } from './what-moves.ts';

const MICROSTEPS = [256, 128, 64, 32, 16, 8, 4, 2, 1];

function setCurrent(context: RemedyContext, amperes: number, meaning: 'peak' | 'rms'): readonly Proposal[] {
  const written = inOwnUnit(context, 'drive.current-setting', amperes, 'down');
  const setting = written === undefined ? undefined : changeOf(context, 'drive.current-setting', written);
  const as = changeOf(context, 'drive.current-setting-as', meaning);
  if (!setting || !as || !context.passes(context.tryWith({ 'drive.current-setting': number(amperes), 'drive.current-setting-as': choice(meaning) }))) return [];
  return [{ changes: [setting, as], what: `Set the current to ${written ?? ''} ${meaning === 'rms' ? 'RMS' : 'peak'}` }];
}

export default [
  remedy({
    id: 'set-the-rated-current',
    summary: 'Sets the drive to the rated current of the motor, as RMS for full torque or as peak for half the heat.',
    cost: 1,
    cures: ['motor-current-above-rating', 'motor-current-far-below-rating', 'motor-cannot-lift', 'motor-margin-thin', 'motor-overruns-going-down', 'rest-current-too-low', 'drive-gives-too-much', 'resolution-not-real', 'motor-error-over-accuracy'],
    propose: (context) => {
      const rated = context.before.bounds('motor.current')?.nominal;
      return rated === undefined ? [] : [...setCurrent(context, rated, 'peak'), ...setCurrent(context, rated, 'rms')];
    },
  }),
  remedy({
    id: 'say-what-the-setting-means',
    summary: 'Writes whether the current setting is a peak or an RMS value.',
    cost: 1,
    cures: ['current-setting-not-told'],
    propose: (context) =>
      (['peak', 'rms'] as const).flatMap((meaning) => {
        const change = changeOf(context, 'drive.current-setting-as', meaning);
        return change ? [{ changes: [change], what: `The setting is the ${meaning === 'rms' ? 'RMS value' : 'peak of the sine'}`, result: (after) => `${shownPeak(after.bounds('motor.peak-current')?.nominal)} peak` }] : [];
      }),
  }),
  remedy({
    id: 'less-current',
    summary: 'Lowers the current setting to what passes.',
    cost: 1,
    cures: ['supply-cannot-push-current', 'motor-current-above-rating', 'motor-winding-too-hot', 'motor-case-hot', 'supply-current-exceeded', 'screw-overstressed', 'motor-past-its-corner'],
    propose: (context) => {
      const setting = context.before.bounds('drive.current-setting')?.nominal;
      return setting === undefined ? [] : solvedProposal(context, { input: 'drive.current-setting', towards: 0.1 * setting, say: (written) => `Lower the current setting to ${written}`, cost: 1 });
    },
  }),
  remedy({
    id: 'more-current',
    summary: 'Raises the current setting to what passes, up to the rated current.',
    cost: 1,
    cures: ['rest-current-too-low', 'motor-current-far-below-rating', 'motor-margin-thin', 'motor-cannot-lift', 'resolution-not-real', 'motor-error-over-accuracy'],
    propose: (context) => {
      const setting = context.before.bounds('drive.current-setting')?.nominal;
      const rated = context.before.bounds('motor.current')?.nominal;
      const peak = context.before.bounds('drive.current-peak-factor')?.high;
      if (setting === undefined || rated === undefined || peak === undefined) return [];
      const most = (rated * Math.SQRT2) / peak;
      return most <= setting ? [] : solvedProposal(context, { input: 'drive.current-setting', towards: most, say: (written) => `Raise the current setting to ${written}`, cost: 1 });
    },
  }),
  remedy({
    id: 'change-the-microsteps',
    summary: 'Sends fewer microsteps for each full step, or more where the motor runs roughly or the smallest move is too large.',
    cost: 1,
    cures: ['step-rate-too-high', 'motor-runs-at-its-resonance', 'resolution-not-real', 'levelling-too-coarse', 'drive-resonates-with-steps', 'crossed-belts-diagonal-too-fast'],
    propose: (context) => {
      const present = context.before.bounds('controller.microsteps')?.nominal;
      const rate = ['step-rate-too-high', 'crossed-belts-diagonal-too-fast'].includes(context.finding.check);
      if (present === undefined && !rate) return [];
      const from = present ?? 1;
      const counts = rate ? MICROSTEPS.filter((count) => count < from) : MICROSTEPS.filter((count) => count !== from).sort((a, b) => Math.abs(Math.log(a / from)) - Math.abs(Math.log(b / from)));
      const found = context.first(counts, (count) => ({ 'controller.microsteps': number(count) }));
      const change = found === undefined ? undefined : changeOf(context, 'controller.microsteps', String(found));
      return change ? [{ changes: [change], what: `Send ${found} ${found === 1 ? 'microstep' : 'microsteps'} to the full step` }] : [];
    },
  }),
  remedy({
    id: 'a-motor-for-each-screw',
    summary: 'Gives each screw, belt or rack a motor of its own.',
    cost: 4.5,
    cures: ['motor-cannot-lift', 'motor-margin-thin', 'inertia-ratio-high', 'rest-current-too-low', 'motor-overruns-going-down', 'reduction-overloaded'],
    propose: (context) => {
      const units = context.before.bounds('drive.units')?.nominal ?? 1;
      if (context.before.choice('drive.motors') !== 'shared' || units < 2 || !context.passes(context.tryWith({ 'drive.motors': choice('one-each') }))) return [];
      const change = changeOf(context, 'drive.motors', 'one-each');
      return change ? [{ changes: [change], what: `Give each of the ${units} ${UNITS[transmissionOf(context)]} a motor of its own` }] : [];
    },
  }),
];

const shownPeak = (amperes: number | undefined): string => (amperes === undefined ? '?' : `${Number(amperes.toPrecision(3))} A`);
