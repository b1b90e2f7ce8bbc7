import { check } from '../check.ts';

export default check({
  id: 'thread-size-uncommon',
  title: 'Uncommon thread size',
  summary: 'The size names a trapezoidal thread whose pitch is not in use at its diameter.',
  place: 'screw.size',
  basis: 'standard',
  sources: [{ title: 'ISO 2904', where: 'size list, partly from memory, and sizes in use', weak: true }],
  judge: ({ choice }) => (choice('screw.thread') === 'trapezoidal' && choice('screw.size-remark') !== undefined ? 'hint' : undefined),
  because: ['screw.pitch', 'screw.major-diameter'],
  message: ({ show, choice }) =>
    `Thread ${choice('screw.size') ?? ''} has a pitch of ${show('screw.pitch')} on ${show('screw.major-diameter')}: ${choice('screw.size-remark') ?? ''}. Its dimensions are reckoned by the relations of ISO 2901. Check the digits, or measure ten pitches.`,
});
