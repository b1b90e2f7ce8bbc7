import { check, timesOf } from '../check.ts';

export default check({
  id: 'thrust-face-takes-torque',
  title: 'Thrust face takes much of the torque',
  summary: 'More than 30 % of the torque goes into the plain thrust face of the screw.',
  place: 'thrust-bearing.design',
  figure: 'screw.bearing-torque-share',
  bad: 'above',
  limits: [
    { at: 0.6, severity: 'information', basis: 'our threshold' },
    { at: 0.3, severity: 'hint', basis: 'our threshold' },
  ],
  when: (facts) => facts.choice('thrust-bearing.design') === 'plain',
  because: ['thrust-bearing.friction', 'thrust-bearing.mean-diameter'],
  message: ({ worst, bounds, certain }) => {
    const holds = (bounds('drive.collar-at-rest')?.low ?? 0) > 0 && (bounds('screw.run-down-torque')?.high ?? 0) > 0;
    return `Plain thrust face ${certain ? 'takes' : 'may take'} ${timesOf(worst)} the torque at the screw: a rolling thrust bearing would give it to the load.${holds ? ' But its friction helps to hold the load with power off: with a rolling bearing it may drop.' : ''}`;
  },
});
