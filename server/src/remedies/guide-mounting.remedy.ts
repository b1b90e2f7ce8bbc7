import { changeOf, chosenProposal } from './entry-proposals.ts';
import { remedy, type Proposal, type RemedyContext } from './remedy.ts';

/** A second rail that gives way across. Where the mounting is compared with a table, it stays out of line, and the float takes that up. */
function floating(context: RemedyContext): readonly Proposal[] {
  if (context.before.choice('guides.second-rail') === 'floating' || (context.before.bounds('guides.rails')?.nominal ?? 1) < 2) return [];
  const what = 'Let the second rail give way across';
  if (context.finding.check !== 'rails-out-of-line') return chosenProposal(context, 'guides.second-rail', ['floating'], () => what);
  const change = changeOf(context, 'guides.second-rail', 'floating');
  return change ? [{ changes: [change], what, result: () => 'it stays out of line, but presses nothing sideways', catches: true }] : [];
}

export default [
  remedy({
    id: 'carriages-without-preload',
    summary: 'Takes carriages without preload, which forgive more at mounting.',
    cost: 2,
    cures: ['rails-out-of-line', 'guide-life-short', 'guide-static-safety-low'],
    propose: (context) =>
      // Where nothing is said of it this says what is there; where it is, it is another carriage.
      context.before.choice('guides.preload') === 'none' ? [] : chosenProposal(context, 'guides.preload', ['none'], () => 'Take carriages without preload'),
  }),
  remedy({
    id: 'let-the-second-rail-float',
    summary: 'Lets the second rail, or what runs on it, give way across the travel.',
    cost: 3,
    cures: ['rails-out-of-line', 'rails-bind', 'guide-life-short', 'guide-static-safety-low'],
    propose: floating,
  }),
];
