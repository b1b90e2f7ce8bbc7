import { check, timesOf } from '../check.ts';

export default check({
  id: 'screw-overstressed',
  title: 'Core of the screw is overstressed',
  summary: 'Axial load and torque together stress the core of the screw beyond half of its yield strength.',
  place: 'screw.size',
  figure: 'screw.body-stress-use',
  bad: 'above',
  limits: [
    { at: 1 / 1.2, severity: 'error', basis: 'common practice' },
    { at: 0.5, severity: 'warning', basis: 'book', source: { title: 'Budynas and Nisbett', where: 'section 8-2 and section 5-5 (distortion energy)' } },
  ],
  because: ['motor.holding-torque', 'drive.current-setting', 'screw.root-diameter', 'screw.material'],
  message: ({ show, worst, certain, note }) =>
    `Screw core ${certain ? 'carries' : 'may carry'} ${show('screw.body-stress', 'high')}, ${timesOf(worst)} the ${show('screw.yield-strength', 'low')} at which it yields, where half is wanted${
      note('screw.body-stress') === undefined ? ': it bends or twists' : ': the stalled motor can twist it'
    }. Take a thicker screw, or a lower current setting.`,
});
