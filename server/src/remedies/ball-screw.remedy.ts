import { parseBallScrewDesignation } from '../mechanics/ball-screw.ts';
import { BALL_SCREW_SIZES } from '../catalogue/ball-screws.ts';
import { changeOf } from './entry-proposals.ts';
import { isBall } from './nut.remedy.ts';
import { choice, remedy, type Change, type Proposal, type RemedyContext } from './remedy.ts';

/** Entries that belong to the sliding screw and its nut, and would belie the ball screw. */
const OF_SLIDING = ['screw.thread', 'screw.major-diameter', 'screw.pitch-diameter', 'screw.root-diameter', 'screw.pitch', 'screw.starts', 'screw.lead', 'nut.material', 'nut.size', 'nut.length', 'nut.friction', 'nut.static-friction-ratio', 'nut.backlash', 'nut.preload', 'nut.stiffness'];

function propose(context: RemedyContext): readonly Proposal[] {
  const { before } = context;
  const diameter = before.bounds('screw.major-diameter')?.nominal;
  if (isBall(context) || diameter === undefined || !before.subject.isPresent('nut')) return [];
  const found = BALL_SCREW_SIZES.filter((size) => size.nominalDiameter >= diameter - 1e-6 && size.nominalDiameter <= 2.6 * diameter)
    .map(({ nominalDiameter, lead }) => `${String(Math.round(nominalDiameter * 1000)).padStart(2, '0')}${String(Math.round(lead * 1000)).padStart(2, '0')}`)
    .find((size) => parseBallScrewDesignation(size).kind === 'ball screw' && context.passes(context.tryWith({ 'screw.size': choice(size), 'screw.thread': choice('ball'), 'nut.design': choice('ball'), 'nut.lubrication': choice('grease'), 'screw.grade': choice('T7') })));
  const [size, design, lubrication, grade] = [found === undefined ? undefined : changeOf(context, 'screw.size', found), changeOf(context, 'nut.design', 'ball'), changeOf(context, 'nut.lubrication', 'grease'), changeOf(context, 'screw.grade', 'T7')];
  if (found === undefined || !size || !design || !lubrication || !grade) return [];
  const old = OF_SLIDING.flatMap((input): Change[] => {
    const entry = before.input(input);
    return entry.state === 'known' && (entry.origin.from === 'here' || entry.origin.from === 'part') ? [{ place: entry.origin.place, value: null }] : [];
  });
  return [{ changes: [size, design, lubrication, grade, ...old], what: `Take a ball screw ${found}, grade T7`, price: 'no self-locking', result: (after) => (context.finding.figure !== undefined && after.bounds(context.finding.figure) ? undefined : 'balls roll where the thread slid') }];
}

export default remedy({
  id: 'ball-screw-instead',
  summary: 'Takes a ball screw in place of the sliding screw: it loses little to friction, but does not hold a load by itself.',
  cost: 5,
  cures: ['nut-overheats', 'nut-overpressed-in-motion', 'nut-overpressed-at-rest', 'nut-wears-out', 'screw-inefficient', 'motor-cannot-lift', 'motor-margin-thin'],
  propose,
});
