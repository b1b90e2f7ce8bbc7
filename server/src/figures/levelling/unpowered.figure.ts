import { supportOf } from '../../machine/support-joint.ts';
import { isDriveJoint } from '../../machine/levelling-problems.ts';
import { HOLDING_FACTOR } from '../../mechanics/unpowered-holding.ts';
import { figure, unable, type Computed } from '../figure.ts';
import { liftNames, liftTables, withLifts, type LiftValues, type Rows } from './lifts.ts';

/** The verdict as a number whose lower end is the worse one. */
const LOST = 0;
const SLOWLY = 1;
const KEPT = 2;

const word = (rank: number): string => (rank < 0.5 ? 'level is lost' : rank < 1.5 ? 'level may be lost slowly' : 'level is kept');

interface Values extends LiftValues { readonly rows: Rows | undefined; readonly verdict: number | undefined; readonly factor: number | undefined }

/** Level by what each drive does, since each stands for itself. */
function byDrives({ verdict, factor }: Values): Computed {
  if (verdict === undefined) return unable('whether a lift holds with power off is not known');
  // The verdict goes in steps and the factor behind it does not: below 1 nothing holds.
  const rank = Math.min(verdict, factor === undefined ? KEPT : factor < 1 ? LOST : factor < HOLDING_FACTOR ? SLOWLY : KEPT);
  if (rank >= 1.5) return { value: KEPT, note: 'each lift holds where it stands' };
  if (rank >= 0.5) return { value: SLOWLY, note: 'each lift may creep at its own pace, so that the part sinks unevenly' };
  return { value: LOST, note: 'each lift runs down at its own pace: it has to be levelled anew after power comes back' };
}

/** Whether the lifts are drives of the axis; a reason where that is not known. */
function areDrives({ rows }: Values, indices: readonly number[]): boolean | string {
  if (rows === undefined) return 'no support can be read';
  const drives = indices.filter((index) => isDriveJoint(rows[index] && supportOf(rows[index]).kind));
  return drives.length === indices.length ? true : drives.length === 0 ? false : 'some of the lifts are drives of the axis, and some are not';
}

const common = {
  id: 'levelling.kept-unpowered',
  title: 'Level with power off',
  symbol: 'H_γ',
  quantity: 'ratio',
  meaning: 'Whether the part is still level after the power was off, by what each lift does then. The worst end of the friction decides.',
  onlyWith: ['levelling', 'supports'],
  tables: { ...liftTables, rows: 'axis.support-joints' },
  names: liftNames,
  formula: 'kept where each lift holds, lost slowly where it may creep, lost where it runs down',
  sources: [{ title: 'see what the axis does with power off' }],
  rank: 1,
  inWords: ({ nominal, low }: { readonly nominal: number; readonly low: number }) => (word(low) === word(nominal) ? word(nominal) : `${word(nominal)}; ${word(low).replace(/^level /, '')} at the worst end of what is uncertain`),
} as const;

export default [
  figure({
    ...common,
    onlyWhere: { 'levelling.moved-by': ['own-motors'] },
    needs: { verdict: 'drive.holding-verdict' },
    optional: { factor: 'drive.holding-factor' },
    optionalChoices: { motors: 'drive.motors' },
    compute: ({ motors, ...values }) =>
      withLifts(values, ({ indices }) => {
        const drives = areDrives(values, indices);
        if (typeof drives === 'string') return unable(drives);
        if (!drives) return unable('the lifts are no drives of the axis, so that nothing is known of what holds them');
        return motors === 'shared' ? unable('one motor drives all units, so that none moves alone') : byDrives(values);
      }),
  }),
  figure({
    ...common,
    needs: {},
    optional: { verdict: 'drive.holding-verdict', factor: 'drive.holding-factor' },
    choices: { movedBy: 'levelling.moved-by' },
    optionalChoices: { motors: 'drive.motors' },
    compute: ({ motors, ...values }) =>
      withLifts(values, ({ indices }) => {
        const drives = areDrives(values, indices);
        if (typeof drives === 'string') return unable(drives);
        if (!drives) return { value: KEPT, note: 'screws that are set by hand stay, if they are locked' };
        if (motors === 'shared') return { value: KEPT, note: 'one motor ties all lifts together, so that they can only sink alike' };
        return byDrives(values);
      }),
  }),
];
