import { percent } from '../checks/check.ts';
import { numberBeside } from '../checks/multiples.ts';
import type { Evaluation } from '../figures/evaluation.ts';
import { changeOf, entryDial, inOwnUnit, turned, type Dial } from './entry-proposals.ts';
import { number, remedy, type Proposal, type RemedyContext } from './remedy.ts';
import { isWritten } from './what-moves.ts';

/** `1.2× the tension needed, strum 51 Hz`: what comes of it, and the note by which it is set. */
function tensionTold(after: Evaluation, check: string): string | undefined {
  const bounds = (id: string) => after.bounds(id);
  const note = bounds('belt.strum-frequency-near')?.nominal;
  const share = (value: number | undefined, words: string): string | undefined => (value === undefined ? undefined : `${percent(value)} ${words}`);
  const slack = bounds('belt.slack-factor')?.low;
  const told: Readonly<Record<string, string | undefined>> = {
    'belt-goes-slack': slack === undefined ? undefined : `${numberBeside(slack, 1)}× the tension needed`,
    'belt-overtensioned': share(bounds('belt.tension-use')?.high, 'of what the belt bears'),
    'motor-shaft-bent-by-belt': share(bounds('motor.radial-load-use')?.high, 'of what the shaft bears'),
  };
  return told[check] === undefined || note === undefined ? told[check] : `${told[check]}, strum ${Number(note.toPrecision(2))} Hz`;
}

/** Turns the tension of the belt towards another one. Of two crossed belts whose tensions are written one by one, both are set. */
function tensionDial(context: RemedyContext, towards: number, say: (written: string) => string): Dial | undefined {
  const dial = entryDial(context, { input: 'belt.tension', towards, say, cost: 1 });
  if (!dial || context.before.input('layout.first-path-tension').state !== 'known') return dial;
  const present = context.before.bounds('belt.tension')?.nominal ?? towards;
  const at = (share: number): number => present * (towards / present) ** share;
  const inputs = (value: number) => ({ 'belt.tension': number(value), 'layout.first-path-tension': number(value), 'layout.second-path-tension': number(value) });
  return {
    inputs: (share) => inputs(at(share)),
    write: (share) => {
      const text = inOwnUnit(context, 'belt.tension', at(share), towards > present ? 'up' : 'down');
      const place = context.place('layout.path-tensions');
      const own = text !== undefined && isWritten(context, 'belt.tension') ? changeOf(context, 'belt.tension', text) : undefined;
      return text === undefined || !place ? undefined : { inputs: inputs(at(share)), changes: [{ place, value: [text, text] }, ...(own ? [own] : [])], what: say(text), cost: 1 };
    },
  };
}

/** Times the tension needed that a new belt is set to; common practice, no published source. */
const SETTLES = 1.15;

/** With what comes of it. */
const told = ({ finding }: RemedyContext, proposals: readonly Proposal[]): readonly Proposal[] => proposals.map((proposal) => ({ ...proposal, result: (after) => tensionTold(after, finding.check) }));

/** Tension above which the belt wears, or three times what is needed where that is not known. */
const highest = (context: RemedyContext): number | undefined => {
  const needed = context.before.bounds('belt.tension-needed')?.high;
  return context.before.bounds('belt.tension-highest')?.low ?? (needed === undefined ? undefined : 3 * needed);
};

export default [
  remedy({
    id: 'tighten-the-belt',
    summary: 'Raises the tension of the belt at rest to what keeps both spans taut, and no farther than the belt and the shaft bear.',
    cost: 1,
    cures: ['belt-goes-slack'],
    propose: (context) => {
      const [present, needed] = [context.before.bounds('belt.tension')?.nominal, context.before.bounds('belt.tension-needed')?.high];
      if (present === undefined || needed === undefined || present <= 0) return [];
      const most = Math.max(highest(context) ?? 0, 1.05 * needed);
      if (most <= present) return [];
      const say = (written: string): string => `Tighten the belt to ${written}`;
      // A belt settles as it runs in: a little more than is needed, where belt and shaft bear it.
      const [dial, wanted] = [tensionDial(context, most, say), SETTLES * needed];
      const settled = wanted > present && wanted < most ? dial?.write(Math.log(wanted / present) / Math.log(most / present)) : undefined;
      return told(context, settled && context.passes(context.tryWith(settled.inputs)) ? [settled] : turned(context, [dial]));
    },
  }),
  remedy({
    id: 'slacken-the-belt',
    summary: 'Lowers the tension of the belt at rest as far as it takes, and no farther than both spans stay taut.',
    cost: 1,
    cures: ['belt-overtensioned', 'motor-shaft-bent-by-belt'],
    propose: (context) => {
      const [present, needed] = [context.before.bounds('belt.tension')?.nominal, context.before.bounds('belt.tension-needed')?.high];
      const least = needed ?? 0.1 * (present ?? 0);
      if (present === undefined || least <= 0 || least >= present) return [];
      return told(context, turned(context, [tensionDial(context, least, (written) => `Slacken the belt to ${written}`)]));
    },
  }),
];
