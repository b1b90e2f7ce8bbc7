import { allChanges, changeOf, costOfChange, exactText, inOwnUnit, solvedProposal, valueOf } from './entry-proposals.ts';
import { remedy, type Proposal, type RemedyContext } from './remedy.ts';

/** No more than so many times the present spacing or length. */
const FARTHEST = 4;
/** No less than this share of the present spacing or travel. */
const NEAREST = 0.3;

/** Carriages at another distance, and with them the guided length where it is written. */
function spaced(context: RemedyContext, input: 'guides.carriage-spacing' | 'guides.guided-length', share: number): readonly Proposal[] {
  const { before } = context;
  const [spacing, guided] = ['guides.carriage-spacing', 'guides.guided-length'].map((id) => before.bounds(id)?.nominal);
  const written = before.input('guides.guided-length');
  const isWritten = written.state === 'known' && written.origin.from === 'here';
  if (spacing === undefined || guided === undefined || (before.bounds('guides.carriages')?.nominal ?? 1) < 2) return [];
  // Where the guided length is not written it follows from the spacing.
  const turned = isWritten ? input : 'guides.carriage-spacing';
  const from = turned === 'guides.carriage-spacing' ? spacing : guided;
  const found = context.solve(turned, share * from);
  const direction = share > 1 ? 'up' : 'down';
  const text = found === undefined ? undefined : inOwnUnit(context, 'guides.carriage-spacing', spacing + found - from, direction, share > 1);
  const apart = text === undefined ? undefined : valueOf('guides.carriage-spacing', text);
  if (text === undefined || apart === undefined || !(apart > 0)) return [];
  const whole = isWritten ? exactText(context, 'guides.guided-length', guided + apart - spacing) : undefined;
  const changes = allChanges([changeOf(context, 'guides.carriage-spacing', text), ...(whole === undefined ? [] : [changeOf(context, 'guides.guided-length', whole)])]);
  return changes ? [{ changes, what: `Set the carriages ${text} apart`, cost: 2 + costOfChange(spacing, apart) }] : [];
}

export default [
  remedy({ id: 'carriages-beside-each-other', summary: 'Sets the carriages far enough apart that they fit on their rail.', cost: 2, cures: ['carriages-overlap'], propose: (context) => spaced(context, 'guides.carriage-spacing', FARTHEST) }),
  remedy({ id: 'carriages-nearer', summary: 'Sets the carriages nearer together, so that the travel fits on the shafts.', cost: 2, cures: ['shaft-too-short-for-travel'], propose: (context) => spaced(context, 'guides.guided-length', NEAREST) }),
  remedy({
    id: 'longer-guide-shafts',
    summary: 'Takes guide shafts with as much free length as travel and slider need.',
    cost: 3,
    cures: ['shaft-too-short-for-travel'],
    propose: (context) => {
      const free = context.before.bounds('guides.unsupported-length')?.nominal;
      return free === undefined ? [] : solvedProposal(context, { input: 'guides.unsupported-length', towards: FARTHEST * free, say: (written) => `Take shafts with ${written} between their holders`, coarse: true });
    },
  }),
  remedy({
    id: 'travel-that-fits-the-shafts',
    summary: 'Shortens the travel to what fits on the guide shafts.',
    cost: 4,
    lastResort: true,
    cures: ['shaft-too-short-for-travel'],
    propose: (context) => {
      const travel = context.before.bounds('axis.travel')?.nominal;
      return travel === undefined ? [] : solvedProposal(context, { input: 'axis.travel', towards: NEAREST * travel, say: (written) => `Be content with ${written} of travel` });
    },
  }),
];
