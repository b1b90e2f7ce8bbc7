import { check } from '../check.ts';
import { ringsLittle, ringsTell, swayText } from '../frame-words.ts';

export default check({
  id: 'frame-unbraced-direction',
  title: 'Frame sways in a direction that nothing braces',
  summary: 'The lowest frequency of the members’ frame is low.',
  subject: 'machine',
  place: 'frame',
  figure: 'frame.first-frequency',
  bad: 'below',
  when: (facts) => !ringsTell('frame', facts),
  milder: (facts) => ringsLittle('frame', facts),
  limits: [
    { at: 30, severity: 'warning', basis: 'common practice', source: { title: 'no published source', weak: true } },
    { at: 60, severity: 'information', basis: 'common practice', source: { title: 'fast machines and cutting; no published source', weak: true } },
  ],
  because: ['frame.joint', 'frame.profile'],
  message: ({ show, bounds, note, certain }) =>
    `Frame ${certain ? 'sways' : 'may sway'} at ${swayText(show, bounds('frame.first-frequency'), 'frame.first-frequency')}: it ${note('frame.first-frequency') ?? 'swings'}. Each move leaves waves. Add a diagonal there, stiffer joints, or a larger profile.`,
});
