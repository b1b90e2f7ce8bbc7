import { check } from '../check.ts';

export default check({
  id: 'frame-is-loose',
  title: 'Frame is loose',
  summary: 'Members, joints and feet leave something of the frame free to move.',
  subject: 'machine',
  place: 'frame',
  figure: 'frame.looseness',
  basis: 'follows from the mechanics',
  sources: [{ title: 'what has no stiffness is not held' }],
  judge: ({ bounds }) => ((bounds('frame.looseness')?.nominal ?? 0) > 0 ? 'error' : undefined),
  message: ({ note }) => `Frame is loose: ${note('frame.looseness') ?? 'something in it moves freely'}. It gives way under any load. Hold it by a foot, put a bracket in place of a pin, or add a diagonal.`,
});
