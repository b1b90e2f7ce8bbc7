import { check, timesOf } from '../check.ts';

export default check({
  id: 'coupling-misaligned',
  title: 'Shafts are more out of line than the coupling takes',
  summary: 'Offset and angle of the two shafts together exceed what the coupling allows.',
  place: 'coupling',
  figure: 'coupling.misalignment-use',
  bad: 'above',
  limits: [{ at: 1, severity: 'warning', basis: 'common practice', source: { title: 'limits for offset and angle shared out in proportion', weak: true } }],
  because: ['coupling.parallel-offset', 'coupling.angular-offset', 'coupling.parallel-offset-limit', 'coupling.angular-offset-limit'],
  message: ({ worst, certain }) =>
    `Shafts ${certain ? 'are' : 'may be'} out of line by ${timesOf(worst)} what the coupling allows, offset and angle together: it bends the screw once a turn and wears out. Align motor and screw, or take a coupling that gives more.`,
});
