import { choiceOption, gentlestCombinations, type Option } from './combinations.ts';
import { changeOf, solvedProposal } from './entry-proposals.ts';
import { isBall, sprungNut, withoutOldPlay } from './nut.remedy.ts';
import { choice, number, remedy, type RemedyContext } from './remedy.ts';

/** Grades better than the present one, the nearest first; each further one asks more. */
function grades(context: RemedyContext): readonly Option[] {
  const ranks = isBall(context) ? ['T10', 'T7', 'P5', 'P3', 'P1'] : ['rolled', 'whirled', 'ground'];
  const present = ranks.indexOf(context.before.choice('screw.grade') ?? ranks[0] ?? '');
  return ranks.slice(present + 1).flatMap((grade, index) => choiceOption(context, 'screw.grade', grade, `Take a screw of grade ${grade}`, 3 + index / 2));
}

/** Nuts without play, and what they set. */
function closedNuts(context: RemedyContext): readonly Option[] {
  const old = withoutOldPlay(context);
  if (isBall(context)) {
    const change = changeOf(context, 'nut.design', 'preloaded-ball');
    const play = { 'nut.backlash': { type: 'number', nominal: 0, low: 0, high: 0.002e-3 } } as const;
    return change && context.before.choice('nut.design') !== 'preloaded-ball'
      ? [{ inputs: { 'nut.design': choice('preloaded-ball'), ...(old.length === 0 ? {} : play) }, changes: [change, ...old], what: 'Take a preloaded ball nut', cost: 2.5, price: 'more drag' }]
      : [];
  }
  const sprung = sprungNut(context);
  const play = { 'nut.backlash': { type: 'number', nominal: 0, low: 0, high: 0.01e-3 } } as const;
  return sprung
    ? [{ inputs: { 'nut.design': choice('spring-loaded'), 'nut.preload': number(sprung.newtons), ...(old.length === 0 ? {} : play) }, changes: sprung.changes, what: `Take a nut sprung with ${sprung.preload}`, cost: 2.5, price: 'more drag' }]
    : [];
}

/** Links of the drive that can be made stiffer, the softest kinds first. */
function stiffer(context: RemedyContext): readonly (readonly Option[])[] {
  const rated = context.before.bounds('motor.current')?.nominal;
  const setting = rated === undefined ? undefined : changeOf(context, 'drive.current-setting', `${Number(rated.toPrecision(3))} A`);
  const as = changeOf(context, 'drive.current-setting-as', 'rms');
  const current: readonly Option[] = rated !== undefined && setting && as
    ? [{ inputs: { 'drive.current-setting': number(rated), 'drive.current-setting-as': choice('rms') }, changes: [setting, as], what: `Set the current to ${Number(rated.toPrecision(3))} A RMS`, cost: 1 }]
    : [];
  const form = context.before.choice('coupling.form');
  return [
    current,
    form === undefined ? [] : ['bellows', 'disc', 'rigid'].flatMap((one, index) => choiceOption(context, 'coupling.form', one, `Take a ${one} coupling`, 2 + index / 4)),
    choiceOption(context, 'thrust-bearing.design', 'angular-contact', 'Take the thrust in angular-contact bearings', 3),
    isBall(context) ? closedNuts(context) : choiceOption(context, 'nut.material', 'bronze', 'Take a nut of bronze', 2.5),
  ];
}

export default [
  remedy({
    id: 'more-accurate-drive',
    summary: 'Takes a better accuracy grade of the screw, a nut without play, stiffer links, or the gentlest combination of these that is enough.',
    cost: 2.5,
    cures: ['position-error-over-accuracy', 'travel-needs-calibration'],
    propose: (context) => gentlestCombinations(context, [grades(context), closedNuts(context), ...stiffer(context)], 3),
  }),
  remedy({
    id: 'stiffer-drive',
    summary: 'Makes the soft links of the drive stiffer: the gentlest combination that is enough.',
    cost: 2,
    cures: ['drive-gives-too-much', 'nut-play-too-large', 'drive-resonates-with-steps'],
    propose: (context) => gentlestCombinations(context, [...stiffer(context), context.finding.check === 'nut-play-too-large' && !isBall(context) ? closedNuts(context) : []], 3),
  }),
  remedy({
    id: 'straighter-screw',
    summary: 'Takes a screw that runs truer.',
    cost: 3,
    cures: ['run-out-reaches-load', 'free-end-swings'],
    propose: (context) => {
      const present = context.before.bounds('screw.run-out');
      // A tenth is about what straightening by hand reaches; common practice, no published source.
      return present === undefined ? [] : solvedProposal(context, { input: 'screw.run-out', towards: 0.1 * present.nominal, say: (written) => `Take a screw that runs true to ${written}` });
    },
  }),
  remedy({
    id: 'stiffer-guides',
    summary: 'Takes guides that are stiff enough sideways.',
    cost: 4.5,
    cures: ['run-out-reaches-load'],
    propose: (context) => {
      const present = context.before.bounds('guides.lateral-stiffness');
      return present === undefined ? [] : solvedProposal(context, { input: 'guides.lateral-stiffness', towards: 20 * present.nominal, say: (written) => `Take guides of ${written} sideways`, coarse: true });
    },
  }),
];
