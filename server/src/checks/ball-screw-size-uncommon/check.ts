import { check } from '../check.ts';

export default check({
  id: 'ball-screw-size-uncommon',
  title: 'Uncommon ball screw size',
  summary: 'The designation names a pair of diameter and lead that is seldom sold.',
  place: 'screw.size',
  basis: 'common practice',
  sources: [{ title: 'combinations usually sold', where: 'from memory, no published source', weak: true }],
  judge: ({ choice }) => (choice('screw.thread') === 'ball' && choice('screw.size-remark') !== undefined ? 'hint' : undefined),
  message: ({ show, choice }) =>
    `Ball screw ${choice('screw.size') ?? ''} is read as ${show('screw.major-diameter')} diameter and ${show('screw.lead')} lead: ${choice('screw.size-remark') ?? ''}. Check the digits, diameter first, then two for the lead.`,
});
