import { allChanges, changeOf, chosenProposal, costOfChange, exactText, inOwnUnit, solvedProposal, valueOf } from './entry-proposals.ts';
import { choice, remedy, type Proposal, type RemedyContext } from './remedy.ts';

/** No longer than so many times the present bushing. */
const LONGEST = 4;
/** No slower than this share of the present speed. */
const SLOWEST = 0.1;

const OF_PLAIN = ['guides.friction', 'guides.pressure-limit', 'guides.heat-limit', 'guides.sliding-speed-limit', 'guides.specific-wear', 'guides.wear-allowed', 'guides.tilt-limit', 'guides.carriage-stiffness'];

function isWritten({ before }: RemedyContext, input: string): boolean {
  const found = before.input(input);
  return found.state === 'known' && found.origin.from === 'here';
}

/** Entries that say nothing of the new bearing. */
const takenAway = (context: RemedyContext, inputs: readonly string[]) =>
  inputs.filter((input) => isWritten(context, input)).flatMap((input) => {
    const place = context.place(input);
    return place ? [{ place, value: null }] : [];
  });

/** Bushings as much longer as is needed, and with them the guided length where it is written. */
function longer(context: RemedyContext): readonly Proposal[] {
  const { before } = context;
  const [length, carriages, spacing] = ['guides.carriage-length', 'guides.carriages', 'guides.carriage-spacing'].map((input) => before.bounds(input)?.nominal);
  if (length === undefined || !(length > 0)) return [];
  const room = (carriages ?? 1) > 1 && spacing !== undefined ? spacing / ((carriages ?? 2) - 1) : Infinity;
  const most = Math.min(LONGEST * length, room);
  const found = most > length ? context.solve('guides.carriage-length', most) : undefined;
  const text = found === undefined ? undefined : inOwnUnit(context, 'guides.carriage-length', found, 'up', room === Infinity);
  const written = text === undefined ? undefined : valueOf('guides.carriage-length', text);
  if (text === undefined || written === undefined) return [];
  const guided = before.bounds('guides.guided-length')?.nominal;
  const whole = isWritten(context, 'guides.guided-length') && guided !== undefined ? exactText(context, 'guides.guided-length', guided + written - length) : undefined;
  const changes = allChanges([changeOf(context, 'guides.carriage-length', text), ...(whole === undefined ? [] : [changeOf(context, 'guides.guided-length', whole)])]);
  return changes ? [{ changes, what: `Take bushings ${text} long`, cost: 2 + costOfChange(length, written) }] : [];
}

function ballBushings(context: RemedyContext): readonly Proposal[] {
  const after = context.tryWith({ 'guides.bearing': choice('ball-bushing') });
  const change = context.passes(after) ? changeOf(context, 'guides.bearing', 'ball-bushing') : undefined;
  return change ? [{ changes: [change, ...takenAway(context, OF_PLAIN)], what: 'Take ball bushings', result: () => 'they roll' }] : [];
}

function aligning(context: RemedyContext): readonly Proposal[] {
  if (context.before.choice('guides.bearing') !== 'ball-bushing') return [];
  const change = changeOf(context, 'guides.bearing', 'self-aligning-ball-bushing');
  return change ? [{ changes: [change, ...takenAway(context, ['guides.tilt-limit'])], what: 'Take self-aligning ball bushings' }] : [];
}

const WORN = ['bushing-overpressed', 'bushing-overheats', 'bushing-wears-out'] as const;

export default [
  remedy({
    id: 'slide-more-slowly',
    summary: 'Slows the axis until its plain bushings bear their heat.',
    cost: 1.5,
    cures: ['bushing-overheats'],
    propose: (context) => {
      const speed = context.before.bounds('motion.speed')?.nominal;
      return speed === undefined ? [] : solvedProposal(context, { input: 'motion.speed', towards: SLOWEST * speed, say: (written) => `Slow the axis to ${written}` });
    },
  }),
  remedy({ id: 'longer-bushings', summary: 'Takes longer plain bushings.', cost: 2, cures: WORN, propose: longer }),
  remedy({
    id: 'lined-bushings',
    summary: 'Takes bushings lined with PTFE in place of plain polymer.',
    cost: 2.2,
    cures: ['bushing-overpressed', 'bushing-overheats', 'bushing-wears-out'],
    propose: (context) =>
      context.before.choice('guides.bearing') === 'polymer-bushing' && !OF_PLAIN.some((input) => isWritten(context, input))
        ? chosenProposal(context, 'guides.bearing', ['lined-bushing'], () => 'Take bushings lined with PTFE')
        : [],
  }),
  remedy({ id: 'ball-bushings-for-plain', summary: 'Takes ball bushings in place of plain ones.', cost: 3, cures: WORN, propose: ballBushings }),
  remedy({ id: 'self-aligning-bushings', summary: 'Takes ball bushings that align themselves with a bent shaft.', cost: 2.5, cures: ['bushing-tilts'], propose: aligning }),
];
