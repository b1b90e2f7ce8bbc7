import { check } from '../check.ts';

/** What mends a frame that is not described to its end; all else moves freely. */
const CURES: readonly (readonly [string, string])[] = [
  ['no point says by "held"', 'Write "held" at the points on which it stands.'],
  ['which carries a mass', 'Lead a member to that point, or move it onto one.'],
  ['stand at one place', 'Move one of the points, or leave that member out.'],
];

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
  message: ({ note }) => {
    const words = note('frame.looseness') ?? 'something in it moves freely';
    const cure = CURES.find(([fault]) => words.includes(fault))?.[1];
    return cure === undefined
      ? `Frame is loose: ${words}. It gives way under any load. Hold it by a foot, put a bracket in place of a pin, or add a diagonal.`
      : `Frame is not whole: ${words}. Until then nothing of it can be computed. ${cure}`;
  },
});
